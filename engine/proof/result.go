// Package proof runs published check values through the calculator: worked examples and tables with their source,
// inputs, printed result and tolerance. Proofs are never tuned; where a published example is itself wrong, the proof says so.
package proof

import "hullfile/engine/finding"

// Case is one published value and what the calculator gives for it.
type Case struct {
	Set       string // file in content/proofs without .toml
	Title     string // of the set
	Source    string // work, edition, page or table
	Basis     finding.Basis
	Name      string // of the case
	Inputs    string // "l_WL 4.0 m, B_C 1.2 m"
	Printed   string // as printed in the source
	Want      float64
	Tolerance float64
	Why       string // why the tolerance is what it is
	Got       float64
	Unit      string
	Pass      bool
	Note      string
	Fails     string // what went wrong, where there is no number
}

// Sheet is a summary of all cases, and of the formulas that no outside check touches. An outside check is a published
// value that was read in its source: own arithmetic, common practice and remembered values do not count as one.
type Sheet struct {
	Cases   []Case
	Without []Untouched
}

// Failed lists the cases that do not give what the source prints.
func (s *Sheet) Failed() []Case {
	var out []Case
	for _, c := range s.Cases {
		if !c.Pass {
			out = append(out, c)
		}
	}
	return out
}

// Untouched is a formula with no outside check.
type Untouched struct {
	Method string // sheet
	Scope  string
	Symbol string
	Name   string
	When   string // condition of the step, empty if it has none
	Clause string
	Basis  finding.Basis
	Softly []string // sets that use the formula without being an outside check of it: practice, own arithmetic, memory
}
