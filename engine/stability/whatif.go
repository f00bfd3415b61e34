package stability

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/method"
)

// whatIf asks the checks that move with load over a range of persons, of mass on the roof and of outboard mass, and finds
// by halving where each turns short. Limits are those of the boat as it is.
func (j *judge) whatIf() {
	ms := j.margins()
	full := j.find("loaded ready")
	if len(ms) == 0 || !j.crew.known {
		return
	}
	base := variant{load: full.Sides[0].load, sum: j.crew.sum, from: full.Loading.Afloat.Rest.Attitude}
	if w, ok := j.morePersons(full, base, ms); ok {
		j.out.WhatIf = append(j.out.WhatIf, w)
	}
	j.out.WhatIf = append(j.out.WhatIf, j.roofMass(base, ms))
	if w, ok := j.heavierEngine(base, ms); ok {
		j.out.WhatIf = append(j.out.WhatIf, w)
	}
}

// personsTable names the table over the number of persons.
const personsTable = "persons on board"

// MostPersons is the greatest number of persons with whom every check that was asked over the range is reached, and the rule
// that ends it. ok is false where nothing was asked, where no check turns within the range, or where one is short already
// with a single person.
func (r *Result) MostPersons() (n int, rule string, ok bool) {
	for _, w := range r.WhatIf {
		if w.Name != personsTable {
			continue
		}
		for k, t := range w.Turns {
			if t.Never || w.Rows[0].Margins[k] < 0 {
				continue
			}
			if !ok || int(t.At) < n {
				n, rule, ok = int(t.At), t.Rule, true
			}
		}
		for k := range w.Turns {
			if w.Rows[0].Margins[k] < 0 {
				return 0, w.Turns[k].Rule, false
			}
		}
	}
	return n, rule, ok
}

// variant is the loaded boat with something changed.
type variant struct {
	load hydrostatics.Load
	sum  float64               // of persons times distance off the centre line
	from hydrostatics.Attitude // of the boat as it is: a guess near the answer
}

func (v variant) with(kg float64, at hydrostatics.Vector) variant {
	m := v.load.Mass + kg
	c := v.load.Centre
	v.load.Centre = hydrostatics.Vector{X: (c.X*v.load.Mass + at.X*kg) / m, Y: (c.Y*v.load.Mass + at.Y*kg) / m, Z: (c.Z*v.load.Mass + at.Z*kg) / m}
	v.load.Mass = m
	return v
}

// margin is one check as a number: what is left before it is short.
type margin struct {
	rule, name, unit string
	left             func(v variant) float64
}

// margins lists the checks that are held in the loaded condition and have a number.
func (j *judge) margins() []margin {
	var out []margin
	for i := range j.out.Shown {
		s := &j.out.Shown[i]
		limit, ok := valueOf(s.Working, s.Symbol)
		if !ok || s.Check.Has == "" {
			continue
		}
		switch s.Check.Rule {
		case "offset-load":
			per, ok := valueOf(s.Working, "m_P")
			if full := j.find("loaded ready"); ok && s.Condition == full.Loading.ID {
				out = append(out, margin{s.Check.Rule, "heel with the crew to one side (ISO 12217)", "°", j.heelLeft(per, limit)})
			}
		case "tp14619-heel":
			out = append(out, margin{s.Check.Rule, "heel with everybody to one side (TP 14619)", "°", j.heelLeft(75, limit)})
		case "crowding-heel":
			out = append(out, margin{s.Check.Rule, "heel with everybody to one side (7°)", "°", j.heelLeft(75, limit)})
		case "downflooding-height":
			out = append(out, margin{s.Check.Rule, s.Check.Asks, "m", j.heightLeft(s.Check.Asks, limit)})
		}
	}
	return out
}

func valueOf(w *method.Working, symbol string) (float64, bool) {
	if w == nil {
		return 0, false
	}
	return w.Value(symbol)
}

// gone stands for a boat that sinks or does not come to rest.
const gone = -90.0

// heelLeft is what is left of a permitted heel with persons of the given mass at one side. The heel is found by halving
// between upright and 60 degrees, not from the curve: it costs a tenth of it.
func (j *judge) heelLeft(per, limit float64) func(v variant) float64 {
	return func(v variant) float64 {
		arm := per * v.sum / v.load.Mass
		at := func(heel float64, from hydrostatics.Attitude) (hydrostatics.Rest, float64, bool) {
			r, err := j.dry.Balance(v.load, heel, from, false)
			return r, r.Lever - arm*math.Cos(heel), err == nil
		}
		r, left, ok := at(0, v.from)
		if !ok {
			return gone
		}
		lo := 0.0
		for hi := 4 * degree; hi < 60*degree; hi += 4 * degree {
			next, l, ok := at(hi, r.Attitude)
			if !ok {
				return gone
			}
			if l >= 0 {
				return limit - j.cross(at, r, lo, left, hi, l)/degree
			}
			r, lo, left = next, hi, l
		}
		return gone
	}
}

