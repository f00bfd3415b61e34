// Package proof runs published check values through the calculator: worked examples and tables with their source,
// inputs, printed result and tolerance. Proofs are never tuned; where a published example is itself wrong, the proof says so.
//
//   - Question: does the calculator give what was printed?
//   - In: the cases of content/proofs, the sheets, the alloys, the lists.
//   - Out: each case with what came out and by how much, and the formulas that no case reaches.
//   - Source: each set names its work, edition and page.
package proof

import "hullfile/engine/finding"

// Case is one published value and what the calculator gives for it.
type Case struct {
	Set       string        `json:"set"`    // file in content/proofs without .toml
	Title     string        `json:"title"`  // of the set
	Source    string        `json:"source"` // work, edition, page or table
	Basis     finding.Basis `json:"basis"`
	Name      string        `json:"name"`    // of the case
	Inputs    string        `json:"inputs"`  // "l_WL 4.0 m, B_C 1.2 m"
	Printed   string        `json:"printed"` // as printed in the source
	Want      float64       `json:"want"`
	Tolerance float64       `json:"tolerance"`
	Why       string        `json:"why,omitempty"` // why the tolerance is what it is
	Got       float64       `json:"got"`
	Unit      string        `json:"unit"`
	Pass      bool          `json:"pass"`
	Note      string        `json:"note,omitempty"`
	Fails     string        `json:"fails,omitempty"` // what went wrong, where there is no number
}

// Sheet is a summary of all cases, and of the formulas that no outside check touches. An outside check is a published
// value that was read in its source: own arithmetic, common practice and remembered values do not count as one.
type Sheet struct {
	Cases   []Case      `json:"cases"`
	Without []Untouched `json:"without"`
	Reasons []Reason    `json:"reasons"` // why a sheet has formulas without one, and what would give it one
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
	Method string        `json:"method"` // sheet
	Scope  string        `json:"scope"`
	Symbol string        `json:"symbol"`
	Name   string        `json:"name"`
	When   string        `json:"when,omitempty"` // condition of the step, empty if it has none
	Clause string        `json:"clause"`
	Basis  finding.Basis `json:"basis"`
	Cause  Cause         `json:"cause"`
	Softly []string      `json:"softly,omitempty"` // sets that use the formula without being an outside check of it: practice, own arithmetic, memory
}
