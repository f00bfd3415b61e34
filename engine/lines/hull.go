// Package lines makes a hull out of its tables of edges: a watertight body to float, skins to weigh and paint, and the
// dimensions that follow. The records give keel, chine, an outer chine and a knuckle where there are such, and sheer at
// stations; between stations every edge runs straight, and the hull is the same to port.
//
//   - Question: what is the shape of the hull, and do its stated dimensions agree with it?
//   - In: tables of edges (m), and the loaded mass.
//   - Out: a body to float, areas of skin (m²), dimensions afloat, checks of what is stated.
//   - Source: geometry, own derivation; names of the dimensions as in ISO 8666.
package lines

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// Edge is a line along the hull.
type Edge int

// The edges of a section from the keel outwards and upwards. Outer and Knuckle fall on the edge before them where the
// record gives none.
const (
	Keel Edge = iota
	Chine
	Outer
	Knuckle
	Sheer
	edges
)

// String gives the word for an edge.
func (e Edge) String() string {
	return [...]string{"keel", "chine", "outer chine", "knuckle", "sheer"}[e]
}

// Station is one section: the points of its edges, half breadth and height.
type Station struct {
	X     float64
	At    [edges]hydrostatics.Point
	Round float64 // bulge of the bottom outwards at half its breadth, metres
	Place finding.Place
	ID    string
}

// Hull is a hull of stations in order from aft.
type Hull struct {
	Stations []Station
	Camber   float64 // rise of the deck on the centre line, metres
	Rake     float64 // of the transom from the vertical, top aft, degrees
	Frames   []Frame
	Recesses []Recess
	Openings []Opening
	HasOuter bool
	HasSide  bool // a knuckle in the side
}

// Frame is a frame or bulkhead, by its position.
type Frame struct {
	ID, Kind string
	X        float64
	Place    finding.Place
}

// Recess is a cockpit or well open at the top.
type Recess struct {
	ID         string
	Aft, Fore  float64
	Half, Sole float64
	Drains     bool
	Place      finding.Place
}

// Opening is a way for water in, at its lowest point.
type Opening struct {
	ID, Name string
	At       []hydrostatics.Vector // one, or one on each side
	Area     float64               // mm²; zero where not recorded
	Shut     bool                  // closes watertight or weathertight
	Place    finding.Place
}

const bottomPoints = 3 // points between keel and chine that draw a bulged bottom

// Outline gives the closed section for floating, from the keel up the starboard side, over the deck and down the port
// side. A recess that takes the section is cut out of the deck down to its sole when open is true and it does not drain.
func (h *Hull) outline(s Station, open bool) []hydrostatics.Point {
	half := make([]hydrostatics.Point, 0, 16)
	half = append(half, s.At[Keel])
	for k := 1; k <= bottomPoints; k++ {
		half = append(half, s.bottom(float64(k)/(bottomPoints+1)))
	}
	half = append(half, s.At[Chine], s.At[Outer], s.At[Knuckle], s.At[Sheer])
	top := s.At[Sheer].Z
	edge, sole := h.notch(s, open)
	half = append(half, hydrostatics.Point{Y: edge, Z: h.deck(s, edge)}, hydrostatics.Point{Y: edge, Z: sole})
	mid := hydrostatics.Point{Y: 0, Z: sole}
	if edge == 0 {
		mid.Z = top + h.Camber
	}
	out := append(half, mid)
	for k := len(half) - 1; k > 0; k-- {
		out = append(out, hydrostatics.Point{Y: -half[k].Y, Z: half[k].Z})
	}
	return out
}

// notch gives the half breadth and sole of the recess at a station; no recess is a notch of no breadth at deck height.
func (h *Hull) notch(s Station, open bool) (half, sole float64) {
	if open {
		for _, r := range h.Recesses {
			if !r.Drains && s.X >= r.Aft && s.X <= r.Fore {
				return math.Min(r.Half, s.At[Sheer].Y), math.Min(r.Sole, s.At[Sheer].Z)
			}
		}
	}
	return 0, s.At[Sheer].Z + h.Camber
}

// deck is the height of the deck at a half breadth: a parabola over the beam.
func (h *Hull) deck(s Station, y float64) float64 {
	b := s.At[Sheer].Y
	if b <= 0 {
		return s.At[Sheer].Z + h.Camber
	}
	return s.At[Sheer].Z + h.Camber*(1-float64((y/b)*(y/b)))
}

// bottom is the point of the bottom at a part of the way from keel to chine, bulged out square to the straight line.
func (s Station) bottom(t float64) hydrostatics.Point {
	k, c := s.At[Keel], s.At[Chine]
	dy, dz := c.Y-k.Y, c.Z-k.Z
	long := math.Hypot(dy, dz)
	p := hydrostatics.Point{Y: k.Y + t*dy, Z: k.Z + t*dz}
	if s.Round == 0 || long == 0 {
		return p
	}
	out := 4 * s.Round * t * (1 - t)
	return hydrostatics.Point{Y: p.Y + out*dz/long, Z: p.Z - out*dy/long}
}

