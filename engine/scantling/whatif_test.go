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

// practiceBottom is the bottom of common practice: 6 mm, stringers of 50 x 5 at 200, frames at 500 mm.
func practiceBottom() *record.Hull {
	h := practiceBoat()
	b := bottom("B3", 6)
	b.Z, b.Deadrise = put(unit.M(-0.1), 27), put(unit.Deg(19), 29)
	h.Panels = []record.Panel{b}
	h.Members = []record.Member{stringer("ST", flatBar(h, 50, 5))}
	return h
}

// Practice: on a boat of 7 m a bottom of 6 mm with stringers at 200 and frames at 500 mm is met with room; 6 mm on 500 x 1000 mm
// is short.
func TestPracticeBottom(t *testing.T) {
	r := whole(t)
	out := r.judge(practiceBottom(), nil, nil)
	if p, m := out.Panels[0], out.Members[0]; p.Standing != finding.Met || p.Margin < 1.5 || m.Standing != finding.Met || m.Margin < 1.2 {
		t.Errorf("practice: panel %v, stringer %v", p.Margin, m.Margin)
	}
	h := practiceBottom()
	h.Panels[0].Short, h.Panels[0].Long = put(unit.MM(500), 23), put(unit.MM(1000), 24)
	if p := r.judge(h, nil, nil).Panels[0]; p.Standing != finding.Short {
		t.Errorf("practice: 500 x 1000: %s, %v times", p.Standing, p.Margin)
	}
}

// What the curves say at a spacing is what a panel of that spacing needs, and more spacing never needs less.
func TestCurveIsThePanel(t *testing.T) {
	r := whole(t)
	out := r.judge(practiceBottom(), nil, nil)
	q := out.WhatIfs[0]
	if q.Zone != "bottom" || len(q.Curves) != 4 || q.Spacing != 200 || q.Carries != 200 {
		t.Fatalf("%+v", q)
	}
	for _, c := range q.Curves {
		last := unit.MM(0)
		for _, p := range c.Points {
			if !p.Shown {
				continue
			}
			if p.Needed < last-1e-9 {
				t.Errorf("rule %d: %v mm at %v after %v", c.Rule, p.Needed, p.Spacing, last)
			}
			last = p.Needed
		}
	}
	h := practiceBottom()
	point := q.Curves[0].Points[8]
	h.Panels[0].Short = put(point.Spacing, 23)
	if got := r.judge(h, nil, nil).Panels[0].Needed; math.Abs(float64(got-point.Needed)) > 1e-9 {
		t.Errorf("at %v mm the curve says %v, the panel %v", point.Spacing, point.Needed, got)
	}
}

// At the spacing of today the curve stands on the pressure and the stress that the rules side by side name, so that a reader
// can follow the others in the same way.
func TestCurveNamesWhatItStandsOn(t *testing.T) {
	r := whole(t)
	out := r.judge(practiceBottom(), nil, nil)
	q := out.WhatIfs[0]
	pressed := 0
	for _, c := range q.Curves {
		for _, p := range c.Points {
			if p.Spacing != q.Spacing || !p.Shown {
				continue
			}
			if c.Rule == 0 {
				if want := out.Panels[q.Panel].Pressure; out.Panels[q.Panel].Governs == "t_P" && math.Abs(p.Pressure-want) > 1e-9 {
					t.Errorf("the governing rule: %v kN/m², the panel has %v", p.Pressure, want)
				}
				continue
			}
			o := out.Panels[q.Panel].Opinions[c.Rule-1]
			if o.Rule != c.Rule || math.Abs(p.Pressure-o.Pressure) > 1e-9 || math.Abs(p.Stress-o.Stress) > 1e-9 {
				t.Errorf("rule %d: %v kN/m² and %v N/mm², the opinion has %v and %v", c.Rule, p.Pressure, p.Stress, o.Pressure, o.Stress)
			}
			if p.Pressure > 0 {
				pressed++
			}
		}
	}
	if pressed == 0 {
		t.Error("no curve of another rule has a pressure at the spacing of today")
	}
}

// At the greatest spacing plate and bar are met, one step beyond it they are short.
func TestGreatestSpacing(t *testing.T) {
	r := whole(t)
	thin := func() *record.Hull {
		h := practiceBottom()
		h.Panels[0].Thickness = put(unit.MM(4), 20)
		return h
	}
	s := r.judge(thin(), nil, nil).WhatIfs[0].Greatest[0]
	if s.PlateEnds || s.MemberEnds || s.Plate < 205 || s.Member < 205 {
		t.Fatalf("%+v", s)
	}
	for _, row := range []struct {
		more unit.MM
		want finding.Standing
	}{{0, finding.Met}, {5, finding.Short}} {
		h := thin()
		h.Panels[0].Short = put(s.Plate+row.more, 23)
		h.Members[0].Spacing = put(s.Member+row.more, 58)
		out := r.judge(h, nil, nil)
		if out.Panels[0].Standing != row.want || out.Members[0].Standing != row.want {
			t.Errorf("%v mm more: panel %s, member %s", row.more, out.Panels[0].Standing, out.Members[0].Standing)
		}
	}
}

