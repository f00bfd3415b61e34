package scantling

import (
	"fmt"

	"hullfile/engine/crew"
	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// usual is the sheet by which a hull is judged whose record names none.
const usual = "iso-12215-5-2008"

// Rules of the checks and findings of this package.
const (
	ruleThickness = "plating-thickness"
	ruleSheet     = "structure-method"
	ruleRange     = "structure-range"
	ruleScope     = "structure-scope"
	ruleOpinion   = "structure-opinion"
)

// Input is what the structure is judged from.
type Input struct {
	Yard    *record.Yard // wires and instruments of the yard; nil without
	Hull    *record.Hull
	Library *method.Library
	Alloys  *material.Table
	Grid    *grid.Result // what is laid out on the lines beside what is listed by hand; nil without
	Depth   unit.M       // of the hull, for a collision; nought where no lines tell it
}

// Assess judges the structure of a hull by its governing sheet, and by the others that the record names. A hull whose
// record names no sheet is judged by the usual one, and the result says that this is assumed.
func Assess(in Input) Result {
	j := newJudge(&in)
	out := Result{Sheet: j.rules[0].sheet, Craft: j.rules[0].craft, Assumed: !in.Hull.Rules.Structure.Set, judge: j}
	if out.Assumed {
		out.Assumptions = append(out.Assumptions, assumedSheet(out.Sheet))
	}
	out.Assumptions = append(out.Assumptions, j.assumed()...)
	out.Wires = j.wires.public()
	for i, r := range j.rules {
		out.Rules = append(out.Rules, r.public(i == 0))
	}
	var beside crew.Crew
	plated := j.apart()
	beside.Go(func() { plated.panels(&out) }) // judges by desks of its own
	members := j.members(&out)
	beside.Wait()
	out.Members = make([]Member, 0, len(members))
	for i := range members {
		out.Members = append(out.Members, members[i].Member)
		out.Checks = append(out.Checks, members[i].check())
	}
	j.zones(&out)
	j.brackets(&out)
	j.fittings(&out)
	j.worst(&out)
	beside.Go(func() { out.Headrooms = j.headrooms(&out) }) // asks sheets and bars of its own
	j.renewals(&out)
	j.whatIfs(&out)
	beside.Wait()
	out.Checks = gathered(out.Checks, j.in.Grid)
	out.Findings = append(out.Findings, j.doubts(&out)...)
	out.Findings = append(out.Findings, j.opinions(&out)...)
	return out
}

func assumedSheet(sheet *method.Sheet) finding.Assumption {
	says := "the record names no method sheet for the structure; " + usual + " is taken"
	if sheet != nil {
		says = fmt.Sprintf("the record names no method sheet for the structure; %s (%s) is taken", usual, sheet.Cite(""))
	}
	return finding.Assumption{Subject: "boat", Says: says, Settle: "write rules.structure", Basis: finding.Practice}
}

// judge holds what the panels and members of one hull share.
type judge struct {
	in    *Input
	hull  *record.Hull
	rules []*rule // the governing one first
	bars  *bars
	wires wires

	judgedAs map[string]string // names of the grid to the names of the records that judge them
}

func newJudge(in *Input) *judge {
	j := &judge{in: in, hull: in.Hull, bars: newBars(in.Hull), judgedAs: map[string]string{}}
	if in.Grid == nil {
		in.Grid = &grid.Result{}
	}
	for i := range in.Grid.Patches {
		j.judgedAs[in.Grid.Patches[i].ID] = in.Grid.Patches[i].Panel
	}
	for i := range in.Grid.Lines {
		j.judgedAs[in.Grid.Lines[i].ID] = in.Grid.Lines[i].Member
	}
	name, named := in.Hull.Rules.Structure.Get()
	if !named {
		name = usual
	}
	j.wires = wiresOf(in.Yard, in.Hull)
	first := newRule(name, in, j.wires)
	if first.refuses != "" && first.sheet == nil {
		first.missing = []string{"rules.structure"}
	}
	first.governs = true
	j.rules = append(j.rules, first)
	for _, also := range in.Hull.Rules.Also.V {
		if !j.named(also) {
			j.rules = append(j.rules, newRule(also, in, j.wires))
		}
	}
	return j
}

// apart is the same judge with desks of its own, for what is judged beside others.
func (j *judge) apart() *judge {
	out := *j
	out.rules = make([]*rule, len(j.rules))
	for i, r := range j.rules {
		out.rules[i] = r.beside()
	}
	return &out
}

// named reports whether a sheet is among the rules already.
func (j *judge) named(name string) bool {
	for _, r := range j.rules {
		if r.name == name {
			return true
		}
	}
	return false
}

func (j *judge) governing() *rule { return j.rules[0] }

// panels judges every panel: those listed by hand in the order of the record, then those of the grid. A hull without
// panels is a gap, not a hull that is strong enough.
func (j *judge) panels(out *Result) {
	n := len(j.hull.Panels) + len(j.in.Grid.Panels)
	if n == 0 {
		out.Checks = append(out.Checks, noPanels())
		return
	}
	out.Panels = make([]Panel, 0, n)
	out.Checks = make([]finding.Check, 0, n)
	for i := range j.hull.Panels {
		j.onePanel(&j.hull.Panels[i], false, out)
	}
	for i := range j.in.Grid.Panels {
		j.onePanel(&j.in.Grid.Panels[i], true, out)
	}
}

func (j *judge) onePanel(rec *record.Panel, derived bool, out *Result) {
	p := j.governing().panel(rec, derived, true)
	for i, r := range j.rules[1:] {
		other := r.panel(rec, derived, false)
		p.Opinions = append(p.Opinions, other.opinion(i+1, &p))
	}
	out.Panels = append(out.Panels, p.Panel)
	out.Checks = append(out.Checks, p.check())
}

// members judges every member, those listed by hand first, and then each among its neighbours. Of out it writes only what is
// said of models, so that panels may be judged meanwhile.
func (j *judge) members(out *Result) []held {
	n := len(j.hull.Members) + len(j.in.Grid.Members)
	all := make([]held, 0, n)
	for i := range j.hull.Members {
		all = append(all, j.oneMember(&j.hull.Members[i], false))
	}
	for i := range j.in.Grid.Members {
		all = append(all, j.oneMember(&j.in.Grid.Members[i], true))
	}
	j.together(all, out)
	return all
}

func (j *judge) oneMember(rec *record.Member, derived bool) held {
	m := j.governing().member(rec, j.bars, derived, true)
	for i, r := range j.rules[1:] {
		other := r.member(rec, j.bars, derived, false)
		m.Opinions = append(m.Opinions, other.opinion(i+1, &m))
	}
	return m
}

func noPanels() finding.Check {
	return finding.Check{
		Rule: ruleThickness, Subject: "boat", Asks: "every panel of plating is as thick as the method asks",
		Standing: finding.NotShown, Says: "no panel of plating is on record, so the structure is not shown",
		Missing: []string{"panel"}, Settle: "write the plates into plating.csv, with frames and stringers; or each panel by hand, as [panel.NAME]",
	}
}
