package scantling

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// usual is the sheet by which a hull is judged whose record names none.
const usual = "iso-12215-5-2008"

// Rules of the checks and findings of this package.
const (
	ruleThickness = "plating-thickness"
	ruleSheet     = "structure-method"
	ruleRange     = "structure-range"
	ruleScope     = "structure-scope"
)

// Assess judges every panel of a hull by its method sheet. A hull whose record names no sheet is judged by the usual
// one, and the result says that this is assumed.
func Assess(h *record.Hull, lib *method.Library, table *material.Table) Result {
	name, named := h.Rules.Structure.Get()
	if !named {
		name = usual
	}
	sheet, found := lib.Sheet(name)
	out := Result{Sheet: sheet, Assumed: !named}
	if !named {
		out.Assumptions = append(out.Assumptions, assumedSheet(sheet))
	}
	j := &judge{hull: h, sheet: sheet}
	switch {
	case !found:
		j.refuses = fmt.Sprintf("method sheet %q is not among the sheets at hand: %s", name, strings.Join(lib.Names(), ", "))
		j.missing = []string{"rules.structure"}
	default:
		j.alloys = &alloys{table: table, source: sheet.Work, found: map[asked]*material.Given{}}
		out.Craft = j.reckonCraft()
	}
	j.panels(&out)
	out.Findings = append(out.Findings, j.doubts(&out)...)
	return out
}

func assumedSheet(sheet *method.Sheet) finding.Assumption {
	says := "the record names no method sheet for the structure; " + usual + " is taken"
	if sheet != nil {
		says = fmt.Sprintf("the record names no method sheet for the structure; %s (%s) is taken", usual, cite(sheet, ""))
	}
	return finding.Assumption{Subject: "boat", Says: says, Settle: "write rules.structure", Basis: finding.Practice}
}

// judge holds what the panels of one hull share.
type judge struct {
	hull    *record.Hull
	sheet   *method.Sheet
	alloys  *alloys
	craft   *method.Working
	refuses string   // why no panel of this hull can be judged
	missing []string // record keys that would settle it
}

// reckonCraft evaluates the craft as a whole. A sheet without a scope of that name, or with one that takes a value in
// another unit than the record has, judges nothing.
func (j *judge) reckonCraft() *method.Working {
	w, err := j.sheet.Evaluate("craft", &given{boat: &j.hull.Boat}, nil)
	if err != nil {
		j.refuses = err.Error()
		return nil
	}
	j.craft = w
	return w
}

// panels judges every panel in the order of the record. A hull without panels is a gap, not a hull that is strong enough.
func (j *judge) panels(out *Result) {
	if len(j.hull.Panels) == 0 {
		out.Checks = append(out.Checks, j.noPanels())
		return
	}
	out.Panels = make([]Panel, 0, len(j.hull.Panels))
	out.Checks = make([]finding.Check, 0, len(j.hull.Panels))
	for i := range j.hull.Panels {
		p := j.panel(&j.hull.Panels[i])
		out.Panels = append(out.Panels, p.Panel)
		out.Checks = append(out.Checks, j.check(&p))
	}
}

func (j *judge) noPanels() finding.Check {
	return finding.Check{
		Rule: ruleThickness, Subject: "boat", Asks: "every panel of plating is as thick as the method asks",
		Standing: finding.NotShown, Says: "no panel of plating is on record, so the structure is not shown",
		Missing: []string{"panel"}, Settle: "write each panel, or each group of equal panels, as [panel.NAME]",
	}
}
