package section

import (
	"math"

	"hullfile/engine/unit"
)

// hat gives the parts of a top hat: two webs, which may lean, the crown on them, and feet outside them.
// A web of thickness t that leans by s over its height h is a parallelogram of level breadth t √(h² + s²) / h.
func (s Shape) hat() []Part {
	rise := float64(s.Height - s.FlangeThickness)
	base, crown := float64(s.base()), float64(s.Flange)
	lean := (crown - base) / 2
	level := float64(s.Web) * math.Hypot(rise, lean) / rise
	middle := (base + crown) / 4
	right := slab("right web", Web, middle-level/2, rise/2, level, rise)
	right.Lean = lean
	left := right
	left.Name, left.Y, left.Lean = "left web", -right.Y, -lean
	parts := []Part{right, left, slab("crown", Flange, 0, float64(s.Height-s.FlangeThickness/2), crown, float64(s.FlangeThickness))}
	if s.Foot == 0 {
		return parts
	}
	return append(parts, s.footing("right foot", 1), s.footing("left foot", -1))
}

// footing is one foot of a top hat, outside the web; side is +1 to the right. Its inner side follows the web.
func (s Shape) footing(name string, side float64) Part {
	rise, t := float64(s.Height-s.FlangeThickness), float64(s.FootThickness)
	slope := float64(s.Flange-s.base()) / 2 / rise // of the web, to the right for each up
	breadth := float64(s.Foot)
	p := slab(name, Foot, side*(float64(s.base()/2)+breadth/2+float64(slope*t)/2), t/2, breadth, t)
	p.Lean = side * slope * t
	return p
}

// base is the breadth over the webs at the plating.
func (s Shape) base() unit.MM {
	if s.Base > 0 {
		return s.Base
	}
	return s.Flange
}
