package chart

import (
	"fmt"
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

const inDegrees = 180 / math.Pi

// Lever draws the righting lever of one condition: both sides where they differ, the cockpit open to the water where that
// matters, and where something goes under. The area up to where the curve counts is shaded. key makes the identifiers of
// the figure, because two conditions may have one name.
func Lever(c stability.Condition, key string) Figure {
	id := "fig-lever-" + slug(key)
	s := leverSpec(id, "Righting lever, "+conditionTitle(c))
	end := reachOf(c)
	for i := range c.Sides {
		side := &c.Sides[i]
		class, name := LineA, ""
		if len(c.Sides) > 1 {
			name = "to " + side.Name
		}
		if i > 0 {
			class = LineB
		}
		s.lever(side.Curve, name, class, end)
	}
	if c.Open != nil {
		s.lever(c.Open.Curve, "cockpit flooded", LineC, end)
	}
	if len(c.Sides) > 0 {
		side := &c.Sides[0]
		s.shade(side)
		s.marksOf(side)
		s.Desc = leverWords(side)
	}
	s.Note = "Trim is free, the mass is constant, liquids move. The shaded area ends where water comes in, or where the lever is gone. The table goes to 180°."
	s.Table = leverTable(c)
	return Plot(s)
}

// reachOf is the heel to which the curves of a condition are drawn: a little beyond where the last lever is gone.
func reachOf(c stability.Condition) float64 {
	const beyond = 12
	end := 60.0
	for i := range c.Sides {
		v, ok := c.Sides[i].Curve.Vanishes()
		if !ok {
			return 180
		}
		end = max(end, v*inDegrees+beyond)
	}
	return end
}

// Levers draws the righting lever of all conditions together, to starboard.
func Levers(all []stability.Condition) Figure {
	s := leverSpec("fig-levers", "Righting lever in every condition")
	classes := [...]Class{LineA, LineB, LineC, LineD}
	var drawn []string
	for i, c := range all {
		if len(c.Sides) == 0 {
			continue
		}
		s.lever(c.Sides[0].Curve, conditionTitle(c), classes[i%len(classes)], math.Inf(1))
		drawn = append(drawn, conditionTitle(c))
	}
	if len(drawn) > 0 {
		s.Desc = fmt.Sprintf("%d conditions: %s.", len(drawn), sentence(drawn...))
	}
	s.Note = "Each curve ends where water comes in, or at 180°."
	s.Table = [][]string{}
	for i := range s.Lines {
		s.Lines[i] = upTo(s.Lines[i], limitOf(all, i))
	}
	return Plot(s)
}

func limitOf(all []stability.Condition, n int) float64 {
	for _, c := range all {
		if len(c.Sides) == 0 {
			continue
		}
		if n == 0 {
			return c.Sides[0].Limit
		}
		n--
	}
	return 180
}

// upTo cuts a curve off at a heel.
func upTo(l Line, most float64) Line {
	for i, x := range l.X {
		if x > most+1e-9 && i >= 2 {
			l.X, l.Y = l.X[:i], l.Y[:i]
			return l
		}
	}
	return l
}

func leverSpec(id, title string) Spec {
	return Spec{ID: id, Title: title, X: Axis{Name: "Heel", Unit: "°", From0: true}, Y: Axis{Name: "Righting lever", Unit: "m", From0: true},
		Why: "The boat was not floated in this condition, so there is no righting lever."}
}

func conditionTitle(c stability.Condition) string {
	if c.Loading == nil {
		return "a condition without a record"
	}
	return c.Loading.Title
}

// lever adds a curve up to a heel in degrees.
func (s *Spec) lever(c hydrostatics.Curve, name string, class Class, most float64) {
	l := Line{Name: name, Class: class}
	for _, p := range c.Points {
		if heel := math.Abs(p.Heel) * inDegrees; heel <= most+1e-9 {
			l.X, l.Y = append(l.X, heel), append(l.Y, p.Lever)
		}
	}
	if len(l.X) > 0 {
		s.Lines = append(s.Lines, l)
	}
}

// shade adds the area under the curve to where it counts.
func (s *Spec) shade(side *stability.Side) {
	end := side.Limit
	if v, ok := side.Curve.Vanishes(); ok {
		end = math.Min(end, v*inDegrees)
	}
	l := Line{Class: LineA, Area: true}
	for _, p := range side.Curve.Points {
		if heel := p.Heel * inDegrees; heel >= 0 && heel < end {
			l.X, l.Y = append(l.X, heel), append(l.Y, p.Lever)
		}
	}
	if y, ok := side.Curve.At(end / inDegrees); ok {
		l.X, l.Y = append(l.X, end), append(l.Y, y)
	}
	if len(l.X) > 1 {
		s.Lines = append([]Line{l}, s.Lines...)
	}
}

// marksOf names the greatest lever, where it is gone, and where things go under.
func (s *Spec) marksOf(side *stability.Side) {
	add := func(heel float64, words string) {
		if y, ok := side.Curve.At(heel / inDegrees); ok {
			s.Marks = append(s.Marks, Mark{X: heel, Y: y, Text: words + " " + unit.Text(heel, 0) + "°"})
		}
	}
	if side.Greatest > 0 {
		add(side.GreatestA, "greatest "+unit.Text(side.Greatest, 3)+" m at")
	}
	if v, ok := side.Curve.Vanishes(); ok {
		add(v*inDegrees, "gone at")
	}
	if !side.Flooding.Never {
		add(side.Flooding.Heel, side.Flooding.Name+" under at")
	}
	for _, u := range side.Unders {
		if !u.Never && (side.Flooding.Never || math.Abs(u.Heel-side.Flooding.Heel) > 0.5) && u.Heel > 1 && u.Heel < 90 {
			add(u.Heel, u.Name+" under at")
		}
	}
}

func leverWords(side *stability.Side) string {
	words := fmt.Sprintf("Greatest lever %s m at %s°.", unit.Text(side.Greatest, 3), unit.Text(side.GreatestA, 0))
	if !side.Flooding.Never {
		words += fmt.Sprintf(" Water comes in at %s° (%s).", unit.Text(side.Flooding.Heel, 1), side.Flooding.Name)
	}
	if v, ok := side.Curve.Vanishes(); ok {
		words += fmt.Sprintf(" The lever is gone at %s°.", unit.Text(v*inDegrees, 1))
	}
	return words
}

// leverTable gives the levers every five degrees, to where the curve ends.
func leverTable(c stability.Condition) [][]string {
	head := []string{"Heel, °"}
	var curves []hydrostatics.Curve
	for i := range c.Sides {
		head = append(head, "lever to "+c.Sides[i].Name+", m", "trim, bow up, °")
		curves = append(curves, c.Sides[i].Curve)
	}
	if c.Open != nil {
		head = append(head, "lever, cockpit flooded, m", "trim, bow up, °")
		curves = append(curves, c.Open.Curve)
	}
	table := [][]string{head}
	for heel := 0.0; heel <= 180; heel += 5 {
		row := []string{unit.Text(heel, 0)}
		for _, curve := range curves {
			lever, ok := curve.At(heel / inDegrees)
			trim, near := trimAt(curve, heel/inDegrees)
			row = append(row, figure(lever, ok, 3), figure(trim*inDegrees, ok && near, 2))
		}
		table = append(table, row)
	}
	return cut(table)
}

// trimAt is the trim of the point of a curve nearest to a heel, if that is within half a degree.
func trimAt(c hydrostatics.Curve, heel float64) (trim float64, ok bool) {
	nearest := 0.51 / inDegrees
	for _, p := range c.Points {
		if d := math.Abs(math.Abs(p.Heel) - heel); d < nearest {
			nearest, trim, ok = d, p.Trim, true
		}
	}
	return trim, ok
}
