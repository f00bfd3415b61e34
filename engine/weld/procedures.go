package weld

import (
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// procedures holds every procedure that the hull names against its tests.
func (a *assessor) procedures() {
	named := a.namedProcedures()
	tests := map[string]*record.ProcedureTest{}
	for i := range a.yard.Welding.Tests {
		t := &a.yard.Welding.Tests[i]
		tests[t.ID] = t
	}
	for i := range a.yard.Welding.Procedures {
		p := &a.yard.Welding.Procedures[i]
		if named[p.ID] || named[Number(p)] {
			a.procedure(p, tests)
		}
	}
}

// Number is the number of a procedure without its revision: as written, or its key.
func Number(p *record.Procedure) string {
	if p.Number.Set {
		return p.Number.V
	}
	return p.ID
}

func (a *assessor) namedProcedures() map[string]bool {
	named := map[string]bool{}
	for i := range a.hull.Joints {
		named[a.hull.Joints[i].Procedure.V] = true
	}
	for i := range a.hull.Welds {
		named[a.hull.Welds[i].Procedure.V] = true
	}
	for i := range a.hull.Repairs {
		named[a.hull.Repairs[i].Procedure.V] = true
	}
	delete(named, "")
	return named
}

func (a *assessor) procedure(p *record.Procedure, tests map[string]*record.ProcedureTest) {
	out := Procedure{Record: p}
	subject := "procedure " + p.ID
	for _, key := range testsOf(p) {
		if t := tests[key]; t != nil {
			out.Tests = append(out.Tests, a.ranges.OfTest(t))
			a.testOf(p, t, subject)
		}
	}
	c := finding.Check{Rule: ruleTests, Subject: subject, Standing: finding.Met, Basis: finding.Practice, Source: "practice",
		Asks: "the procedure rests on a test piece that passed", Says: "rests on " + strings.Join(testsOf(p), ", "), Places: finding.Places(p.At, p.Tests.At, p.Test.At)}
	if len(out.Tests) == 0 {
		c.Standing, c.Says, c.Missing = finding.NotShown, "procedure "+p.ID+" names no test piece that it rests on", []string{"procedure." + p.ID + ".tests"}
		c.Settle = "name the test, or weld and test a piece by this procedure"
	}
	a.Checks = append(a.Checks, c)
	if len(out.Tests) > 0 {
		out.Variables = variables(p, out.Tests)
		a.Checks = append(a.Checks, rangeCheck(p, out.Variables, subject))
	}
	a.silicon(p, subject)
	a.Procedures = append(a.Procedures, out)
}

func testsOf(p *record.Procedure) []string {
	all := slices.Clone(p.Tests.V)
	if p.Test.Set && !slices.Contains(all, p.Test.V) {
		all = append(all, p.Test.V)
	}
	return all
}

// testOf holds a procedure against one of its tests: it passed, and it came first.
func (a *assessor) testOf(p *record.Procedure, t *record.ProcedureTest, subject string) {
	if t.Result.V == "failed" {
		a.find(finding.Contradiction, ruleFailed, subject, "procedure "+p.ID+" rests on test "+t.ID+", which failed",
			"take the procedure out of use until a test has passed", p.At, t.Result.At)
	}
	if p.From.Set && p.From.V.Before(t.Date.V) {
		a.find(finding.Contradiction, ruleDays, subject, "procedure "+p.ID+" holds from "+p.From.V.String()+", before its test "+t.ID+" was welded on "+t.Date.V.String(),
			"one of the two days is wrong, or seams were welded before the test", p.From.At, t.Date.At)
	}
}

// variables holds what is written in a procedure against what its passed tests qualify together.
func variables(p *record.Procedure, tests []TestRange) []Variable {
	var sound []TestRange
	var open []string
	basis := finding.Basis("")
	for _, t := range tests {
		switch {
		case t.Test.Result.V != "passed":
		case t.Scheme == nil:
			open = append(open, t.Why)
		default:
			sound = append(sound, t)
			basis = finding.Softer(basis, t.Basis)
		}
	}
	j := &judgement{procedure: p, tests: sound, basis: basis, why: strings.Join(open, "; ")}
	j.word("process", p.Process, gather(sound, func(t *TestRange) []string { return []string{t.Test.Process.V} }))
	j.word("kind of weld", p.Weld, gather(sound, func(t *TestRange) []string { return t.Welds }))
	j.thickness()
	j.throat()
	j.words("material groups", p.Groups, gather(sound, func(t *TestRange) []string { return t.Groups }))
	j.positions()
	j.word("sides", p.Sides, gather(sound, func(t *TestRange) []string { return t.Sides }))
	j.words("fillers", p.Fillers, gather(sound, func(t *TestRange) []string { return t.Fillers }))
	j.word("shielding gas", p.Gas, gather(sound, func(t *TestRange) []string { return []string{t.Test.Gas.V} }))
	j.word("kind of current", p.Current, gather(sound, func(t *TestRange) []string { return []string{t.Test.Current.V} }))
	j.word("runs", p.Layers, gather(sound, func(t *TestRange) []string { return t.Layers }))
	j.interpass()
	return j.all
}

// judgement holds the variables of one procedure against its tests.
type judgement struct {
	procedure *record.Procedure
	tests     []TestRange
	basis     finding.Basis
	why       string
	all       []Variable
}

func gather(tests []TestRange, of func(*TestRange) []string) []string {
	var out []string
	for i := range tests {
		for _, one := range of(&tests[i]) {
			out = with(out, one)
		}
	}
	return out
}

// add judges one variable; covered is only asked where something is written and something is qualified.
func (j *judgement) add(name, written, qualified string, at finding.Place, covered bool) {
	v := Variable{Name: name, Written: written, Qualified: qualified, Standing: finding.Met, Basis: j.basis, Place: at}
	switch {
	case written == "":
		return
	case qualified == "":
		v.Standing, v.Why = finding.NotShown, j.why
		if v.Why == "" {
			v.Why = "no test says anything of it"
		}
	case !covered:
		v.Standing = finding.Short
	}
	j.all = append(j.all, v)
}

func (j *judgement) word(name string, written record.Val[string], qualified []string) {
	j.add(name, written.V, strings.Join(qualified, ", "), written.At, slices.Contains(qualified, written.V))
}

func (j *judgement) words(name string, written record.Val[[]string], qualified []string) {
	covered := !slices.ContainsFunc(written.V, func(w string) bool { return !slices.Contains(qualified, w) })
	j.add(name, strings.Join(written.V, ", "), strings.Join(qualified, ", "), written.At, covered)
}

func (j *judgement) thickness() {
	p := j.procedure
	if !p.ThickFrom.Set || !p.ThickTo.Set {
		return
	}
	var spans Spans
	for _, t := range j.tests {
		if t.HasThick {
			spans = append(spans, t.Thickness)
		}
	}
	own := Span{float64(p.ThickFrom.V), float64(p.ThickTo.V)}
	j.span("thickness", own, spans, p.ThickFrom.At)
}

func (j *judgement) throat() {
	p := j.procedure
	if !p.ThroatFrom.Set || !p.ThroatTo.Set {
		return
	}
	var spans Spans
	for _, t := range j.tests {
		if t.HasThroat {
			spans = append(spans, t.Throat)
		}
	}
	j.span("throat", Span{float64(p.ThroatFrom.V), float64(p.ThroatTo.V)}, spans, p.ThroatFrom.At)
}

func (j *judgement) span(name string, own Span, qualified Spans, at finding.Place) {
	text := ""
	if len(qualified) > 0 {
		text = qualified.String()
	}
	j.add(name, own.String(), text, at, qualified.Cover(own))
}

// positions: where a table says that any position qualifies all, nothing else is asked.
func (j *judgement) positions() {
	all := len(j.tests) > 0 && slices.ContainsFunc(j.tests, func(t TestRange) bool { return t.Positions == nil })
	qualified := gather(j.tests, func(t *TestRange) []string { return t.Positions })
	if all {
		j.add("positions", strings.Join(j.procedure.Positions.V, ", "), "all", j.procedure.Positions.At, true)
		return
	}
	j.words("positions", j.procedure.Positions, qualified)
}

// interpass: the highest temperature between runs is not above that of the tests.
func (j *judgement) interpass() {
	most, has := 0.0, false
	for _, t := range j.tests {
		if t.Test.Interpass.Set {
			most, has = max(most, float64(t.Test.Interpass.V)), true
		}
	}
	p := j.procedure
	if !p.Interpass.Set || !has {
		return
	}
	text := func(v float64) string { return "at most " + strconv.FormatFloat(v, 'f', -1, 64) + " °C" }
	j.add("temperature between runs", text(float64(p.Interpass.V)), text(most), p.Interpass.At, float64(p.Interpass.V) <= most)
}

// rangeCheck is the check of all variables together.
func rangeCheck(p *record.Procedure, all []Variable, subject string) finding.Check {
	c := finding.Check{Rule: ruleRange, Subject: subject, Standing: finding.Met, Asks: "what is written in the procedure lies within what its tests qualify",
		Source: "limit tables for procedure tests", Places: finding.Places(p.At)}
	var wide, open []string
	for _, v := range all {
		c.Basis = finding.Softer(c.Basis, v.Basis)
		switch v.Standing {
		case finding.Short:
			wide = append(wide, v.Name+" "+v.Written+", qualified "+v.Qualified)
			c.Places = append(c.Places, v.Place)
		case finding.NotShown:
			open = append(open, v.Name)
		}
	}
	c.Says = unit.Count(len(all), "variable", "variables") + " inside"
	switch {
	case len(wide) > 0:
		c.Standing, c.Says = finding.Short, "wider than its tests: "+strings.Join(wide, "; ")
		c.Settle = "narrow the procedure, or weld and test a further piece"
	case len(all) == 0:
		c.Standing, c.Says, c.Settle = finding.NotShown, "the procedure says nothing of its range", "write thickness, groups, positions and fillers of the procedure"
	case len(open) > 0:
		c.Standing, c.Says = finding.NotShown, "not shown: "+strings.Join(open, ", ")+"; "+all[len(all)-1].Why
		c.Settle = "hold the procedure against the text of the standard, or write what is missing of the test"
	}
	c.Places = finding.Places(c.Places...)
	return c
}

// silicon tells of silicon filler for parents with magnesium.
func (a *assessor) silicon(p *record.Procedure, subject string) {
	for _, f := range p.Fillers.V {
		rich := slices.ContainsFunc(p.Groups.V, func(g string) bool { return g == "22.3" || g == "22.4" })
		if a.isSilicon(f) && rich {
			a.find(finding.Shortfall, ruleSilicon, subject, "procedure "+p.ID+" takes "+f+" for plate of group "+strings.Join(p.Groups.V, ", ")+": silicon filler makes seams in alloys with more than 2 % magnesium brittle",
				"take S Al 5183 or S Al 5356", p.Fillers.At, p.Groups.At)
		}
	}
}

func (a *assessor) isSilicon(filler string) bool {
	return strings.HasPrefix(strings.TrimPrefix(filler, "S Al "), "4")
}
