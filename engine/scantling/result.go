// Package scantling judges the structure: it hands the records of the boat and of each panel and member to method sheets
// and says what is needed, what is fitted, which step governs, on what the answer rests, and what would change it.
//
// One sheet governs and makes the checks. Others that the record names stand beside it as opinions: they say what they
// would ask for and why that differs, and never make a check.
//
//   - Question: is every plate, member, bracket and fitting strong enough, by which rule, and what would change that?
//   - In: the hull, the grid laid on its lines, the alloys, the library of sheets.
//   - Out: for each what is needed and fitted (mm, cm³, cm²) with its working; opinions, rings and grillages, what if,
//     how thin a plate may become; checks.
//   - Source: the sheets that the record names under [rules]; what is recalled says so there.
package scantling

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Result is the whole structure of one hull.
type Result struct {
	Sheet       *method.Sheet   // the governing sheet
	Assumed     bool            // the record does not say which sheet governs
	Craft       *method.Working // values of the craft as a whole by the governing sheet
	Rules       []Rule          // the governing sheet first, then the others in the order of the record
	Panels      []Panel         // as listed, then those laid out from the grid
	Members     []Member        // likewise
	Models      []Model         // rings and grillages of the grid
	Brackets    []Bracket
	Fittings    []Fitting
	Collision   *Collision // nil where nothing is on record for it
	Renewals    []Renewal  // of each panel
	WhatIfs     []WhatIf   // of each zone
	Headrooms   []Headroom // speed and loaded mass by each rule
	Wires       []Wire     // in the seams; the weakest counts where a sheet parts its strengths by filler
	Critical    *Critical  // the member with the least room by the governing sheet; nil where none is shown
	Worst       []Critical // the ten with the least room by the governing sheet, the least first
	Zones       []Zone     // the worst panel of each zone by each sheet
	Checks      []finding.Check
	Findings    []finding.Finding // doubts of range and of kind; shortfalls and gaps come from the checks
	Assumptions []finding.Assumption

	judge *judge // what they were judged from, for Second
}

// Rule is one sheet by which the hull is judged.
type Rule struct {
	Name     string // file name without .toml
	Cite     string // work and edition
	Sheet    *method.Sheet
	Craft    *method.Working
	Governs  bool
	Refuses  string // why nothing is judged by it, empty if it judges
	Recalled int    // formulas that are from memory
	Formulas int
}

// Panel is one panel judged by the governing sheet.
type Panel struct {
	Record   *record.Panel
	Derived  bool   // laid out from the grid, not listed by hand
	Same     string // panel whose working this one shares, because every value that goes in is the same; empty if it has its own
	Count    int
	Working  *method.Working
	Needed   unit.MM // greatest of all thicknesses that the sheet asks for; zero where not shown
	Fitted   unit.MM
	Margin   float64 // fitted over needed, 0 where not shown
	Governs  string  // symbol of the step that asks for the most
	Asks     []Ask   // every thickness that the sheet asks for
	Standing finding.Standing
	Basis    finding.Basis // softest basis under the governing step
	Pressure float64       // kN/m², design pressure, where the sheet gives one under the symbol P
	Why      string        // why it is not shown
	Opinions []Opinion     // of the other sheets, in the order of Result.Rules from the second on
}

// Ask is one thickness that the sheet asks for.
type Ask struct {
	Symbol string
	Name   string
	Value  unit.MM
	Shown  bool
	State  method.State
	reason
}

// reason says why a result is not sound.
type reason struct {
	says string
	of   *method.Shown // of a result that does not apply, whose sentence is made when it is asked for
}

func reasonOf(s *method.Shown) reason {
	if s.State == method.NotSet {
		return reason{of: s}
	}
	return reason{says: s.Why()}
}

// Why says why the result is not sound; empty where it is.
func (r reason) Why() string {
	if r.of != nil {
		return r.of.Why()
	}
	return r.says
}
