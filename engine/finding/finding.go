// Package finding holds the words in which the file speaks of itself: where a value was written, on what a
// result rests, whether a requirement is met, and what a reader must be told.
package finding

import (
	"cmp"
	"slices"
	"sort"
	"strconv"
)

// Place is where a value stands in the records: file relative to the yard folder with forward slashes, and line and
// column counted from one in characters. For a CSV file the line is that of the row. The zero Place is "nowhere".
type Place struct {
	File string `json:"file"`
	Line int    `json:"line,omitempty"`
	Col  int    `json:"column,omitempty"`
}

// String gives file:line:column, leaving out what is not known.
func (p Place) String() string {
	switch {
	case p.Line == 0:
		return p.File
	case p.Col == 0:
		return p.File + ":" + strconv.Itoa(p.Line)
	}
	return p.File + ":" + strconv.Itoa(p.Line) + ":" + strconv.Itoa(p.Col)
}

// Known reports whether the place names a file.
func (p Place) Known() bool { return p.File != "" }

// Places gives those of the places that are known, each once, in the order given; nil where none is.
func Places(all ...Place) []Place {
	var out []Place
	for _, p := range all {
		if p.Known() && !slices.Contains(out, p) {
			out = append(out, p)
		}
	}
	return out
}

// Before orders places by file, line and column.
func (p Place) Before(q Place) bool {
	if p.File != q.File {
		return p.File < q.File
	}
	if p.Line != q.Line {
		return p.Line < q.Line
	}
	return p.Col < q.Col
}

// Basis says how a formula, a table or a value is known.
type Basis string

// The five ways in which something can be known, from firm to soft.
const (
	Read     Basis = "read"     // held against the text of its source
	Derived  Basis = "derived"  // own derivation, given with it
	Yard     Basis = "yard"     // entered by the yard
	Practice Basis = "practice" // common practice of the trade, no published source
	Recalled Basis = "recalled" // from memory; hold it against the text before relying on it
)

// Bases lists them all, firm first.
func Bases() []Basis { return []Basis{Read, Derived, Yard, Practice, Recalled} }

// Softer gives the less firm of two bases; the empty Basis is firmer than any.
func Softer(a, b Basis) Basis {
	if a != b && rank(b) > rank(a) {
		return b
	}
	return a
}

// rank is the place of a basis in Bases, from one. It is asked for every value of every formula, so it is written out.
func rank(b Basis) int {
	switch b {
	case Read:
		return 1
	case Derived:
		return 2
	case Yard:
		return 3
	case Practice:
		return 4
	case Recalled:
		return 5
	}
	return 0
}

// Standing is the outcome of a check. Missing evidence is never met.
type Standing string

// The three outcomes.
const (
	Met      Standing = "met"
	Short    Standing = "short"
	NotShown Standing = "not shown"
)

// Worst gives the standing of several checks taken together: short before not shown before met.
// No check at all is not shown.
func Worst(all ...Standing) Standing {
	worst := Standing("")
	for _, s := range all {
		switch {
		case s == Short:
			return Short
		case s == NotShown || worst == "":
			worst = s
		}
	}
	if worst == "" {
		return NotShown
	}
	return worst
}

// Kind is what sort of finding a finding is.
type Kind string

// The four kinds, in the order in which they are told.
const (
	Contradiction Kind = "contradiction" // two records cannot both be true
	Shortfall     Kind = "shortfall"     // a requirement is not reached
	Gap           Kind = "gap"           // evidence is missing
	Doubt         Kind = "doubt"         // rests on something assumed, recalled, or outside a formula's range
)

// Kinds lists them in the order in which they are told.
func Kinds() []Kind { return []Kind{Contradiction, Shortfall, Gap, Doubt} }

// Standing is what a finding of this kind leaves of a standing: where two records contradict each other or a requirement is not
// reached it is short, where evidence is missing not shown. A doubt leaves it as it is.
func (k Kind) Standing() Standing {
	switch k {
	case Contradiction, Shortfall:
		return Short
	case Gap:
		return NotShown
	}
	return Met
}

