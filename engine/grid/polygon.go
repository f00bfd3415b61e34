package grid

import (
	"math"

	"hullfile/engine/hydrostatics"
)

type point = hydrostatics.Point

// side of a straight cut through a plate.
type half struct {
	up    bool // cut at a height, and not at a half breadth
	at    float64
	above bool // keep what lies above or outside
}

// inside is how far a point lies on the kept side.
func (h half) inside(p point) float64 {
	v := p.Y
	if h.up {
		v = p.Z
	}
	if h.above {
		return v - h.at
	}
	return h.at - v
}

// clip keeps what lies on one side of a straight cut (Sutherland and Hodgman).
func clip(poly []point, h half) []point {
	var out []point
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		a, b := h.inside(p), h.inside(q)
		if a >= 0 {
			out = append(out, p)
		}
		if a*b < 0 {
			t := a / (a - b)
			out = append(out, point{Y: p.Y + float64(t*(q.Y-p.Y)), Z: p.Z + float64(t*(q.Z-p.Z))})
		}
	}
	return out
}

// area of a polygon.
func area(poly []point) float64 {
	sum := 0.0
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		sum += float64(p.Y*q.Z) - float64(q.Y*p.Z)
	}
	return math.Abs(sum) / 2
}

// box is the least and greatest half breadth and height of a polygon.
func box(poly []point) (inner, outer, low, high float64) {
	inner, outer, low, high = math.Inf(1), math.Inf(-1), math.Inf(1), math.Inf(-1)
	for _, p := range poly {
		inner, outer = min(inner, p.Y), max(outer, p.Y)
		low, high = min(low, p.Z), max(high, p.Z)
	}
	return inner, outer, low, high
}

// upright gives the heights between which a polygon is cut by an upright line.
func upright(poly []point, y float64) (low, high float64, ok bool) {
	low, high = math.Inf(1), math.Inf(-1)
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		if min(p.Y, q.Y) > y || max(p.Y, q.Y) < y {
			continue
		}
		if p.Y == q.Y {
			low, high = min(low, p.Z, q.Z), max(high, p.Z, q.Z)
			continue
		}
		z := p.Z + float64((y-p.Y)/(q.Y-p.Y)*(q.Z-p.Z))
		low, high = min(low, z), max(high, z)
	}
	return low, high, high > low
}

// level gives the half breadth at which a polygon is cut by a level line, from the centre line.
func level(poly []point, z float64) (outer float64, ok bool) {
	for i, p := range poly {
		q := poly[(i+1)%len(poly)]
		if min(p.Z, q.Z) > z || max(p.Z, q.Z) < z {
			continue
		}
		y := max(p.Y, q.Y)
		if p.Z != q.Z {
			y = p.Y + float64((z-p.Z)/(q.Z-p.Z)*(q.Y-p.Y))
		}
		outer, ok = max(outer, y), true
	}
	return outer, ok
}
