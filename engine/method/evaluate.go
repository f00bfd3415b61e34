package method

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strconv"
)

// Evaluate reckons one scope of the sheet. given looks the inputs up; above is the working of the scope above, nil for
// a scope at the top. What is missing, outside a range or without a finite value is a state of the results and no error.
// The error says that the caller handed over what the sheet did not ask for: another scope, another unit, a word for
// a number.
func (s *Sheet) Evaluate(scope string, given Given, above *Working) (*Working, error) {
	at := slices.IndexFunc(s.Scopes, func(one *Scope) bool { return one.Name == scope })
	if at < 0 {
		return nil, fmt.Errorf("%s has no scope %q", s.Name, scope)
	}
	sc := s.Scopes[at]
	if err := s.fits(sc, above); err != nil {
		return nil, err
	}
	w := s.blank(sc, above)
	if err := w.reckon(given); err != nil {
		return nil, err
	}
	return w, nil
}

// blank is a working of which nothing is reckoned yet.
func (s *Sheet) blank(sc *Scope, above *Working) *Working {
	w := &Working{Sheet: s, Scope: sc, Above: above, Inputs: make([]Shown, len(sc.Inputs)), Steps: make([]Shown, len(sc.groups))}
	w.all, w.cells = make([]*Shown, len(sc.symbols)), make([]cell, len(sc.symbols))
	if above != nil {
		copy(w.all, above.all)
	}
	for i, g := range sc.groups {
		w.all[g.symbol.slot] = &w.Steps[i]
	}
	return w
}

// Again reckons the scope once more in the same working, whose inputs and results are overwritten: for iterations that
// turn a sheet many times and show only the last turn. Errors are those of Evaluate; the working is then of no use.
func (w *Working) Again(given Given) error {
	clear(w.Steps)
	return w.reckon(given)
}

// Turn is Again without the sentences: Why is empty for every result. It is for questions that are asked a thousand
// times and read as numbers and states alone; what is to be read is reckoned by Again.
// The error is that of Again.
func (w *Working) Turn(given Given) error {
	clear(w.Steps)
	if err := w.takeInputs(given); err != nil {
		return err
	}
	if w.desk == nil {
		w.desk = newReckoner(w)
		w.desk.silent = true
	}
	w.desk.through(w)
	return nil
}

func (w *Working) reckon(given Given) error {
	if err := w.takeInputs(given); err != nil {
		return err
	}
	newReckoner(w).through(w)
	return nil
}

func newReckoner(w *Working) *reckoner {
	return &reckoner{scope: w.Scope, of: w, cells: w.cells, all: w.all, used: make([]bool, len(w.all)), seen: make([]int, 0, len(w.all))}
}

// through reckons every step of a working.
func (r *reckoner) through(w *Working) {
	for i, g := range w.Scope.groups {
		r.one(g, &w.Steps[i])
	}
}

// one reckons one symbol.
func (r *reckoner) one(g *group, out *Shown) {
	r.group(g, out)
	r.cells[g.symbol.slot] = out.cell()
}

// fits checks that the working handed over is that of the scope above.
func (s *Sheet) fits(sc *Scope, above *Working) error {
	switch {
	case sc.above == nil && above != nil:
		return fmt.Errorf("%s: scope %s stands above all others and takes no working", s.Name, sc.Name)
	case sc.above != nil && (above == nil || above.Scope != sc.above):
		return fmt.Errorf("%s: scope %s needs the working of scope %s of the same sheet", s.Name, sc.Name, sc.Above)
	}
	return nil
}

func (w *Working) takeInputs(given Given) error {
	var wrong []error
	if w.Above != nil {
		copy(w.cells, w.Above.cells) // it may have been reckoned again
	}
	for i, in := range w.Scope.Inputs {
		shown := &w.Inputs[i]
		w.all[w.Scope.base+i] = shown
		*shown = Shown{Said: &in.said, State: Sound}
		q, ok := Quantity{}, false
		if given != nil {
			q, ok = given.Lookup(in.From)
		}
		if !ok {
			shown.State, shown.doubt = Missing, &in.absent
			w.cells[w.Scope.base+i] = cell{}
			continue
		}
		if err := in.suits(&q); err != nil {
			wrong = append(wrong, fmt.Errorf("%s, scope %s, input %s: %s %w", w.Sheet.Name, w.Scope.Name, in.Symbol, in.From, err))
			continue
		}
		shown.Value, shown.Word, shown.Place, shown.Source = q.Number, q.Word, q.Place, q.Source
		shown.Basis, shown.Rests = q.Basis, q.Basis
		if why := in.outside(q); why != "" {
			shown.begin(Outside, why)
		}
		w.cells[w.Scope.base+i] = shown.cell()
	}
	return errors.Join(wrong...)
}

// begin marks a result in which something other than sound begins.
func (s *Shown) begin(state State, why string) {
	s.State, s.doubt = state, &doubt{causes: s.itself, why: why}
}

// suits checks kind and unit of a value against the input that asks for it.
func (in *Input) suits(q *Quantity) error {
	switch {
	case q.IsWord && in.Words == nil:
		return fmt.Errorf("is the word %s, the sheet asks for a number", strconv.Quote(q.Word))
	case !q.IsWord && in.Words != nil:
		return errors.New("is a number, the sheet asks for a word")
	case q.IsWord:
		return nil
	case q.Unit != in.Unit:
		return fmt.Errorf("is given in %q, the sheet asks for %q", q.Unit, in.Unit)
	case math.IsNaN(q.Number) || math.IsInf(q.Number, 0):
		return errors.New("is no finite number")
	}
	return nil
}

// beyond reports whether the method was not made for a number, or for a word where the input is one.
func (in *Input) beyond(v float64, word string) bool {
	if in.Words != nil {
		return !slices.Contains(in.Words, word)
	}
	return in.Least != nil && v < *in.Least || in.Most != nil && v > *in.Most
}

// outside says why the method was not made for a value, empty if it was.
func (in *Input) outside(q Quantity) string {
	switch {
	case q.IsWord && !slices.Contains(in.Words, q.Word):
		return fmt.Sprintf("%s is none of the words that the method knows: %s", q.Word, listed(in.Words, "or"))
	case q.IsWord:
	case in.Least != nil && q.Number < *in.Least:
		return measured(q.Number, in.Unit) + " is below " + measured(*in.Least, in.Unit) + ", the least that the method was made for"
	case in.Most != nil && q.Number > *in.Most:
		return measured(q.Number, in.Unit) + " is above " + measured(*in.Most, in.Unit) + ", the most that the method was made for"
	}
	return ""
}
