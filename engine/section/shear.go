package section

import "math"

// peak gives the area A_s for which V / A_s is the greatest shear stress in the webs, mm²: A_s = I t / S, with S the first
// moment of what lies above the level and t the thickness of the webs there (Zhuravsky's formula). In webs of even
// thickness the greatest lies at the neutral axis, or at the end of the web that is nearest to it. mm⁴ in, mm² out.
func (s Section) peak(neutral, inertia float64) float64 {
	least := math.Inf(1)
	for _, w := range s.Parts {
		if w.Role != Web {
			continue
		}
		z := math.Min(math.Max(neutral, w.bottom()), w.top())
		thickness, first := s.level(z, neutral)
		if thickness > 0 && first > 0 {
			least = math.Min(least, inertia*thickness/first)
		}
	}
	if math.IsInf(least, 1) {
		return 0
	}
	return least
}

// level gives, at a height z, the thickness of all webs cut, mm, and the first moment of what lies above about the
// neutral axis, mm³, without its sign.
func (s Section) level(z, neutral float64) (thickness, first float64) {
	for _, p := range s.Parts {
		area, centre := p.above(z)
		first += float64(p.Factor * area * (centre - neutral))
		if p.Role == Web && z >= p.bottom()-near && z <= p.top()+near {
			thickness += float64(p.Factor * p.cut(z))
		}
	}
	return thickness, math.Abs(first)
}

// above is the area of a part above a height and the height of its centroid.
func (p Part) above(z float64) (area, centre float64) {
	whole := p.moments().area
	switch {
	case z <= p.bottom():
		return whole, p.Z
	case z >= p.top():
		return 0, z
	case p.Form == Ring:
		return ringAbove(p, z)
	}
	part := (p.top() - z) / (p.top() - p.bottom())
	return whole * part, (z + p.top()) / 2
}

// ringAbove takes the segment of the inner circle from that of the outer one. A segment beyond a chord at distance c from
// the centre of a circle of radius r has area r² acos(c/r) - c √(r² - c²) and first moment 2/3 (r² - c²)^1.5.
func ringAbove(p Part, z float64) (area, centre float64) {
	c := z - p.Z
	ao, so := segmentOf(p.Diameter/2, c)
	ai, si := segmentOf(p.Diameter/2-p.Wall, c)
	if ao-ai <= 0 {
		return 0, z
	}
	return ao - ai, p.Z + (so-si)/(ao-ai)
}

func segmentOf(r, c float64) (area, first float64) {
	c = math.Min(math.Max(c, -r), r)
	half := math.Sqrt(float64(r*r) - float64(c*c))
	return float64(float64(r*r)*math.Acos(c/r)) - float64(c*half), 2.0 / 3 * half * half * half
}

// cut is the level thickness of a part at a height, over which the shear flow is spread.
func (p Part) cut(z float64) float64 {
	if p.Form == Ring {
		c := z - p.Z
		outer, inner := p.Diameter/2, p.Diameter/2-p.Wall
		return 2 * (math.Sqrt(math.Max(0, float64(outer*outer)-float64(c*c))) - math.Sqrt(math.Max(0, float64(inner*inner)-float64(c*c))))
	}
	return p.Breadth
}
