package scantling_test

import (
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// drawn is a craft and a bottom panel anywhere inside the ranges of the method.
func drawn(t *rapid.T) hand {
	h := hand{
		lwl: rapid.Float64Range(4, 12).Draw(t, "lwl"), bc: rapid.Float64Range(1.2, 3.5).Draw(t, "bc"),
		deadrise: rapid.Float64Range(0, 35).Draw(t, "deadrise"), mass: rapid.Float64Range(600, 20000).Draw(t, "mass"),
		speed:    rapid.Float64Range(4, 50).Draw(t, "speed"),
		category: rapid.SampledFrom([]string{"A", "B", "C", "D"}).Draw(t, "category"),
		zone:     rapid.SampledFrom([]string{"bottom", "side", "deck"}).Draw(t, "zone"),
		top:      0.9, z: rapid.Float64Range(0, 0.9).Draw(t, "z"), short: rapid.Float64Range(120, 600).Draw(t, "short"),
	}
	h.x = h.lwl * rapid.Float64Range(0, 1).Draw(t, "along")
	h.long = h.short * rapid.Float64Range(1, 4).Draw(t, "ratio")
	return h
}

func (r rig) needed(t *rapid.T, h hand, change func(*record.Panel)) (needed, pressure float64) {
	craft, p := h.record()
	if change != nil {
		change(&p)
	}
	craft.Panels = []record.Panel{p}
	out := r.assess(craft)
	if out.Panels[0].Standing == finding.NotShown {
		t.Fatalf("%+v: %s", h, out.Panels[0].Why)
	}
	return float64(out.Panels[0].Needed), out.Panels[0].Pressure
}

// fast reports which mode governs the bottom at a panel: in categories C and D the side follows it.
func (r rig) fast(h hand) bool {
	craft, p := h.record()
	craft.Panels = []record.Panel{p}
	w := r.assess(craft).Panels[0].Working
	slow, _ := w.Value("P_BMD")
	quick, _ := w.Value("P_BMP")
	return quick > slow
}

// Wider spacing never needs less. The rule itself breaks that where a wider side panel of category C or D changes from the
// one mode to the other (own reading: 301.1 lets the side follow the mode that governs the bottom): such draws are left out.
func TestThickerWhenSpacingRises(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h := drawn(t)
		wide := h
		wide.short *= 1.3
		wide.long = max(wide.long, wide.short)
		if h.zone == "side" && r.fast(h) != r.fast(wide) {
			t.Skip("the mode changes")
		}
		before, _ := r.needed(t, h, nil)
		after, _ := r.needed(t, wide, nil)
		if after < before-1e-9 {
			t.Fatalf("%v mm at spacing %v, %v mm at %v", before, h.short, after, wide.short)
		}
	})
}

// A more severe category never lowers the pressure on the bottom or the deck, and thickness follows pressure.
func TestThickerWhenPressureRises(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h := drawn(t)
		h.zone = rapid.SampledFrom([]string{"bottom", "deck"}).Draw(t, "flat zone")
		before, low := 0.0, 0.0
		for _, category := range []string{"D", "C", "B", "A"} {
			h.category = category
			needed, pressure := r.needed(t, h, nil)
			if pressure < low || needed < before {
				t.Fatalf("category %s: %v kN/m² and %v mm after %v and %v", category, pressure, needed, low, before)
			}
			before, low = needed, pressure
		}
	})
}

func TestThinnerWhenTheAlloyIsStronger(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h := drawn(t)
		last := 0.0
		for _, alloy := range []string{"5083-H116", "6082-T6", "5086-H116", "5754-O", "6060-T5"} { // 125, 115, 95, 80, 65 as welded
			needed, _ := r.needed(t, h, func(p *record.Panel) { p.Alloy = put(alloy, 25) })
			if needed < last {
				t.Fatalf("%s: %v mm after %v mm of a stronger alloy", alloy, needed, last)
			}
			last = needed
		}
	})
}

// Beyond a ratio of two the factor for the sides stays, and the area beyond 2.5 b² no longer counts.
func TestLongPanelsAreAlike(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h := drawn(t)
		h.long = 2.5 * h.short
		before, _ := r.needed(t, h, nil)
		h.long = h.short * rapid.Float64Range(2.5, 10).Draw(t, "long")
		after, _ := r.needed(t, h, nil)
		if before != after {
			t.Fatalf("%v mm at 2.5, %v mm at %v", before, after, h.long/h.short)
		}
	})
}

// Curvature never asks for more than flat plate, and a camber that is not written is flat.
func TestCurvedIsNeverThicker(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h := drawn(t)
		flat, _ := r.needed(t, h, nil)
		unwritten, _ := r.needed(t, h, func(p *record.Panel) { p.Camber = record.Val[unit.MM]{} })
		h.camber = h.short * rapid.Float64Range(0, 0.4).Draw(t, "camber")
		curved, _ := r.needed(t, h, nil)
		if curved > flat || unwritten != flat {
			t.Fatalf("curved %v, flat %v, not written %v", curved, flat, unwritten)
		}
	})
}
