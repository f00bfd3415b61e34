package section

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/unit"
)

// faults lists all that makes a shape impossible, dimensions in the order of Shape.
func (s Shape) faults() Faults {
	asked, known := dimensions[s.Kind]
	if !known {
		return Faults{{"kind", fmt.Sprintf("%q is not known; the kinds are %s", s.Kind, kindList())}}
	}
	var faults Faults
	for _, d := range s.given() {
		switch {
		case strings.Contains(asked.must, d.mark):
			faults = faults.positive(d.name, d.value)
		case strings.Contains(asked.may, d.mark):
			faults = faults.notBelow(d.name, d.value)
		case d.value != 0:
			faults = append(faults, Fault{d.name, fmt.Sprintf("%v mm is given, but a %s has none", d.value, s.Kind)})
		}
	}
	if s.Kind != BuiltUp && len(s.Pieces) > 0 {
		faults = append(faults, Fault{"pieces", fmt.Sprintf("%d given, but a %s has none", len(s.Pieces), s.Kind)})
	}
	if len(faults) > 0 {
		return faults
	}
	return s.together()
}

// positive adds a fault where a dimension is not a number above nought.
func (fs Faults) positive(name string, v unit.MM) Faults {
	if v > 0 && !math.IsInf(float64(v), 1) {
		return fs
	}
	return append(fs, Fault{name, fmt.Sprintf("%v mm, must be above nought", v)})
}

// notBelow adds a fault where a dimension is below nought or no number.
func (fs Faults) notBelow(name string, v unit.MM) Faults {
	if v >= 0 && !math.IsInf(float64(v), 1) {
		return fs
	}
	return append(fs, Fault{name, fmt.Sprintf("%v mm, must not be below nought", v)})
}

// asked says by marks which dimensions a kind must have and which it may have.
type asked struct{ must, may string }

var dimensions = map[Kind]asked{
	FlatBar: {"hw", ""},
	Angle:   {"hwfF", ""},
	Tee:     {"hwfF", ""},
	Bulb:    {"hw", "ac"},
	TopHat:  {"hwfF", "gGb"},
	Box:     {"hwfF", ""},
	Pipe:    {"dt", ""},
	BuiltUp: {"", ""},
}

// dimension is one of a shape with its mark and name.
type dimension struct {
	mark, name string
	value      unit.MM
}

func (s Shape) given() []dimension {
	return []dimension{
		{"h", "height", s.Height}, {"w", "web thickness", s.Web}, {"f", "flange breadth", s.Flange}, {"F", "flange thickness", s.FlangeThickness},
		{"g", "foot breadth", s.Foot}, {"G", "foot thickness", s.FootThickness}, {"b", "base breadth", s.Base},
		{"d", "diameter", s.Diameter}, {"t", "wall thickness", s.Wall}, {"a", "area", unit.MM(s.Area)}, {"c", "centroid", s.Centroid},
	}
}

func kindList() string {
	words := make([]string, 0, 8)
	for _, k := range Kinds() {
		words = append(words, string(k))
	}
	return strings.Join(words, ", ")
}
