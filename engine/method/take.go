package method

import (
	"slices"

	"hullfile/engine/finding"
)

// group finds the step that holds for one symbol and reckons it.
func (r *reckoner) group(g *group, out *Shown) {
	r.reset()
	for _, st := range g.steps {
		holds, ok := true, true
		if st.When != nil {
			holds, ok = r.truth(st.When.Root)
		}
		if ok && !holds {
			continue
		}
		out.Said, out.Basis, out.Rests = &st.said, st.Basis, st.Basis
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
		for _, cause := range from.Causes() {
			r.doubt(out, cause, func() string { return "rests on " + r.calledBy(cause) + ": " + r.why(cause) })
		}
	}
}

// doubt marks a result as outside a range, with the cause, once, and, where sentences are wanted, why.
func (r *reckoner) doubt(out *Shown, cause string, why func() string) {
	out.State = Outside
	d := out.doubted()
	known := slices.Contains(d.causes, cause)
	if !known {
		d.causes = append(d.causes, cause)
	}
	if r.silent || known && cause != out.Symbol {
		return
	}
	if d.why != "" {
		d.why += "; "
	}
	d.why += why()
}

// doubted gives what stands against a result, to be added to.
func (s *Shown) doubted() *doubt {
	if s.doubt == nil {
		s.doubt = &doubt{}
	}
	return s.doubt
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
		out.doubted().lack(from)
	}
	out.State = Broken
	if missing {
		out.State = Missing
	}
	d := out.doubted()
	if len(d.causes) == 0 {
		d.causes = out.itself
		if !r.silent {
			d.why = r.noValue()
		}
		return
	}
	if !r.silent {
		d.why = r.needs(d)
	}
}

// lack takes over what is missing under another result.
func (d *doubt) lack(from *Shown) {
	for _, cause := range from.Causes() {
		if !slices.Contains(d.causes, cause) {
			d.causes = append(d.causes, cause)
		}
	}
	for _, name := range from.Lacks() {
		if !slices.Contains(d.lacks, name) {
			d.lacks = append(d.lacks, name)
		}
	}
}

// none marks a symbol for which no step holds.
func (r *reckoner) none(g *group, out *Shown) {
	out.Said, out.State = &g.said, NotSet
	if !r.silent {
		out.of = r.of
	}
}
