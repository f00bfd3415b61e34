package method

import "slices"

// Follow reckons one symbol of a scope, with the scopes above it from the top, and nothing on which the symbol does not hang:
// other results of the workings have no state. It is for questions that ask one thing, such as a published value.
// Errors are those of Evaluate.
func (s *Sheet) Follow(scope, symbol string, given Given) (*Working, error) {
	var chain []*Scope
	at := slices.IndexFunc(s.Scopes, func(one *Scope) bool { return one.Name == scope })
	if at < 0 {
		return s.Evaluate(scope, given, nil) // it says so
	}
	for sc := s.Scopes[at]; sc != nil; sc = sc.above {
		chain = append(chain, sc)
	}
	needed := map[string]bool{Written(symbol): true}
	for _, sc := range chain { // from the scope up
		sc.mark(needed)
	}
	var w *Working
	for _, sc := range slices.Backward(chain) {
		w = s.blank(sc, w)
		if err := w.takeInputs(given); err != nil {
			return nil, err
		}
		r := newReckoner(w)
		for i, g := range sc.groups {
			if needed[Written(g.symbol.name)] {
				r.one(g, &w.Steps[i])
			}
		}
	}
	return w, nil
}

// mark adds to what is needed all on which it hangs in this scope.
func (sc *Scope) mark(needed map[string]bool) {
	for _, g := range slices.Backward(sc.groups) { // each stands after all that it needs
		if !needed[Written(g.symbol.name)] {
			continue
		}
		for _, st := range g.steps {
			for _, sym := range slices.Concat(st.uses, st.ranges) {
				needed[Written(sym.name)] = true
			}
		}
	}
}
