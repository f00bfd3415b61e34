// Package survey makes the sheet that a surveyor takes on board. It ranks, from the file itself, what to look at on this
// boat; says why, where, what to measure and what is expected; and holds what was filled in against the file.
//
//   - Question: where should a surveyor put the lamp?
//   - In: the file: structure, seams, stock, details, checks, findings, assumptions, and the filled sheet.
//   - Out: items in order with why, where, what to do and what to expect; readings judged.
//   - Source: the order is practice, ours.
//
// The files:
//
//	assess.go    the way in
//	list.go      in which order, and how many of each class
//	of_*.go      one class of items each
//	judge.go     the readings held against the file
package survey

import (
	"hullfile/engine/detail"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/seam"
	"hullfile/engine/stock"
)

// Input is what the sheet is made from. Checks, Findings and Assumptions are those of all disciplines.
type Input struct {
	Hull        *record.Hull
	Builder     *record.Builder
	Structure   *scantling.Result
	Details     *detail.Result
	Stock       *stock.Result
	Seams       *seam.Map // nil where there is no build record
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Result is the sheet, and what was filled in.
type Result struct {
	Items    []Item    // on the sheet, in order
	Left     []Left    // how many of each class the sheet leaves out
	Strays   []Reading // readings of items that the file does not make any more
	Checks   []finding.Check
	Findings []finding.Finding
}

// Left is the number of items of a class that the sheet leaves out.
type Left struct {
	Class Class
	N     int
	Rest  string // where the rest is to be found
}

// Class is a class of items; the sheet takes them in the order of Classes.
type Class string

// The classes.
const (
	Contradicts Class = "contradiction"
	Short       Class = "short of what is asked"
	SeamOpen    Class = "seam with something open"
	Mended      Class = "repaired seam"
	Worn        Class = "used up fastest"
	Least       Class = "least room"
	Lot         Class = "metal in doubt"
	Hold        Class = "nobody from outside watched"
	Tape        Class = "a tape or a gauge settles it"
)

// Rule says how the items of a class are ordered, how many the sheet takes at most, and on which page all of them stand.
type Rule struct {
	Class Class
	Order string
	Most  int
	Rest  string
}

// Rules gives the classes in the order of the sheet. The order is a judgement of what an hour on board is best spent on
// (practice): what cannot be true first, then what is known to be wanting, then what nobody saw, then what wears, then
// where there is least to spare.
func Rules() []Rule {
	return []Rule{
		{Contradicts, "in the order of the findings; those that papers alone can settle are left to the desk", 12, "findings"},
		{Short, "in the order of the checks", 12, "findings"},
		{SeamOpen, "shell first, then by length", 8, "seams"},
		{Mended, "shell first, then by length repaired", 8, "seams"},
		{Worn, "by damage in a hundred hours, the most first", 5, "running hours"},
		{Least, "by fitted over needed, the least first", 6, "structure"},
		{Lot, "in the order of the stock records", 6, "materials"},
		{Hold, "in the order of the record", 6, "hold points"},
		{Tape, "in the order of the file", 8, "boat"},
	}
}

// Item is one thing to look at.
type Item struct {
	Key      string // stable: made of the class and the subject, never of the rank
	Class    Class
	Subject  string // "panel B3"
	Why      string
	Where    string
	Spot     Spot
	Do       string // what to measure or look at
	Unit     string // of the reading; empty where something is looked at
	Expect   Expect
	Places   []finding.Place
	Readings []Reading
}

// Expect is what a reading should be.
type Expect struct {
	Says   string // "5.7 mm or more"
	Low    float64
	High   float64
	HasLow bool
	HasTop bool
	Source string // of the value and of its tolerance
	Basis  finding.Basis
}

// Spot is where on the hull: seams or panels by their keys, or the boat as a whole. With none of them there is nothing to
// draw.
type Spot struct {
	Joints     []string
	Panels     []string
	Everywhere bool
	None       bool
}

// Reading is one line of a filled sheet, judged.
type Reading struct {
	Record   *record.SurveyReading
	Standing finding.Standing
	Says     string
}
