package lines

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// Skin is an area of plate with its centre, both sides together, so that the centre lies on the centre line.
type Skin struct {
	Zone   string // bottom, chine flat, side, transom, deck
	Area   float64
	Centre hydrostatics.Vector
}

const deckParts = 4 // strips from the centre line to the sheer that draw the camber

// Skins gives the plate areas by zone: the ruled surfaces between stations, the aft face and the deck.
// The deck is taken over the sheer with its camber, recesses not cut out.
func (h *Hull) Skins() []Skin {
	bottom, flat, side, deck := Skin{Zone: "bottom"}, Skin{Zone: "chine flat"}, Skin{Zone: "side"}, Skin{Zone: "deck"}
	for i := 1; i < len(h.Stations); i++ {
		p, q := h.Stations[i-1], h.Stations[i]
		for k := 0; k <= bottomPoints; k++ {
			bottom.strip(p, q, p.bottomAt(k), p.bottomAt(k+1), q.bottomAt(k), q.bottomAt(k+1))
		}
		flat.strip(p, q, p.At[Chine], p.At[Outer], q.At[Chine], q.At[Outer])
		side.strip(p, q, p.At[Outer], p.At[Knuckle], q.At[Outer], q.At[Knuckle])
		side.strip(p, q, p.At[Knuckle], p.At[Sheer], q.At[Knuckle], q.At[Sheer])
		for k := 0; k < deckParts; k++ {
			deck.strip(p, q, h.deckAt(p, k, deckParts), h.deckAt(p, k+1, deckParts), h.deckAt(q, k, deckParts), h.deckAt(q, k+1, deckParts))
		}
	}
	first := h.Stations[0]
	for k := 0; k <= bottomPoints; k++ {
		h.astern(&bottom, first.bottomAt(k), first.bottomAt(k+1))
	}
	h.astern(&flat, first.At[Chine], first.At[Outer])
	h.astern(&side, first.At[Outer], first.At[Knuckle])
	h.astern(&side, first.At[Knuckle], first.At[Sheer])
	for k := 0; k < deckParts; k++ {
		h.astern(&deck, h.deckAt(first, k, deckParts), h.deckAt(first, k+1, deckParts))
	}
	out := []Skin{}
	for _, s := range []Skin{bottom, flat, side, h.transom(), deck} {
		if s.Area > 1e-9 {
			s.Centre = hydrostatics.Vector{X: s.Centre.X / s.Area, Z: s.Centre.Z / s.Area}
			out = append(out, s)
		}
	}
	return out
}

func (s Station) bottomAt(k int) hydrostatics.Point {
	switch k {
	case 0:
		return s.At[Keel]
	case bottomPoints + 1:
		return s.At[Chine]
	}
	return s.bottom(float64(k) / (bottomPoints + 1))
}

func (h *Hull) deckAt(s Station, k, parts int) hydrostatics.Point {
	y := s.At[Sheer].Y * float64(k) / float64(parts)
	return hydrostatics.Point{Y: y, Z: h.deck(s, y)}
}

// strip adds both sides of the surface between two stations; centre sums are kept times area until the end.
func (k *Skin) strip(p, q Station, p1, p2, q1, q2 hydrostatics.Point) {
	a, b := vector(p.X, p1), vector(p.X, p2)
	c, d := vector(q.X, q1), vector(q.X, q2)
	k.triangle(a, b, d)
	k.triangle(a, d, c)
}

func vector(x float64, p hydrostatics.Point) hydrostatics.Vector {
	return hydrostatics.Vector{X: x, Y: p.Y, Z: p.Z}
}

func (k *Skin) triangle(a, b, c hydrostatics.Vector) {
	u, v := b.Less(a), c.Less(a)
	x := float64(u.Y*v.Z) - float64(u.Z*v.Y)
	y := float64(u.Z*v.X) - float64(u.X*v.Z)
	z := float64(u.X*v.Y) - float64(u.Y*v.X)
	area := math.Sqrt(float64(x*x) + float64(y*y) + float64(z*z)) // two sides of half the product each
	k.Area += area
	k.Centre.X += area * (a.X + b.X + c.X) / 3
	k.Centre.Z += area * (a.Z + b.Z + c.Z) / 3
}

// transom is the aft face up to the sheer, leaned by its rake.
func (h *Hull) transom() Skin {
	s := h.Stations[0]
	t := Skin{Zone: "transom"}
	pts := []hydrostatics.Point{{Y: 0, Z: s.At[Sheer].Z}}
	for k := 0; k <= bottomPoints+1; k++ {
		pts = append(pts, s.bottomAt(k))
	}
	pts = append(pts, s.At[Outer], s.At[Knuckle], s.At[Sheer])
	for i := 1; i+1 < len(pts); i++ {
		t.triangle(h.leaned(pts[0]), h.leaned(pts[i]), h.leaned(pts[i+1]))
	}
	return t
}

// leaned is a point of the first station carried aft onto the raked transom.
func (h *Hull) leaned(p hydrostatics.Point) hydrostatics.Vector {
	s := h.Stations[0]
	return vector(s.X-(p.Z-s.At[Keel].Z)*h.lean(), p)
}

// astern adds what a raked transom lets a strip of the first station run on aft.
func (h *Hull) astern(k *Skin, p, q hydrostatics.Point) {
	if h.Rake <= 0 {
		return
	}
	x := h.Stations[0].X
	k.triangle(vector(x, p), vector(x, q), h.leaned(q))
	k.triangle(vector(x, p), h.leaned(q), h.leaned(p))
}
