package stability

import (
	"math"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Table of the hard-chine prism at 1500 kg and 0.55 m, reckoned independently of this program.
func TestPrismCondition(t *testing.T) {
	r := assess(t, boat(), prism())
	c := r.Conditions[len(r.Conditions)-2]
	if c.Loading.Kind != "loaded ready" {
		t.Fatalf("conditions %v", c.Loading.Kind)
	}
	near(t, "mass", c.Loading.Mass, 1500, 1e-9)
	near(t, "height of the centre, own arithmetic: (1200 × 0.4 + 300 × 1.15) / 1500", c.Loading.Centre.Z, 0.55, 1e-9)
	near(t, "area 0 to 30°", c.Areas[0], .125181, 5e-5)
	near(t, "area 0 to 40°", c.Areas[1], .198223, 5e-5)
	near(t, "area 30 to 40°", c.Areas[2], .073042, 5e-5)
	if len(c.Sides) != 1 {
		t.Fatalf("a symmetrical boat has %d sides", len(c.Sides))
	}
	edge := c.Sides[0].Unders[0]
	if edge.Name != "deck edge" || edge.Never {
		t.Fatalf("%+v", edge)
	}
	near(t, "gunwale goes under", edge.Heel, 37.11, 0.02)
	if !c.Sides[0].Flooding.Never || c.Sides[0].Limit != 180 {
		t.Errorf("a decked boat without a way in floods: %+v", c.Sides[0].Flooding)
	}
	for _, h := range r.Heelings {
		if h.Name == "everybody to one side, TP 14619" {
			near(t, "four people 0.6 m off the centre line", h.Heel, 5.211, 0.02)
		}
	}
	near(t, "wind of 603.17 N·m", c.heeled("wind", 603.17, false).Heel, 1.651, 0.01)
}

// An open boat counts to where its gunwale goes under, and no area beyond.
func TestOpenBoatStopsAtTheGunwale(t *testing.T) {
	h := boat()
	h.Lines.Sides = set("open")
	r := assess(t, h, prism())
	c := r.find("loaded ready")
	near(t, "flooding", c.Sides[0].Limit, 37.11, 0.02)
	near(t, "area to 40 ends at flooding", c.Areas[1], c.Sides[0].Curve.Area(0, c.Sides[0].Limit*degree), 1e-12)
	h.Lines.Sides = record.Val[string]{}
	if r := assess(t, h, prism()); r.find("loaded ready").Sides[0].Flooding.Never {
		t.Error("a boat whose decking is not written was taken as decked")
	}
}

func (r Result) find(kind string) *Condition {
	for i := range r.Conditions {
		if r.Conditions[i].Loading.Kind == kind {
			return &r.Conditions[i]
		}
	}
	return nil
}

// A centre off to port, or a way in on one side, makes the two sides differ; mirrored, they change places.
func TestSidesChangePlaces(t *testing.T) {
	star, port := boat(), boat()
	star.Weights[0].Y, port.Weights[0].Y = set(unit.M(0.05)), set(unit.M(-0.05))
	a, b := assess(t, star, prism()).find("loaded ready"), assess(t, port, prism()).find("loaded ready")
	if len(a.Sides) != 2 || len(b.Sides) != 2 {
		t.Fatalf("%d and %d sides", len(a.Sides), len(b.Sides))
	}
	for _, heel := range []float64{5, 20, 40, 70} {
		x, _ := a.Sides[0].Curve.At(heel * degree)
		y, _ := b.Sides[1].Curve.At(heel * degree)
		near(t, "lever to the heavy side", x, y, 1e-6)
	}
	if a.Sides[0].Greatest >= a.Sides[1].Greatest {
		t.Error("the heavy side rights itself better")
	}
	h, l := boat(), prism()
	l.Openings = []lines.Opening{{ID: "vent", Name: "vent", At: []hydrostatics.Vector{{X: 3, Y: 0.9, Z: 0.9}}}}
	c := assess(t, h, l).find("loaded ready")
	if len(c.Sides) != 2 || c.Sides[0].Limit >= c.Sides[1].Limit || c.worse().Name != "starboard" {
		t.Errorf("a vent to starboard: floods at %.1f and %.1f", c.Sides[0].Limit, c.Sides[1].Limit)
	}
}

// A cockpit that does not drain: its rim is a way in, and the boat with it open floats lower.
func TestUndrainedCockpit(t *testing.T) {
	l := prism()
	l.Recesses = []lines.Recess{{ID: "cockpit", Aft: 1, Fore: 4, Half: 0.8, Sole: 0.2}}
	h := boat()
	h.Lines.Sides = set("partly decked")
	c := assess(t, h, l).find("loaded ready")
	if c.Open == nil {
		t.Fatal("no curve with the cockpit open to the water")
	}
	if c.Sides[0].Flooding.Never || c.Sides[0].Flooding.Name != "rim of the cockpit" {
		t.Errorf("%+v", c.Sides[0].Flooding)
	}
	if dry, wet := c.Sides[0].Curve.Points[0].Level, c.Open.Curve.Points[0].Level; !(wet > dry+0.01) {
		t.Errorf("water at %.3f m dry, at %.3f m with the cockpit open", dry, wet)
	}
	l.Recesses[0].Drains, l.Recesses[0].Sole = true, 0.45
	if c := assess(t, h, l).find("loaded ready"); c.Open != nil || !c.Sides[0].Flooding.Never {
		t.Error("a cockpit that drains lets water in")
	}
}

func TestNothingFloats(t *testing.T) {
	h := boat()
	h.Weights[0].Mass = set(unit.KG(30000))
	r := assess(t, h, prism())
	if len(r.Checks) != 1 || r.Checks[0].Rule != "stability" || r.Checks[0].Standing != finding.NotShown {
		t.Errorf("%+v", r.Checks)
	}
	if r := assess(t, boat(), &lines.Hull{}); len(r.Checks)+len(r.Findings) != 0 {
		t.Errorf("a hull without lines is judged: %+v", r.Checks)
	}
}

// More moment gives more heel, and never less freeboard is left on the way.
func TestMoreMomentMoreHeel(t *testing.T) {
	h := boat()
	h.Lines.Sides = set("open")
	c := assess(t, h, prism()).find("loaded ready")
	last := Heeling{Heel: -1, Least: math.Inf(1)}
	rested := 0
	for m := 0.0; m <= 8000; m += 250 {
		now := c.heeled("crew", m, true)
		if !now.Rests {
			break
		}
		rested++
		if now.Heel < last.Heel || now.Least > last.Least+1e-9 {
			t.Fatalf("at %g N·m: heel %.3f after %.3f, least height %.4f after %.4f", m, now.Heel, last.Heel, now.Least, last.Least)
		}
		last = now
	}
	if rested < 5 || rested > 32 {
		t.Errorf("%d moments were carried before the gunwale went under", rested)
	}
}
