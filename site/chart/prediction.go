package chart

import (
	"fmt"

	"hullfile/engine/planing"
	"hullfile/engine/unit"
)

// Words that explain the curves of a prediction.
const explainOutside = "Dashed: outside the range of the prediction."

// pieces draws one quantity over speed: full inside the range, dashed outside. The pieces share their end points.
func (s *Spec) pieces(c *planing.Case, name string, of func(*planing.Point) (float64, bool)) {
	var x, y []float64
	inside := false
	end := func() {
		if len(x) > 1 {
			s.Lines = append(s.Lines, Line{X: x, Y: y, Class: map[bool]Class{true: LineA, false: LineB}[inside]})
		}
	}
	for i := range c.Points {
		p := &c.Points[i]
		v, ok := of(p)
		switch {
		case !ok:
			end()
			x, y = nil, nil
			continue
		case len(x) > 0 && p.Inside() != inside:
			lastX, lastY := x[len(x)-1], y[len(y)-1]
			end()
			x, y = []float64{lastX}, []float64{lastY}
		}
		inside = p.Inside()
		x, y = append(x, p.Knots), append(y, v)
	}
	end()
	for i := len(s.Lines) - 1; i >= 0; i-- {
		if s.Lines[i].Class == LineA {
			s.Lines[i].Name = name
			return
		}
	}
}

// predicted begins a figure over speed.
func predicted(c *planing.Case, id, title string, y Axis, key string) Spec {
	return Spec{ID: id + "-" + slug(key), Title: title, X: Axis{Name: "Speed", Unit: "kn"}, Y: y, Note: explainOutside,
		Why: "No running attitude is predicted at any speed."}
}

// Resistance draws the drag of the bare hull and in all over speed.
func Resistance(c *planing.Case, key string) Figure {
	s := predicted(c, "fig-resistance", "Resistance over speed", Axis{Name: "Resistance", Unit: "kN", From0: true}, key)
	s.pieces(c, "in all", func(p *planing.Point) (float64, bool) { return p.Drag / 1000, true })
	var x, y []float64
	for i := range c.Points {
		x, y = append(x, c.Points[i].Knots), append(y, c.Points[i].Run.Drag/1000)
	}
	s.Lines = append(s.Lines, Line{Name: "bare hull", X: x, Y: y, Class: LineC})
	s.Table = [][]string{{"Speed, kn", "Bare hull, kN", "Spray, kN", "In all, kN", "In range"}}
	for i := range c.Points {
		p := &c.Points[i]
		s.Table = append(s.Table, []string{unit.Text(p.Knots, 0), unit.Text(p.Run.Drag/1000, 2), unit.Text(p.Spray/1000, 2), unit.Text(p.Drag/1000, 2), yes(p.Inside())})
	}
	return Plot(s)
}

// EnginePower draws the band of engine power over speed, with the installed power and the fastest mean of the trial.
func EnginePower(c *planing.Case, key string) Figure {
	s := predicted(c, "fig-engine-power", "Engine power over speed", Axis{Name: "Engine power", Unit: "kW", From0: true}, key)
	s.pieces(c, "efficiency 0.5", func(p *planing.Point) (float64, bool) { return p.Most, true })
	n := len(s.Lines)
	s.pieces(c, "efficiency 0.6", func(p *planing.Point) (float64, bool) { return p.Least, true })
	if c.Installed > 0 && len(s.Lines) > n {
		x := []float64{c.Points[0].Knots, c.Points[len(c.Points)-1].Knots}
		s.Lines = append(s.Lines, Line{Name: "installed", X: x, Y: []float64{c.Installed, c.Installed}, Class: LineC})
	}
	if p := c.FastestMeasured(); p != nil && c.Installed > 0 {
		s.Dots = append(s.Dots, Dots{Name: "fastest mean on trial", X: []float64{p.Knots}, Y: []float64{c.Installed}, Class: MeanA})
		s.Marks = append(s.Marks, Mark{X: p.Knots, Y: c.Installed, Text: "trial: " + unit.Text(p.Knots, 1) + " kn"})
	}
	s.Table = [][]string{{"Speed, kn", "Effective, kW", "At 0.6, kW", "At 0.5, kW", "In range"}}
	for i := range c.Points {
		p := &c.Points[i]
		s.Table = append(s.Table, []string{unit.Text(p.Knots, 0), unit.Text(p.Effective, 1), unit.Text(p.Least, 0), unit.Text(p.Most, 0), yes(p.Inside())})
	}
	return Plot(s)
}

