package method

import (
	"slices"

	"hullfile/engine/finding"
)

// group finds the step that holds for one symbol and reckons it.
func (r *reckoner) group(g *group, out *Shown) {
	r.reset()
	out.Symbol, out.Name, out.Unit, out.IsWord = g.symbol.name, g.name, g.unit, g.symbol.kind == word
	for i, st := range g.steps {
		holds, ok := true, true
		if st.When != nil {
			holds, ok = r.truth(st.When.Root)
		}
		if ok && !holds {
			continue
		}
		out.describe(st)
		out.Passed = g.passed[:i:i]
		if !ok {
			out.Uses = r.uses(st)
			r.unsettled(out)
			return
		}
		r.take(st, out)
		return
	}
	r.none(g, out)
}

// describe copies what the sheet says about a step.
func (s *Shown) describe(st *Step) {
	s.Name, s.Clause, s.Note = st.Name, st.Clause, st.Note
	s.Basis, s.Rests = st.Basis, st.Basis
	s.When, s.Formula = st.When, st.Formula
}

// take reckons the step that holds.
func (r *reckoner) take(st *Step, out *Shown) {
	var ok bool
	if out.IsWord {
		out.Word, ok = r.word(st.Formula.Root)
	} else {
		out.Value, ok = r.number(st.Formula.Root)
	}
	out.Uses = r.uses(st)
	if !ok {
		out.Value, out.Word = 0, ""
		r.unsettled(out)
		return
	}
	out.State = Sound
	r.rest(out)
	for _, n := range r.beyond {
		r.doubt(out, out.Symbol, func() string { return r.pastEnd(n) })
	}
	if !out.IsWord && r.residue(st.Formula.Root, out.Value) {
		r.tell(out)
	}
	if st.Range != nil {
		r.inRange(st, out)
	}
}

// uses names the symbols of a step that were looked at.
func (r *reckoner) uses(st *Step) []string {
	if !slices.ContainsFunc(st.uses, func(s *symbol) bool { return !r.used[s.slot] }) {
		return st.named
	}
	var out []string
	for _, s := range st.uses {
		if r.used[s.slot] {
			out = append(out, s.name)
		}
	}
	return out
}

// rest carries the basis and the doubts of everything that was looked at into the result.
func (r *reckoner) rest(out *Shown) {
	for _, t := range r.tables {
		out.Rests = finding.Softer(out.Rests, t.Basis)
	}
	for _, slot := range r.seen {
		from := r.all[slot]
		out.Rests = finding.Softer(out.Rests, from.Rests)
		if from.State != Outside {
			continue
		}
		for _, cause := range from.Causes {
			r.doubt(out, cause, func() string { return "rests on " + r.calledBy(cause) + ": " + r.why(cause) })
		}
	}
}

// doubt marks a result as outside a range, with the cause and, where sentences are wanted, why.
func (r *reckoner) doubt(out *Shown, cause string, why func() string) {
	switch {
	case !r.silent:
		out.doubt(Outside, cause, why())
	case !slices.Contains(out.Causes, cause):
		out.State, out.Causes = Outside, append(out.Causes, cause)
	default:
		out.State = Outside
	}
}

// doubt adds a cause to a result and the sentence for it, once.
func (s *Shown) doubt(state State, cause, why string) {
	s.State = state
	if !slices.Contains(s.Causes, cause) {
		s.Causes = append(s.Causes, cause)
	} else if cause != s.Symbol {
		return
	}
	if s.why != "" {
		s.why += "; "
	}
	s.why += why
}

// why gives the sentence of the symbol at which a doubt began.
func (r *reckoner) why(cause string) string {
	return r.all[r.scope.symbols[Written(cause)].slot].Why()
}

// inRange marks a result whose formula was not made for these values.
func (r *reckoner) inRange(st *Step, out *Shown) {
	r.reset()
	holds, ok := r.truth(st.Range.Root)
	switch {
	case !ok:
		r.doubt(out, out.Symbol, func() string { return "whether " + r.spoken(st.Range.Root) + " cannot be told" + r.lack() })
	case !holds:
		r.doubt(out, out.Symbol, func() string { return r.madeFor(st) })
	}
}

// unsettled marks a result for which something that is needed is not there, or has no finite value.
func (r *reckoner) unsettled(out *Shown) {
	missing := slices.ContainsFunc(r.seen, func(slot int) bool {
		return r.all[slot].State == Missing || r.all[slot].State == NotSet
	})
	for _, slot := range r.seen {
		from := r.all[slot]
		if from.usable() || missing && from.State == Broken {
			continue
		}
		out.lack(from)
	}
	out.State = Broken
	if missing {
		out.State = Missing
	}
	if len(out.Causes) == 0 {
		out.Causes = []string{out.Symbol}
		if !r.silent {
			out.why = r.noValue()
		}
		return
	}
	if !r.silent {
		out.why = r.needs(out)
	}
}

// lack takes over what is missing under another result.
func (s *Shown) lack(from *Shown) {
	for _, cause := range from.Causes {
		if !slices.Contains(s.Causes, cause) {
			s.Causes = append(s.Causes, cause)
		}
	}
	for _, name := range from.Lacks {
		if !slices.Contains(s.Lacks, name) {
			s.Lacks = append(s.Lacks, name)
		}
	}
}

// none marks a symbol for which no step holds.
func (r *reckoner) none(g *group, out *Shown) {
	out.State = NotSet
	out.Causes = g.itself
	out.Passed = slices.Clip(g.passed)
	if !r.silent {
		out.of = r.of
	}
}
