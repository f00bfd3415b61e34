package manoeuvre

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/tracklog"
)

const (
	metresPerSecond = 1852.0 / 3600.0 // one knot, by definition
	fewestPoints    = 8               // of a circle (practice)
	settled         = 90.0            // degrees of a turn after which its speed has settled (practice)
)

// spot is a place on a flat chart with the moment and the direction in which the boat went.
type spot struct{ t, east, north, toward float64 }

// turn reduces one turning circle. A stream draws the circle out: over one full turn of the course the boat has gone where
// the stream took it, so that way over that time is the drift, and it is taken out of every place before a circle is fitted.
func turn(t *record.Trial, rec *record.Turning, logs *tracklog.Result, boat *record.Boat) Turning {
	m := Turning{
		Trial: t, Record: rec, Move: logs.Find(t, "turning", rec.ID),
		Diameter: figure("diameter", "m", 0, rec.Diameter), Seconds: figure("time through the circle", "s", 0, rec.Seconds),
		Tactical: Figure{Name: "tactical diameter", Sign: "m"},
	}
	all, why := points(m.Move)
	if why == "" {
		why = m.fit(spots(all))
	}
	if why != "" {
		m.Why, m.Diameter.Why, m.Seconds.Why, m.Tactical.Why = why, why, why, why
	}
	m.Lengths = lengths(&m.Diameter, boat)
	return m
}

// spots lays the track on a flat chart and makes the direction run on past north instead of falling back to nought.
func spots(all []tracklog.Point) []spot {
	var out []spot
	var plane tracklog.Plane
	for i := range all {
		p := &all[i]
		if !p.Placed() || math.IsNaN(p.Toward) {
			continue
		}
		if p.Break && len(out) > 0 {
			break // nothing is reckoned across a gap
		}
		if len(out) == 0 {
			plane = tracklog.PlaneAt(p.Lat, p.Lon)
		}
		s := spot{t: p.Time, toward: p.Toward}
		s.east, s.north = plane.At(p.Lat, p.Lon)
		if n := len(out); n > 0 {
			s.toward = out[n-1].toward + math.Remainder(p.Toward-out[n-1].toward, 360)
		}
		out = append(out, s)
	}
	return out
}

// fit reduces the circle, or says why there is none.
func (m *Turning) fit(all []spot) string {
	if len(all) < fewestPoints {
		return "the log has too few positions with a course"
	}
	full, ok := turnedBy(all, 360)
	if !ok {
		return "the course does not turn through a full circle"
	}
	from, to := all[0], full
	if later, ok := turnedBy(all, 360+settled); ok { // the boat loses speed as it begins to turn; that is no drift
		from, _ = turnedBy(all, settled)
		to = later
	}
	seconds := to.t - from.t
	east, north := (to.east-from.east)/seconds, (to.north-from.north)/seconds
	m.Drift, m.DriftTo = math.Hypot(east, north)/metresPerSecond, math.Mod(math.Atan2(east, north)*180/math.Pi+360, 360)
	var still, round []spot
	for _, s := range all {
		since := s.t - from.t
		s.east -= float64(east * since)
		s.north -= float64(north * since)
		still = append(still, s)
		if s.t >= from.t && s.t <= to.t {
			round = append(round, s)
		}
	}
	radius, residue, ok := circle(round)
	if !ok {
		return "the track lies on no circle"
	}
	m.HasLog, m.Residue = true, residue
	m.Diameter.from(2*radius, true, "")
	m.Seconds.from(full.t-all[0].t, true, "")
	if half, ok := turnedBy(still, 180); ok {
		m.Tactical.from(aside(still[0], half), true, "")
	}
	return ""
}

// turnedBy gives the place at which the course has turned so many degrees, to either side, between two points in proportion.
func turnedBy(all []spot, deg float64) (spot, bool) {
	for i := 1; i < len(all); i++ {
		a, b := math.Abs(all[i-1].toward-all[0].toward), math.Abs(all[i].toward-all[0].toward)
		if a < deg && b >= deg {
			part := (deg - a) / (b - a)
			mix := func(x, y float64) float64 { return x + float64(part*(y-x)) }
			return spot{mix(all[i-1].t, all[i].t), mix(all[i-1].east, all[i].east), mix(all[i-1].north, all[i].north), mix(all[i-1].toward, all[i].toward)}, true
		}
	}
	return spot{}, false
}

// aside gives how far a place lies to the side of the approach.
func aside(from, at spot) float64 {
	sin, cos := math.Sincos(from.toward * math.Pi / 180)
	return math.Abs(float64((at.east-from.east)*cos) - float64((at.north-from.north)*sin))
}

// circle fits a circle by least squares of x² + y² = 2ax + 2by + c about the mean place, and gives its radius and by how
// much the places stray from it. Source: own derivation of the normal equations.
func circle(all []spot) (radius, residue float64, ok bool) {
	n := float64(len(all))
	var x0, y0 float64
	for _, s := range all {
		x0 += s.east / n
		y0 += s.north / n
	}
	var xx, xy, yy, xz, yz, zz float64
	for _, s := range all {
		x, y := s.east-x0, s.north-y0
		z := float64(x*x) + float64(y*y)
		xx += float64(x * x)
		xy += float64(x * y)
		yy += float64(y * y)
		xz += float64(x * z)
		yz += float64(y * z)
		zz += z
	}
	det := float64(xx*yy) - float64(xy*xy)
	if n < 3 || det <= 1e-9*float64(zz*zz) {
		return 0, 0, false
	}
	a := (float64(xz*yy) - float64(yz*xy)) / (2 * det)
	b := (float64(yz*xx) - float64(xz*xy)) / (2 * det)
	radius = math.Sqrt(zz/n + float64(a*a) + float64(b*b))
	var squares float64
	for _, s := range all {
		d := math.Hypot(s.east-x0-a, s.north-y0-b) - radius
		squares += float64(d * d)
	}
	return radius, math.Sqrt(squares / n), true
}
