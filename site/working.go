package site

import (
	"html/template"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// Working is how the results of one scope of a sheet came about.
type Working struct {
	Inputs template.HTML // rows of the table of values that go in
	Steps  template.HTML // rows of the table of steps
	Of     string        // which, where a page has several
	Idle   []StepRow     // steps that do not apply under these conditions

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
	Fixed   StepFixed
	Values  template.HTML // the formula with its values
	Result  Figure
	Unit    string
	Rests   Basis  // set where it is softer than the step's own basis
	State   string // empty when sound
	Why     string
	Remark  string          // that it is nought but for rounding
	Passed  []template.HTML // forms of the step that were not taken
	Governs bool
}

// StepFixed is what is the same wherever a step is shown, as markup that the templates made once.
type StepFixed struct {
	Formula template.HTML // symbol = formula
	After   template.HTML // the condition under which this form was taken, and the remark of the sheet
	Ref     template.HTML // clause and basis
}

// StepWords are what the templates make a StepFixed of.
type StepWords struct {
	Formula template.HTML
	When    template.HTML
	Note    string
	Clause  string
	Basis   Basis
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
func (l *leaf) working(w *method.Working, prefix, governs string) (Working, error) {
	if w == nil {
		return Working{}, nil
	}
	ids := slugs{}
	out := Working{at: map[string]string{}}
	inputs, steps := l.inputs[:0], l.steps[:0]
	lacking := lacks(w)
	for i := range w.Inputs {
		in := &w.Inputs[i]
		row := l.inputRow(in, ids.take(prefix+in.Symbol))
		if in.State == method.Missing && !lacking[in.From] {
			row.State, row.Why, row.Idle = "", "", true
		}
		inputs = append(inputs, row)
	}
	for i := range w.Steps {
		s := &w.Steps[i]
		row, err := l.stepRow(w, s, ids.take(prefix+s.Symbol))
		if err != nil {
			return Working{}, err
		}
		row.Governs = s.Symbol == governs
		if l.at.above == nil || row.Governs && l.at.kind != "opinion" {
			l.note(w, s, row.ID) // of a panel, the step that decides; an opinion decides nothing
		}
		out.at[s.Symbol] = row.ID
		if s.State == method.NotSet {
			out.Idle = append(out.Idle, row)
			continue
		}
		steps = append(steps, row)
	}
	l.inputs, l.steps = inputs, steps
	var err error
	if out.Inputs, err = l.press.inputRows(inputs); err != nil {
		return Working{}, err
	}
	out.Steps, err = l.press.stepRows(steps)
	return out, err
}

// lacks gives the record names of the values for want of which a step has no result.
func lacks(w *method.Working) map[string]bool {
	out := map[string]bool{}
	for i := range w.Steps {
		for _, from := range w.Steps[i].Lacks() {
			out[from] = true
		}
	}
	return out
}

func (l *leaf) inputRow(s *method.Shown, id string) InputRow {
	row := InputRow{
		ID: id, Symbol: l.press.symbol(s.Symbol), Name: s.Name, Value: shown(s), Unit: s.Unit, Basis: basis(s.Basis), Source: s.Source, Place: l.place(s.Place),
	}
	if s.State != method.Sound {
		row.State, row.Why = string(s.State), s.Why()
	}
	return row
}

func (l *leaf) stepRow(w *method.Working, s *method.Shown, id string) (StepRow, error) {
	row := StepRow{ID: id, Name: s.Name, Values: valuesMath(s, w), Result: shown(s), Unit: s.Unit, Remark: s.Remark()}
	var err error
	if row.Fixed, err = l.press.fixed(s); err != nil {
		return StepRow{}, err
	}
	if s.Rests != s.Basis && finding.Softer(s.Basis, s.Rests) == s.Rests {
		row.Rests = basis(s.Rests)
	}
	if s.State != method.Sound {
		row.State, row.Why = string(s.State), s.Why()
	}
	if s.State == method.NotSet {
		return row, nil // its reason names every form that does not apply
	}
	for _, p := range s.Passed {
		form, err := l.press.passed(p)
		if err != nil {
			return StepRow{}, err
		}
		row.Passed = append(row.Passed, form)
	}
	return row, nil
}

// shown gives a value as the working beside it does, without its unit.
func shown(s *method.Shown) Figure {
	if s.IsWord {
		return has(s.Word != "", s.Word, notThere(s))
	}
	number := s.Number()
	return has(number != "", number, notThere(s))
}

func notThere(s *method.Shown) string {
	if s.State == method.Missing && s.Formula == nil {
		return "not recorded"
	}
	return string(s.State)
}
