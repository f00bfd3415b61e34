package scantling_test

import (
	"math"
	"reflect"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// An opinion makes no check, and is the outcome that the sheet would give if it governed.
func TestOpinionIsWhatTheSheetWouldGive(t *testing.T) {
	r := whole(t)
	build := func(governs string) scantling.Result {
		h := practiceBoat()
		h.Rules.Structure = put(governs, 9)
		b := bottom("B3", 6)
		b.Z, b.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
		h.Panels = []record.Panel{b}
		h.Members = []record.Member{stringer("ST", flatBar(h, 50, 5))}
		return r.judge(h, nil, nil)
	}
	beside := build("iso-12215-5-2008")
	if len(beside.Checks) != 2 || len(beside.Panels[0].Opinions) != len(others) {
		t.Fatalf("%d checks, %d opinions", len(beside.Checks), len(beside.Panels[0].Opinions))
	}
	for i, name := range others {
		alone := build(name)
		o, p := beside.Panels[0].Opinions[i], alone.Panels[0]
		if o.Needed != float64(p.Needed) || o.Standing != p.Standing || o.Governs != p.Governs || o.Margin != p.Margin {
			t.Errorf("%s: opinion %+v, governing %v %s %s", name, o, p.Needed, p.Standing, p.Governs)
		}
		s, m := beside.Members[0].Opinions[i], alone.Members[0]
		if s.Standing != m.Standing || s.Margin != m.Margin || s.What != m.Governs {
			t.Errorf("%s: opinion %+v, governing %s %v %s", name, s, m.Standing, m.Margin, m.Governs)
		}
	}
}

// The parts of a difference multiply to the whole.
func TestDifferenceIsWhole(t *testing.T) {
	h := practiceBoat()
	b := bottom("B3", 6)
	b.Z, b.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
	h.Panels = []record.Panel{b}
	h.Members = []record.Member{frame("FR", flatBar(h, 120, 10))}
	out := whole(t).judge(h, nil, nil)
	parted := 0
	for _, o := range append(out.Panels[0].Opinions, out.Members[0].Opinions...) {
		d := o.Differs
		if d.Load == 0 {
			continue
		}
		parted++
		if math.Abs(d.Load*d.Strength*d.Rest-d.Needed) > 1e-12 || !strings.Contains(d.Says, "kN/m²") {
			t.Errorf("%+v", d)
		}
	}
	if parted < 3 {
		t.Errorf("only %d differences were parted", parted)
	}
	eu := out.Panels[0].Opinions[1].Differs
	if math.Abs(eu.Load-math.Sqrt(out.Panels[0].Opinions[1].Pressure/out.Panels[0].Pressure)) > 1e-12 {
		t.Errorf("plate: the load counts by its root: %+v", eu)
	}
}

// Opinions that are short are doubts, one for each zone and sheet, however many panels there are.
func TestShortOpinionsAreFewDoubts(t *testing.T) {
	h := practiceBoat()
	for _, id := range []string{"B1", "B2", "B3", "B4"} {
		p := bottom(id, 3.4)
		p.Z, p.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
		h.Panels = append(h.Panels, p)
	}
	h.Panels[2].Thickness = put(unit.MM(3.35), 20)
	out := whole(t).judge(h, nil, nil)
	told := map[string]int{}
	for _, f := range out.Findings {
		if f.Rule != "structure-opinion" {
			continue
		}
		told[f.Subject]++
		if f.Kind != finding.Doubt || f.Subject != "panel B3" || !strings.Contains(f.Says, "4 of 4") || !strings.Contains(f.Says, "does not govern") {
			t.Errorf("%+v", f)
		}
	}
	if told["panel B3"] != len(others) {
		t.Errorf("told %v", told)
	}
	for _, c := range out.Checks {
		if c.Standing != finding.Met {
			t.Errorf("the governing sheet alone makes checks: %+v", c)
		}
	}
}

// An opinion outside the range of its formulas says so: Savitsky and Brown's accelerations were made for V/√L up to 6 in
// knots and feet (recalled), and this boat runs at 8.5.
func TestOpinionOutsideItsRange(t *testing.T) {
	h := practiceBoat()
	h.Rules.Also = put([]string{"open-literature-planing"}, 11)
	p := bottom("B3", 4)
	p.Z, p.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
	h.Panels = []record.Panel{p}
	out := whole(t).judge(h, nil, nil)
	o := out.Panels[0].Opinions[0]
	if !o.Outside || o.Standing != finding.Short || len(of(out.Findings, "structure-opinion", "outside the range")) != 1 {
		t.Errorf("%+v", o)
	}
}

func TestOpinionOfUnknownSheet(t *testing.T) {
	h := boat("C")
	h.Rules.Also = put([]string{"no-such-sheet", "iso-12215-5-2008"}, 11)
	h.Panels = []record.Panel{bottom("B1", 6)}
	out := whole(t).judge(h, nil, nil)
	if len(out.Rules) != 2 || out.Rules[1].Refuses == "" || out.Panels[0].Opinions[0].Standing != finding.NotShown {
		t.Errorf("%+v", out.Rules)
	}
	if got := of(out.Findings, "structure-opinion", "no-such-sheet"); len(got) != 1 {
		t.Errorf("told %d times", len(got))
	}
}

// The wire in the seams decides the strength where the rule parts it by wire: DNV high speed and light craft 2011, part 3
// chapter 3 section 2, table B4: 0.60 with 5183, 0.53 with 5356. The weaker of two counts; planned wire counts where
// nothing is welded.
func TestWireFeedsTheStrength(t *testing.T) {
	needed := func(y *record.Yard, h *record.Hull) float64 {
		h.Rules.Structure, h.Rules.Area = put("light-craft-class-2011", 9), put("R1", 13)
		p := bottom("B3", 6)
		p.Z, p.Deadrise, p.Short, p.Long = put(unit.M(-0.1), 27), put(unit.Deg(19), 29), put(unit.MM(400), 23), put(unit.MM(900), 24)
		h.Panels = []record.Panel{p}
		r := whole(t)
		out := scantling.Assess(scantling.Input{Yard: y, Hull: h, Library: r.lib, Alloys: r.alloys})
		if out.Panels[0].Why != "" {
			t.Log(out.Panels[0].Why)
		}
		return float64(out.Panels[0].Needed)
	}
	lot := func(id, class string) record.Consumable {
		return record.Consumable{Entry: record.Entry{ID: id}, Kind: put("filler", 1), Classification: put(class, 2)}
	}
	y := &record.Yard{}
	y.Stock.Consumables = []record.Consumable{lot("a", "S Al 5183"), lot("b", "ER5356")}
	y.Welding.Procedures = []record.Procedure{{Entry: record.Entry{ID: "P1"}, Fillers: put([]string{"S Al 5183"}, 3)}}
	welded := func(lots ...string) *record.Hull {
		h := practiceBoat()
		for _, l := range lots {
			h.Welds = append(h.Welds, record.Weld{Filler: put(l, 4)})
		}
		return h
	}
	planned := practiceBoat()
	planned.Joints = []record.Joint{{Procedure: put("P1", 5)}}
	strong, weak, both, plan := needed(y, welded("a")), needed(y, welded("b")), needed(y, welded("a", "b")), needed(y, planned)
	if !(strong > 0 && weak > strong) || both != weak || plan != strong {
		t.Errorf("5183 %v, 5356 %v, both %v, planned %v", strong, weak, both, plan)
	}
	if math.Abs(weak/strong-math.Sqrt(0.60/0.53)) > 1e-6 {
		t.Errorf("own arithmetic: thickness goes with the root of the strength: %v", weak/strong)
	}
	r := whole(t)
	for _, row := range []struct {
		hull *record.Hull
		says string
	}{{welded("a"), ""}, {welded("a", "b"), "weakest"}, {planned, "planned"}} {
		out := scantling.Assess(scantling.Input{Yard: y, Hull: row.hull, Library: r.lib, Alloys: r.alloys})
		told := ""
		for _, a := range out.Assumptions {
			told += a.Says
		}
		if (row.says == "") != (told == "") || !strings.Contains(told, row.says) {
			t.Errorf("assumptions %q, want %q", told, row.says)
		}
	}
	if none := needed(nil, practiceBoat()); none != 0 {
		t.Errorf("no wire known: %v mm is shown", none)
	}
}

// Equal panels of the grid are reckoned once; each keeps its own lines.
func TestEqualPanelsOfTheGrid(t *testing.T) {
	a, b := bottom("bottom 3-4 s1", 6), bottom("bottom 3-4 s2", 6)
	b.Thickness.At, b.X.At = at(90), at(91)
	h := boat("C")
	out := whole(t).judge(h, []record.Panel{a, b}, nil)
	if out.Panels[0].Working != out.Panels[1].Working || out.Panels[1].Same != "bottom 3-4 s1" || out.Panels[0].Same != "" {
		t.Errorf("same %q and %q", out.Panels[0].Same, out.Panels[1].Same)
	}
	if out.Checks[1].Places[0] != at(90) || reflect.DeepEqual(out.Checks[0].Places, out.Checks[1].Places) {
		t.Errorf("places %v", out.Checks[1].Places)
	}
	c := a
	c.ID, c.Thickness = "bottom 3-4 s3", put(unit.MM(5), 20)
	out = whole(t).judge(h, []record.Panel{a, c}, nil)
	if out.Panels[1].Same != "" || out.Panels[1].Fitted != 5 {
		t.Errorf("another thickness: %+v", out.Panels[1])
	}
}

// A second opinion that is worked again in full comes to what was told of it: the step that governs, and its value.
func TestSecondWorkingIsThatOfTheOpinion(t *testing.T) {
	h := practiceBoat()
	b := bottom("B3", 6)
	b.Z, b.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
	h.Panels = []record.Panel{b}
	h.Members = []record.Member{stringer("ST", flatBar(h, 50, 5)), frame("FR", flatBar(h, 120, 10))}
	out := whole(t).judge(h, nil, nil)
	shown := 0
	for i := range others {
		by := out.Second(i + 1)
		w, governs := by.Panel(out.Panels[0].Record)
		shown += agrees(t, out.Panels[0].Opinions[i], w, governs)
		for k := range out.Members {
			w, governs := by.Member(out.Members[k].Record)
			shown += agrees(t, out.Members[k].Opinions[i], w, governs)
		}
	}
	if shown < 2*len(others) {
		t.Errorf("only %d opinions were shown", shown)
	}
}

func agrees(t *testing.T, o scantling.Opinion, w *method.Working, governs string) int {
	t.Helper()
	if governs != o.Governs {
		t.Errorf("rule %d: %s governs in the working, %s in the opinion", o.Rule, governs, o.Governs)
	}
	if o.Governs == "" {
		return 0
	}
	want := o.Needed
	if o.What == "slenderness" { // a ratio that is there, held against one
		want = o.Fitted
	}
	if v, ok := w.Value(governs); !ok || math.Abs(v-want) > 1e-8 {
		t.Errorf("rule %d: the working gives %v for %s, the opinion %v", o.Rule, v, governs, want)
	}
	return 1
}
