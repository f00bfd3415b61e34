package scantling_test

import (
	"math"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func knee(id, member string) record.Bracket {
	b := record.Bracket{Joins: put("frame to keel", 81), Member: put(member, 82), Arms: put(unit.MM(160), 83), Thickness: put(unit.MM(8), 84),
		Alloy: put("5083-H116", 85), Throat: put(unit.MM(4), 86)}
	b.ID, b.At = id, at(80)
	return b
}

// A bracket passes the moment of the member whose end it holds. Own arithmetic: 37.6 kN/m² on 500 mm over 1058 mm between
// fixed ends gives w l²/12 and w l/2, and the throat of both fillets carries them over the arm.
func TestBracketPassesTheMoment(t *testing.T) {
	r, h := whole(t), boat("C")
	h.Panels, h.Members = []record.Panel{bottom("B3", 6)}, []record.Member{frame("FR", flatBar(h, 110, 8))}
	h.Brackets = []record.Bracket{knee("K", "FR")}
	out := r.judge(h, nil, nil)
	m, b := out.Members[0], out.Brackets[0]
	w := m.Pressure * 0.5
	close2(t, "own arithmetic: w l²/12", b.Moment, w*1.058*1.058/12, 1e-4)
	close2(t, "own arithmetic: w l/2", b.Force, w*1.058/2, 1e-4)
	throat := 2 * 4 * 160.0
	want := math.Hypot(b.Moment*1e6/(throat*160/6), b.Force*1e3/throat)
	got, _ := b.Working.Value("tau_r")
	close2(t, "own arithmetic: stress in the throat", got, want, 1e-6*want)
	last := out.Checks[len(out.Checks)-1]
	if last.Rule != "bracket-strength" || last.Subject != "bracket K" || last.Standing != b.Standing || len(b.Needs) < 4 {
		t.Errorf("%+v", last)
	}
	h.Brackets[0].Arms = put(unit.MM(60), 83)
	if short := r.judge(h, nil, nil).Brackets[0]; short.Standing != finding.Short {
		t.Errorf("arms of 60 mm: %s, %+v", short.Standing, short.Needs)
	}
}

func TestBracketWithoutItsMember(t *testing.T) {
	r, h := whole(t), boat("C")
	h.Panels = []record.Panel{bottom("B3", 6)}
	h.Brackets = []record.Bracket{knee("K", "nobody")}
	out := r.judge(h, nil, nil)
	c := out.Checks[len(out.Checks)-1]
	if out.Brackets[0].Standing == finding.Met || !slices.Contains(c.Missing, "bracket.K.member") && c.Standing == finding.NotShown {
		t.Errorf("%+v", c)
	}
	h.Members = []record.Member{frame("FR", flatBar(h, 110, 8))}
	h.Brackets = []record.Bracket{knee("K", "FR")}
	h.Brackets[0].Alloy = put("9999-X", 85)
	out = r.judge(h, nil, nil)
	c = out.Checks[len(out.Checks)-1]
	if c.Standing == finding.Met || !slices.Contains(c.Missing, "bracket.K.alloy") {
		t.Errorf("alloy that nobody knows: %+v", c)
	}
}

func cleat(id string) record.Fitting {
	f := record.Fitting{Kind: put("cleat", 91), X: put(unit.M(6), 92), Arm: put(unit.MM(60), 93), Length: put(unit.MM(200), 94), Breadth: put(unit.MM(60), 94),
		Plate: put(unit.MM(6), 95), Alloy: put("5083-H116", 96), Span: put(unit.MM(500), 97), Throat: put(unit.MM(4), 98), WeldLength: put(unit.MM(520), 99)}
	f.ID, f.At = id, at(90)
	return f
}

func TestFitting(t *testing.T) {
	r, h := whole(t), boat("C")
	f := cleat("C1")
	f.Section = put(flatBar(h, 60, 6), 89)
	h.Panels, h.Fittings = []record.Panel{bottom("B3", 6)}, []record.Fitting{f}
	out := r.judge(h, nil, nil)
	got, c := out.Fittings[0], out.Checks[len(out.Checks)-1]
	if got.Standing != finding.Met || got.Force <= 0 || math.Abs(got.Moment-got.Force*0.06) > 1e-9 || c.Rule != "local-load" || c.Subject != "fitting C1" {
		t.Errorf("%+v\n%+v", got.Local, c)
	}
	h.Fittings[0].WeldLength, h.Fittings[0].Throat = put(unit.MM(60), 99), put(unit.MM(2), 98)
	if short := r.judge(h, nil, nil).Fittings[0]; short.Standing != finding.Short {
		t.Errorf("60 mm of weld: %s %s", short.Standing, short.Why)
	}
	h.Fittings[0].WeldLength.Set = false
	out = r.judge(h, nil, nil)
	c = out.Checks[len(out.Checks)-1]
	if c.Standing == finding.Met || !slices.Contains(c.Missing, "fitting.C1.weld_length_mm") {
		t.Errorf("no weld written: %s, missing %v", c.Standing, c.Missing)
	}
	h.Fittings[0] = cleat("C1")
	out = r.judge(h, nil, nil)
	c = out.Checks[len(out.Checks)-1]
	if c.Standing != finding.NotShown || !strings.Contains(strings.Join(c.Missing, " "), "fitting.C1.section") {
		t.Errorf("no member under it: %s, missing %v", c.Standing, c.Missing)
	}
}

// A bunk that presses on plate asks for thickness; an insert stands in place of the plate.
func TestBunkOnPlate(t *testing.T) {
	r, h := whole(t), boat("C")
	f := cleat("T1")
	f.Kind, f.Mass, f.Share, f.Bounce = put("trailer bunk", 91), put(unit.KG(2400), 92), put(4, 93), put(unit.G(2), 94)
	f.Length, f.Breadth, f.Plate = put(unit.MM(300), 94), put(unit.MM(100), 94), put(unit.MM(2), 95)
	h.Panels, h.Fittings = []record.Panel{bottom("B3", 6)}, []record.Fitting{f}
	thin := r.judge(h, nil, nil).Fittings[0]
	h.Fittings[0].Doubler = put(unit.MM(10), 95)
	insert := r.judge(h, nil, nil).Fittings[0]
	if thin.Standing != finding.Short || insert.Standing != finding.Met {
		t.Errorf("2 mm: %s %+v; with an insert: %s %s", thin.Standing, thin.Needs, insert.Standing, insert.Why)
	}
	close2(t, "own arithmetic: (1 + 2) x 2400 kg on four", thin.Force, 3*2400*9.81/1000/4, 0.01)
}
