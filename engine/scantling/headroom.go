package scantling

import (
	"fmt"
	"math"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// dial is a value of the boat that is turned.
type dial struct {
	of, sign string
	now      float64
	step     float64
	first    float64 // least value tried
	last     float64 // greatest
	set      func(*record.Boat, float64)
}

// dials are speed and loaded mass, in steps of half a knot and of about a hundredth of the mass. Draught, trim and waterline
// stay as they are on record.
func dials(b *record.Boat) []dial {
	var out []dial
	if b.Speed.Set {
		now := float64(b.Speed.V)
		out = append(out, dial{"speed", "kn", now, 0.5, 4, math.Max(60, math.Ceil(1.5*now)), func(b *record.Boat, v float64) { b.Speed.V = unit.Knot(v) }})
	}
	if b.LoadedMass.Set {
		now := float64(b.LoadedMass.V)
		step := math.Max(10, math.Round(now/1000)*10)
		out = append(out, dial{"loaded mass", "kg", now, step, math.Max(step, math.Floor(now/2/step)*step), math.Ceil(2.5*now/step) * step, func(b *record.Boat, v float64) { b.LoadedMass.V = unit.KG(v) }})
	}
	return out
}

// at is the value of a step.
func (d dial) at(step int) float64 { return d.first + float64(float64(step)*d.step) }

// headrooms asks each rule how far each dial may be turned. Panels and members of out are only read.
func (j *judge) headrooms(out *Result) (headrooms []Headroom) {
	bars := j.bars.apart()
	for i, r := range j.rules {
		if r.craft == nil {
			continue
		}
		apart := r.apart()
		all := layAll(apart, bars, i, out)
		for _, d := range dials(&j.hull.Boat) {
			h := apart.headroom(d, all)
			h.Rule = i
			h.Says = h.says()
			headrooms = append(headrooms, h)
			d.set(apart.boat, d.now)
		}
	}
	return headrooms
}

// headroom finds the greatest value on the dial at which nothing that is laid is short. What has the least room today is asked
// first at the highest value that is still open; where it is short there, halving finds how far it goes, and that becomes
// the highest for all that follow. Round it goes until each has been asked at the value found, because not everything grows
// with speed or mass; where one is short there, the search goes on below.
func (r *rule) headroom(d dial, all []laid) Headroom {
	h := Headroom{Of: d.of, Unit: d.sign, Now: d.now, Counts: len(all)}
	if len(all) == 0 {
		h.Why = "nothing is shown by this sheet"
		return h
	}
	h.Shown = true
	top := int(math.Round((d.last - d.first) / d.step))
	at := top
	r.turnTo(d, at)
	for i, asked := 0, 0; asked < len(all); i, asked = (i+1)%len(all), asked+1 {
		if all[i].stuck || r.holds(&all[i]) {
			continue
		}
		low := r.below(d, &all[i], at)
		if low < 0 {
			h.Never = append(h.Never, all[i].subject())
			all[i].stuck = true
		} else {
			h.Limits, at, asked = all[i].subject(), low, 0
		}
		r.turnTo(d, at)
	}
	at = r.between(d, all, at, &h)
	for i := range all {
		all[i].stuck = false
	}
	if len(h.Never) == len(all) {
		return h
	}
	h.Most, h.Ends = d.at(at), at == top
	return h
}

// between looks at a few steps from today to the one found: where something is short there after all, the search ends below
// it. Only the governing sheet is looked at so closely.
func (r *rule) between(d dial, all []laid, at int, h *Headroom) int {
	now := int(math.Ceil((d.now - d.first) / d.step))
	if !r.governs || at <= now {
		return at
	}
	for i := 1; i < closer; i++ {
		k := now + (at-now)*i/closer
		r.turnTo(d, k)
		for n := range all {
			if all[n].stuck || r.holds(&all[n]) {
				continue
			}
			if low := r.below(d, &all[n], k); low >= 0 {
				h.Limits = all[n].subject()
				return low
			}
		}
	}
	return at
}

// closer is into how many parts the way from today is cut for that.
const closer = 4

func (r *rule) turnTo(d dial, at int) {
	d.set(r.boat, d.at(at))
	_ = r.again() // the same sheet with the same units took the boat before
}

func (r *rule) holds(l *laid) bool {
	margin, ok := r.room(l)
	return !ok || margin >= 1
}

// below finds by halving the highest step below one that is short at which a panel or member is met; -1 where there is
// none.
func (r *rule) below(d dial, l *laid, short int) int {
	low, high := -1, short
	for high-low > 1 {
		mid := (low + high) / 2
		r.turnTo(d, mid)
		if r.holds(l) {
			low = mid
		} else {
			high = mid
		}
	}
	return low
}

// says tells a headroom in a sentence.
func (h *Headroom) says() string {
	now := measured(h.Now, h.Unit)
	switch {
	case !h.Shown:
		return "how far the " + h.Of + " may go is not shown: " + h.Why
	case len(h.Never) == h.Counts:
		return fmt.Sprintf("everything is short at every %s that was tried", h.Of)
	case len(h.Never) > 0:
		return fmt.Sprintf("%s short at every %s that was tried; of the rest, %s", isShort(h.Never), h.Of, h.rest(now))
	}
	return h.rest(now)
}

func isShort(all []string) string {
	if len(all) == 1 {
		return all[0] + " is"
	}
	return fmt.Sprintf("%s and %d more are", all[0], len(all)-1)
}

// rest says how far what can be met at all goes.
func (h *Headroom) rest(now string) string {
	switch {
	case h.Ends:
		return fmt.Sprintf("with %s today, nothing is short up to %s, the greatest %s tried", now, measured(h.Most, h.Unit), h.Of)
	case h.Most < h.Now:
		return fmt.Sprintf("at %s today %s is short; everything is met up to %s", now, h.Limits, measured(h.Most, h.Unit))
	}
	return fmt.Sprintf("with %s today, everything is met up to %s; above that %s is short first", now, measured(h.Most, h.Unit), h.Limits)
}

func measured(v float64, sign string) string { return unit.Plain(v) + " " + sign }
