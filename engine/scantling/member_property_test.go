package scantling_test

import (
	"math"
	"reflect"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// anyMember is a bottom member of the practice boat with drawn spans, spacings and a flat bar.
func anyMember(t *rapid.T) (*record.Hull, record.Member) {
	h := practiceBoat()
	h.Boat.Speed = put(unit.Knot(rapid.Float64Range(6, 45).Draw(t, "speed")), 7)
	bar := flatBar(h, unit.MM(rapid.Float64Range(30, 120).Draw(t, "height")), unit.MM(rapid.Float64Range(4, 12).Draw(t, "web")))
	m := stringer("M", bar)
	m.Role = put(rapid.SampledFrom([]string{"secondary", "primary"}).Draw(t, "role"), 52)
	m.Span, m.Spacing = put(unit.MM(rapid.Float64Range(300, 1500).Draw(t, "span")), 57), put(unit.MM(rapid.Float64Range(120, 700).Draw(t, "spacing")), 58)
	m.Attached = put(unit.MM(rapid.Float64Range(3, 10).Draw(t, "plate")), 62)
	m.Ends = put(rapid.SampledFrom([]string{"fixed", "simple"}).Draw(t, "ends"), 59)
	return h, m
}

// bending gives what each sheet needs and how much room it sees in bending; nought where it is not shown or another need governs.
func bending(out *scantling.Result) (needed, margin []float64) {
	m := &out.Members[0]
	n, _ := m.Need("bending")
	needed, margin = append(needed, n.Needed), append(margin, n.Margin)
	for _, o := range m.Opinions {
		if o.What != "bending" {
			o = scantling.Opinion{}
		}
		needed, margin = append(needed, o.Needed), append(margin, o.Margin)
	}
	return needed, margin
}

// A longer span and a wider spacing never need less, whatever the sheet, as long as both stay inside its ranges.
func TestMoreLoadNeverNeedsLess(t *testing.T) {
	r := whole(t)
	rapid.Check(t, func(t *rapid.T) {
		h, m := anyMember(t)
		first := r.judge(h, nil, []record.Member{m})
		before, _ := bending(&first)
		if rapid.Bool().Draw(t, "longer") {
			m.Span.V *= 1.2
		} else {
			m.Spacing.V *= 1.2
		}
		second := r.judge(h, nil, []record.Member{m})
		after, _ := bending(&second)
		for i := range before {
			if before[i] > 0 && after[i] > 0 && after[i] < before[i]*(1-1e-9) {
				t.Fatalf("%s: %v cm³ after %v", first.Rules[i].Name, after[i], before[i])
			}
		}
	})
}

// A higher or thicker bar never has less room in bending.
func TestMoreMetalNeverHasLessRoom(t *testing.T) {
	r := whole(t)
	rapid.Check(t, func(t *rapid.T) {
		h, m := anyMember(t)
		first := r.judge(h, nil, []record.Member{m})
		before, _ := first.Members[0].Need("bending")
		if rapid.Bool().Draw(t, "higher") {
			h.Sections[0].Height.V *= 1.1
		} else {
			h.Sections[0].Web.V *= 1.1
		}
		second := r.judge(h, nil, []record.Member{m})
		after, _ := second.Members[0].Need("bending")
		if first.Members[0].Standing != finding.NotShown && after.Margin < before.Margin*(1-1e-9) {
			t.Fatalf("%v after %v", after.Margin, before.Margin)
		}
	})
}

// A thicker plate never has less room, by any sheet.
func TestThickerPlateNeverHasLessRoom(t *testing.T) {
	r := whole(t)
	rapid.Check(t, func(t *rapid.T) {
		h := practiceBoat()
		p := bottom("P", unit.MM(rapid.Float64Range(3, 8).Draw(t, "thickness")))
		p.Z, p.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
		p.Short = put(unit.MM(rapid.Float64Range(120, 450).Draw(t, "spacing")), 23)
		first := r.judge(h, []record.Panel{p}, nil)
		p.Thickness.V *= 1.1
		second := r.judge(h, []record.Panel{p}, nil)
		a, b := first.Panels[0], second.Panels[0]
		if b.Margin < a.Margin*(1-1e-9) {
			t.Fatalf("%v after %v", b.Margin, a.Margin)
		}
		for i := range a.Opinions {
			if b.Opinions[i].Margin > 0 && b.Opinions[i].Margin < a.Opinions[i].Margin*(1-1e-9) {
				t.Fatalf("%s: %v after %v", first.Rules[i+1].Name, b.Opinions[i].Margin, a.Opinions[i].Margin)
			}
		}
	})
}

// The whole judgement of the same records is the same.
func TestWholeBoatTwice(t *testing.T) {
	r, in := whole(t), wholeBoat()
	in.Library, in.Alloys = r.lib, r.alloys
	a, b := scantling.Assess(in), scantling.Assess(in)
	for _, row := range []struct {
		what      string
		one, same any
	}{{"checks", a.Checks, b.Checks}, {"findings", a.Findings, b.Findings}, {"what if", a.WhatIfs, b.WhatIfs}, {"headrooms", a.Headrooms, b.Headrooms},
		{"worst", a.Worst, b.Worst}, {"renewals", a.Renewals, b.Renewals}, {"zones", a.Zones, b.Zones}} {
		if !reflect.DeepEqual(row.one, row.same) {
			t.Errorf("%s differ", row.what)
		}
	}
	if len(a.Worst) != 10 || len(a.WhatIfs) != 4 || math.IsNaN(a.Worst[0].Margin) {
		t.Errorf("%d worst, %d what if", len(a.Worst), len(a.WhatIfs))
	}
}
