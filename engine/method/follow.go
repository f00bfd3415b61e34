package method

import "slices"

// Follow reckons one symbol of a scope, with the scopes above it from the top, and nothing on which the symbol does not hang:
// the steps of the workings are those alone, and Get gives other results without a state. It is for questions that ask one
// thing, such as a published value. What an earlier question left may be handed over and is overwritten; nil without. Errors
// are those of Evaluate.
func (s *Sheet) Follow(scope, symbol string, given Given, over *Working) (*Working, error) {
	at := slices.IndexFunc(s.Scopes, func(one *Scope) bool { return one.Name == scope })
	if at < 0 {
		return s.Evaluate(scope, given, nil) // it says so
	}
	low := s.Scopes[at]
	needed := make([]bool, len(low.symbols)) // by slot, which scopes below each other share
	if sym := low.symbols[Written(symbol)]; sym != nil {
		needed[sym.slot] = true
	}
	var chain []*Scope
	for sc := low; sc != nil; sc = sc.above {
		sc.mark(needed)
		chain = append(chain, sc)
	}
	var w *Working
	for _, sc := range slices.Backward(chain) {
		w = s.partly(sc, w, needed, over.of(sc))
		if err := w.takeInputs(given); err != nil {
			return nil, err
		}
		r, at := w.desk, 0
		for _, g := range sc.groups {
			if needed[g.symbol.slot] {
				r.one(g, &w.Steps[at])
				at++
			}
		}
	}
	return w, nil
}

// mark adds to what is needed all on which it hangs in this scope.
func (sc *Scope) mark(needed []bool) {
	for _, g := range slices.Backward(sc.groups) { // each stands after all that it needs
		if !needed[g.symbol.slot] {
			continue
		}
		for _, st := range g.steps {
			for _, sym := range st.uses {
				needed[sym.slot] = true
			}
			for _, sym := range st.ranges {
				needed[sym.slot] = true
			}
		}
	}
}

// of finds the working of a scope among this one and those above it, nil where it is not there.
func (w *Working) of(sc *Scope) *Working {
	for w != nil && w.Scope != sc {
		w = w.Above
	}
	return w
}

// partly is a blank working for the steps that are needed, with the room of an earlier one of the scope where there is one.
func (s *Sheet) partly(sc *Scope, above *Working, needed []bool, over *Working) *Working {
	n := 0
	for _, g := range sc.groups {
		if needed[g.symbol.slot] {
			n++
		}
	}
	w := over
	if w == nil {
		w = &Working{Sheet: s, Scope: sc, Inputs: make([]Shown, len(sc.Inputs)), all: make([]*Shown, len(sc.symbols)), cells: make([]cell, len(sc.symbols))}
		w.desk = newReckoner(w)
	}
	w.Above, w.desk.told = above, false
	w.Steps = slices.Grow(w.Steps[:0], n)[:n]
	clear(w.Steps)
	clear(w.cells)
	if above != nil {
		copy(w.all, above.all)
	}
	left, at := &Shown{Said: &Said{}}, 0
	for _, g := range sc.groups {
		if w.all[g.symbol.slot] = left; needed[g.symbol.slot] {
			w.all[g.symbol.slot] = &w.Steps[at]
			at++
		}
	}
	return w
}
