package chart

import (
	"fmt"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

const noForm = "The lines are not on record, or are not those of a hull, so there are no curves of form."

// FormMass draws displacement, water plane and wetted surface over the draught on an even keel.
func FormMass(r lines.Result) Figure {
	s := formSpec("fig-form-mass", "Displacement, water plane and wetted surface over draught", r)
	s.Y = Axis{Name: "Displacement", Unit: "kg", From0: true}
	s.Y2 = Axis{Name: "Surface", Unit: "m²", From0: true}
	s.form(r.Form, "displacement", LineA, false, func(f hydrostatics.Form) float64 { return f.Mass })
	s.form(r.Form, "wetted surface", LineB, true, func(f hydrostatics.Form) float64 { return f.Wetted })
	s.form(r.Form, "water plane", LineC, true, func(f hydrostatics.Form) float64 { return f.Plane })
	if r.HasAfloat && level(r.Afloat) {
		z := lines.Surface(r.Afloat.Rest.Attitude, r.Afloat.Rest.PlaneAt.X)
		s.Marks = []Mark{{X: z, Y: r.Afloat.Load.Mass, Text: "loaded, " + unit.Text(r.Afloat.Load.Mass, 0) + " kg"}}
		s.Note += " The ring is the boat loaded, at the height of the water over the centre of its water plane."
	}
	return Plot(s)
}

// FormCentres draws the centres of buoyancy and of the water plane and the transverse metacentre over the draught.
func FormCentres(r lines.Result) Figure {
	s := formSpec("fig-form-centres", "Centres and transverse metacentre over draught", r)
	s.Y = Axis{Name: "Forward of the transom", Unit: "m"}
	s.Y2 = Axis{Name: "Above the base line", Unit: "m", From0: true}
	s.form(r.Form, "centre of buoyancy, forward", LineA, false, func(f hydrostatics.Form) float64 { return f.LCB })
	s.form(r.Form, "centre of water plane, forward", LineB, false, func(f hydrostatics.Form) float64 { return f.LCF })
	s.form(r.Form, "metacentre, up", LineC, true, func(f hydrostatics.Form) float64 { return f.KB + f.BM })
	return Plot(s)
}

func formSpec(id, title string, r lines.Result) Spec {
	s := Spec{ID: id, Title: title, X: Axis{Name: "Draught above the base line, even keel", Unit: "m", From0: true}, Why: noForm, Table: [][]string{}}
	if n := len(r.Form); n > 0 {
		first, last := r.Form[0], r.Form[n-1]
		s.Desc = fmt.Sprintf("From %s m to %s m of draught the displacement goes from %s to %s kg.", unit.Text(first.Level, 2), unit.Text(last.Level, 2),
			unit.Text(first.Mass, 0), unit.Text(last.Mass, 0))
		s.Note = "In water of " + unit.Text(float64(lines.SeaWater), 0) + " kg/m³. The figures stand in the hydrostatic table."
	}
	return s
}

// form adds one quantity over the draught. A body wholly under water has no water plane: there the line stops.
func (s *Spec) form(all []hydrostatics.Form, name string, class Class, right bool, of func(hydrostatics.Form) float64) {
	l := Line{Name: name, Class: class, Right: right}
	for _, f := range all {
		if !f.Overflow {
			l.X, l.Y = append(l.X, f.Level), append(l.Y, of(f))
		}
	}
	if len(l.X) > 0 {
		s.Lines = append(s.Lines, l)
	}
}
