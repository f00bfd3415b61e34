package grid

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// course is a line across a zone at one station, from its inner or lower edge outwards, with the girth at every point.
type course struct {
	at    []hydrostatics.Vector
	girth []float64
}

func newCourse(pts []hydrostatics.Vector) course {
	c := course{at: pts, girth: make([]float64, len(pts))}
	for i := 1; i < len(pts); i++ {
		c.girth[i] = c.girth[i-1] + distance(pts[i-1], pts[i])
	}
	return c
}

// long is the girth from edge to edge.
func (c course) long() float64 { return c.girth[len(c.girth)-1] }

// point gives the point at a girth; outside the course the end point.
func (c course) point(g float64) hydrostatics.Vector {
	if g <= 0 {
		return c.at[0]
	}
	for i := 1; i < len(c.at); i++ {
		if g <= c.girth[i] {
			return between(c.at[i-1], c.at[i], part(g, c.girth[i-1], c.girth[i]))
		}
	}
	return c.at[len(c.at)-1]
}

// bent reports whether the course has a corner or a curve between its ends.
func (c course) bent() bool { return c.sag(0, c.long()) > 1e-6 }

// sag is how far the course leaves the straight line between two of its points, the greatest distance, metres.
func (c course) sag(from, to float64) float64 {
	p, q := c.point(from), c.point(to)
	most := 0.0
	for i, g := range c.girth {
		if g > from && g < to {
			most = math.Max(most, offLine(c.at[i], p, q))
		}
	}
	return most
}

// offLine is the distance of a point from the line through p and q.
func offLine(v, p, q hydrostatics.Vector) float64 {
	d, w := q.Less(p), v.Less(p)
	long := d.Dot(d)
	if long == 0 {
		return math.Sqrt(w.Dot(w))
	}
	foot := between(p, q, w.Dot(d)/long)
	return distance(foot, v)
}

func part(g, from, to float64) float64 {
	if to <= from {
		return 0
	}
	return (g - from) / (to - from)
}

func between(p, q hydrostatics.Vector, t float64) hydrostatics.Vector {
	return hydrostatics.Vector{X: p.X + float64(t*(q.X-p.X)), Y: p.Y + float64(t*(q.Y-p.Y)), Z: p.Z + float64(t*(q.Z-p.Z))}
}

func distance(p, q hydrostatics.Vector) float64 {
	d := q.Less(p)
	return math.Sqrt(d.Dot(d))
}

// mirrored is the same point on the other side.
func mirrored(v hydrostatics.Vector) hydrostatics.Vector {
	v.Y = -v.Y
	return v
}
