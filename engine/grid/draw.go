package grid

import "hullfile/engine/hydrostatics"

// draw adds the patches of a panel: to starboard and to port, or one across the centre line.
func (b *builder) draw(l *laidPanel, c *cell, m *measure) {
	p := Patch{ID: l.names[0], Plate: l.plate, Zone: c.f.zone, On: c.f.name, Corners: m.corners, Flat: m.flat, Area: m.area}
	l.patches = append(l.patches, len(b.out.Patches))
	b.out.Patches = append(b.out.Patches, p)
	if c.across {
		return
	}
	l.patches = append(l.patches, len(b.out.Patches))
	b.out.Patches = append(b.out.Patches, p.toPort())
}

// toPort is the same panel on the other side.
func (p Patch) toPort() Patch {
	p.Port = true
	p.Corners, p.Flat = otherSide(p.Corners, p.Flat, flatAcross(p.Zone))
	return p
}

// toPort is the same member on the other side.
func (l Line) toPort() Line {
	l.Port = true
	l.Points, l.Flat = otherSide(l.Points, l.Flat, flatAcross(l.Zone))
	return l
}

// flatAcross says which coordinate of an unrolled zone runs across the boat.
func flatAcross(zone string) int {
	if zone == "transom" || zone == "bulkhead" {
		return 0
	}
	return 1
}

func otherSide(pts []hydrostatics.Vector, flat [][2]float64, across int) ([]hydrostatics.Vector, [][2]float64) {
	out, on := make([]hydrostatics.Vector, len(pts)), make([][2]float64, len(flat))
	for i, p := range pts {
		out[i] = mirrored(p)
	}
	for i, f := range flat {
		f[across] = -f[across]
		on[i] = f
	}
	return out, on
}
