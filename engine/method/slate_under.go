package method

// Under finds the result with a unit that lies nearest under a symbol as it was reckoned last: among what its step used,
// then among what that used. Inputs do not count. It is how a thickness at another spacing names its pressure.
func (s *Slate) Under(name, unit string) (v float64, ok bool) {
	level := []*symbol{s.scope.spelt[name]}
	seen := map[*symbol]bool{}
	for len(level) > 0 {
		var below []*symbol
		for _, sym := range level {
			for _, used := range s.uses(sym) {
				if seen[used] {
					continue
				}
				seen[used] = true
				if of := s.groupOf(used); of != nil && of.unit == unit {
					if v, ok := s.Value(used.name); ok {
						return v, true
					}
				}
				below = append(below, used)
			}
		}
		level = below
	}
	return 0, false
}

// uses gives what the step that holds for a symbol uses; nothing for an input.
func (s *Slate) uses(sym *symbol) []*symbol {
	g := s.groupOf(sym)
	if g == nil {
		return nil
	}
	for _, st := range g.steps {
		if st.When == nil {
			return st.uses
		}
		if holds, ok := s.desk.truth(st.When.Root); holds || !ok {
			return st.uses
		}
	}
	return nil
}

// groupOf finds the steps for a symbol in the scope or in those above it.
func (s *Slate) groupOf(sym *symbol) *group {
	for at := s; at != nil; at = at.above {
		for _, g := range at.scope.groups {
			if g.symbol == sym {
				return g
			}
		}
	}
	return nil
}
