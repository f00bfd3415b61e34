// Package hydrostatics floats a body: what of it is under water in a given attitude, where it comes to rest, and by how
// much it rights itself. It is geometry alone; what the body is made of and what it must satisfy is said elsewhere.
//
// Axes: x forward, y to starboard, z up; metres, any origin that the sections share. Masses are in kilograms and the
// density of the water in kilograms per cubic metre.
//
//   - Question: how does a body float?
//   - In: sections of one or more bodies, an attitude or a mass and centre, the density of the water.
//   - Out: volume, centres, waterplane, righting levers, attitude at rest; an error where nothing balances.
//   - Source: geometry: pressure integrated exactly over flat faces; the tests hold box, wedge and published forms.
package hydrostatics

import (
	"fmt"
	"math"
)

// Point is a point of a section: y to starboard and z up, metres.
type Point struct{ Y, Z float64 }

// Vector is a point or direction in the body, metres.
type Vector struct{ X, Y, Z float64 }

// Dot is the scalar product.
func (v Vector) Dot(w Vector) float64 {
	return float64(v.X*w.X) + float64(v.Y*w.Y) + float64(v.Z*w.Z)
}

// Less is v - w.
func (v Vector) Less(w Vector) Vector { return Vector{v.X - w.X, v.Y - w.Y, v.Z - w.Z} }

// Section is the closed outline of the watertight body at one x. The points go round from the keel up the starboard
// side, over the top and down the port side. Neighbouring sections have the same number of points in the same order:
// between them the surface is ruled by straight lines from point to point.
type Section struct {
	X       float64
	Outline []Point
}

// Body is a watertight body made of sections, prepared for integration.
type Body struct {
	sections []Section // given and interpolated, in order of x
	weights  []float64 // of Simpson's first rule over each interval
	points   int
	first    int // number of given sections
	whole    float64
}

// NewBody prepares a body. Every interval between given sections is cut into an even number of parts by interpolation,
// so that the area of a section, which is quadratic between given sections where the water cuts no corner, integrates
// exactly by Simpson's first rule. parts is that number; two is enough for hard-chine hulls with some ten sections or more.
// Errors: fewer than two sections, sections not in order of x, different numbers of points, fewer than three points.
func NewBody(sections []Section, parts int) (*Body, error) {
	if err := fit(sections); err != nil {
		return nil, err
	}
	if parts < 2 {
		parts = 2
	}
	parts += parts % 2
	b := &Body{points: len(sections[0].Outline), first: len(sections)}
	for i := 0; i+1 < len(sections); i++ {
		b.interval(sections[i], sections[i+1], parts)
	}
	b.whole = b.sum()
	return b, nil
}

func fit(sections []Section) error {
	if len(sections) < 2 {
		return fmt.Errorf("a body needs at least two sections, %d given", len(sections))
	}
	n := len(sections[0].Outline)
	if n < 3 {
		return fmt.Errorf("section at x %.3f m has %d points, at least 3 are needed", sections[0].X, n)
	}
	for i, s := range sections {
		if len(s.Outline) != n {
			return fmt.Errorf("section at x %.3f m has %d points, the first has %d", s.X, len(s.Outline), n)
		}
		if i > 0 && !(s.X > sections[i-1].X) {
			return fmt.Errorf("section at x %.3f m does not lie forward of the one before, at %.3f m", s.X, sections[i-1].X)
		}
		for _, p := range s.Outline {
			if v := p.Y + p.Z + s.X; math.IsNaN(v) || math.IsInf(v, 0) {
				return fmt.Errorf("section at x %.3f m has a point that is no number", s.X)
			}
		}
	}
	return nil
}

// interval appends the parts between two sections. The shared section is held twice, once with the weight of either
// side: that keeps the rule simple and costs one section in parts.
func (b *Body) interval(from, to Section, parts int) {
	h := (to.X - from.X) / float64(parts)
	for k := 0; k <= parts; k++ {
		w := 2.0
		switch {
		case k == 0 || k == parts:
			w = 1
		case k%2 == 1:
			w = 4
		}
		b.sections = append(b.sections, between(from, to, float64(k)/float64(parts)))
		b.weights = append(b.weights, w*h/3)
	}
	b.merge()
}

// merge joins the end of one interval with the start of the next, which is the same section.
func (b *Body) merge() {
	for i := len(b.sections) - 1; i > 0; i-- {
		if b.sections[i].X == b.sections[i-1].X {
			b.weights[i-1] += b.weights[i]
			b.sections = append(b.sections[:i], b.sections[i+1:]...)
			b.weights = append(b.weights[:i], b.weights[i+1:]...)
			return
		}
	}
}

func between(from, to Section, t float64) Section {
	switch t {
	case 0:
		return from
	case 1:
		return to
	}
	s := Section{X: from.X + t*(to.X-from.X), Outline: make([]Point, len(from.Outline))}
	for i, p := range from.Outline {
		q := to.Outline[i]
		s.Outline[i] = Point{p.Y + t*(q.Y-p.Y), p.Z + t*(q.Z-p.Z)}
	}
	return s
}

// Ends gives the least and greatest x of the body.
func (b *Body) Ends() (aft, fore float64) {
	return b.sections[0].X, b.sections[len(b.sections)-1].X
}

// Depth gives the least and greatest z of the body.
func (b *Body) Depth() (low, high float64) {
	low, high = math.Inf(1), math.Inf(-1)
	for _, s := range b.sections {
		for _, p := range s.Outline {
			low, high = math.Min(low, p.Z), math.Max(high, p.Z)
		}
	}
	return low, high
}
