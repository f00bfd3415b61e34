package section

import (
	"math"

	"hullfile/engine/unit"
)

// arcs softens arcs of a ring: the ring stays whole, and for each arc the strength that is lost is taken off as a sector
// with a factor below nought. A sector of half angle a about the direction f, between radii r and R, has
//
//	area a (R² - r²)    centroid at 2/3 sin a / a (R³ - r³)/(R² - r²)    I about the level axis (R⁴ - r⁴)/4 (a - sin 2a cos 2f / 2)
//
// by integration.
func (o *Softened) arcs(p Part, reached []stretch, left float64) {
	o.Parts = append(o.Parts, p)
	for _, st := range around(reached) {
		a, f := (st.to-st.from)/2, (st.from+st.to)/2
		sector := sectorOf(p, a, f)
		o.zone(sector, stretch{st.from * 180 / math.Pi, st.to * 180 / math.Pi}, 1)
		o.Zones[len(o.Zones)-1].Left = unit.Ratio(left)
		o.Parts[len(o.Parts)-1].Factor = (left - 1) * p.Factor
	}
}

// around bounds merged stretches of angle to one turn, so that no metal is softened twice.
func around(reached []stretch) []stretch {
	total := 0.0
	for _, st := range reached {
		total += st.to - st.from
	}
	if total >= 2*math.Pi {
		return []stretch{{0, 2 * math.Pi}}
	}
	if n := len(reached); n > 1 {
		if over := reached[n-1].to - 2*math.Pi - reached[0].from; over > 0 {
			reached[n-1].to -= over
		}
	}
	return reached
}

func sectorOf(p Part, a, f float64) Part {
	outer, inner := p.Diameter/2, p.Diameter/2-p.Wall
	area := a * (float64(outer*outer) - float64(inner*inner))
	reach := 2.0 / 3 * math.Sin(a) / a * (math.Pow(outer, 3) - math.Pow(inner, 3)) / (float64(outer*outer) - float64(inner*inner))
	fourth := (math.Pow(outer, 4) - math.Pow(inner, 4)) / 4
	turn := math.Sin(2*a) * math.Cos(2*f) / 2
	y, z := float64(reach*math.Cos(f)), float64(reach*math.Sin(f))
	return Part{
		Name: p.Name, Role: p.Role, Form: Lump, Y: p.Y + y, Z: p.Z + z, Metal: area, Factor: p.Factor,
		OwnI: float64(fourth*(a-turn)) - float64(area*z*z), OwnUp: float64(fourth*(a+turn)) - float64(area*y*y),
	}
}
