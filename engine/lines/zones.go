package lines

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/weight"
)

// Zones gives the weight breakdown what the lines know: plate by zone, and the seams along the edges. Lines that are not
// on record, or cannot be those of a hull, give nothing.
func Zones(h *record.Hull) []weight.Zone {
	hull := FromRecord(&h.HullFile)
	if len(hull.Stations) < 3 || len(hull.Check()) > 0 {
		return nil
	}
	var out []weight.Zone
	for _, s := range hull.Skins() {
		out = append(out, weight.Zone{Name: s.Zone, Area: s.Area, X: s.Centre.X, Z: s.Centre.Z})
	}
	return append(out, hull.seams())
}

// seams is the length of the seams where plates meet: along the keel once, along every other edge on both sides, and round
// the transom to the sheer. What joins frames and decks is not in the lines.
func (h *Hull) seams() weight.Zone {
	z := weight.Zone{Name: "seams"}
	add := func(sides float64, p, q hydrostatics.Vector) {
		d := q.Less(p)
		l := sides * math.Sqrt(d.Dot(d))
		z.Length += l
		z.X += l * (p.X + q.X) / 2
		z.Z += l * (p.Z + q.Z) / 2
	}
	for e := Keel; e <= Sheer; e++ {
		if e == Outer && !h.HasOuter || e == Knuckle && !h.HasSide {
			continue
		}
		sides := 2.0
		if e == Keel {
			sides = 1
		}
		for i := 1; i < len(h.Stations); i++ {
			p, q := h.Stations[i-1], h.Stations[i]
			add(sides, vector(p.X, p.At[e]), vector(q.X, q.At[e]))
		}
	}
	half := h.Stations[0].Half()
	for i := 1; i < len(half); i++ {
		add(2, vector(h.Stations[0].X, half[i-1]), vector(h.Stations[0].X, half[i]))
	}
	if z.Length > 0 {
		z.X, z.Z = z.X/z.Length, z.Z/z.Length
	}
	return z
}
