package limits

import (
	"math"

	"hullfile/engine/method"
)

// Model is the sheet with the boat in it.
type Model struct {
	Sheet *method.Sheet
	boat  method.GivenMap
	trims []trimAt // in order of speed
	fixed float64  // trim where none is known, degrees
}

// trimAt is the running trim at a speed.
type trimAt struct {
	knots, degrees float64
	from           string
}

// trim is that of the nearest known speeds, by straight line; beyond them the nearest is held.
func (m *Model) trim(knots float64) (float64, string) {
	n := len(m.trims)
	switch {
	case n == 0:
		return m.fixed, "assumed"
	case knots <= m.trims[0].knots:
		return m.trims[0].degrees, m.trims[0].from
	case knots >= m.trims[n-1].knots:
		return m.trims[n-1].degrees, m.trims[n-1].from
	}
	for i := 1; i < n; i++ {
		a, b := m.trims[i-1], m.trims[i]
		if knots <= b.knots {
			part := (knots - a.knots) / (b.knots - a.knots)
			return a.degrees + float64(part*(b.degrees-a.degrees)), b.from
		}
	}
	return m.fixed, "assumed"
}

// at evaluates the sheet for the boat at a speed.
func (m *Model) at(knots float64) (*method.Working, error) {
	g := method.GivenMap{}
	for name, q := range m.boat {
		g[name] = q
	}
	degrees, from := m.trim(knots)
	g["planing.speed_kn"] = method.Quantity{Number: knots, Unit: "kn", Source: "the speed that is asked about"}
	g["planing.trim_deg"] = method.Quantity{Number: degrees, Unit: "°", Source: from}
	return m.Sheet.Evaluate("boat", g, nil)
}

// sea evaluates the sheet for a wave height over the working of a speed.
func (m *Model) sea(boat *method.Working, height float64) (*method.Working, error) {
	return m.Sheet.Evaluate("sea", method.GivenMap{"sea.wave_height_m": {Number: height, Unit: "m", Source: "the sea that is asked about"}}, boat)
}

// limit evaluates the sheet for a level over the working of a speed.
func (m *Model) limit(boat *method.Working, l *Level) (*method.Working, error) {
	q := method.Quantity{Number: l.G, Unit: "g", Place: l.Place, Basis: l.Basis, Source: l.Source}
	return m.Sheet.Evaluate("limit", method.GivenMap{"limit.level_g": q}, boat)
}

// Tenth is the mean of the highest tenth of impacts, g, at a speed in knots and a significant wave height in metres;
// outside tells that the formula was not made for these values. ok is false where it gives no number.
func (m *Model) Tenth(knots, height float64) (g float64, outside, ok bool) {
	if m == nil || !(knots > 0) || !(height >= 0) {
		return 0, false, false
	}
	boat, err := m.at(knots)
	if err != nil {
		return 0, false, false
	}
	w, err := m.sea(boat, height)
	if err != nil {
		return 0, false, false
	}
	s, found := w.Get("n_10")
	if !found || s.State != method.Sound && s.State != method.Outside {
		return 0, false, false
	}
	return s.Value, s.State == method.Outside, true
}

// height gives one point of a level's curve.
func (m *Model) height(knots float64, l *Level) (Point, bool) {
	boat, err := m.at(knots)
	if err != nil {
		return Point{}, false
	}
	w, err := m.limit(boat, l)
	if err != nil {
		return Point{}, false
	}
	s, found := w.Get("H_G")
	if !found || s.State != method.Sound && s.State != method.Outside {
		return Point{}, false
	}
	return Point{Knots: knots, Height: math.Max(0, s.Value), Outside: s.State == method.Outside}, true
}
