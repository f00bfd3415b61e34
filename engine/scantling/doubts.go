package scantling

import (
	"fmt"
	"slices"
	"strings"
	"unicode"
	"unicode/utf8"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// doubts lists what a reader must be told about the sheet and about values for which it was not made: once for the
// craft where it is the craft's value, once for a panel where it is the panel's.
func (j *judge) doubts(out *Result) []finding.Finding {
	r := j.governing()
	if r.sheet == nil || r.craft == nil || len(out.Panels)+len(out.Members) == 0 {
		return nil
	}
	all := []finding.Finding{j.doubtSheet(r)}
	all = append(all, outside(r.craft, "boat")...)
	all = append(all, r.notInScope()...)
	var found beyond
	for i := range out.Panels {
		p := &out.Panels[i]
		found.look(p.Working, "panel "+p.Record.ID, p.Record.Zone.V, p.Derived)
	}
	for i := range out.Members {
		m := &out.Members[i]
		found.look(m.Working, "member "+m.Record.ID, m.Record.Zone.V, m.Derived)
	}
	return append(all, found.told()...)
}

// beyond gathers doubts of range. Those of panels and members listed by hand are told each by itself; of those laid out from
// the grid the first of a zone is told with how many more there are, because a whole bottom leaves a range together.
type beyond struct {
	all  []finding.Finding
	more []int
	at   map[string]int
}

func (b *beyond) look(w *method.Working, subject, zone string, derived bool) {
	if w == nil {
		return
	}
	for _, s := range outsideOf(w) {
		key := w.Scope.Name + " " + s.Symbol + " " + zone
		i, known := b.at[key]
		switch {
		case derived && known:
			b.more[i]++
			continue
		case derived:
			if b.at == nil {
				b.at = map[string]int{}
			}
			b.at[key] = len(b.all)
		}
		b.all, b.more = append(b.all, doubtOf(s, w, subject)), append(b.more, 0)
	}
}

func (b *beyond) told() []finding.Finding {
	for i, n := range b.more {
		if n > 0 {
			b.all[i].Says += fmt.Sprintf(" (%d more of this zone likewise)", n)
		}
	}
	return b.all
}

// doubtSheet says once how far the sheet itself can be relied on.
func (j *judge) doubtSheet(r *rule) finding.Finding {
	recalled, all := recalledSteps(r.sheet)
	says := fmt.Sprintf("the structure is judged by %s, %s: %s", r.sheet.Title, r.sheet.Cite(""), r.sheet.Standing)
	if recalled > 0 {
		says += fmt.Sprintf("; %d of its %d formulas are recalled", recalled, all)
	}
	return finding.Finding{Kind: finding.Doubt, Rule: ruleSheet, Subject: "boat", Says: says,
		Settle: "hold the sheet against a bought copy, or put the yard's own sheet of the same name in methods/",
		Places: placesOf(j.hull.Rules.Structure.At)}
}

func recalledSteps(s *method.Sheet) (recalled, all int) {
	for _, sc := range s.Scopes {
		for _, st := range sc.Steps {
			all++
			if st.Basis == finding.Recalled {
				recalled++
			}
		}
	}
	return recalled, all
}

// outside lists the values of one working that left their range in that working, not those that rest on such a value.
func outside(w *method.Working, subject string) []finding.Finding {
	var out []finding.Finding
	for _, s := range outsideOf(w) {
		out = append(out, doubtOf(s, w, subject))
	}
	return out
}

func outsideOf(w *method.Working) []*method.Shown {
	var out []*method.Shown
	for _, list := range [][]method.Shown{w.Inputs, w.Steps} {
		for i := range list {
			s := &list[i]
			if s.State == method.Outside && slices.Contains(s.Causes(), s.Symbol) {
				out = append(out, s)
			}
		}
	}
	return out
}

func doubtOf(s *method.Shown, w *method.Working, subject string) finding.Finding {
	says := s.Name + ": " + strings.Replace(ownWhy(s.Why()), "made for ", "the formula was made for ", 1)
	if s.Note != "" {
		says += ". " + opened(s.Note)
	}
	return finding.Finding{Kind: finding.Doubt, Rule: ruleRange, Subject: subject, Says: says,
		Settle: "another method for this " + strings.Fields(subject)[0] + ", or a test or calculation by a naval architect", Places: under(s, w)}
}

// opened gives a note the capital of a sentence, unless it begins with a symbol.
func opened(note string) string {
	word, _, _ := strings.Cut(note, " ")
	first, size := utf8.DecodeRuneInString(word)
	if len(word) == size || strings.Contains(word, "_") {
		return note
	}
	return string(unicode.ToUpper(first)) + note[size:]
}

// ownWhy leaves out of a reason what began at another value: that one is told by itself.
func ownWhy(why string) string {
	var own []string
	for _, part := range strings.Split(why, "; ") {
		if !strings.HasPrefix(part, "rests on ") {
			own = append(own, part)
		}
	}
	return strings.Join(own, "; ")
}

// under lists the record lines below a result: its own, or those of what it was reckoned from.
func under(s *method.Shown, w *method.Working) []finding.Place {
	if s.Formula == nil {
		return placesOf(s.Place)
	}
	var out []finding.Place
	for _, symbol := range s.Uses {
		used, ok := w.Get(symbol)
		if !ok {
			continue
		}
		for _, at := range under(used, w) {
			if !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	return out
}

// notInScope lists limits of the method that nobody can hold the craft against, because the value is not written and
// no formula asks for it.
func (r *rule) notInScope() []finding.Finding {
	var out []finding.Finding
	for i, in := range r.craft.Scope.Inputs {
		shown := &r.craft.Inputs[i]
		if shown.State != method.Missing || (in.Least == nil && in.Most == nil) || usedBySteps(r.sheet, in.Symbol) {
			continue
		}
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: ruleScope, Subject: "boat",
			Says:   fmt.Sprintf("%s is not written, so it is not shown that the method is meant for this boat", in.Name),
			Settle: "write " + in.From})
	}
	return out
}

func usedBySteps(s *method.Sheet, symbol string) bool {
	for _, sc := range s.Scopes {
		for _, st := range sc.Steps {
			for _, f := range []*method.Formula{st.When, st.Formula, st.Range} {
				if f != nil && names(f.Root, symbol) {
					return true
				}
			}
		}
	}
	return false
}

func names(n *method.Node, symbol string) bool {
	if n == nil {
		return false
	}
	return n.Symbol == symbol || slices.ContainsFunc(n.Args, func(a *method.Node) bool { return names(a, symbol) })
}

func placesOf(at finding.Place) []finding.Place {
	if !at.Known() {
		return nil
	}
	return []finding.Place{at}
}
