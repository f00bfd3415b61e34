package tracklog

import "math"

// Measure is one quantity over a stretch of a log: how many samples, their mean, the least and the greatest.
type Measure struct {
	N           int
	Mean        float64
	Least, Most float64

	squares float64 // sum of squared departures from the mean
}

// take adds a value by Welford's method, which keeps its precision however long the log is.
func (m *Measure) take(v float64) {
	if !known(v) {
		return
	}
	m.N++
	if m.N == 1 {
		m.Mean, m.Least, m.Most = v, v, v
		return
	}
	d := v - m.Mean
	m.Mean += d / float64(m.N)
	m.squares += float64(d * (v - m.Mean))
	m.Least, m.Most = min(m.Least, v), max(m.Most, v)
}

// SD is the standard deviation of single values; nought for fewer than two.
func (m *Measure) SD() float64 {
	if m.N < 2 {
		return 0
	}
	return math.Sqrt(m.squares / float64(m.N-1))
}

// Has reports whether there was any value.
func (m *Measure) Has() bool { return m.N > 0 }

// Spread is the greatest less the least.
func (m *Measure) Spread() float64 { return m.Most - m.Least }

// Direction gathers directions in degrees, with how far they reach to both sides of the first.
type Direction struct {
	N           int
	Left, Right float64 // greatest turn to both sides of the first, degrees

	first, sin, cos float64
}

func (d *Direction) take(deg float64) {
	if !known(deg) {
		return
	}
	if d.N == 0 {
		d.first = deg
	}
	d.N++
	sin, cos := math.Sincos(deg * radian)
	d.sin += sin
	d.cos += cos
	away := turned(d.first, deg)
	d.Left, d.Right = min(d.Left, away), max(d.Right, away)
}

// Mean is the direction of the sum of all, as unit vectors; 0 to 360.
func (d *Direction) Mean() float64 { return round360(math.Atan2(d.sin, d.cos) / radian) }

// Has reports whether there was any direction.
func (d *Direction) Has() bool { return d.N > 0 }

// Spread is how far the directions reach from the one furthest to the left to the one furthest to the right.
func (d *Direction) Spread() float64 { return d.Right - d.Left }