// At the greatest speed and mass everything is met, one step above it what is named is short.
func TestHeadroom(t *testing.T) {
	r := whole(t)
	out := r.judge(practiceBottom(), nil, nil)
	if len(out.Headrooms) != 8 {
		t.Fatalf("%d headrooms", len(out.Headrooms))
	}
	for _, h := range out.Headrooms {
		if h.Rule != 0 || !h.Shown {
			continue
		}
		if h.Says == "" || h.Counts != 2 {
			t.Errorf("%+v", h)
		}
		at := func(v float64) scantling.Result {
			b := practiceBottom()
			if h.Of == "speed" {
				b.Boat.Speed = put(unit.Knot(v), 7)
			} else {
				b.Boat.LoadedMass = put(unit.KG(v), 6)
			}
			return r.judge(b, nil, nil)
		}
		for _, c := range at(h.Most).Checks {
			if c.Standing != finding.Met {
				t.Errorf("%s %v: %s is %s", h.Of, h.Most, c.Subject, c.Standing)
			}
		}
		if h.Ends {
			continue
		}
		step := map[string]float64{"speed": 0.5, "loaded mass": 20}[h.Of]
		found := false
		for _, c := range at(h.Most + step).Checks {
			found = found || c.Subject == h.Limits && c.Standing == finding.Short
		}
		if !found {
			t.Errorf("%s %v: %s is not short one step above", h.Of, h.Most, h.Limits)
		}
	}
}

func TestHeadroomOfWhatIsShort(t *testing.T) {
	h := practiceBottom()
	h.Panels[0].Thickness = put(unit.MM(3.2), 20)
	out := whole(t).judge(h, nil, nil)
	speed := out.Headrooms[0]
	if speed.Most >= 38 || speed.Most < 20 || speed.Limits != "panel B3" || !strings.Contains(speed.Says, "is short") {
		t.Errorf("%+v", speed)
	}
	h.Panels[0].Thickness = put(unit.MM(1), 20)
	never := whole(t).judge(h, nil, nil).Headrooms[0]
	if len(never.Never) != 1 || never.Most < 38 || !strings.HasPrefix(never.Says, "panel B3 is short at every speed") {
		t.Errorf("%+v", never)
	}
	h.Members = nil
	if all := whole(t).judge(h, nil, nil).Headrooms[0]; all.Most != 0 || !strings.HasPrefix(all.Says, "everything is short") {
		t.Errorf("%+v", all)
	}
}

// The lightest build of the stock meets, is no heavier than another that meets, and its sums are own arithmetic.
func TestBuilds(t *testing.T) {
	r, h := whole(t), practiceBottom()
	for i, height := range []unit.MM{40, 45, 60} {
		flatBar(h, height, 5)
		h.Sections[i+1].Stock = put(true, 44)
	}
	h.Panels[0].Count, h.Members[0].Count = put(10, 30), put(10, 64)
	y := &record.Yard{}
	for _, thick := range []unit.MM{3, 4, 6} {
		y.Stock.Lots = append(y.Stock.Lots, record.Lot{Kind: put("plate", 1), Alloy: put("5083-H116", 2), Thickness: put(thick, 3)})
	}
	out := scantling.Assess(scantling.Input{Yard: y, Hull: h, Library: r.lib, Alloys: r.alloys})
	all := out.WhatIfs[0].Builds
	if len(all) < 3 {
		t.Fatalf("%+v", all)
	}
	now := all[0]
	want := 10*0.2*0.5*0.006*2660 + 10*0.5*50*5e-6*2660
	close2(t, "own arithmetic: plate and bars as built", float64(now.Mass), want, 1e-9)
	close2(t, "own arithmetic: two fillets along each bar", float64(now.Weld), 10, 1e-9)
	for i, b := range all[1:] {
		if i > 0 && b.Mass < all[i].Mass {
			t.Errorf("out of order: %+v", all)
		}
		close2(t, "saved", float64(b.Saved), float64(now.Mass-b.Mass), 1e-9)
		one := practiceBottom()
		flatBar(one, 40, 5)
		flatBar(one, 45, 5)
		flatBar(one, 60, 5)
		one.Panels[0].Thickness, one.Panels[0].Short = put(b.Plate, 20), put(unit.MM(200*b.Part), 23)
		one.Members[0].Section, one.Members[0].Attached, one.Members[0].Spacing = put(b.Section, 61), put(b.Plate, 62), put(unit.MM(200*b.Part), 58)
		again := r.judge(one, nil, nil)
		if again.Panels[0].Standing != finding.Met || again.Members[0].Standing != finding.Met {
			t.Errorf("%+v is not met: %s, %s", b, again.Checks[0].Says, again.Checks[1].Says)
		}
	}
}

func TestNoStockNoBuild(t *testing.T) {
	if q := whole(t).judge(practiceBottom(), nil, nil).WhatIfs[0]; q.Builds != nil {
		t.Errorf("%+v", q.Builds)
	}
}

// The list of the least room is in order, and says each in a sentence.
func TestWorst(t *testing.T) {
	h := practiceBottom()
	for _, id := range []string{"S1", "S2"} {
		h.Panels = append(h.Panels, side(id, 4))
	}
	h.Members = append(h.Members, frame("FR", flatBar(h, 80, 7)))
	out := whole(t).judge(h, nil, nil)
	if len(out.Worst) != 4 || out.Worst[0].Subject != "member FR" || out.Worst[0].Standing != finding.Short || out.Worst[2].Equal != 1 {
		t.Fatalf("%+v", out.Worst)
	}
	for i, c := range out.Worst {
		if i > 0 && c.Margin < out.Worst[i-1].Margin || !strings.Contains(c.Says, "times") {
			t.Errorf("%+v", c)
		}
	}
}

// One value that is missing on a whole grid is told once, with how many more there are.
func TestMissingOnTheWholeGrid(t *testing.T) {
	var panels []record.Panel
	for _, id := range []string{"bottom 1", "bottom 2", "bottom 3"} {
		p := bottom(id, 6)
		p.Alloy = put("9999-X", 25)
		panels = append(panels, p)
	}
	out := whole(t).judge(boat("C"), panels, nil)
	if len(out.Checks) != 1 || out.Checks[0].Standing != finding.NotShown || !strings.Contains(out.Checks[0].Says, "2 more likewise") {
		t.Errorf("%+v", out.Checks)
	}
}