// TrimSpeed draws predicted trim and porpoising limit over speed, with the trims measured.
func TrimSpeed(c *planing.Case, key string) Figure {
	s := predicted(c, "fig-trim-speed", "Trim over speed, predicted and measured", Axis{Name: "Trim (bow up)", Unit: "°", From0: true}, key)
	s.pieces(c, "predicted", func(p *planing.Point) (float64, bool) { return p.Run.Trim, true })
	limit := Line{Name: "porpoising", Class: LineC}
	s.Table = [][]string{{"Speed, kn", "Predicted, °", "Short form, °", "Porpoising limit, °", "Second opinion, °", "In range"}}
	for i := range c.Points {
		p := &c.Points[i]
		if p.HasCritical {
			limit.X, limit.Y = append(limit.X, p.Knots), append(limit.Y, p.Critical)
		}
		s.Table = append(s.Table, []string{unit.Text(p.Knots, 0), unit.Text(p.Run.Trim, 1), figure(p.Other.Trim, p.HasOther, 1), figure(p.Critical, p.HasCritical, 1), unit.Text(p.Second, 1), yes(p.Inside())})
	}
	if len(limit.X) > 1 {
		s.Lines = append(s.Lines, limit)
	}
	dots := Dots{Name: "measured", Class: MeanA}
	for _, set := range c.Settings {
		if set.HasTrim && set.Point != nil {
			dots.X, dots.Y = append(dots.X, set.Knots), append(dots.Y, set.Trim)
		}
	}
	if len(dots.X) > 0 {
		s.Dots = append(s.Dots, dots)
		s.Note = sentence("Discs: means measured on trial.", s.Note)
	}
	s.Note = sentence(s.Note, "The porpoising limit is drawn only where the chart has one.")
	return Plot(s)
}

// WettedLength draws the wetted lengths of keel and chine over speed.
func WettedLength(c *planing.Case, key string) Figure {
	s := predicted(c, "fig-wetted", "Wetted length over speed", Axis{Name: "Wetted length", Unit: "m", From0: true}, key)
	s.pieces(c, "keel", func(p *planing.Point) (float64, bool) { return p.Run.Keel, true })
	s.pieces(c, "chine", func(p *planing.Point) (float64, bool) { return max(0, p.Run.Chine), true })
	x := []float64{}
	for i := range c.Points {
		x = append(x, c.Points[i].Knots)
	}
	if len(x) > 1 {
		s.Lines = append(s.Lines, Line{Name: "waterline at rest", X: []float64{x[0], x[len(x)-1]}, Y: []float64{c.Waterline, c.Waterline}, Class: LineC})
	}
	s.Table = [][]string{{"Speed, kn", "Keel, m", "Chine, m", "Mean over beam", "In range"}}
	for i := range c.Points {
		p := &c.Points[i]
		s.Table = append(s.Table, []string{unit.Text(p.Knots, 0), unit.Text(p.Run.Keel, 2), unit.Text(p.Run.Chine, 2), unit.Text(p.Run.Wetted, 2), yes(p.Inside())})
	}
	s.Desc = fmt.Sprintf("Wetted length of keel and chine from %s to %s kn.", unit.Text(first(x), 0), unit.Text(last(x), 0))
	return Plot(s)
}

func yes(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

func first(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	return x[0]
}

func last(x []float64) float64 {
	if len(x) == 0 {
		return 0
	}
	return x[len(x)-1]
}
