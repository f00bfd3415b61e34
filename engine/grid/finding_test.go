package grid

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// TestNothingPassesSilently: what cannot be laid, or is laid with a doubt, is told, with its place.
func TestNothingPassesSilently(t *testing.T) {
	for _, c := range []struct {
		what string
		spin func(h *record.Hull)
		rule string
		kind finding.Kind
		says string
		line int
	}{
		{"a stringer outside the hull", func(h *record.Hull) { h.Stringers[0].Offset = w(unit.M(1.4)) }, "stringer-outside", finding.Contradiction, "1400 mm", 50},
		{"a stringer beyond the bow", func(h *record.Hull) { h.Stringers[0].Fore = w(unit.M(7)) }, "stringer-outside", finding.Contradiction, "7.00 m", 50},
		{"a stringer that ends before it begins", func(h *record.Hull) { h.Stringers[0].Aft, h.Stringers[0].Fore = w(unit.M(3)), w(unit.M(3)) }, "stringer-outside", finding.Contradiction, "no length", 50},
		{"a stringer that ends between frames", func(h *record.Hull) { h.Stringers[0].Fore = w(unit.M(4.5)) }, "stringer-ends", finding.Doubt, "frame 4 and frame 5", 50},
		{"a stringer on one side", func(h *record.Hull) { h.Stringers[0].Sides = w("port") }, "stringer-one-side", finding.Doubt, "one side only", 50},
		{"a stringer without a section", func(h *record.Hull) { h.Stringers[0].Section = record.Val[string]{} }, "stringer-without-section", finding.Gap, "L;", 50},
		{"a frame without a section", func(h *record.Hull) {
			h.Frames[2] = record.Frame{Entry: h.Frames[2].Entry, X: h.Frames[2].X}
		}, "frame-without-section", finding.Gap, "frame 3 ", 33},
		{"frames out of order", func(h *record.Hull) { h.Frames[1].X, h.Frames[2].X = h.Frames[2].X, h.Frames[1].X }, "grid-not-derived", finding.Gap, "cannot be those of a hull", 40},
		{"stringers without end", func(h *record.Hull) {
			for range mostCrossings/60/len(h.Frames) + 1 {
				s := h.Stringers[0]
				s.Number = w(60)
				h.Stringers = append(h.Stringers, s)
			}
		}, "grid-not-derived", finding.Gap, "frames and stringers cross at", 40},
		{"no lines", func(h *record.Hull) { h.Stations = nil }, "grid-not-derived", finding.Gap, "not on record", 40},
		{"a frame that stops in the plate", func(h *record.Hull) { h.Frames[2].BottomTo = w(unit.M(0.7)) }, "frame-ends", finding.Doubt, "700 mm", 33},
		{"a zone plated in part", func(h *record.Hull) { h.Platings[0].Fore = w(unit.M(3)) }, "plating-bare", finding.Gap, "50 % of the bottom", 40},
		{"a zone without plate", func(h *record.Hull) { h.Platings = h.Platings[1:] }, "plating-bare", finding.Gap, "no plate of the bottom", 40},
		{"two plates in one place", func(h *record.Hull) {
			h.Platings = append(h.Platings, record.Plating{Entry: named("b2", 44), Zone: w("bottom"), Thickness: w(unit.MM(5)), Alloy: w("5083-H116")})
		}, "plating-twice", finding.Contradiction, "bottom (6 mm) and b2 (5 mm)", 40},
		{"a bulkhead without plate", func(h *record.Hull) { h.Frames[2].Kind = w("bulkhead") }, "bulkhead-plate", finding.Gap, "bulkhead 3", 33},
		{"a fixed joint without a bracket", func(h *record.Hull) { h.Brackets = h.Brackets[:1] }, "joint-without-bracket", finding.Gap, "frames 1, 2, 3, 4, 5: the joint at the chine", 31},
		{"a bracket at a frame without such a joint", func(h *record.Hull) {
			h.Frames[0].Bottom = record.Val[string]{}
			h.Brackets[0].Frames = w([]string{"1"})
		}, "bracket-nowhere", finding.Contradiction, "frame 1", 60},
		{"a fillet larger than the web", func(h *record.Hull) {
			h.Brackets[0].Thickness, h.Brackets[0].Throat = w(unit.MM(8)), w(unit.MM(5))
		}, "bracket-throat", finding.Doubt, "the web of section FB of 6 mm", 1},
		{"a fillet larger than the bracket", func(h *record.Hull) { h.Brackets[0].Throat = w(unit.MM(4)) }, "bracket-throat", finding.Doubt, "the bracket of 5 mm", 1},
		{"a listed panel for one that is not there", func(h *record.Hull) {
			h.Panels = []record.Panel{{Entry: named("B1", 70), Replaces: w([]string{"bottom frames 8-9 strake 1"})}}
		}, "replaces-nothing", finding.Contradiction, "bottom frames 8-9 strake 1", 70},
		{"a listed member for one that is not there", func(h *record.Hull) {
			h.Members = []record.Member{{Entry: named("M1", 71), Replaces: w([]string{"bottom frame 9"})}}
		}, "replaces-nothing", finding.Contradiction, "bottom frame 9", 71},
		{"a stiffener outside the transom", func(h *record.Hull) {
			h.Stiffeners = []record.Stiffener{{Entry: named("T", 80), On: w("transom"), Runs: w("upright"), Offset: w(unit.M(1.5)), Section: w("FB")}}
		}, "stiffener-outside", finding.Contradiction, "outside the plate of the transom", 80},
		{"a sole without a height", func(h *record.Hull) {
			h.Platings = append(h.Platings, record.Plating{Entry: named("sole", 45), Zone: w("sole"), Thickness: w(unit.MM(4)), Alloy: w("5083-H116")})
		}, "sole-height", finding.Gap, "no height", 45},
		{"no draught", func(h *record.Hull) { h.Boat.Draught = record.Val[unit.M]{} }, "grid-draught", finding.Gap, "boat", 40},
		{"a tank of plate without its size", func(h *record.Hull) {
			h.Tanks = []record.Tank{{Entry: named("T", 90), Plate: w(unit.MM(4)), Alloy: w("5083-H116")}}
		}, "tank-plating", finding.Gap, "tank T", 90},
	} {
		h := box6()
		c.spin(h)
		r := derive(h)
		f := found(&r, c.rule)
		if f == nil {
			t.Errorf("%s: not told; findings %v", c.what, r.Findings)
			continue
		}
		if f.Kind != c.kind || !strings.Contains(f.Says, c.says) && f.Subject != c.says || len(f.Places) == 0 || f.Places[0].Line != c.line || f.Settle == "" {
			t.Errorf("%s: %s %s on %s: %s (%v; %s)", c.what, f.Kind, f.Rule, f.Subject, f.Says, f.Places, f.Settle)
		}
	}
}

// TestTwoFramesAtOnePlace: a bay of no length is refused with the lines, which know the order of frames.
func TestTwoFramesAtOnePlace(t *testing.T) {
	h := box6()
	h.Frames[1].X = h.Frames[2].X
	r := derive(h)
	if r.Derived || found(&r, "grid-not-derived") == nil {
		t.Errorf("derived %t, %v", r.Derived, r.Findings)
	}
}

// TestNoGrid: a hull that lists its panels by hand alone has no grid, and no finding about it.
func TestNoGrid(t *testing.T) {
	h := box6()
	h.Platings, h.Stringers = nil, nil
	r := Derive(h, lines.FromRecord(&h.HullFile))
	if r.Given || r.Derived || len(r.Panels)+len(r.Members)+len(r.Findings)+len(r.Assumptions) > 0 {
		t.Errorf("%+v", r)
	}
}
