package chart

import (
	"fmt"
	"math"

	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// Shifts draws an inclining test: the tangent of the heel over the moment of each shift, with the line through them.
func Shifts(t stability.Inclining) Figure {
	key := ""
	if t.Record != nil {
		key = t.Record.ID
	}
	s := Spec{ID: "fig-shifts-" + slug(key), Title: "Inclining test " + key, X: Axis{Name: "Moment, to starboard", Unit: "kg·m"}, Y: Axis{Name: "Tangent of the heel, starboard down"},
		Why: "No shift with a heel is on record.", Table: [][]string{}}
	d := Dots{Name: "shifts", Class: MeanA}
	for _, one := range t.Shifts {
		if one.Known {
			d.X, d.Y = append(d.X, one.Moment), append(d.Y, one.Tangent)
		}
	}
	if len(d.X) == 0 {
		return Plot(s)
	}
	s.Dots = []Dots{d}
	if t.Line.OK && t.Line.Slope != 0 {
		lo, hi := math.Inf(1), math.Inf(-1)
		for _, x := range d.X {
			lo, hi = math.Min(lo, x), math.Max(hi, x)
		}
		at := func(x float64) float64 { return t.Line.Start + x/t.Line.Slope }
		s.Lines = []Line{{Name: "least squares", Class: LineA, X: []float64{lo, hi}, Y: []float64{at(lo), at(hi)}}}
		s.Note = "Line by least squares through the shifts."
	}
	s.Desc = fmt.Sprintf("%d shifts.", len(d.X))
	if t.GM > 0 {
		s.Desc += fmt.Sprintf(" Metacentric height %s m.", unit.Text(t.GM, 3))
	}
	return Plot(s)
}