// Finding is one thing a reader must be told.
type Finding struct {
	Kind    Kind    `json:"kind"`
	Rule    string  `json:"rule"`             // stable name of the check that found it, e.g. "weighing-mass"
	Subject string  `json:"subject"`          // what it is about, e.g. "panel B3"
	Named   string  `json:"named,omitempty"`  // the subject as its readers call it, where that is not its key: list "Launch plan"
	Says    string  `json:"says"`             // one plain sentence with the figures
	Settle  string  `json:"settle,omitempty"` // what would settle it
	Places  []Place `json:"places,omitempty"` // the record lines that it rests on
	Link    string  `json:"-"`                // page and anchor inside the technical file that shows the working
}

// Sort puts findings in the order in which they are told: by kind, then place, then rule, subject and words.
func Sort(all []Finding) {
	order := map[Kind]int{}
	for i, k := range Kinds() {
		order[k] = i
	}
	sort.SliceStable(all, func(i, j int) bool {
		a, b := all[i], all[j]
		switch {
		case order[a.Kind] != order[b.Kind]:
			return order[a.Kind] < order[b.Kind]
		case a.place() != b.place():
			return a.place().Before(b.place())
		case a.Rule != b.Rule:
			return a.Rule < b.Rule
		case a.Subject != b.Subject:
			return a.Subject < b.Subject
		}
		return a.Says < b.Says
	})
}

func (f Finding) place() Place {
	if len(f.Places) == 0 {
		return Place{}
	}
	return f.Places[0]
}

// Name gives the subject as its readers call it.
func (f Finding) Name() string { return cmp.Or(f.Named, f.Subject) }

// Check is one requirement held against what is fitted, measured or recorded. Every discipline declares its checks in
// this form; the pages of findings and of requirements read nothing else.
type Check struct {
	Rule     string   `json:"rule"`            // stable name, e.g. "plating-thickness"
	Subject  string   `json:"subject"`         // e.g. "panel B3"
	Named    string   `json:"named,omitempty"` // as in a finding
	Asks     string   `json:"asks"`            // what is asked, in words
	Standing Standing `json:"standing"`        // the outcome
	Says     string   `json:"says"`            // one sentence with the figures, or why it could not be shown
	Needed   string   `json:"needed,omitempty"`
	Has      string   `json:"has,omitempty"`
	Basis    Basis    `json:"basis,omitempty"`   // the softest basis that the outcome rests on
	Source   string   `json:"source,omitempty"`  // work, edition, clause
	Places   []Place  `json:"places,omitempty"`  // record lines used
	Missing  []string `json:"missing,omitempty"` // record keys that would be needed to show it
	Settle   string   `json:"settle,omitempty"`  // what would settle it, where it is not met
	Link     string   `json:"-"`
}

// Name gives the subject as its readers call it.
func (c Check) Name() string { return cmp.Or(c.Named, c.Subject) }

// Findings turns the checks that are not met into findings: short into a shortfall, not shown into a gap.
func Findings(checks []Check) []Finding {
	var out []Finding
	for _, c := range checks {
		kind := Shortfall
		switch c.Standing {
		case Met:
			continue
		case NotShown:
			kind = Gap
		}
		out = append(out, Finding{Kind: kind, Rule: c.Rule, Subject: c.Subject, Named: c.Named, Says: c.Says, Settle: c.Settle, Places: c.Places, Link: c.Link})
	}
	return out
}

// Assumption is a value that nobody wrote down and that matters: the file names it wherever it is used.
type Assumption struct {
	Subject string `json:"subject"`
	Says    string `json:"says"`   // "seawater density 1025 kg/m³, because no sample was recorded"
	Settle  string `json:"settle"` // which record key replaces it
	Basis   Basis  `json:"basis"`
	Link    string `json:"-"`
}
