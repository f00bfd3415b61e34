package scantling_test

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// one judges a hull with one member.
func (r rig) one(t testing.TB, h *record.Hull, m record.Member) (scantling.Member, finding.Check) {
	t.Helper()
	h.Panels, h.Members = []record.Panel{bottom("B3", 6)}, []record.Member{m}
	out := r.judge(h, nil, nil)
	if len(out.Members) != 1 || len(out.Checks) != 2 {
		t.Fatalf("one member gave %d results and %d checks", len(out.Members), len(out.Checks))
	}
	return out.Members[0], out.Checks[1]
}

func close2(t *testing.T, where string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s: %v, want %v", where, got, want)
	}
}

// The 7 m boat of common practice, reckoned once from the formulas (own arithmetic, practice): bottom stringers of 50 x 5
// on 6 mm plate at 200 x 500, and the bottom frame from keel to chine that stands alone.
func TestPracticeMembers(t *testing.T) {
	r, h := whole(t), boat("C")
	m, c := r.one(t, h, stringer("ST", flatBar(h, 50, 5)))
	bending, _ := m.Need("bending")
	shear, _ := m.Need("shear")
	close2(t, "own arithmetic: modulus needed", bending.Needed, 2.955, 0.0005)
	close2(t, "own arithmetic: web area needed", shear.Needed, 0.6205, 0.0005)
	close2(t, "own arithmetic: plate and flat bar, modulus", bending.Fitted, 4.5231, 0.0001)
	close2(t, "own arithmetic: plate and flat bar, neutral axis", float64(m.Fitted.Neutral), 7.828, 0.001)
	close2(t, "own arithmetic: plate and flat bar, inertia", float64(m.Fitted.I), 21.79, 0.005)
	close2(t, "own arithmetic: plate and flat bar, area", float64(m.Fitted.Area), 14.5, 1e-9)
	close2(t, "own arithmetic: web", shear.Fitted, 2.5, 1e-9)
	if m.Standing != finding.Met || c.Standing != finding.Met || c.Rule != "stiffener-strength" || c.Subject != "member ST" || m.Effective != 200 {
		t.Errorf("%+v", c)
	}
	h = boat("C")
	m, c = r.one(t, h, frame("FR", flatBar(h, 100, 7)))
	bending, _ = m.Need("bending")
	close2(t, "own arithmetic: bottom frame, modulus needed", bending.Needed, 20.07, 0.005)
	if c.Rule != "frame-strength" || m.Scope != "primary" || m.Standing != finding.Met {
		t.Errorf("%+v", c)
	}
	h = boat("C")
	m, c = r.one(t, h, frame("FR", flatBar(h, 80, 7)))
	if m.Standing != finding.Short || c.Standing != finding.Short || m.Governs != "bending" || !strings.Contains(c.Says, "20.1 cm³ needed") {
		t.Errorf("a frame of 80 x 7: %s by %s: %s", m.Standing, m.Governs, c.Says)
	}
}

// A long flat bar that folds before it yields is short though its modulus is enough. Own arithmetic: the free edge folds at
// 0.38 E (t/h)², at 125 N/mm² beside the weld for 1/14.59.
func TestSlenderFlatBar(t *testing.T) {
	r := whole(t)
	for _, row := range []struct {
		height unit.MM
		want   finding.Standing
	}{{72, finding.Met}, {74, finding.Short}} {
		h := boat("C")
		m, c := r.one(t, h, stringer("ST", flatBar(h, row.height, 5)))
		if m.Standing != row.want || m.Governs != "slenderness" {
			t.Errorf("%v mm high: %s by %s: %s", row.height, m.Standing, m.Governs, c.Says)
		}
	}
}

// What is missing of a member is never met, and the check names the record key.
func TestMissingOfMember(t *testing.T) {
	rows := []struct {
		key  string
		lose func(*record.Hull, *record.Member)
	}{
		{"member.ST.section", func(_ *record.Hull, m *record.Member) { m.Section.Set = false }},
		{"section.none", func(_ *record.Hull, m *record.Member) { m.Section = put("none", 61) }},
		{"member.ST.attached_mm", func(_ *record.Hull, m *record.Member) { m.Attached.Set = false }},
		{"member.ST.x_m", func(_ *record.Hull, m *record.Member) { m.X.Set = false }},
		{"member.ST.ends", func(_ *record.Hull, m *record.Member) { m.Ends.Set = false }},
		{"member.ST.zone", func(_ *record.Hull, m *record.Member) { m.Zone.Set = false }},
		{"section.50x5.alloy", func(h *record.Hull, _ *record.Member) { h.Sections[0].Alloy = put("5086-O", 43) }},
		{"section.50x5.alloy", func(h *record.Hull, _ *record.Member) { h.Sections[0].Alloy = put("9999-X", 43) }},
		{"section.50x5", func(h *record.Hull, _ *record.Member) { h.Sections[0].Web = put(unit.MM(60), 42) }},
		{"section.50x5", func(h *record.Hull, _ *record.Member) {
			flange := record.Piece{Role: put("flange", 1), Left: put(unit.MM(0), 1), Foot: put(unit.MM(0), 1), Breadth: put(unit.MM(60), 1), Height: put(unit.MM(8), 1)}
			h.Sections[0] = record.Section{Entry: h.Sections[0].Entry, Shape: put("built up", 40), Alloy: put("5083-H116", 43), Pieces: []record.Piece{flange}}
		}},
	}
	r := whole(t)
	for _, row := range rows {
		t.Run(row.key, func(t *testing.T) {
			h := boat("C")
			m := stringer("ST", flatBar(h, 50, 5))
			row.lose(h, &m)
			got, c := r.one(t, h, m)
			if got.Standing != finding.NotShown || c.Standing != finding.NotShown || got.Margin != 0 || got.Why == "" {
				t.Fatalf("%s, margin %v, why %q", got.Standing, got.Margin, got.Why)
			}
			found := false
			for _, key := range c.Missing {
				found = found || key == row.key
			}
			if !found || !strings.Contains(c.Settle, row.key) {
				t.Errorf("missing %v, settle %q, want %s; says %s", c.Missing, c.Settle, row.key, c.Says)
			}
		})
	}
}

// A span of nought is outside what formulas are made for and never met.
func TestSpanOfNought(t *testing.T) {
	h := boat("C")
	m := stringer("ST", flatBar(h, 50, 5))
	m.Span = put(unit.MM(0), 57)
	got, c := whole(t).one(t, h, m)
	if got.Standing == finding.Met {
		t.Errorf("met with a span of nought: %s", c.Says)
	}
}

// The frame that stands on stringers has no plate and is asked as one that is not welded to it.
func TestFrameOnStringers(t *testing.T) {
	r, h := whole(t), boat("C")
	m := frame("FR", flatBar(h, 150, 12))
	on, _ := r.one(t, h, m)
	m.Attached = put(unit.MM(0), 62)
	free, _ := r.one(t, h, m)
	a, _ := on.Need("shear")
	b, _ := free.Need("shear")
	if free.Effective != 0 || free.Bar.Plate != 0 || free.Fitted.AtPlate >= on.Fitted.AtPlate || b.Needed <= a.Needed {
		t.Errorf("free %+v, on plate %+v", free.Fitted, on.Fitted)
	}
	close2(t, "own arithmetic: b h²/6 of the bar alone", float64(free.Fitted.AtEdge), 45, 1e-9)
}
