package weldmap

import (
	"math"

	"hullfile/engine/record"
)

// aside is how far from a seam, on the unrolled skin, both ends of a joint may lie to be a stretch of it,
// metres: what a drawing is read to.
const aside = 0.15

// bulge is how far the middle may lie off: a joint is written by its ends, and its seam may be curved between them.
const bulge = 0.5

// liesOn finds the seam that a joint lies on by the ends that its record gives; below nought where there is none.
func (r *Result) liesOn(j *record.Joint) int {
	if !j.AftX.Set || !j.AftGirth.Set || !j.ForeX.Set || !j.ForeGirth.Set {
		return -1
	}
	a := [2]float64{float64(j.AftX.V), float64(j.AftGirth.V)}
	b := [2]float64{float64(j.ForeX.V), float64(j.ForeGirth.V)}
	mid := [2]float64{(a[0] + b[0]) / 2, (a[1] + b[1]) / 2}
	best, least := -1, aside
	for i := range r.Rows {
		s := r.Rows[i].Seam
		if len(s.Flat) < 2 || s.Type != j.Type.V || !sameWay(s.Flat, a, b) {
			continue
		}
		far := max(off(s.Flat, a), off(s.Flat, b))
		if far < least && off(s.Flat, mid) < bulge {
			best, least = i, far
		}
	}
	return best
}

// sameWay reports whether a seam and a joint both run along the boat, or both across it.
func sameWay(seam [][2]float64, a, b [2]float64) bool {
	p, q := seam[0], seam[len(seam)-1]
	along := func(p, q [2]float64) bool { return math.Abs(q[0]-p[0]) > math.Abs(q[1]-p[1]) }
	return along(p, q) == along(a, b)
}

// off is the distance of a point from a line.
func off(line [][2]float64, v [2]float64) float64 {
	least := math.Inf(1)
	for i := 1; i < len(line); i++ {
		p, q := line[i-1], line[i]
		dx, dy := q[0]-p[0], q[1]-p[1]
		t := 0.0
		if l := float64(dx*dx) + float64(dy*dy); l > 0 {
			t = min(max((float64((v[0]-p[0])*dx)+float64((v[1]-p[1])*dy))/l, 0), 1)
		}
		least = min(least, math.Hypot(v[0]-p[0]-float64(t*dx), v[1]-p[1]-float64(t*dy)))
	}
	return least
}
