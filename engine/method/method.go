// Package method reads method sheets and evaluates them. A sheet is a page of formulas as text (TOML); the same text
// is calculated, shown with its values, range-checked and tested, so that number and words cannot part company.
//
// A sheet has scopes (craft, panel, stiffener, ...). A scope declares inputs and steps. A scope evaluated above another
// lends it its values: a panel sees the results of the craft. A step gives one symbol; several steps may give the same
// symbol under different conditions (when), and the first that holds is taken and shown.
package method

import (
	"slices"

	"hullfile/engine/finding"
)

// Sheet is one method sheet, parsed and compiled. It is never changed after Load and may be used from many goroutines.
type Sheet struct {
	Name     string // file name, e.g. iso-12215-5-2008.toml
	Title    string
	Work     string // the work the formulas come from
	Edition  string
	Standing string // "superseded; formulas recalled, hold them against your copy"
	About    string // what the sheet covers and what it leaves out
	Strength string // whose strengths of alloys the sheet takes, as the alloy files name the source; the work itself if empty
	Yards    bool   // a sheet of the yard's own
	Replaces bool   // a sheet of the yard's own that takes the place of a shipped one
	Scopes   []*Scope
	Tables   []*Table
}

// Strengths names the source, as the alloy files name it, whose as-welded strengths the sheet takes.
func (s *Sheet) Strengths() string {
	if s.Strength != "" {
		return s.Strength
	}
	return s.Work
}

// Quantity is a value handed to a sheet, with where it came from.
type Quantity struct {
	Number float64
	Word   string // for an input of words, e.g. category "C"; then Number is not used
	IsWord bool
	Unit   string        // sign as in unit.Named.Sign
	Place  finding.Place // record line, if it was written
	Basis  finding.Basis // how it is known; empty for a plain record value
	Source string        // work, edition, table, for a value out of a data table
}

// Given looks a value up by the name that the sheet's input asks for in its "from", e.g. "boat.loaded_mass_kg",
// "panel.short_side_mm" or "alloy.welded.yield_n_mm2". ok is false when nobody wrote the value.
type Given interface {
	Lookup(from string) (q Quantity, ok bool)
}

// GivenMap is a Given made of a map.
type GivenMap map[string]Quantity

// Lookup finds the value under its name.
func (g GivenMap) Lookup(from string) (Quantity, bool) {
	q, ok := g[from]
	return q, ok
}

// State says how far a result can be used.
type State string

// The states of a result.
const (
	Sound   State = "sound"            // inside every range that the sheet states
	Outside State = "outside range"    // a number, but the formula was not made for these values
	Missing State = "missing"          // an input was not written, so there is no number
	NotSet  State = "does not apply"   // no step for this symbol holds under these conditions; what needs it is missing
	Broken  State = "no finite result" // division by nothing, root of a negative number
)

// Shown is one input or one step as it was used: enough to show the working without calculating again. A file has thousands,
// so what is the same for all of them is kept by the sheet.
type Shown struct {
	*Said
	Value  float64
	Word   string // for words
	State  State
	Basis  finding.Basis // of this formula or value alone
	Rests  finding.Basis // softest basis of this and of everything it was reckoned from
	Source string        // work and edition, for an input out of a data table
	Place  finding.Place // record line of an input
	Uses   []string      // symbols that the step used, in the order in which they stand in the formula

	nought, remark bool // it is nought but for rounding; it is the first such result of a working

	doubt *doubt   // of a state other than sound and NotSet
	of    *Working // of NotSet, whose reason is found when it is asked for
}

// Said is what a sheet says of an input or a step. All workings share it, and nobody changes it.
type Said struct {
	Symbol  string // as in the sheet, e.g. "n_CG"
	Name    string // in plain words
	Unit    string // sign
	IsWord  bool
	Clause  string
	Note    string   // remark of the sheet on this step
	From    string   // record name of an input
	When    *Formula // condition under which the step was taken, nil if it has none
	Formula *Formula // nil for an input, and where no step applies
	Passed  []Passed // steps for the same symbol that stand before it, whose conditions did not hold

	itself []string // its own symbol, as the cause of what begins here
}

// doubt is what stands against a result.
type doubt struct {
	causes, lacks []string
	why           string
}

// Causes lists the symbols at which a state other than sound began; its own where it began here.
func (s *Shown) Causes() []string {
	switch {
	case s.State == NotSet:
		return s.itself
	case s.doubt == nil:
		return nil
	}
	return s.doubt.causes
}

// Lacks lists the record names of the inputs that are missing under a result, e.g. "panel.x_m".
func (s *Shown) Lacks() []string {
	if s.doubt == nil {
		return nil
	}
	return s.doubt.lacks
}

// Why says for a state other than sound what is missing or outside, with the figures; of a result that does not apply, where
// it does. Hundreds do not apply and few are read, so that sentence is made here.
func (s *Shown) Why() string {
	switch {
	case s.doubt != nil:
		return s.doubt.why
	case s.State != NotSet || s.of == nil:
		return ""
	}
	at := slices.IndexFunc(s.of.Scope.groups, func(g *group) bool { return g.symbol.name == s.Symbol })
	return newReckoner(s.of).appliesWhere(s.of.Scope.groups[at])
}

// Passed is a step that was not taken, with its condition.
type Passed struct {
	When    *Formula
	Formula *Formula
}

// Working is one evaluation of one scope: what went in, what came out, in the order of the sheet.
type Working struct {
	Sheet  *Sheet
	Scope  *Scope
	Above  *Working // working of the scope above, nil at the top
	Inputs []Shown
	Steps  []Shown

	all   []*Shown  // by slot: everything that the scope sees
	cells []cell    // the same as formulas see it
	desk  *reckoner // of Turn, kept from turn to turn
}

// Get finds an input or a result by symbol, here or in the scopes above; sigma_d and σ_d are one symbol.
func (w *Working) Get(symbol string) (*Shown, bool) {
	if w == nil {
		return nil, false
	}
	sym, ok := w.Scope.spelt[symbol]
	if !ok {
		sym, ok = w.Scope.symbols[Written(symbol)]
	}
	if !ok {
		return nil, false
	}
	return w.all[sym.slot], true
}

// Value gives a numeric result; ok is false when the symbol is unknown, a word, missing, broken or does not apply.
func (w *Working) Value(symbol string) (v float64, ok bool) {
	s, found := w.Get(symbol)
	if !found || s.IsWord || (s.State != Sound && s.State != Outside) {
		return 0, false
	}
	return s.Value, true
}
