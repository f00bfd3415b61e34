package section

import "math"

// outline is the length round a section, mm: all of it, what lies on the plating, and what is shut in once it does.
type outline struct{ whole, onPlate, shut float64 }

// outlineOf gives the outline of a shape that New accepted; sharp corners.
func outlineOf(s Shape, parts []Part) outline {
	h, t, b := float64(s.Height), float64(s.Web), float64(s.Flange)
	switch s.Kind {
	case FlatBar:
		return outline{2 * (h + t), t, 0}
	case Angle, Tee:
		return outline{2 * (h + b), t, 0}
	case Bulb:
		return outline{2*h + 2*math.Sqrt(parts[1].Metal) + t, t, 0}
	case TopHat:
		return hatOutline(s, parts)
	case Box:
		return outline{2 * (h + b), b, 0}
	case Pipe:
		return outline{math.Pi * float64(s.Diameter), 0, 0}
	}
	return piecesOutline(parts)
}

// hatOutline goes round a top hat: feet, outer and inner sides of the webs, crown. What a foot hides of its web is as long
// as its own edge.
func hatOutline(s Shape, parts []Part) outline {
	web := parts[0]
	side := math.Hypot(web.Height, web.Lean)
	crown, foot := float64(s.Flange), float64(s.Foot)
	over := crown - (2*(web.Y+web.Lean/2) + web.Breadth) // of the crown over its webs
	inner := 2*side + 2*(web.Y+web.Lean/2) - web.Breadth
	outer := crown + 2*float64(s.FlangeThickness) + over + 2*side + 2*foot
	lies := 2 * (foot + web.Breadth)
	return outline{outer + inner + lies, lies, inner}
}

// piecesOutline takes off twice the length along which rectangles touch. A hollow between them counts as reached by paint.
func piecesOutline(parts []Part) outline {
	var o outline
	for i, p := range parts {
		o.whole += 2 * (p.Breadth + p.Height)
		if math.Abs(p.bottom()) < near {
			o.onPlate += p.Breadth
		}
		for _, q := range parts[:i] {
			o.whole -= 2 * touching(p, q)
		}
	}
	return o
}

// near is what counts as no distance, mm: a thousandth of a millimetre is finer than any drawing.
const near = 1e-3

// touching is the length along which two upright rectangles lie against each other.
func touching(p, q Part) float64 {
	across := shared(p.Y-p.Breadth/2, p.Y+p.Breadth/2, q.Y-q.Breadth/2, q.Y+q.Breadth/2)
	up := shared(p.bottom(), p.top(), q.bottom(), q.top())
	switch {
	case math.Abs(up) < near && across > near:
		return across
	case math.Abs(across) < near && up > near:
		return up
	}
	return 0
}

// shared is the length that two stretches have in common; below nought it is the gap between them.
func shared(a0, a1, b0, b1 float64) float64 { return math.Min(a1, b1) - math.Max(a0, b0) }
