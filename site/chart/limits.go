package chart

import (
	"fmt"
	"strings"

	"hullfile/engine/limits"
	"hullfile/engine/unit"
)

// Limits draws speed over significant wave height at which each level is reached, the sea of the design category, and the
// speeds in the seas that the boat was run in.
func Limits(r limits.Result) Figure {
	s := Spec{
		ID: "fig-limits", Title: "How fast in which sea",
		X: Axis{Name: "Significant wave height", Unit: "m", From0: true}, Y: Axis{Name: "Speed", Unit: "kn", From0: true},
		Why: "No limit is reckoned: " + r.Why + ".",
	}
	most := seaDrawn(r)
	s.Table = [][]string{{"Speed, kn"}}
	for i := range r.Levels {
		l := &r.Levels[i]
		one := Line{Name: l.Short + ", " + unit.Text(l.G, 1) + " g", Class: []Class{LineA, LineB}[i%2]}
		for _, p := range l.Curve {
			if p.Height <= most {
				one.X, one.Y = append(one.X, p.Height), append(one.Y, p.Knots)
			}
		}
		s.Lines = append(s.Lines, one)
		s.Table[0] = append(s.Table[0], l.Short+", m")
	}
	s.Table[0] = append(s.Table[0], "In range")
	if len(r.Levels) > 0 {
		s.Table = append(s.Table, limitRows(r)...)
	}
	if c := r.Category; c.Most > 0 && c.Most <= most {
		s.Lines = append(s.Lines, Line{Name: "category " + c.Letter, X: []float64{c.Most, c.Most}, Y: []float64{0, r.To}, Class: LineC})
	}
	s.met(r, most)
	s.Note = "The boat stays under a curve as long as speed and sea lie to its left and below. Head seas; the curves begin where the boat planes."
	if outside, all := outsideOf(r); outside > 0 {
		s.Note = sentence(s.Note, fmt.Sprintf("%d of %d points lie outside the range of the formula; the table names them.", outside, all))
	}
	s.Desc = limitWords(r)
	return Plot(s)
}

// seaDrawn is how far the axis goes: to the sea of the category, or to a little beyond the greatest that was met.
func seaDrawn(r limits.Result) float64 {
	most := 1.0
	if r.Category.Most > 0 {
		most = max(0.5, min(r.Category.Most, 2))
	}
	for _, m := range r.Met {
		most = max(most, m.Height)
	}
	return most
}

func outsideOf(r limits.Result) (outside, all int) {
	for _, l := range r.Levels {
		for _, p := range l.Curve {
			all++
			if p.Outside {
				outside++
			}
		}
	}
	return outside, all
}

func limitRows(r limits.Result) [][]string {
	var rows [][]string
	for k, p := range r.Levels[0].Curve {
		row := []string{unit.Text(p.Knots, 0)}
		outside := false
		for _, l := range r.Levels {
			if k < len(l.Curve) {
				row = append(row, unit.Text(l.Curve[k].Height, 2))
				outside = outside || l.Curve[k].Outside
			}
		}
		rows = append(rows, append(row, yes(!outside)))
	}
	return rows
}

// met draws what the boat was run in: records of impacts as discs, everything else as open marks.
func (s *Spec) met(r limits.Result, most float64) {
	rides, others := Dots{Name: "impacts recorded", Class: MeanA}, Dots{Name: "run in", Class: Raw}
	for _, m := range r.Met {
		if m.Height > most {
			continue
		}
		if strings.HasPrefix(m.Subject, "ride ") {
			rides.X, rides.Y = append(rides.X, m.Height), append(rides.Y, m.Knots)
			if m.Measured > 0 {
				s.Marks = append(s.Marks, Mark{X: m.Height, Y: m.Knots, Text: "recorded: " + unit.Text(m.Measured, 1) + " g"})
			}
			continue
		}
		others.X, others.Y = append(others.X, m.Height), append(others.Y, m.Knots)
	}
	for _, d := range []Dots{others, rides} {
		if len(d.X) > 0 {
			s.Dots = append(s.Dots, d)
		}
	}
}

func limitWords(r limits.Result) string {
	var parts []string
	for _, l := range r.Levels {
		if n := len(l.Curve); n > 0 {
			a, b := l.Curve[0], l.Curve[n-1]
			parts = append(parts, fmt.Sprintf("%s g (%s) is reached in %s m at %s kn and in %s m at %s kn", unit.Text(l.G, 1), l.Name, unit.Text(a.Height, 2), unit.Text(a.Knots, 0), unit.Text(b.Height, 2), unit.Text(b.Knots, 0)))
		}
	}
	return strings.Join(parts, "; ")
}
