package grid

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// measure is a panel measured on the plate, metres.
type measure struct {
	breadth, long float64
	aft, fore     float64 // breadth at its ends
	tapers        bool
	rise          float64 // over the breadth
	middle        hydrostatics.Vector
	deadrise      float64
	corners       []hydrostatics.Vector
	flat          [][2]float64
	area          float64
}

// taken says from which taper on a breadth is told for both ends.
const taken = 0.02

// measure takes the sides of a panel along the frames and along its middle. Where it tapers, the greater breadth counts.
func (b *builder) measure(c *cell) measure {
	f, mid := c.f, (c.aft.x+c.fore.x)/2
	at := f.course(mid)
	in, out := f.girth(c.inner, mid, at), f.girth(c.outer, mid, at)
	m := measure{middle: at.point((in + out) / 2), rise: at.sag(in, out)}
	m.aft, m.fore = b.breadth(c, c.aft), b.breadth(c, c.fore)
	m.breadth = max(m.aft, m.fore, out-in)
	if c.across {
		m.aft, m.fore, m.breadth = 2*m.aft, 2*m.fore, 2*m.breadth
		m.middle = at.point(0)
		m.rise = math.Abs(at.point(0).Z - at.point(out).Z)
	}
	m.tapers = math.Abs(m.aft-m.fore) > taken*m.breadth
	m.long = distance(b.center(c, c.aft), m.middle) + distance(m.middle, b.center(c, c.fore))
	m.deadrise = b.skin.at(mid).station.Deadrise()
	b.outline(c, &m)
	return m
}

// breadth is that of a panel at a stop, along the frame.
func (b *builder) breadth(c *cell, s stop) float64 {
	on := c.f.course(s.x)
	return max(c.f.girth(c.outer, s.x, on)-c.f.girth(c.inner, s.x, on), 0)
}

// center is the point half way across a panel at a stop.
func (b *builder) center(c *cell, s stop) hydrostatics.Vector {
	if c.across {
		return b.point(c.f, s, 0)
	}
	on := c.f.course(s.x)
	return b.point(c.f, s, (c.f.girth(c.inner, s.x, on)+c.f.girth(c.outer, s.x, on))/2)
}

// point is a point of a field at a stop by its girth, leaned where the stop is a raked transom; a girth below nought is to
// port.
func (b *builder) point(f *field, s stop, g float64) hydrostatics.Vector {
	if g < 0 {
		return mirrored(b.point(f, s, -g))
	}
	p := f.course(s.x).point(g)
	if s.lean {
		p = b.skin.leaned(p)
	}
	return p
}

// outline draws the panel to starboard: its corners, and points at the stations and in the curve that it goes through.
func (b *builder) outline(c *cell, m *measure) {
	xs := append([]float64{c.aft.x}, b.skin.between(c.aft.x, c.fore.x, c.aft.lean)...)
	xs = append(xs, c.fore.x)
	parts := 1
	for _, x := range xs {
		if c.f.course(x).bent() {
			parts = 4
		}
	}
	if c.across {
		parts *= 2
	}
	var rows [][]hydrostatics.Vector
	var flats [][][2]float64
	for i, x := range xs {
		row, flat := b.row(c, stop{x: x, lean: i == 0 && c.aft.lean}, parts)
		rows, flats = append(rows, row), append(flats, flat)
	}
	for i := 1; i < len(rows); i++ {
		for k := range parts {
			m.area += hydrostatics.Triangle(rows[i-1][k], rows[i-1][k+1], rows[i][k+1]) + hydrostatics.Triangle(rows[i-1][k], rows[i][k+1], rows[i][k])
		}
	}
	m.corners, m.flat = round(rows, parts), round(flats, parts)
}

// row gives points across the panel at a station, from its inner to its outer edge.
func (b *builder) row(c *cell, s stop, parts int) ([]hydrostatics.Vector, [][2]float64) {
	f := c.f
	on := f.course(s.x)
	in, out := f.girth(c.inner, s.x, on), f.girth(c.outer, s.x, on)
	if c.across {
		in = -out
	}
	base := f.base(s.x)
	row, flat := make([]hydrostatics.Vector, parts+1), make([][2]float64, parts+1)
	for k := range parts + 1 {
		g := in + float64(float64(k)/float64(parts)*(out-in))
		row[k] = b.point(f, s, g)
		flat[k] = [2]float64{row[k].X, base + g}
	}
	return row, flat
}

// round goes once round rows of points.
func round[T any](rows [][]T, parts int) []T {
	var out []T
	out = append(out, rows[0]...)
	for _, r := range rows[1 : len(rows)-1] {
		out = append(out, r[parts])
	}
	last := rows[len(rows)-1]
	for k := parts; k >= 0; k-- {
		out = append(out, last[k])
	}
	for i := len(rows) - 2; i > 0; i-- {
		out = append(out, rows[i][0])
	}
	return out
}
