package chart

import (
	"fmt"
	"math"

	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// Bound draws the least part of boats that run so long without a crack, by the hours of a trial, for each slope; with the
// hours of the promise.
func Bound(p *running.Promise, key string) Figure {
	s := Spec{
		ID: "fig-bound-" + slug(key), Title: "What is shown at 90 % confidence",
		X: Axis{Name: "Running hours", Unit: "h", From0: true}, Y: Axis{Name: "Boats without a crack, at least", Unit: "%", From0: true},
		Why: "Nothing is shown: no hours count.", Table: [][]string{{"Hours"}},
	}
	for i, c := range p.Curves {
		y := make([]float64, len(c.Part))
		for k := range c.Part {
			y[k] = 100 * c.Part[k]
		}
		s.Lines = append(s.Lines, Line{Name: "slope " + unit.Plain(c.Slope), X: c.Hours, Y: y, Class: []Class{LineA, LineB, LineC}[i%3]})
		s.Table[0] = append(s.Table[0], "Slope "+unit.Plain(c.Slope)+", %")
	}
	beyond := len(p.Curves) > 0 && p.Hours > lastOf(p.Curves[0].Hours)
	if len(p.Curves) > 0 {
		for k, h := range p.Curves[0].Hours {
			if k%5 != 0 {
				continue
			}
			places := 0
			if beyond {
				places = 1
			}
			row := []string{unit.Text(h, places)}
			for _, c := range p.Curves {
				if k < len(c.Part) {
					row = append(row, atLeast(c.Part[k]))
				}
			}
			s.Table = append(s.Table, row)
		}
	}
	if one, ok := p.At(1, 0.9); ok && beyond {
		s.Desc = fmt.Sprintf("The warranty, %s h, lies beyond the right edge, where every curve has come to nothing.", unit.Text(p.Hours, 0))
		s.Note = s.Desc + " "
	} else if ok {
		s.Dots = append(s.Dots, Dots{Name: "promise", X: []float64{p.Hours}, Y: []float64{100 * one.All}, Class: MeanA})
		s.Marks = append(s.Marks, Mark{X: p.Hours, Y: 100 * one.All, Text: "warranty, " + unit.Text(p.Hours, 0) + " h"})
		s.Desc = fmt.Sprintf("With slope 1 at least %s %% of boats run %s h without a crack.", atLeast(one.All), unit.Text(p.Hours, 0))
	}
	s.Note += "Every curve is a lower bound, its figures rounded down: the true part may lie anywhere above it. Slope 1: the chance of a crack does not change with age; above 1 it grows."
	return Plot(s)
}

// lastOf gives the last of some hours, nought where there are none.
func lastOf(hours []float64) float64 {
	if len(hours) == 0 {
		return 0
	}
	return hours[len(hours)-1]
}

// atLeast writes a part that is a lower bound as percent, rounded down, so that the picture promises no more than the
// sentence above it.
func atLeast(part float64) string { return unit.Text(math.Floor(1000*part+1e-9)/10, 1) }
