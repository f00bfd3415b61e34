package site

import (
	"testing"

	"hullfile/site/chart"
)

// A run is drawn among so many others and no more, and always among them itself: own arithmetic.
func TestARunIsDrawnAmongTheNextOnes(t *testing.T) {
	for _, r := range []struct{ runs, own, legs, left, at int }{
		{25, 24, 25, 0, 24}, {26, 0, 25, 1, 0}, {100, 0, 25, 75, 0}, {100, 50, 25, 75, 12}, {100, 99, 25, 75, 24},
	} {
		legs := make([]chart.Leg, r.runs)
		legs[r.own].Main = true
		near, left := nearLegs(legs)
		if len(near) != r.legs || left != r.left || !near[r.at].Main {
			t.Errorf("run %d of %d is drawn among %d, %d left out, itself at %d: %v", r.own, r.runs, len(near), left, r.at, near[r.at].Main)
		}
	}
}
