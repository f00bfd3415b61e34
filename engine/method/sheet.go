package method

import "hullfile/engine/finding"

// Scope is one level of a sheet: the craft, a panel, a stiffener.
type Scope struct {
	Name   string // craft, panel, stiffener, ...
	Above  string // scope whose values this one sees; empty at the top
	Inputs []*Input
	Steps  []*Step
	Gives  map[string][]string // what the sheet calls its answers: "needed" -> symbols of the thicknesses, "pressure" -> symbol
}

// Input is a value that a scope asks for.
type Input struct {
	Symbol string
	Name   string   // in plain words
	Unit   string   // sign
	From   string   // name under which Given finds it
	Words  []string // allowed words, for an input of words; then Unit and the ranges are not used
	Least  *float64 // smallest value the method was made for
	Most   *float64
	Note   string
}

// Step gives one symbol.
type Step struct {
	Symbol  string
	Name    string
	Unit    string
	When    *Formula
	Formula *Formula
	Range   *Formula // condition under which the formula may be used
	Clause  string
	Basis   finding.Basis
	Note    string
	Line    int // line of the step in the sheet, for messages
}

// Table is a table of a sheet, read exactly or by linear interpolation.
type Table struct {
	Name   string
	Title  string
	Clause string
	Basis  finding.Basis
	Step   bool // true: the row whose first value is the greatest not above the argument; false: interpolated
	X      []float64
	Y      []float64
	Words  []string // instead of X: rows looked up by word
}
