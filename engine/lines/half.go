package lines

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// Half gives the half section from the keel out to the sheer, the bulge of the bottom drawn by a few points.
func (s Station) Half() []hydrostatics.Point {
	out := make([]hydrostatics.Point, 0, bottomPoints+5)
	for k := 0; k <= bottomPoints+1; k++ {
		out = append(out, s.bottomAt(k))
	}
	return append(out, s.At[Outer], s.At[Knuckle], s.At[Sheer])
}

// Breadth gives the half breadth at a height; where the section has several, the greatest. ok is false above the sheer and
// under the keel.
func (s Station) Breadth(z float64) (y float64, ok bool) {
	half := s.Half()
	for i := 1; i < len(half); i++ {
		p, q := half[i-1], half[i]
		lo, hi := math.Min(p.Z, q.Z), math.Max(p.Z, q.Z)
		if z < lo || z > hi {
			continue
		}
		at := math.Max(p.Y, q.Y)
		if hi > lo {
			at = p.Y + (z-p.Z)/(q.Z-p.Z)*(q.Y-p.Y)
		}
		y, ok = math.Max(y, at), true
	}
	return y, ok
}

// Deck is the height of the deck on the centre line and its course to the sheer: as many points as parts and one more.
func (h *Hull) Deck(s Station, parts int) []hydrostatics.Point {
	out := make([]hydrostatics.Point, parts+1)
	for k := range out {
		out[k] = h.deckAt(s, k, parts)
	}
	return out
}

// Surface is the height of the water in the hull's own axes at x on the centre line, metres. The attitude is upright.
func Surface(at hydrostatics.Attitude, x float64) float64 {
	up := at.Up()
	return (at.Level - float64(up.X*x)) / up.Z
}
