package chart

import (
	"fmt"
	"strings"
)

// Spec is an x-y figure: what is drawn, in the units that the axes name.
type Spec struct {
	ID    string // starts every identifier in the markup; letters, digits and hyphens
	Title string
	Desc  string // one or two sentences with the figures that matter; made from the axes where empty
	X     Axis
	Y     Axis // on the left
	Y2    Axis // on the right, for series with Right set
	Lines []Line
	Dots  []Dots
	Marks []Mark
	Bands []Band     // stretches along X that are shaded
	Least [2]float64 // least that the left and the right axis cover, so that a quiet quantity is not drawn as a wild one
	Note  string     // words for the caption, before those that the figure adds
	Why   string     // what to say where there is nothing to draw
	Table [][]string // instead of the table that the figure makes of its series
}

// Axis names an axis. It begins at nought where From0 is set, and where nought lies near.
type Axis struct {
	Name, Unit string
	From0      bool
}

// label is the name with its unit.
func (a Axis) label() string {
	if a.Unit == "" {
		return a.Name
	}
	return a.Name + ", " + a.Unit
}

// Class is how a series looks. Lines differ in dashes and dots in shape, so that they can be told apart without colour.
type Class string

// The looks of lines and dots.
const (
	LineA   Class = "g-a"    // full line
	LineB   Class = "g-b"    // dashed
	LineC   Class = "g-c"    // dotted
	LineD   Class = "g-d"    // dashed and dotted
	MeanA   Class = "g-pa"   // filled disc
	MeanB   Class = "g-pb"   // filled square
	MeanC   Class = "g-pc"   // filled triangle
	OneWay  Class = "g-open" // open disc in ink, for what is not quite a mean
	Raw     Class = "g-raw"  // small open disc in grey; square where the series is on the right axis
	LeftOut Class = "g-left" // small cross in grey
)

// Line is a curve through points in their order. A value that is no number makes a gap.
type Line struct {
	Name  string // stands at its end
	X, Y  []float64
	Class Class // LineA, LineB, LineC or LineD
	Right bool  // on the right axis
	Area  bool  // shaded down to nought, or to the foot of an axis that does not reach it
}

// Dots are single points.
type Dots struct {
	Name  string
	X, Y  []float64
	Class Class
	Right bool
}

// Mark is a point that the figure names.
type Mark struct {
	X, Y  float64
	Text  string
	Right bool
}

// singly is how many points of one series are drawn singly; beyond it a series is thinned, and the note says so.
const singly = 3000

// cleaned gives the spec with only what can be drawn, and says in words what had to go.
func (s Spec) cleaned() (Spec, []string) {
	var said []string
	lines, dots := s.Lines, s.Dots
	s.Lines, s.Dots = nil, nil
	for _, l := range lines {
		x, y, why := pairs(l.Name, l.X, l.Y)
		said = append(said, why...)
		if l.X, l.Y = x, y; len(x) > 0 {
			s.Lines = append(s.Lines, l)
		}
	}
	for _, d := range dots {
		x, y, why := pairs(d.Name, d.X, d.Y)
		said = append(said, why...)
		if d.X, d.Y = x, y; len(x) > 0 {
			s.Dots = append(s.Dots, d)
		}
	}
	marks := s.Marks
	s.Marks = nil
	for _, m := range marks {
		if usable(m.X) && usable(m.Y) {
			s.Marks = append(s.Marks, m)
		}
	}
	return s, said
}

// pairs checks one series: as many x as y, at least one pair of numbers, and not too many.
func pairs(name string, x, y []float64) (xs, ys []float64, said []string) {
	if len(x) != len(y) {
		return nil, nil, []string{fmt.Sprintf("%s is not drawn: it has %d values along the axis and %d up.", named(name), len(x), len(y))}
	}
	lost := 0
	for i := range x {
		if !usable(x[i]) || !usable(y[i]) {
			lost++
		}
	}
	if lost > 0 {
		said = append(said, fmt.Sprintf("%s: %d of %d points have no number and are left out.", named(name), lost, len(x)))
	}
	if lost == len(x) {
		return nil, nil, said
	}
	if len(x) > singly {
		said = append(said, fmt.Sprintf("%s: %d points, drawn thinned.", named(name), len(x)))
	}
	return x, y, said
}

func named(name string) string {
	if name == "" {
		return "One series"
	}
	return name
}

// has reports whether there is anything to draw.
func (s Spec) has() bool { return len(s.Lines)+len(s.Dots) > 0 }

// sentence joins what the caption says.
func sentence(parts ...string) string {
	kept := parts[:0:0]
	for _, p := range parts {
		if p != "" {
			kept = append(kept, p)
		}
	}
	return strings.Join(kept, " ")
}