// cross narrows the heel between lo and hi by false position.
func (j *judge) cross(at func(float64, hydrostatics.Attitude) (hydrostatics.Rest, float64, bool), r hydrostatics.Rest, lo, left, hi, right float64) float64 {
	for range 8 {
		mid := lo + left/(left-right)*(hi-lo)
		next, l, ok := at(mid, r.Attitude)
		if !ok || math.Abs(l) < 1e-6 {
			return mid
		}
		if l >= 0 {
			hi, right = mid, l
		} else {
			lo, left, r = mid, l, next
		}
	}
	return hi
}

// heightLeft is what is left of a downflooding height, upright.
func (j *judge) heightLeft(asks string, limit float64) func(v variant) float64 {
	var points []hydrostatics.Vector
	for _, w := range j.watched {
		if "water stays out upright: "+w.name == asks {
			points = w.points
		}
	}
	return func(v variant) float64 {
		v.load.Centre.Y = 0
		r, err := j.dry.Balance(v.load, 0, v.from, false)
		if err != nil || len(points) == 0 {
			return gone
		}
		return lowest(r.Attitude, points) - limit
	}
}

// fewer and more persons than there are, over which the table runs.
const fewer, more = 12, 6

// morePersons lets more people on board, where the others are.
func (j *judge) morePersons(full *Condition, base variant, ms []margin) (WhatIf, bool) {
	n := float64(full.Loading.Persons)
	var at hydrostatics.Vector
	for _, p := range full.Loading.Parts {
		if p.Name == "people" {
			at = p.Centre
		}
	}
	if n == 0 || at == (hydrostatics.Vector{}) {
		return WhatIf{}, false
	}
	change := func(k float64) variant {
		v := base.with((k-n)*full.Loading.Person, at)
		v.sum = j.toOneSide(k)
		return v
	}
	return table(personsTable, "", n, math.Max(1, n-fewer), n+more, 1, change, ms), true
}

// roofHeight is how far above the highest sheer mass on a roof is put, metres (practice).
const roofHeight = 1.2

func (j *judge) roofMass(base variant, ms []margin) WhatIf {
	high, x := math.Inf(-1), base.load.Centre.X
	for _, s := range j.lines.Stations {
		high = math.Max(high, s.At[len(s.At)-1].Z)
	}
	at := hydrostatics.Vector{X: x, Z: high + roofHeight}
	change := func(kg float64) variant { return base.with(kg, at) }
	return table("mass added 1.2 m above the highest sheer", "kg", 0, 0, 300, 50, change, ms)
}

// heavierEngine adds mass where the machinery of the breakdown is.
func (j *judge) heavierEngine(base variant, ms []margin) (WhatIf, bool) {
	total := 0.0
	var at hydrostatics.Vector
	for i := range j.weight.Items {
		it := &j.weight.Items[i]
		if it.Record.Load.V || it.Record.Group.V != "machinery" || !it.HasMass || !it.HasX || !it.HasZ || it.Record.X.V > 0 {
			continue
		}
		kg := float64(it.Mass)
		total += kg
		at.X += kg * float64(it.Record.X.V)
		at.Z += kg * float64(it.Record.Z.V)
	}
	if total <= 0 {
		return WhatIf{}, false
	}
	at.X, at.Z = at.X/total, at.Z/total
	change := func(kg float64) variant { return base.with(kg-total, at) }
	return table("mass of what hangs aft of the transom", "kg", total, total, total+300, 50, change, ms), true
}

// table asks every margin over the range and halves between the two values at which it turns.
func table(name, u string, base, from, to, step float64, change func(float64) variant, ms []margin) WhatIf {
	w := WhatIf{Name: name, Unit: u, Base: base}
	for v := from; v <= to+1e-9; v += step {
		row := WhatRow{Value: v}
		state := change(v)
		for _, m := range ms {
			row.Margins = append(row.Margins, m.left(state))
		}
		w.Rows = append(w.Rows, row)
	}
	for k, m := range ms {
		w.Turns = append(w.Turns, turn(w.Rows, k, m, step < 2, base, change))
	}
	return w
}

// turn finds the greatest value of the range at which a margin is not below nought; whole numbers for what comes whole.
func turn(rows []WhatRow, k int, m margin, whole bool, base float64, change func(float64) variant) Turn {
	t := Turn{Rule: m.rule, Name: m.name, Unit: m.unit, Never: true}
	for i, r := range rows {
		if r.Margins[k] >= 0 {
			continue
		}
		t.Never = false
		t.Now = r.Value <= base
		if i == 0 {
			t.At = r.Value
			return t
		}
		t.At = rows[i-1].Value
		if !whole {
			t.At = halfway(m, change, rows[i-1].Value, r.Value)
		}
		return t
	}
	return t
}

// halfway halves to a kilogram.
func halfway(m margin, change func(float64) variant, lo, hi float64) float64 {
	for hi-lo > 1 {
		mid := (lo + hi) / 2
		if m.left(change(mid)) >= 0 {
			lo = mid
		} else {
			hi = mid
		}
	}
	return math.Floor(lo)
}
