package grid

import (
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
)

// skin gives courses across the zones of a hull, each station worked out once.
type skin struct {
	hull  *lines.Hull
	cuts  map[float64]cut
	decks map[float64]course
}

// cut is the hull at one station: the courses of its zones and what they begin at.
type cut struct {
	station            lines.Station
	bottom, flat, side course
}

func newSkin(h *lines.Hull) *skin {
	return &skin{hull: h, cuts: map[float64]cut{}, decks: map[float64]course{}}
}

// ends of the hull at the bottom centre line.
func (s *skin) ends() (aft, fore float64) {
	all := s.hull.Stations
	return all[0].X, all[len(all)-1].X
}

// at cuts the hull at a station.
func (s *skin) at(x float64) cut {
	if c, known := s.cuts[x]; known {
		return c
	}
	st := s.hull.Section(x)
	half := st.Half() // the bottom by several points, then outer chine, knuckle and sheer
	n := len(half)
	chine := n - 4
	v := make([]hydrostatics.Vector, n)
	for i, p := range half {
		v[i] = hydrostatics.Vector{X: x, Y: p.Y, Z: p.Z}
	}
	side := v[chine+1:]
	if !s.hull.HasSide {
		side = []hydrostatics.Vector{v[chine+1], v[n-1]}
	}
	bottom := v[:chine+1]
	if st.Round == 0 {
		bottom = []hydrostatics.Vector{v[0], v[chine]}
	}
	c := cut{station: st, bottom: newCourse(bottom), flat: newCourse(v[chine : chine+2]), side: newCourse(side)}
	s.cuts[x] = c
	return c
}

// deck is the course of the deck from the centre line to the sheer.
func (s *skin) deck(x float64) course {
	if c, known := s.decks[x]; known {
		return c
	}
	st := s.hull.Section(x)
	parts := 1
	if s.hull.Camber > 0 {
		parts = 8
	}
	var v []hydrostatics.Vector
	for _, p := range s.hull.Deck(st, parts) {
		v = append(v, hydrostatics.Vector{X: x, Y: p.Y, Z: p.Z})
	}
	c := newCourse(v)
	s.decks[x] = c
	return c
}

// leaned carries a point of the first station aft onto the raked transom.
func (s *skin) leaned(p hydrostatics.Vector) hydrostatics.Vector {
	if s.hull.Rake > 0 {
		p.X -= float64((p.Z - s.hull.Stations[0].At[lines.Keel].Z) * math.Tan(s.hull.Rake*math.Pi/180))
	}
	return p
}

// between lists the stations that lie inside a bay, and the first one where the bay begins at a raked transom.
func (s *skin) between(aft, fore float64, lean bool) []float64 {
	const hair = 1e-6
	var xs []float64
	for i, st := range s.hull.Stations {
		if (st.X > aft+hair || lean && i == 0 && s.hull.Rake > 0) && st.X < fore-hair {
			xs = append(xs, st.X)
		}
	}
	return xs
}

// sheer is the height of the sheer at a station.
func (s *skin) sheer(x float64) float64 { return s.at(x).station.At[lines.Sheer].Z }

// lowest is the lowest point of the keel.
func (s *skin) lowest() float64 {
	low := math.Inf(1)
	for _, st := range s.hull.Stations {
		low = math.Min(low, st.At[lines.Keel].Z)
	}
	return low
}
