package weld

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Rules of the checks and findings of this package.
const (
	ruleTests      = "procedure-tests"
	ruleFailed     = "procedure-test-failed"
	ruleDays       = "procedure-days"
	ruleRange      = "procedure-range"
	ruleSilicon    = "procedure-filler"
	ruleApproved   = "procedure-approved"
	ruleStandard   = "qualification-standard"
	ruleLife       = "qualification-life"
	ruleDesignated = "qualification-designation"
	ruleFillets    = "qualification-fillets"
	ruleStamp      = "stamp-twice"
	ruleHeld       = "welding-limits-held"
	ruleMetal      = "fillet-strength"
	ruleFactor     = "fillet-throat"
	rulePattern    = "fillet-pattern"
)

// Result is what is known of the procedures, the welders and the seams of one hull.
type Result struct {
	Procedures  []Procedure
	Welders     []Welder
	Inspectors  []*record.Inspector
	Seams       []Seam
	Sums        Sums
	Example     *method.Working // of what the longest seam takes, to show how it is reckoned; nil where none is known
	ExampleOf   *record.Joint
	Heats       []WeldHeat      // of the welds, in the order of the record
	Hottest     *method.Working // of the weld with the most heat; nil where none is known
	HottestOf   *record.Weld
	Stages      []*record.Stage
	Sheets      []*method.Sheet // that the seams were reckoned by
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Procedure is one procedure that joints or welds of the hull name, held against what its tests qualify.
type Procedure struct {
	Record    *record.Procedure
	Tests     []TestRange
	Variables []Variable
}

// Variable is one variable of a procedure, as written and as qualified.
type Variable struct {
	Name      string
	Written   string
	Qualified string
	Standing  finding.Standing
	Why       string
	Basis     finding.Basis
	Place     finding.Place
}

// Welder is somebody whose stamp stands in the welds of the hull.
type Welder struct {
	Record *record.Welder
	Person *record.Person // nil where the key is not on record
	Ranges []WelderRange
	Welds  int
	First  record.Date
	Last   record.Date
}

// Seam is one joint with what it takes to weld it and, for fillets, whether its throat is enough.
type Seam struct {
	Joint    *record.Joint
	Takes    Takes
	Why      string          // why it is not known what the seam takes
	Thinner  unit.MM         // the thinner of its plates; 0 where none is written
	Softened Softening       // how far the heat of the seam softens the thinner plate
	Strength *method.Working // fillet under the forces of the record
	Factor   *method.Working // least throat by weld factor
}

// Takes is what one seam takes. Mass in kg, time in hours, gas in cubic metres. Known is false where its size is not written.
type Takes struct {
	Known                         bool
	Metal, Wire, Gas, Arc, Labour float64
}

// Sums is what the seams of the hull take together. Mass in kg, time in hours, gas in cubic metres.
type Sums struct {
	Joints, Without               int
	Metres                        float64
	Metal, Wire, Gas, Arc, Labour float64
	Planned, Booked               float64 // hours of the stages of welding
	HasPlanned, HasBooked         bool
}
