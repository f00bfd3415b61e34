// Package scantling judges the structure: it hands the records of the boat and of each panel to a method sheet and
// says what is needed, what is fitted, which step governs, and on what the answer rests.
package scantling

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Result is the whole structure of one hull by its governing sheet.
type Result struct {
	Sheet       *method.Sheet
	Assumed     bool            // the record does not say which sheet governs
	Craft       *method.Working // values of the craft as a whole
	Panels      []Panel         // in the order of the record
	Checks      []finding.Check
	Findings    []finding.Finding // doubts of range and of kind; shortfalls and gaps come from the checks
	Assumptions []finding.Assumption
}

// Panel is one panel judged.
type Panel struct {
	Record   *record.Panel
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
}

// Ask is one thickness that the sheet asks for.
type Ask struct {
	Symbol string
	Name   string
	Value  unit.MM
	Shown  bool
	State  method.State
	Why    string
}
