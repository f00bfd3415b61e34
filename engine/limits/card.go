package limits

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// heights are the seas of the card, metres.
var heights = [...]float64{0.1, 0.2, 0.3, 0.5, 0.75, 1, 1.25, 1.5, 2, 2.5, 3, 4}

// card gives for each sea up to that of the category the greatest whole speed at which no level is passed there or at any
// slower planing speed; none passes the speed for which the structure is reckoned, whatever the sea. Once every level is reached at the
// slowest planing speed, harder seas are left off.
func card(r *Result, reckoned record.Val[unit.Knot]) []CardRow {
	var out []CardRow
	for _, h := range heights {
		if r.Category.Most > 0 && h > r.Category.Most {
			break
		}
		row := CardRow{Height: h}
		slow := true
		for i := range r.Levels {
			l := cardLimit(r.Levels[i].Curve, h)
			if most := math.Floor(float64(reckoned.V)); reckoned.Set && l.Knots > most {
				l.Knots, l.Any = most, true
			}
			slow = slow && l.Slow
			row.Limits = append(row.Limits, l)
		}
		out = append(out, row)
		if slow {
			break
		}
	}
	return out
}

func cardLimit(curve []Point, height float64) CardLimit {
	last := math.NaN()
	for _, p := range curve {
		if p.Height < height {
			if math.IsNaN(last) {
				return CardLimit{Slow: true}
			}
			return CardLimit{Knots: last}
		}
		last = p.Knots
	}
	if math.IsNaN(last) {
		return CardLimit{Slow: true}
	}
	return CardLimit{Knots: last, Any: true}
}

// categoryOf is the sea of the design category by annex I of directive 2013/53/EU, part A.1 (wave heights as quoted in
// several secondary texts): A above 4 m, B up to 4 m, C up to 2 m, D up to 0.3 m with single waves of 0.5 m.
func categoryOf(h *record.Hull) Category {
	c := Category{Letter: h.Boat.Category.V}
	switch c.Letter {
	case "A":
		c.Says = "wind that may exceed force 8 and waves that may exceed 4 m, abnormal conditions left out"
	case "B":
		c.Most, c.Says = 4, "wind up to force 8 and waves up to 4 m"
	case "C":
		c.Most, c.Says = 2, "wind up to force 6 and waves up to 2 m"
	case "D":
		c.Most, c.Says = 0.3, "wind up to force 4 and waves up to 0.3 m, single ones of 0.5 m"
	}
	return c
}

// met gathers the seas that the boat was really run in: acceleration records, trial days, and the log of hours.
func (in *Input) met(r *Result) {
	add := func(subject string, knots, height, measured float64) {
		m := Met{Subject: subject, Knots: knots, Height: height, Measured: measured}
		m.Reckoned, m.Outside, _ = r.Model.Tenth(knots, height)
		if knots < r.From {
			m.Reckoned = 0
		}
		r.Met = append(r.Met, m)
	}
	for i := range in.Rides {
		one := &in.Rides[i]
		add("ride "+one.Record.ID, float64(one.Record.Speed.V), float64(one.Record.Wave.V), one.Tenth.G)
	}
	for i := range in.Trials {
		t := &in.Trials[i]
		if wave, ok := t.Record.Wave.Get(); ok && t.Top >= 0 {
			add("trial "+t.Record.ID, t.Settings[t.Top].Speed.Value, float64(wave), 0)
		}
	}
	for i := range in.Hull.Hours {
		row := &in.Hull.Hours[i]
		if row.Wave.Set && row.Speed.Set {
			add("hours "+row.ID, float64(row.Speed.V), float64(row.Wave.V), float64(row.Tenth.V))
		}
	}
}
