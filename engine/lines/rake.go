package lines

import (
	"math"
	"sort"

	"hullfile/engine/hydrostatics"
)

// A raked transom leans aft about the lowest point of the first station: aft of it only what lies above the leaning face
// is left of the section.

// AftEnd is the aftmost x of the hull at the sheer, metres.
func (h *Hull) AftEnd() float64 {
	s := h.Stations[0]
	return s.X - (s.At[Sheer].Z-s.At[Keel].Z)*h.lean()
}

// lean is how far the transom leans aft for one metre of height.
func (h *Hull) lean() float64 { return math.Tan(h.Rake * math.Pi / 180) }

// wedge gives the sections between the aft end and the first station, from aft. They are taken where the leaning face
// passes the corners of the section and half way between, so that the ruled surface is the face itself.
func (h *Hull) wedge(open bool) []hydrostatics.Section {
	if h.Rake <= 0 {
		return nil
	}
	s := h.Stations[0]
	outline := h.outline(s, open)
	var cuts []float64
	for _, z := range levels(outline) {
		if z > s.At[Keel].Z+1e-6 {
			cuts = append(cuts, z)
		}
	}
	var out []hydrostatics.Section
	for i := len(cuts) - 1; i >= 0; i-- {
		below := s.At[Keel].Z
		if i > 0 {
			below = cuts[i-1]
		}
		for _, z := range []float64{cuts[i], (cuts[i] + below) / 2} {
			out = append(out, hydrostatics.Section{X: s.X - (z-s.At[Keel].Z)*h.lean(), Outline: above(outline, z)})
		}
	}
	return out
}

// levels gives the heights of the corners of an outline, each once, from below.
func levels(outline []hydrostatics.Point) []float64 {
	var out []float64
	for _, p := range outline {
		out = append(out, p.Z)
	}
	sort.Float64s(out)
	kept := out[:1]
	for _, z := range out[1:] {
		if z-kept[len(kept)-1] > 1e-6 {
			kept = append(kept, z)
		}
	}
	return kept
}

// above keeps of a section what lies above a height: corners below are moved onto the cut, those of the skin to where the
// skin meets it.
func above(outline []hydrostatics.Point, z float64) []hydrostatics.Point {
	out := append([]hydrostatics.Point{}, outline...)
	half := len(outline) / 2
	for i, p := range outline {
		if p.Z >= z {
			continue
		}
		out[i].Z = z
		if p.Y == 0 {
			continue
		}
		side, mirror := i, 1.0
		if i > half {
			side, mirror = len(outline)-i, -1
		}
		if side < skinPoints {
			out[i].Y = mirror * skinAt(outline, z)
		}
	}
	return out
}

// skinPoints is how many points of the outline lie on the skin to starboard: keel, bottom, chine, outer chine, knuckle, sheer.
const skinPoints = 1 + bottomPoints + 4

// skinAt is the half breadth at which the skin to starboard first rises through a height.
func skinAt(outline []hydrostatics.Point, z float64) float64 {
	for i := 1; i < skinPoints; i++ {
		p, q := outline[i-1], outline[i]
		if p.Z < z && q.Z >= z {
			return p.Y + (z-p.Z)/(q.Z-p.Z)*(q.Y-p.Y)
		}
	}
	return outline[skinPoints-1].Y
}
