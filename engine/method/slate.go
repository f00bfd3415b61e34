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
}

// Slate prepares a scope. above is the slate of the scope above, nil for a scope at the top. Where answers are named, such
// as "needed" and "effective" of [SCOPE.gives], nothing is reckoned but what they hang on; else everything is. The error
// says that there is no such scope, or that above is not the slate of the scope above it.
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

// Reckon wipes the slate and reckons it with other values; the scope above must have been reckoned before. The error says
// that a value does not suit the sheet, as that of Evaluate does.
func (s *Slate) Reckon(given Given) error {
	cells, base := s.desk.cells, s.scope.base
	if s.above != nil {
		copy(cells, s.above.desk.cells)
	}
	for i, in := range s.scope.Inputs {
		c := &cells[base+i]
		*c = cell{}
		q, ok := given.Lookup(in.From)
		if !ok {
			continue
		}
		if err := in.suits(&q); err != nil {
			return fmt.Errorf("%s, scope %s, input %s: %s %w", s.sheet.Name, s.scope.Name, in.Symbol, in.From, err)
		}
		c.value, c.word, c.usable, c.outside = q.Number, q.Word, true, in.beyond(&q)
	}
	for _, g := range s.plan {
		cells[g.symbol.slot] = s.desk.lean(g)
	}
	return nil
}

// lean reckons the step that holds for one symbol.
func (r *reckoner) lean(g *group) cell {
	r.outside = false
	for _, st := range g.steps {
		if st.When != nil {
			holds, ok := r.truth(st.When.Root)
			if !ok {
				return cell{}
			}
			if !holds {
				continue
			}
		}
		return r.leanStep(st, g.symbol.kind == word)
	}
	return cell{none: true}
}

func (r *reckoner) leanStep(st *Step, isWord bool) (c cell) {
	if isWord {
		c.word, c.usable = r.word(st.Formula.Root)
	} else {
		c.value, c.usable = r.number(st.Formula.Root)
	}
	if !c.usable {
		return cell{}
	}
	c.outside = r.outside
	if st.Range != nil && !c.outside {
		holds, ok := r.truth(st.Range.Root)
		c.outside = !ok || !holds
	}
	return c
}

// Get gives value and state of a symbol; ok is false where the scope does not see it. Missing stands for Broken too: there
// is no number. A symbol on which no answer hangs keeps what it was.
func (s *Slate) Get(symbol string) (v float64, state State, ok bool) {
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
	if sym := s.scope.spelt[symbol]; sym != nil && sym.kind == word {
		return 0, false
	}
	return v, ok && (state == Sound || state == Outside)
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
