package lines

import (
	"math"
	"testing"

	"hullfile/engine/record"
)

// Seams of the prism: keel once, chine and sheer on both sides, and round the transom. Own arithmetic.
func TestSeamsOfThePrism(t *testing.T) {
	bottom, side := math.Hypot(0.95, 0.308674), math.Hypot(0.15, 0.85-0.308674)
	z := prism().seams()
	near(t, "seams", z.Length, 5*6+2*(bottom+side), 1e-9)
	near(t, "their centre", z.X, 5*6*3/z.Length, 1e-9)
}

func TestNoZonesWithoutLines(t *testing.T) {
	if got := Zones(&record.Hull{}); got != nil {
		t.Errorf("%v without stations", got)
	}
}
