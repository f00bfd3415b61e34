package lines

import (
	"math"
	"testing"

	"hullfile/engine/hydrostatics"
)

// A transom raked by 20° adds the wedge that lies aft of the first station and above the leaning face.
func TestRakedTransom(t *testing.T) {
	h := prism()
	h.Rake = 20
	lean := math.Tan(20 * math.Pi / 180)
	near(t, "aft end at the sheer", h.AftEnd(), -0.85*lean, 1e-12)

	body, err := h.Body(false)
	if err != nil {
		t.Fatal(err)
	}
	straight, _ := prism().Body(false)
	deep := hydrostatics.Attitude{Level: 5}
	// own arithmetic: the wedge is the section's first moment about the keel times the lean; the lower part of the section is
	// a triangle of half breadth 0.95 and height 0.308674, the upper a trapezium from 0.95 to 1.10.
	z1, z2 := 0.308674, 0.85
	lower := 2 * 0.95 * z1 * z1 / 3
	slope := (1.10 - 0.95) / (z2 - z1)
	upper := 2 * ((0.95-slope*z1)*(z2*z2-z1*z1)/2 + slope*(z2*z2*z2-z1*z1*z1)/3)
	near(t, "volume of the wedge", body.Immerse(deep).Volume-straight.Immerse(deep).Volume, (lower+upper)*lean, 2e-4)

	plain := map[string]float64{}
	for _, s := range prism().Skins() {
		plain[s.Zone] = s.Area
	}
	for _, s := range h.Skins() {
		switch s.Zone {
		case "transom":
			near(t, "transom, own arithmetic: area over cos 20°", s.Area, plain["transom"]/math.Cos(20*math.Pi/180), 1e-9)
		case "deck":
			near(t, "deck, own arithmetic: runs on to the aft end", s.Area, plain["deck"]+2.2*0.85*lean, 1e-9)
		case "side":
			near(t, "side, own arithmetic", s.Area, plain["side"]+2*math.Hypot(0.15, z2-z1)*(z1+z2)/2*lean, 1e-9)
		}
	}

	a, err := h.Float(load())
	if err != nil {
		t.Fatal(err)
	}
	if !(a.LengthWL > 6) || a.LengthWL > 6+a.Draught*lean*1.05 {
		t.Errorf("waterline %.3f m with draught %.3f m; the water meets the leaning face aft of the keel", a.LengthWL, a.Draught)
	}
}

func TestNoRakeChangesNothing(t *testing.T) {
	h := prism()
	if n := len(h.wedge(false)); n != 0 || h.AftEnd() != 0 {
		t.Errorf("an upright transom has %d slices and its aft end at %g", n, h.AftEnd())
	}
}
