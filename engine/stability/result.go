// Package stability holds a boat against what asks for it to stay upright and dry: the righting lever in every condition,
// where water comes in, the checks of the method sheets, the tests made on the water, and flotation when swamped.
//
// A formula stands in its method sheet; here is what is no formula: curves, the heel at which a moment is balanced, which
// check fits the boat, and the reduction of tests. Lengths in metres, masses in kilograms, angles in degrees unless a name
// says otherwise.
//
//   - Question: does the boat stay upright, dry and afloat?
//   - In: the hull, its lines, the conditions that loading floats, the sheets.
//   - Out: righting levers (m over °), where water comes in, checks by the sheets, tests reduced, flotation swamped.
//   - Source: ISO 12217-1 and -3 (second-hand or recalled), TP 14619 (read), IMO A.749 as information; each sheet says
//     so.
package stability

import (
	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/loading"
	"hullfile/engine/method"
)

// Result is everything that is shown of one hull afloat.
type Result struct {
	Sheets      []*method.Sheet // by which it is judged or informed
	Option      Option
	Conditions  []Condition
	Shown       []Shown // checks with their working, in the order of Checks as far as they have one
	NotApplying []NotApplying
	Information []Information
	Heelings    []Heeling // by crew and wind, for the pictures
	Inclinings  []Inclining
	Freeboards  []Freeboards
	Flotation   Flotation
	WhatIf      []WhatIf
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Option is which part and option of ISO 12217 fit the boat.
type Option struct {
	Part   string // sheet name without .toml; empty where none could be chosen
	Number int    // of part 1; 0 where the part has no number that is known here
	Says   string
	Basis  finding.Basis
}

// Condition is one condition with its righting lever.
type Condition struct {
	Loading *loading.Condition
	Sides   []Side // starboard first; port only where it differs
	Open    *Side  // with undrained cockpits open to the water, on the worse side; nil where there are none
	Areas   [3]float64
	Range   float64 // degrees at which the lever is gone; 0 where it is not gone before flooding or 180
}

// Side is the righting lever to one side.
type Side struct {
	Name      string // "starboard", "port"
	Curve     hydrostatics.Curve
	Unders    []Under // deck edge, chine and every way in, in that order
	Flooding  Under   // the first way in; Never where there is none
	Limit     float64 // to where the curve counts: flooding, or 180
	Greatest  float64 // lever within the limit
	GreatestA float64 // the heel of it

	load   hydrostatics.Load // mirrored where the side is port
	body   *hydrostatics.Body
	ways   []way
	mirror float64 // 1, or -1 for port
}

// Under is a thing that goes under water at a heel.
type Under struct {
	Name  string
	Heel  float64
	Never bool
}

// Shown is one check with the working that decides it.
type Shown struct {
	Check     finding.Check
	Working   *method.Working // nil where no sheet was used
	Symbol    string          // what is asked for, in that working
	Condition string          // its id; empty where it is not of one condition
}

// NotApplying is a check that does not apply, and why.
type NotApplying struct {
	Rule   string
	Says   string
	Source string
}

// Information is a criterion that is shown and not judged.
type Information struct {
	Condition string
	Name      string
	Has       float64
	Asks      float64
	Unit      string
	Reached   bool
	Source    string
}

// Heeling is the boat at rest under a heeling moment.
type Heeling struct {
	Condition string
	Name      string  // "crew to one side", "wind"
	Moment    float64 // N·m upright
	Heel      float64
	Rests     bool    // false where the lever never balances the moment
	Least     float64 // least height above the water of any way in
	Attitude  hydrostatics.Attitude
}

// WhatIf is a table of how the checks fare over a range of one quantity.
type WhatIf struct {
	Name  string // "persons"
	Unit  string
	Base  float64 // as it is
	Rows  []WhatRow
	Turns []Turn
}

// WhatRow is one value and by how much every check is reached; below nought it is short.
type WhatRow struct {
	Value   float64
	Margins []float64 // in the order of Turns
}

// Turn is the greatest value at which a check is still reached.
type Turn struct {
	Rule  string
	Name  string
	Unit  string // of the margins
	At    float64
	Never bool // reached over the whole range
	Now   bool // short as it is
}
