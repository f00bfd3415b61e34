package crosscheck

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// otherUnit finds figures that are possible and look as if they were in another unit, or as if a point had moved: a plate of
// 40 mm on a boat of 4 mm, a seam in millimetres, a temperature in degrees Fahrenheit, readings in each other's column.
func otherUnit(b *build) []told {
	var all []told
	say := func(subject, what string, at finding.Place, likely string) {
		all = append(all, tell(subject, "look at the sheet that the figure came from", []finding.Place{at}, "%s: %s; %s", subject, what, likely))
	}
	for _, j := range b.Joints {
		for _, t := range []record.Val[unit.MM]{j.Record.Thickness, j.Record.OtherThick} {
			if t.Set && t.V >= 25 {
				say("joint "+j.Record.ID, "plate of "+unit.Plain(t.V)+" mm", t.At, "as a tenth, "+unit.Plain(t.V/10)+" mm, it would be usual")
			}
		}
		plates := b.Plates(j)
		if a := j.Record.Throat; a.Set && len(plates) > 0 && float64(a.V) > 2*plates[0].MM {
			say("joint "+j.Record.ID, "throat of "+unit.Plain(a.V)+" mm on plate of "+plates[0].Text+" mm", a.At, "the point may have moved")
		}
	}
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		if w.Ambient.Set && w.Ambient.V >= 45 {
			say("weld "+w.ID, "shop at "+unit.Plain(w.Ambient.V)+" °C", w.Ambient.At, "as degrees Fahrenheit it would be "+unit.Text((float64(w.Ambient.V)-32)/1.8, 0)+" °C")
		}
		if w.Volts.Set && w.Amperes.Set && float64(w.Volts.V) > float64(w.Amperes.V) {
			say("weld "+w.ID, unit.Plain(w.Volts.V)+" V and "+unit.Plain(w.Amperes.V)+" A", w.Volts.At, "the two columns have probably changed places")
		}
		if w.Speed.Set && w.Speed.V < 30 {
			say("weld "+w.ID, "travel speed of "+unit.Plain(w.Speed.V)+" mm/min", w.Speed.At, "as inches or centimetres a minute it would be usual")
		}
	}
	for i := range b.Hull.LeakTests {
		t := &b.Hull.LeakTests[i]
		if t.Method.V == "air and soap" && t.Highest.Set && t.Highest.V > 100 {
			say("leak test "+t.ID, "air at "+unit.Plain(t.Highest.V)+" kPa", t.Highest.At, "as millibars it would be "+unit.Plain(float64(t.Highest.V)/10)+" kPa")
		}
	}
	return all
}