// Body gives the watertight body: closed over the sheer, or with the recesses that do not drain open to the water.
// The error is that of hydrostatics.NewBody.
func (h *Hull) Body(open bool) (*hydrostatics.Body, error) {
	stations := h.Stations
	if open {
		stations = h.withRecessEnds()
	}
	sections := h.wedge(open)
	for _, s := range stations {
		sections = append(sections, hydrostatics.Section{X: s.X, Outline: h.outline(s, open)})
	}
	return hydrostatics.NewBody(sections, 2)
}

// withRecessEnds adds a station just before and just after each end of an undrained recess, so that it ends upright and
// does not run out into the next station.
func (h *Hull) withRecessEnds() []Station {
	const hair = 1e-4
	out := append([]Station{}, h.Stations...)
	for _, r := range h.Recesses {
		if r.Drains {
			continue
		}
		for _, x := range []float64{r.Aft - hair, r.Aft, r.Fore, r.Fore + hair} {
			out = insert(out, h, x)
		}
	}
	return out
}

func insert(all []Station, h *Hull, x float64) []Station {
	for i, s := range all {
		if math.Abs(s.X-x) < 1e-9 {
			return all
		}
		if s.X > x {
			if i == 0 {
				return all
			}
			at := h.Section(x)
			return append(all[:i], append([]Station{at}, all[i:]...)...)
		}
	}
	return all
}

// Section gives the section at any x, on straight lines between stations; outside the hull it is the end station.
func (h *Hull) Section(x float64) Station {
	n := len(h.Stations)
	if x <= h.Stations[0].X {
		return h.Stations[0]
	}
	for i := 1; i < n; i++ {
		p, q := h.Stations[i-1], h.Stations[i]
		if x > q.X {
			continue
		}
		t := (x - p.X) / (q.X - p.X)
		s := Station{X: x, Round: p.Round + t*(q.Round-p.Round)}
		for e := range s.At {
			s.At[e] = hydrostatics.Point{Y: p.At[e].Y + t*(q.At[e].Y-p.At[e].Y), Z: p.At[e].Z + t*(q.At[e].Z-p.At[e].Z)}
		}
		return s
	}
	return h.Stations[n-1]
}

// Deadrise is the rise of the bottom from keel to chine at a section, degrees.
func (s Station) Deadrise() float64 {
	return math.Atan2(s.At[Chine].Z-s.At[Keel].Z, s.At[Chine].Y-s.At[Keel].Y) * 180 / math.Pi
}

// Along gives the points of an edge to starboard as vectors, for watching when it goes under.
func (h *Hull) Along(e Edge) []hydrostatics.Vector {
	out := make([]hydrostatics.Vector, len(h.Stations))
	for i, s := range h.Stations {
		out[i] = hydrostatics.Vector{X: s.X, Y: s.At[e].Y, Z: s.At[e].Z}
	}
	return out
}

// FromRecord takes the records over. Stations keep their order; what is wrong with them is said by Check.
func FromRecord(f *record.HullFile) *Hull {
	h := &Hull{Camber: float64(f.Lines.Camber.V) / 1000, Rake: float64(f.Lines.Rake.V)}
	for i := range f.Stations {
		r := &f.Stations[i]
		s := Station{ID: r.ID, Place: r.At, X: float64(r.X.V), Round: float64(r.Round.V) / 1000}
		s.At[Keel] = hydrostatics.Point{Z: float64(r.KeelZ.V)}
		s.At[Chine] = point(r.ChineY.V, r.ChineZ.V)
		s.At[Sheer] = point(r.SheerY.V, r.SheerZ.V)
		s.At[Outer] = s.At[Chine]
		if r.OuterY.Set && r.OuterZ.Set {
			s.At[Outer], h.HasOuter = point(r.OuterY.V, r.OuterZ.V), true
		}
		s.At[Knuckle] = s.At[Outer]
		if r.KnuckleY.Set && r.KnuckleZ.Set {
			s.At[Knuckle], h.HasSide = point(r.KnuckleY.V, r.KnuckleZ.V), true
		}
		h.Stations = append(h.Stations, s)
	}
	h.holes(f)
	return h
}

func point[T ~float64](y, z T) hydrostatics.Point {
	return hydrostatics.Point{Y: float64(y), Z: float64(z)}
}

func (h *Hull) holes(f *record.HullFile) {
	for i := range f.Frames {
		r := &f.Frames[i]
		h.Frames = append(h.Frames, Frame{ID: r.ID, Kind: r.Kind.V, X: float64(r.X.V), Place: r.At})
	}
	for i := range f.Recesses {
		r := &f.Recesses[i]
		h.Recesses = append(h.Recesses, Recess{ID: r.ID, Aft: float64(r.Aft.V), Fore: float64(r.Fore.V),
			Half: float64(r.Half.V), Sole: float64(r.Sole.V), Drains: r.Drains.V, Place: r.At})
	}
	for i := range f.Openings {
		r := &f.Openings[i]
		o := Opening{ID: r.ID, Name: r.Name.V, Area: float64(r.Area.V), Shut: r.Closes.V != "not", Place: r.At}
		o.At = append(o.At, hydrostatics.Vector{X: float64(r.X.V), Y: float64(r.Y.V), Z: float64(r.Z.V)})
		if r.Both.V {
			o.At = append(o.At, hydrostatics.Vector{X: float64(r.X.V), Y: -float64(r.Y.V), Z: float64(r.Z.V)})
		}
		h.Openings = append(h.Openings, o)
	}
}
