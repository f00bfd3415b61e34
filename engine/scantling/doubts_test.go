package scantling_test

import (
	"reflect"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func of(all []finding.Finding, rule, word string) []finding.Finding {
	var out []finding.Finding
	for _, f := range all {
		if f.Rule == rule && strings.Contains(f.Says, word) {
			out = append(out, f)
		}
	}
	return out
}

// Doubts about the craft and about the sheet are told once, however many panels there are.
func TestDoubtsOncePerCraft(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B1", 6), bottom("B2", 6), bottom("B3", 6)}
	h.Boat.Speed = put(unit.Knot(55), 7)
	out := shipped(t).assess(h)
	rows := []struct{ rule, word string }{
		{"structure-method", "superseded"},
		{"structure-range", "10.8"},
		{"structure-range", "equation 2 takes over"},
		{"structure-range", "55\u00a0kn is above 50"},
	}
	for _, row := range rows {
		got := of(out.Findings, row.rule, row.word)
		if len(got) != 1 {
			t.Errorf("%s %q: told %d times in %v", row.rule, row.word, len(got), out.Findings)
			continue
		}
		if got[0].Kind != finding.Doubt || got[0].Subject != "boat" || len(got[0].Places) == 0 || got[0].Settle == "" {
			t.Errorf("%+v", got[0])
		}
	}
	for _, f := range out.Findings {
		if strings.Contains(f.Says, "rests on") {
			t.Errorf("the doubt of another value is told again: %q", f.Says)
		}
	}
	if len(out.Findings) != len(rows) {
		t.Errorf("%d findings, want %d: %v", len(out.Findings), len(rows), out.Findings)
	}
	if !strings.Contains(out.Checks[0].Says, "outside the range of the method") {
		t.Errorf("a panel that rests on 55 kn says %q", out.Checks[0].Says)
	}
}

func TestNoDoubtInsideTheRanges(t *testing.T) {
	h := boat("C")
	h.Boat.Speed = put(unit.Knot(20), 7)
	h.Boat.LoadedMass = put(unit.KG(4200), 6)
	h.Panels = []record.Panel{bottom("B1", 6)}
	out := shipped(t).assess(h)
	if got := of(out.Findings, "structure-range", ""); len(got) != 0 {
		t.Errorf("nothing is outside a range, yet %v", got)
	}
	if strings.Contains(out.Checks[0].Says, "outside") {
		t.Errorf("says %q", out.Checks[0].Says)
	}
}

func TestLengthOfHullBoundsTheMethod(t *testing.T) {
	for _, row := range []struct {
		length unit.M
		told   int
	}{{2.49, 1}, {2.5, 0}, {24, 0}, {24.01, 1}} {
		h := boat("C")
		h.Boat.LengthHull = put(row.length, 2)
		h.Panels = []record.Panel{bottom("B1", 6)}
		if got := of(shipped(t).assess(h).Findings, "structure-range", "length of hull"); len(got) != row.told {
			t.Errorf("%v m: told %d times, want %d", row.length, len(got), row.told)
		}
	}
	h := boat("C")
	h.Boat.LengthHull.Set = false
	h.Panels = []record.Panel{bottom("B1", 6)}
	if got := of(shipped(t).assess(h).Findings, "structure-scope", "length of hull"); len(got) != 1 {
		t.Errorf("no length of hull: %v", got)
	}
}

// A panel below the waterline or above the hull's edge is no side panel as the formula means it.
func TestPanelOutsideItsHeight(t *testing.T) {
	for _, row := range []struct {
		z    unit.M
		told int
	}{{-0.01, 1}, {0, 0}, {0.75, 0}, {0.76, 1}} {
		h, p := boat("C"), side("S1", 4)
		p.Z = put(row.z, 27)
		h.Panels = []record.Panel{p}
		out := shipped(t).assess(h)
		got := of(out.Findings, "structure-range", "height")
		if len(got) != row.told || (row.told == 1 && got[0].Subject != "panel S1") {
			t.Errorf("z = %v m: %v", row.z, got)
		}
	}
}

func TestSameRecordsSameResult(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B1", 6), side("S1", 4), house("H1", "top", "true"), bottom("B2", 3)}
	r := shipped(t)
	a, b := r.assess(h), r.assess(h)
	if !reflect.DeepEqual(a.Checks, b.Checks) || !reflect.DeepEqual(a.Findings, b.Findings) {
		t.Error("two judgements of the same records differ")
	}
}
