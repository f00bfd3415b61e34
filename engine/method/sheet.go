package method

import "hullfile/engine/finding"

// Scope is one level of a sheet: the craft, a panel, a stiffener.
type Scope struct {
	Name   string // craft, panel, stiffener, ...
	Above  string // scope whose values this one sees; empty at the top
	Inputs []*Input
	Steps  []*Step
	Gives  map[string][]string // what the sheet calls its answers: "needed" -> symbols of the thicknesses, "pressure" -> symbol

	above   *Scope
	groups  []*group           // in the order in which they are evaluated
	symbols map[string]*symbol // all that the scope sees, by their written form
	spelt   map[string]*symbol // the same, as the sheet spells them
	base    int                // symbols of the scopes above
}

// Input is a value that a scope asks for.
type Input struct {
	Symbol string
	Name   string        // in plain words
	Unit   string        // sign
	From   string        // name under which Given finds it
	At     finding.Place // where From is written
	Words  []string      // allowed words, for an input of words; then Unit and the ranges are not used
	Least  *float64      // smallest value the method was made for
	Most   *float64
	Note   string

	said   Said
	absent doubt // where it is not given
}

// share makes what all workings share of an input.
func (in *Input) share() {
	in.said = Said{Symbol: in.Symbol, Name: in.Name, Unit: in.Unit, IsWord: in.Words != nil, Note: in.Note, From: in.From, itself: []string{in.Symbol}}
	in.absent = doubt{causes: in.said.itself, lacks: []string{in.From}, why: "not given"}
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

	uses   []*symbol // of formula, then of when, in the order in which they stand there
	named  []string  // the names of uses
	ranges []*symbol // of range
	word   bool      // it gives a word
	said   Said
}

// group is all the steps for one symbol.
type group struct {
	symbol *symbol
	name   string
	unit   string
	steps  []*Step
	said   Said // where none of them applies
}

// share makes what all workings share of the steps.
func (g *group) share() {
	isWord, itself := g.symbol.kind == word, []string{g.symbol.name}
	passed := make([]Passed, len(g.steps))
	for i, st := range g.steps {
		st.word = isWord
		st.said = Said{Symbol: g.symbol.name, Name: st.Name, Unit: g.unit, IsWord: isWord, Clause: st.Clause, Note: st.Note,
			When: st.When, Formula: st.Formula, Passed: passed[:i:i], itself: itself}
		passed[i] = Passed{When: st.When, Formula: st.Formula}
	}
	g.said = Said{Symbol: g.symbol.name, Name: g.name, Unit: g.unit, IsWord: isWord, Passed: passed, itself: itself}
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
