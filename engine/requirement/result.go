package requirement

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Result is what became of every list that a hull must answer.
type Result struct {
	Lists    []List  // in the order in which the record names them
	Open     []*Item // items that are short or not shown, those that block most first
	Routes   []Route // rows of tables of modules, those that hold
	Checks   []finding.Check
	Findings []finding.Finding

	Tests      []Answer // every word of evidence that is a test and has something on record, in order of the word
	Statements []Answer // every word of evidence that is a signed statement
}

// Statement finds a signed statement by its word.
func (r *Result) Statement(word string) (Answer, bool) {
	for _, a := range r.Statements {
		if a.Word.ID == word {
			return a, true
		}
	}
	return Answer{}, false
}

// Find gives the list of a name that this hull must answer.
func (r *Result) Find(name string) (*List, bool) {
	for i := range r.Lists {
		if r.Lists[i].Record.Name == name {
			return &r.Lists[i], true
		}
	}
	return nil, false
}

// List is one list.
type List struct {
	Record   *record.List
	Applies  bool
	Why      string // why it does not apply, or why that is not known
	Items    []Item
	Met      int
	Short    int
	NotShown int
	Idle     int // items that do not apply
}

// Asked counts the items that apply.
func (l *List) Asked() int { return l.Met + l.Short + l.NotShown }

// Standing is that of all items that apply.
func (l *List) Standing() finding.Standing {
	switch {
	case l.Short > 0:
		return finding.Short
	case l.NotShown > 0 || l.Met == 0:
		return finding.NotShown
	}
	return finding.Met
}

// Item is one requirement.
type Item struct {
	List     *record.List
	Record   *record.Requirement
	Basis    finding.Basis
	Applies  bool
	Standing finding.Standing // where it applies, or where that is not known
	Says     string           // in one sentence: why it stands as it does, or why it does not apply
	Settle   string
	Lacks    []string        // record keys
	Facts    []*method.Shown // by which it was decided whether it applies
	Answers  []Answer        // needed first, then either, then what supports
	Accepted []*record.Accepted
}

// Role is what an answer counts for.
type Role string

// The roles, from what must be to what decides nothing.
const (
	Needed   Role = "needed"
	Either   Role = "one of these"
	Supports Role = "beside it"
)

// Answer is one word of evidence as this hull has it.
type Answer struct {
	Word     *record.Evidence
	Role     Role
	Standing finding.Standing
	Says     string
	Settle   string
	Lacks    []string
	Shown    []Shown // what stands behind it
}

// Shown is something that stands behind an answer: checks of one rule and standing, a finding, a paper, a record.
type Shown struct {
	Rule     string // of checks and findings
	Subject  string // as findings name it; empty for a record line alone
	Count    int    // checks of this rule and standing
	Standing finding.Standing
	Says     string
	Place    finding.Place
	Doubt    bool // it does not change the standing, and a reader should know it
}

// Route is one row of a table of modules that holds for the boat, or for which that is not known.
type Route struct {
	List   *record.List
	Record *record.Route
	Basis  finding.Basis
	Known  bool
	Facts  []*method.Shown
	Lacks  []string
	Chosen bool   // the record chose one of its modules
	Module string // the module that the record chose
}
