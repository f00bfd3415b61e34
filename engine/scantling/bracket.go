package scantling

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// brackets judges every bracket by the sheet for brackets, with the moment and the shear that the governing sheet puts on the
// end of the member it holds. Each record makes one check, that of its worst place.
func (j *judge) brackets(out *Result) {
	all := j.sittings()
	if len(all) == 0 {
		return
	}
	r := newLocal(bracketSheet, j.in, j.wires)
	for from := 0; from < len(all); {
		to := from + 1
		for to < len(all) && all[to].Record == all[from].Record {
			to++
		}
		out.Checks = append(out.Checks, j.bracketsOf(all[from:to], r, out))
		from = to
	}
}

// bracketsOf judges one record at all its places. Workings that come to the same are kept once.
func (j *judge) bracketsOf(all []grid.Bracket, r *rule, out *Result) finding.Check {
	var worst finding.Check
	at := 0
	kept := map[string]*method.Working{}
	for i := range all {
		b, c := j.bracket(&all[i], r, out)
		key := fmt.Sprint(b.Moment, b.Force, b.Standing, b.Margin)
		if w := kept[key]; w != nil {
			b.Working = w
		} else {
			kept[key] = b.Working
		}
		out.Brackets = append(out.Brackets, b)
		if i == 0 || worse(&b, &out.Brackets[at]) {
			worst, at = c, len(out.Brackets)-1
		}
	}
	worst.Subject = "bracket " + all[0].Record.ID
	if n := len(all); n > 1 {
		worst.Says += fmt.Sprintf(" (%d places, the worst is %s)", n, out.Brackets[at].ID)
	}
	return worst
}

// worse reports whether one bracket stands worse than another: short before not shown before met, then by margin.
func worse(a, b *Bracket) bool {
	if a.Standing != b.Standing {
		return finding.Worst(a.Standing, b.Standing) == a.Standing
	}
	return a.Margin < b.Margin
}

// sittings are the brackets at their places in the grid; without a grid each where its record says.
func (j *judge) sittings() []grid.Bracket {
	if g := j.in.Grid; g != nil && g.Derived {
		return g.Brackets
	}
	var out []grid.Bracket
	for i := range j.hull.Brackets {
		b := &j.hull.Brackets[i]
		s := grid.Bracket{ID: "bracket " + b.ID, Record: b, Member: b.Member.V, Count: 1}
		if n, ok := b.Count.Get(); ok {
			s.Count = n
		}
		out = append(out, s)
	}
	return out
}

func (j *judge) bracket(s *grid.Bracket, r *rule, out *Result) (Bracket, finding.Check) {
	rec := s.Record
	b := Bracket{Record: rec, ID: s.ID, Member: s.Member, Count: s.Count}
	if judged, drawn := j.judgedAs[s.Member]; drawn {
		b.Member = judged
	}
	l := local{rule: r, subject: s.ID, asks: "the bracket holds the end of its member, and its fillets pass moment and shear on",
		settle: "a longer or thicker bracket, larger fillets, or fillets on both sides"}
	own := bracketStandIns(rec)
	var of *metal
	var noMetal string
	if r.refuses == "" {
		of, noMetal = r.metals.of(rec.Alloy, rec.Thickness.V, "plate")
	}
	l.lacks = lacks{kind: "bracket", id: rec.ID, alloy: "bracket." + rec.ID + ".alloy", section: "member", of: of, noMetal: noMetal}
	m := memberBy(out, b.Member)
	if m == nil {
		l.lacks.why("no member whose end it holds is on record")
		l.lacks.miss("bracket." + rec.ID + ".member")
	} else {
		b.Moment, b.Force, b.From = j.passed(m)
		holding(own, m, &b)
	}
	l.judge("bracket", &bound{given: given{boat: r.boat, rules: r.rules, kind: "bracket", entry: rec, own: own, alloy: of}, bar: own})
	if l.Working != nil {
		l.fitted(l.Working, "throat", float64(rec.Throat.V), rec.Throat.Set)
		l.weigh(l.Working)
	}
	b.Local = l.Local
	return b, l.check(ruleBracket)
}

// holding hands the member whose end is held to the sheet.
func holding(own method.GivenMap, m *Member, b *Bracket) {
	source := "member " + m.Record.ID
	own["member.span_mm"] = method.Quantity{Number: float64(m.Record.Span.V), Unit: "mm", Place: m.Record.Span.At, Source: source}
	if m.Standing == finding.NotShown {
		return
	}
	n, ok := m.Need("bending")
	if ok {
		own["section.modulus_cm3"] = method.Quantity{Number: n.Fitted, Unit: "cm³", Source: source}
	}
	own["section.web_thickness_mm"] = method.Quantity{Number: float64(m.Bar.Shape.Web), Unit: "mm", Source: source}
	if b.Moment > 0 {
		own["bracket.moment"] = method.Quantity{Number: b.Moment, Unit: "kN·m", Basis: m.Basis, Source: source + ", " + b.From}
		own["bracket.force"] = method.Quantity{Number: b.Force, Unit: "kN", Basis: m.Basis, Source: source + ", " + b.From}
	}
}

// bracketStandIns are what the record says holds where a value is not written.
func bracketStandIns(rec *record.Bracket) method.GivenMap {
	return method.GivenMap{
		"bracket.other_arm_mm":   mm(rec.Arms.V, "no other arm is written: the same"),
		"bracket.weld_length_mm": mm(rec.Arms.V, "no length of weld is written: the arm"),
		"bracket.flange_mm":      mm(0, "no flange is written: none"),
		"bracket.sides":          {Word: "both", IsWord: true, Source: "no sides are written: both"},
	}
}

func memberBy(out *Result, id string) *Member {
	if id == "" {
		return nil
	}
	for i := range out.Members {
		if out.Members[i].Record.ID == id {
			return &out.Members[i]
		}
	}
	return nil
}

// passed is the moment and the shear at the end of a member: of one span alone by the governing sheet, or of the model of
// its neighbours where the yard names that as what decides.
func (j *judge) passed(m *Member) (moment, force float64, from string) {
	for i := range m.Together {
		if t := &m.Together[i]; t.Decides {
			return t.Moment, t.Shear, "the model of its neighbours"
		}
	}
	return m.Moment, m.Force, "the formula for one span"
}
