package method

import (
	"fmt"
	"slices"
)

// Slate reckons a scope as bare numbers, to be wiped and reckoned again many thousand times, as in a search for the
// greatest speed. It gives the very values and states of a Working, by the same formulas in the same order, and knows neither
// sentences nor sources nor causes; what is to be read is reckoned by Evaluate. It is for one goroutine.
type Slate struct {
	sheet *Sheet
	scope *Scope
	above *Slate
	plan  []*group // what the answers need, in the order of the scope
	desk  reckoner
	own   *Taken // of Reckon
}

// Slate prepares a scope. above is the slate of the scope above, nil for a scope at the top. Where answers are named, such
// as "needed" and "effective" of [SCOPE.gives], or symbols, nothing is reckoned but what they hang on; else everything is. The
// error says that there is no such scope, or that above is not the slate of the scope above it.
func (s *Sheet) Slate(scope string, above *Slate, answers ...string) (*Slate, error) {
	at := slices.IndexFunc(s.Scopes, func(one *Scope) bool { return one.Name == scope })
	if at < 0 {
		return nil, fmt.Errorf("%s has no scope %q", s.Name, scope)
	}
	sc := s.Scopes[at]
	switch {
	case sc.above == nil && above != nil:
		return nil, fmt.Errorf("%s: scope %s stands above all others and takes no slate", s.Name, scope)
	case sc.above != nil && (above == nil || above.scope != sc.above):
		return nil, fmt.Errorf("%s: scope %s needs the slate of scope %s of the same sheet", s.Name, scope, sc.Above)
	}
	out := &Slate{sheet: s, scope: sc, above: above, plan: sc.groups}
	if len(answers) > 0 {
		out.plan = sc.planOf(answers)
	}
	out.desk = reckoner{scope: sc, cells: make([]cell, len(sc.symbols)), silent: true, bare: true}
	return out, nil
}

// planOf keeps the groups on which answers hang.
func (sc *Scope) planOf(answers []string) []*group {
	needed := make(map[*symbol]bool, len(sc.symbols))
	for _, name := range answers {
		for _, symbol := range sc.Gives[name] {
			needed[sc.spelt[symbol]] = true
		}
		if sym := sc.symbols[Written(name)]; sym != nil {
			needed[sym] = true
		}
	}
	var plan []*group
	for _, g := range slices.Backward(sc.groups) { // each stands after all that it needs
		if !needed[g.symbol] {
			continue
		}
		plan = append(plan, g)
		for _, st := range g.steps {
			for _, sym := range slices.Concat(st.uses, st.ranges) {
				needed[sym] = true
			}
		}
	}
	slices.Reverse(plan)
	return plan
}

// Taken is the inputs of a scope, looked up and held against the sheet once, to be reckoned many times with some of them
// changed.
type Taken struct {
	scope *Scope
	cells []cell
}

// Take looks the inputs of the scope up. The error says that a value does not suit the sheet, as that of Evaluate does.
func (s *Slate) Take(given Given) (*Taken, error) {
	t := &Taken{scope: s.scope, cells: make([]cell, len(s.scope.Inputs))}
	return t, s.take(given, t)
}

func (s *Slate) take(given Given, into *Taken) error {
	for i, in := range s.scope.Inputs {
		c := &into.cells[i]
		*c = cell{}
		q, ok := given.Lookup(in.From)
		if !ok {
			continue
		}
		if err := in.suits(&q); err != nil {
			return fmt.Errorf("%s, scope %s, input %s: %s %w", s.sheet.Name, s.scope.Name, in.Symbol, in.From, err)
		}
		*c = cell{value: q.Number, word: q.Word, usable: true, outside: in.beyond(q.Number, q.Word)}
	}
	return nil
}

// Set changes a number that was given, by the record name under which the sheet asks for it; false where the scope does not
// ask for it, or it was not given. v is in the unit of the sheet.
func (t *Taken) Set(from string, v float64) bool {
	for i, in := range t.scope.Inputs {
		if c := &t.cells[i]; in.From == from && c.usable && in.Words == nil {
			c.value, c.outside = v, in.beyond(v, "")
			return true
		}
	}
	return false
}

// Reckon takes values and works the slate with them.
// The error is one of the values: another unit or kind than the scope asks for.
func (s *Slate) Reckon(given Given) error {
	if s.own == nil {
		s.own = &Taken{scope: s.scope, cells: make([]cell, len(s.scope.Inputs))}
	}
	if err := s.take(given, s.own); err != nil {
		return err
	}
	s.Work(s.own)
	return nil
}

// Work wipes the slate and reckons it with values that were taken for this scope; the scope above must have been reckoned
// before.
func (s *Slate) Work(with *Taken) {
	cells := s.desk.cells
	if s.above != nil {
		copy(cells, s.above.desk.cells)
	}
	copy(cells[s.scope.base:], with.cells)
	for _, g := range s.plan {
		s.desk.lean(g, &cells[g.symbol.slot])
	}
}

// lean reckons the step that holds for one symbol.
func (r *reckoner) lean(g *group, out *cell) {
	r.outside = false
	for _, st := range g.steps {
		if st.When != nil {
			holds, ok := r.truth(st.When.Root)
			if !ok {
				*out = cell{}
				return
			}
			if !holds {
				continue
			}
		}
		r.leanStep(st, out)
		return
	}
	*out = cell{none: true}
}

func (r *reckoner) leanStep(st *Step, out *cell) {
	if out.word = ""; st.word {
		out.word, out.usable = r.word(st.Formula.Root)
	} else {
		out.value, out.usable = r.number(st.Formula.Root)
	}
	if !out.usable {
		*out = cell{}
		return
	}
	out.none = false
	if st.Range != nil && !r.outside {
		holds, ok := r.truth(st.Range.Root)
		r.outside = r.outside || !ok || !holds
	}
	out.outside = r.outside
}

// Get gives value and state of a symbol; ok is false where the scope does not see it. Missing stands for Broken too: there
// is no number. A symbol on which no answer hangs keeps what it was. A slate
// that is not there sees nothing, as a working that is not there.
func (s *Slate) Get(symbol string) (v float64, state State, ok bool) {
	if s == nil {
		return 0, NotSet, false
	}
	sym, ok := s.scope.spelt[symbol]
	if !ok {
		if sym, ok = s.scope.symbols[Written(symbol)]; !ok {
			return 0, NotSet, false
		}
	}
	switch c := &s.desk.cells[sym.slot]; {
	case c.none:
		return 0, NotSet, true
	case !c.usable:
		return 0, Missing, true
	case c.outside:
		return c.value, Outside, true
	default:
		return c.value, Sound, true
	}
}

// Value gives a number; ok is false where there is none.
func (s *Slate) Value(symbol string) (v float64, ok bool) {
	v, state, ok := s.Get(symbol)
	if !ok {
		return 0, false
	}
	if sym := s.scope.spelt[symbol]; sym != nil && sym.kind == word {
		return 0, false
	}
	return v, state == Sound || state == Outside
}

// Most gives the greatest of the values that the scope gives under a name, nought where there is none.
func (s *Slate) Most(gives string) float64 {
	most := 0.0
	for _, symbol := range s.scope.Gives[gives] {
		if v, ok := s.Value(symbol); ok {
			most = max(most, v)
		}
	}
	return most
}

// Gives lists the symbols that the scope gives under a name.
func (s *Slate) Gives(name string) []string { return s.scope.Gives[name] }
