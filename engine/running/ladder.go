package running

import "math"

// steps are the hours at which to look at a boat that is run to prove itself: close together at first, when faults of
// workmanship show, then at doubling hours (own practice). Beyond the last the steps are further apart by each.
var steps = [...]float64{0, 20, 50, 100, 200, 350}

const each = 100

// ladder sets the looks on their steps: each belongs to the nearest one.
func (r *Result) ladder() {
	if len(r.Rows) == 0 {
		return
	}
	all := append([]float64(nil), steps[:]...)
	for all[len(all)-1] <= r.Logged {
		all = append(all, all[len(all)-1]+each)
	}
	for _, h := range all {
		r.Ladder = append(r.Ladder, Rung{Hours: h})
	}
	top := 0
	for i := range r.Looks {
		n := nearest(all, r.Looks[i].Run)
		r.Ladder[n].Look = &r.Looks[i]
		top = max(top, n)
	}
	for i := range r.Ladder {
		s := &r.Ladder[i]
		s.Due = s.Look == nil && i > 0 && i > top && s.Hours <= r.Logged
	}
}

func nearest(all []float64, h float64) int {
	best := 0
	for i := range all {
		if math.Abs(all[i]-h) < math.Abs(all[best]-h) {
			best = i
		}
	}
	return best
}
