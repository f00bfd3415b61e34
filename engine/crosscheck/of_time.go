package crosscheck

import (
	"strconv"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// clock gives the minute of the day of 09:14:00 or 2026-03-03T09:14:00.
func clock(v record.Val[string]) (minute float64, ok bool) {
	text := v.V
	if _, after, found := strings.Cut(text, "T"); found {
		text = after
	}
	parts := strings.Split(text, ":")
	if !v.Set || len(parts) < 2 {
		return 0, false
	}
	h, errH := strconv.Atoi(parts[0])
	m, errM := strconv.Atoi(parts[1])
	s := 0.0
	if len(parts) > 2 {
		s, _ = strconv.ParseFloat(parts[2], 64)
	}
	return float64(h*60+m) + s/60, errH == nil && errM == nil
}

// shift is one weld with its hours on one day.
type shift struct {
	hull     string
	w        *record.Weld
	from, to float64 // minutes
}

// dayOf is a key for a day that is cheap to reckon.
func dayOf(d record.Date) int { return (d.Year*12+int(d.Month))*32 + d.Day }

// inTwoPlaces finds a welder who was welding at two joints at one time, on this hull or on this hull and another.
func inTwoPlaces(b *build) []told {
	here := b.shiftsHere()
	var all []told
	for i, s := range here {
		for _, o := range here[i+1:] {
			if s.w.Joint.V != o.w.Joint.V && overlap(s, o) {
				all = append(all, b.twice(s, o))
			}
		}
	}
	for _, o := range b.shiftsElsewhere(here) {
		for _, s := range here {
			if overlap(s, o) {
				all = append(all, b.twice(s, o))
			}
		}
	}
	return all
}

func overlap(s, o shift) bool {
	return s.w.Welder.V == o.w.Welder.V && dayOf(s.w.Date.V) == dayOf(o.w.Date.V) && s.from < o.to && o.from < s.to
}

func (b *build) twice(s, o shift) told {
	where := "joint " + o.w.Joint.V
	if o.hull != b.Hull.Number {
		where = "joint " + o.w.Joint.V + " of hull " + o.hull
	}
	return tell("weld "+s.w.ID, "find out who welded which, and correct the hours or the stamp", at(s.w.Begin.At, o.w.Begin.At),
		"on %s welder %s welded joint %s from %s to %s, and %s from %s to %s", s.w.Date.V, s.w.Welder.V, s.w.Joint.V, s.w.Begin.V, s.w.End.V, where, o.w.Begin.V, o.w.End.V)
}

func (b *build) shiftsHere() []shift {
	var all []shift
	for i := range b.Hull.Welds {
		if s, ok := shiftOf(b.Hull.Number, &b.Hull.Welds[i]); ok {
			all = append(all, s)
		}
	}
	return all
}

func shiftOf(hull string, w *record.Weld) (shift, bool) {
	from, okFrom := clock(w.Begin)
	to, okTo := clock(w.End)
	return shift{hull, w, from, to}, okFrom && okTo && w.Date.Set && w.Welder.Set && to > from
}

// shiftsElsewhere gives welds of other hulls on days on which something was welded here.
func (b *build) shiftsElsewhere(here []shift) []shift {
	if len(here) == 0 {
		return nil
	}
	days := map[int]bool{}
	first, last := dayOf(here[0].w.Date.V), dayOf(here[0].w.Date.V)
	for _, s := range here {
		d := dayOf(s.w.Date.V)
		days[d] = true
		first, last = min(first, d), max(last, d)
	}
	var all []shift
	for _, h := range b.yard.Hulls {
		if h == b.Hull {
			continue
		}
		for i := range h.Welds {
			if d := dayOf(h.Welds[i].Date.V); d < first || d > last || !days[d] {
				continue
			}
			if s, ok := shiftOf(h.Number, &h.Welds[i]); ok {
				all = append(all, s)
			}
		}
	}
	return all
}

// What one welder can lay in a day: hours of work, and the greatest part of them with the arc burning (practice).
const (
	hoursOfADay  = 8
	mostArcOfDay = 0.5
	usualSpeed   = 600.0 // mm/min, where no speed was read (practice)
)

// tooMuchInADay finds days on which one welder is said to have welded more than the arc could.
func tooMuchInADay(b *build) []told {
	type key struct {
		stamp string
		day   record.Date
	}
	arc, metres, first := map[key]float64{}, map[key]float64{}, map[key]*record.Weld{}
	var order []key
	for _, j := range b.Joints {
		for _, w := range j.Welds {
			if !w.Date.Set || !w.Welder.Set {
				continue
			}
			k := key{w.Welder.V, w.Date.V}
			if first[k] == nil {
				first[k] = w
				order = append(order, k)
			}
			arc[k] += arcHours(w, b.WeldLength(w))
			metres[k] += b.WeldLength(w)
		}
	}
	var all []told
	for _, k := range order {
		if most := hoursOfADay * mostArcOfDay; arc[k] > most {
			all = append(all, tell("weld "+first[k].ID, "correct the days, or name the second welder", at(first[k].Date.At),
				"on %s welder %s is on record with %s m; that is %s h of burning arc, and %s h is what a day holds", k.day, k.stamp, unit.Text(metres[k], 1), unit.Text(arc[k], 1), unit.Text(most, 1)))
		}
	}
	return all
}

// arcHours gives how long the arc burns for a weld: length times runs over speed.
func arcHours(w *record.Weld, metres float64) float64 {
	speed, runs := usualSpeed, 1.0
	if w.Speed.Set {
		speed = float64(w.Speed.V)
	}
	if w.Runs.Set {
		runs = float64(w.Runs.V)
	}
	return metres * 1000 * runs / speed / 60
}
