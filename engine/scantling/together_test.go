package scantling_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

func vec(x, y, z float64) hydrostatics.Vector { return hydrostatics.Vector{X: x, Y: y, Z: z} }

// flatBottom is a bottom of 1 m from keel to chine between two bulkheads 1.5 m apart: two frames at 0.5 and 1.0 m that are
// short alone, and one girder halfway out, whose bar is given.
func flatBottom(h *record.Hull, bar, girder string) *grid.Result {
	g := &grid.Result{Derived: true}
	ends := grid.Grillage{Name: "bottom, bulkhead 1 to bulkhead 4"}
	joint := func(name string, x, y float64, held string, fixed bool) int {
		ends.Joints = append(ends.Joints, grid.Joint{Name: name, At: vec(x, y, 0), Held: held, Fixed: fixed})
		return len(ends.Joints) - 1
	}
	along := []int{joint("girder", 0, 0.5, "bulkhead 1", true)}
	for _, x := range []float64{0.5, 1.0} {
		m := frame(fmt.Sprintf("frame %v", x), bar)
		m.Span, m.Spacing = put(unit.MM(1000), 57), put(unit.MM(500), 58)
		g.Members = append(g.Members, m)
		k, c, f := joint("keel", x, 0, "keel", true), joint("girder", x, 0.5, "", true), joint("chine", x, 1, "chine", true)
		along = append(along, c)
		for _, ends2 := range [][2]int{{k, c}, {c, f}} {
			ends.Frames = append(ends.Frames, grid.Span{Member: m.ID, From: ends2[0], To: ends2[1], Section: bar, Attached: 6, Zone: "bottom", Width: 0.5})
		}
	}
	along = append(along, joint("girder", 1.5, 0.5, "bulkhead 4", true))
	lower := stringer("girder", girder)
	lower.Kind, lower.Role = put("girder", 51), put("primary", 52)
	lower.Span, lower.Spacing = put(unit.MM(500), 57), put(unit.MM(500), 58)
	g.Members = append(g.Members, lower)
	for i := 1; i < len(along); i++ {
		ends.Lengths = append(ends.Lengths, grid.Span{Member: "girder", From: along[i-1], To: along[i], Section: girder, Attached: 6, Zone: "bottom", Width: 0.5})
	}
	g.Grillages = []grid.Grillage{ends}
	return g
}

func (r rig) laid(h *record.Hull, g *grid.Result) scantling.Result {
	h.Panels = []record.Panel{bottom("B3", 6)}
	return scantling.Assess(scantling.Input{Hull: h, Library: r.lib, Alloys: r.alloys, Grid: g})
}

// A frame that is short alone is held by a stiff girder: the standing stays that of the rule, unless the yard lets the model
// decide, and then it says so.
func TestNeighboursHold(t *testing.T) {
	r := whole(t)
	h := boat("C")
	g := flatBottom(h, flatBar(h, 80, 7), flatBar(h, 150, 12))
	out := r.laid(h, g)
	f := out.Members[0]
	if len(out.Models) != 1 || !out.Models[0].Solved {
		t.Fatalf("%+v", out.Models)
	}
	if f.Standing != finding.Short || len(f.Together) != 1 || f.Together[0].Ratio >= 1 || f.Together[0].Margin < 1 || f.Together[0].Decides {
		t.Fatalf("%s %+v", f.Standing, f.Together)
	}
	if !strings.Contains(f.Together[0].Says, "the standing stays that of the rule") {
		t.Errorf("says %q", f.Together[0].Says)
	}
	h.Rules.FramesBy = put("grillage", 12)
	out = r.laid(h, g)
	f = out.Members[0]
	if f.Standing != finding.Met || !f.Together[0].Decides || f.Margin < 1 {
		t.Errorf("%s by %s", f.Standing, f.Governs)
	}
	for _, c := range out.Checks {
		if c.Subject == "member frame 0.5" && (c.Standing != finding.Met || !strings.Contains(c.Says, "among its neighbours")) {
			t.Errorf("%+v", c)
		}
	}
}

// Without a girder that carries, the model gives the frame back its own span: the load of the fields at keel and chine goes
// to these at once, so it is a little less than w l²/12.
func TestAlmostAlone(t *testing.T) {
	r := whole(t)
	h := boat("C")
	g := flatBottom(h, flatBar(h, 110, 8), flatBar(h, 12, 3))
	out := r.laid(h, g)
	f := out.Members[0]
	if ratio := f.Together[0].Ratio; !(ratio > 0.7 && ratio < 1) {
		t.Errorf("ratio %v", ratio)
	}
}

// A ring of one bar between fixed ends is the formula for one span.
func TestRingOfOneSpan(t *testing.T) {
	r := whole(t)
	h := boat("C")
	m := frame("bottom frame 3", flatBar(h, 110, 8))
	m.Span = put(unit.MM(1000), 57)
	g := &grid.Result{Derived: true, Members: []record.Member{m}, Rings: []grid.Ring{{Frame: "3", X: 2,
		Joints: []grid.Joint{{Name: "keel", At: vec(2, 0, 0), Fixed: true}, {Name: "chine", At: vec(2, 0.8, 0.6), Fixed: true}},
		Spans:  []grid.Span{{Member: m.ID, From: 0, To: 1, Section: "110x8", Attached: 6, Zone: "bottom", Width: 0.5}}}}}
	out := r.laid(h, g)
	if !out.Models[0].Solved {
		t.Fatal(out.Models[0].Why)
	}
	w := out.Members[0].Pressure * 0.5
	got := out.Members[0].Together[0]
	// The chine turns freely, because nothing else is joined to it: a span fixed at one end and held at the other, whose
	// held end gives by w l⁴/8EI + w l²/2GA under the load and by R l³/3EI + R l/GA under what holds it.
	ei, ga := 70000*float64(out.Members[0].Fitted.I)*1e-5, 70000/2.66*float64(out.Members[0].Fitted.Web)*0.1
	held := w * (1/(8*ei) + 1/(2*ga)) / (1/(3*ei) + 1/ga)
	close2(t, "handbook: w l²/2 - R l at the fixed end", got.Moment, w/2-held, 1e-6)
	close2(t, "handbook: w l - R", got.Shear, w-held, 1e-6)
	bars := out.Models[0].Bars
	if len(bars) != 1 || math.Abs(bars[0].Length-1) > 1e-12 || len(bars[0].At) < 11 || bars[0].At[5].Moves <= 0 {
		t.Errorf("%+v", bars)
	}
	for i := 1; i < len(bars[0].At); i++ {
		if bars[0].At[i].At <= bars[0].At[i-1].At {
			t.Errorf("places out of order: %+v", bars[0].At)
		}
	}
	m.Section = put("none", 61)
	g.Members[0] = m
	if out = r.laid(h, g); out.Models[0].Solved || !strings.Contains(out.Models[0].Why, "not shown") {
		t.Errorf("a ring of a member that is not shown: %+v", out.Models[0])
	}
}
