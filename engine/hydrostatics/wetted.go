package hydrostatics

import "math"

// Wetted is the area of the skin under water, square metres: the ruled surface between sections and the two end faces,
// as triangles cut by the water. from and to choose the edges of the outline that count (the deck is not skin): edge i
// runs from point i to point i+1.
func (b *Body) Wetted(at Attitude, counts func(edge int) bool) float64 {
	area := 0.0
	for i := 0; i+1 < len(b.sections); i++ {
		p, q := b.sections[i], b.sections[i+1]
		for e := range p.Outline {
			if !counts(e) {
				continue
			}
			n := (e + 1) % b.points
			a1, a2 := vec(p.X, p.Outline[e]), vec(p.X, p.Outline[n])
			b1, b2 := vec(q.X, q.Outline[e]), vec(q.X, q.Outline[n])
			area += at.below(a1, a2, b2) + at.below(a1, b2, b1)
		}
	}
	up := at.Up()
	water, ok := surfaceOf(up.Y, up.Z)
	for _, s := range []Section{b.sections[0], b.sections[len(b.sections)-1]} {
		if !ok {
			break
		}
		area += water.cut(s.Outline, at.Level-float64(up.X*s.X)).area
	}
	return area
}

func vec(x float64, p Point) Vector { return Vector{x, p.Y, p.Z} }

// below is the area of the part of a triangle under water.
func (a Attitude) below(p, q, r Vector) float64 {
	in := [3]Vector{p, q, r}
	var out [4]Vector
	n := 0
	for i := range in {
		v, w := in[i], in[(i+1)%3]
		hv, hw := a.Height(v), a.Height(w)
		if hv <= 0 {
			out[n] = v
			n++
		}
		if (hv <= 0) != (hw <= 0) {
			t := hv / (hv - hw)
			out[n] = Vector{v.X + t*(w.X-v.X), v.Y + t*(w.Y-v.Y), v.Z + t*(w.Z-v.Z)}
			n++
		}
	}
	area := 0.0
	for i := 1; i+1 < n; i++ {
		area += Triangle(out[0], out[i], out[i+1])
	}
	return area
}

// Triangle is the area of a triangle, square metres.
func Triangle(p, q, r Vector) float64 {
	u, v := q.Less(p), r.Less(p)
	x := float64(u.Y*v.Z) - float64(u.Z*v.Y)
	y := float64(u.Z*v.X) - float64(u.X*v.Z)
	z := float64(u.X*v.Y) - float64(u.Y*v.X)
	return math.Sqrt(float64(x*x)+float64(y*y)+float64(z*z)) / 2
}
