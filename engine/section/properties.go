package section

import (
	"math"

	"hullfile/engine/unit"
)

// Properties sums the parts (Steiner's theorem about the common centroid):
//
//	z_n = Σ A z / Σ A    I = Σ (I_own + A (z - z_n)²)    W = I / distance of the face    shear area = Σ A of the webs
//
// A part that heat has softened counts with its factor, as if it were that much thinner.
func (s Section) Properties() Properties {
	sum := sumOf(s.Parts)
	depth := s.depth()
	i := sum.level
	p := Properties{
		Area: cm2(sum.area), Bar: cm2(sum.area - sum.plating), Depth: unit.MM(depth), Neutral: unit.MM(sum.z), Across: unit.MM(sum.y),
		I: cm4(i), AtPlate: cm3(i / sum.z), AtEdge: cm3(i / (depth - sum.z)), Web: cm2(sum.webs),
		Upright: cm4(sum.upright), Product: cm4(sum.product), Torsion: cm4(s.twist), Paint: unit.M(s.paint() / 1000),
	}
	p.Peak = cm2(s.peak(sum.z, i))
	return p
}

// sums of all parts: areas in mm², centroid in mm, second moments about it in mm⁴.
type sums struct{ area, plating, webs, y, z, level, upright, product float64 }

func sumOf(parts []Part) sums {
	var s sums
	for _, p := range parts {
		a := float64(p.moments().area * p.Factor)
		s.area += a
		s.y += float64(a * p.Y)
		s.z += float64(a * p.Z)
		switch p.Role {
		case Plating:
			s.plating += a
		case Web:
			s.webs += float64(shearing(p) * p.Factor)
		}
	}
	s.y, s.z = s.y/s.area, s.z/s.area
	for _, p := range parts {
		m := p.moments()
		dy, dz := p.Y-s.y, p.Z-s.z
		s.level += float64(p.Factor * (m.level + float64(m.area*dz*dz)))
		s.upright += float64(p.Factor * (m.upright + float64(m.area*dy*dy)))
		s.product += float64(p.Factor * (m.product + float64(m.area*dy*dz)))
	}
	return s
}

// shearing is the area of a web that carries shear square to the plating: half of a pipe; of a leaning web its thickness
// times its upright height.
func shearing(p Part) float64 {
	if p.Form == Ring {
		return p.moments().area / 2
	}
	return p.Height * p.wall()
}

// depth is from the outer face of the plating, or the foot, to the free edge. A bulb ends where the web does.
func (s Section) depth() float64 {
	top := 0.0
	for _, p := range s.Parts {
		if p.Form != Lump {
			top = math.Max(top, p.top())
		}
	}
	return top
}

// paint is the outline that paint reaches, mm: what lies on attached plating and what it shuts in is left out.
func (s Section) paint() float64 {
	if s.Plate == 0 {
		return s.outline.whole
	}
	return s.outline.whole - s.outline.onPlate - s.outline.shut
}

func cm2(mm2 float64) unit.CM2 { return unit.CM2(mm2 / 1e2) }
func cm3(mm3 float64) unit.CM3 { return unit.CM3(mm3 / 1e3) }
func cm4(mm4 float64) unit.CM4 { return unit.CM4(mm4 / 1e4) }
