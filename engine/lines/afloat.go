package lines

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// Afloat is the hull at rest upright with a given load: the dimensions that rules ask for, derived from the lines.
type Afloat struct {
	Rest      hydrostatics.Rest
	Load      hydrostatics.Load
	Aft, Fore float64    // ends of the waterline, x, metres
	LengthWL  float64    // metre
	BeamWL    float64    // greatest beam of the waterline, metre
	BeamChine float64    // between chines at 0.4 LWL forward of the aft end, metre
	Deadrise  float64    // there, degrees
	Draught   float64    // lowest point of the hull under the water, metre
	Freeboard [3]float64 // sheer above the water aft, amidships and forward, metre
	Wetted    float64    // skin under water, m²
	Windage   float64    // profile of the hull above the water, m²
	WindageZ  float64    // height of its centre above the water, metre
	GM        float64    // metre
	Reserve   float64    // watertight volume above the water, closed at the sheer, m³
}

// Float puts the hull at rest upright. Errors are those of hydrostatics.
func (h *Hull) Float(load hydrostatics.Load) (Afloat, error) {
	body, err := h.Body(false)
	if err != nil {
		return Afloat{}, err
	}
	rest, err := body.Balance(load, 0, hydrostatics.Attitude{}, false)
	if err != nil {
		return Afloat{}, err
	}
	a := Afloat{Rest: rest, Load: load, GM: rest.Metacentric(load), Reserve: body.Whole() - rest.Volume}
	a.Aft, a.Fore = h.waterline(rest.Attitude)
	a.LengthWL = a.Fore - a.Aft
	at := h.Section(a.Aft + 0.4*a.LengthWL)
	a.BeamChine, a.Deadrise = 2*at.At[Chine].Y, at.Deadrise()
	h.heights(&a)
	a.Wetted = body.Wetted(rest.Attitude, h.isSkin)
	return a, nil
}

// isSkin tells the edges of the outline that are plate against the water from those of the deck.
func (h *Hull) isSkin(edge int) bool {
	const side = 1 + bottomPoints + 4 // points from the keel to the sheer
	total := 2*(side+3) - 2
	return edge < side-1 || edge >= total-(side-1)
}

// waterline finds where the water meets the hull at the ends: the aft face, or the keel and sheer lines running out of it.
func (h *Hull) waterline(at hydrostatics.Attitude) (aft, fore float64) {
	low := func(s Station) float64 { return at.Height(hydrostatics.Vector{X: s.X, Z: s.At[Keel].Z}) }
	n := len(h.Stations)
	aft, fore = h.Stations[0].X, h.Stations[n-1].X
	if deep := -low(h.Stations[0]); deep > 0 {
		aft -= deep * h.lean()
	}
	for i := 1; i < n; i++ {
		p, q := h.Stations[i-1], h.Stations[i]
		hp, hq := low(p), low(q)
		if (hp < 0) == (hq < 0) {
			continue
		}
		x := p.X + hp/(hp-hq)*(q.X-p.X)
		if hp >= 0 {
			aft = x
		} else {
			fore = x
		}
	}
	return aft, fore
}

func (h *Hull) heights(a *Afloat) {
	at := a.Rest.Attitude
	deep := math.Inf(-1)
	prevArea, prevX := 0.0, 0.0
	moment := 0.0
	for i, s := range h.Stations {
		deep = math.Max(deep, -at.Height(hydrostatics.Vector{X: s.X, Z: s.At[Keel].Z}))
		a.BeamWL = math.Max(a.BeamWL, s.waterBeam(at))
		top := at.Height(hydrostatics.Vector{X: s.X, Y: 0, Z: s.At[Sheer].Z})
		foot := math.Max(0, at.Height(hydrostatics.Vector{X: s.X, Z: s.At[Keel].Z}))
		area := math.Max(0, top-foot)
		if i > 0 {
			w := (s.X - prevX) / 2
			a.Windage += w * (area + prevArea)
			moment += w * (area*(top+foot)/2 + prevArea*(top+foot)/2)
		}
		prevArea, prevX = area, s.X
	}
	a.Draught = deep
	if a.Windage > 0 {
		a.WindageZ = moment / a.Windage
	}
	aft, fore := h.Stations[0], h.Stations[len(h.Stations)-1]
	for k, s := range []Station{aft, h.Section((aft.X + fore.X) / 2), fore} {
		a.Freeboard[k] = at.Height(hydrostatics.Vector{X: s.X, Y: s.At[Sheer].Y, Z: s.At[Sheer].Z})
	}
}

// waterBeam is the breadth of the upright section at the water; zero where the water does not reach it.
func (s Station) waterBeam(at hydrostatics.Attitude) float64 {
	half := 0.0
	pts := []hydrostatics.Point{}
	for k := 0; k <= bottomPoints+1; k++ {
		pts = append(pts, s.bottomAt(k))
	}
	pts = append(pts, s.At[Outer], s.At[Knuckle], s.At[Sheer])
	for i := 1; i < len(pts); i++ {
		p, q := pts[i-1], pts[i]
		hp := at.Height(hydrostatics.Vector{X: s.X, Z: p.Z})
		hq := at.Height(hydrostatics.Vector{X: s.X, Z: q.Z})
		if hp <= 0 && hq > 0 {
			half = math.Max(half, p.Y+hp/(hp-hq)*(q.Y-p.Y))
		} else if hp <= 0 && hq <= 0 {
			half = math.Max(half, math.Max(p.Y, q.Y))
		}
	}
	return 2 * half
}
