package site

import (
	"html/template"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// Working is how the results of one scope of a sheet came about.
type Working struct {
	Inputs []InputRow
	Steps  []StepRow
	Idle   []StepRow // steps that do not apply under these conditions

	at map[string]string // anchor of a step by its symbol
}

// InputRow is one value that went in.
type InputRow struct {
	ID     string
	Symbol template.HTML
	Name   string
	Value  Figure
	Unit   string
	Basis  Basis
	Source string
	State  string // empty when sound
	Why    string
	Idle   bool // not recorded, and no step needs it here
	Place  Link
}

// StepRow is one step: the formula, the same with values, the result, and on what it rests.
type StepRow struct {
	ID      string
	Name    string
	Symbol  template.HTML
	Formula template.HTML // symbol = formula
	Values  template.HTML // the formula with its values
	Result  Figure
	Unit    string
	When    template.HTML // condition under which this form was taken
	Clause  string
	Basis   Basis
	Rests   Basis  // set where it is softer than the step's own basis
	State   string // empty when sound
	Why     string
	Note    string
	Passed  []PassedRow
	Governs bool
}

// PassedRow is a form of the step that was not taken.
type PassedRow struct {
	When    template.HTML
	Formula template.HTML
}

// Basis is how something is known, with whether it is soft: recalled or practice.
type Basis struct {
	Word string
	Soft bool
}

func basis(b finding.Basis) Basis {
	return Basis{string(b), b == finding.Recalled || b == finding.Practice}
}

// working gives the working of a scope. The prefix begins the anchors of its steps; governs is the symbol of the step
// that decides, empty for none.
func (l *leaf) working(w *method.Working, prefix, governs string) Working {
	if w == nil {
		return Working{}
	}
	ids := slugs{}
	out := Working{at: map[string]string{}}
	lacking := lacks(w)
	for i := range w.Inputs {
		in := &w.Inputs[i]
		row := l.inputRow(in, ids.take(prefix+in.Symbol))
		if in.State == method.Missing && !lacking[in.From] {
			row.State, row.Why, row.Idle = "", "", true
		}
		out.Inputs = append(out.Inputs, row)
	}
	for i := range w.Steps {
		s := &w.Steps[i]
		row := l.stepRow(w, s, ids.take(prefix+s.Symbol))
		row.Governs = s.Symbol == governs
		out.at[s.Symbol] = row.ID
		if s.State == method.NotSet {
			out.Idle = append(out.Idle, row)
			continue
		}
		out.Steps = append(out.Steps, row)
	}
	return out
}

// lacks gives the record names of the values for want of which a step has no result.
func lacks(w *method.Working) map[string]bool {
	out := map[string]bool{}
	for i := range w.Steps {
		for _, from := range w.Steps[i].Lacks {
			out[from] = true
		}
	}
	return out
}

func (l *leaf) inputRow(s *method.Shown, id string) InputRow {
	row := InputRow{
		ID: id, Symbol: symbolMath(s.Symbol), Name: s.Name, Value: shown(s), Unit: s.Unit, Basis: basis(s.Basis), Source: s.Source, Place: l.place(s.Place),
	}
	if s.State != method.Sound {
		row.State, row.Why = string(s.State), s.Why
	}
	return row
}

func (l *leaf) stepRow(w *method.Working, s *method.Shown, id string) StepRow {
	formula, values := stepMath(s, w)
	row := StepRow{
		ID: id, Name: s.Name, Symbol: symbolMath(s.Symbol), Formula: formula, Values: values, Result: shown(s), Unit: s.Unit,
		Clause: s.Clause, Basis: basis(s.Basis), Note: s.Note,
	}
	if s.When != nil {
		row.When = formulaMath(s.When)
	}
	if s.Rests != s.Basis && finding.Softer(s.Basis, s.Rests) == s.Rests {
		row.Rests = basis(s.Rests)
	}
	if s.State != method.Sound {
		row.State, row.Why = string(s.State), s.Why
	}
	for _, p := range s.Passed {
		row.Passed = append(row.Passed, PassedRow{formulaMath(p.When), formulaMath(p.Formula)})
	}
	return row
}

// shown gives a value as the working beside it does, without its unit.
func shown(s *method.Shown) Figure {
	if s.IsWord {
		return has(s.Word != "", s.Word, notThere(s))
	}
	return has(s.Number() != "", s.Number(), notThere(s))
}

func notThere(s *method.Shown) string {
	if s.State == method.Missing && s.Formula == nil {
		return "not recorded"
	}
	return string(s.State)
}
