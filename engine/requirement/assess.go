package requirement

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Rules of the checks and findings of this package.
const (
	ruleList     = "requirements-answered"
	ruleAccepted = "requirement-accepted"
	ruleSigned   = "signed-over-open"
	ruleRecalled = "requirements-recalled"
	ruleScope    = "requirements-scope"
)

// Input is what requirements are held against: checks and findings of all trades, the papers and the record.
type Input struct {
	Hull      *record.Hull
	Builder   *record.Builder
	Checks    []finding.Check
	Findings  []finding.Finding
	Documents *document.Result
}

// Assess holds a hull against the lists that it must answer: those that its own record names, else those of the yard.
func (c *Catalog) Assess(in Input) Result {
	a := &assessor{in: in, catalog: c, made: map[string]Answer{}, rules: byRule(&in)}
	a.facts = c.facts.Facts(boat{in.Hull, in.Builder, c.names})
	for _, name := range chosen(in) {
		i := slices.IndexFunc(c.lists, func(l *list) bool { return l.Name == name })
		if i < 0 {
			a.unknown(name)
			continue
		}
		a.out.Lists = append(a.out.Lists, a.list(c.lists[i]))
		a.beyond(c.lists[i])
		a.routes(c.lists[i])
	}
	a.open()
	a.accepted()
	a.judge()
	a.sorts()
	return a.out
}

// sorts gathers what tests there were, and what statements are signed: that is what statements are drafted from.
func (a *assessor) sorts() {
	if len(a.out.Lists) == 0 {
		return
	}
	for _, name := range a.catalog.Words() {
		w := a.catalog.words[name]
		switch w.How.V {
		case "test":
			if ans := a.word(w); len(ans.Shown) > 0 {
				a.out.Tests = append(a.out.Tests, ans)
			}
		case "statement":
			a.out.Statements = append(a.out.Statements, a.word(w))
		}
	}
}

// unknown tells of a list that was chosen and is not at hand. Reading refuses it before; a record made elsewhere may have it.
func (a *assessor) unknown(name string) {
	f := finding.Finding{Kind: finding.Gap, Rule: ruleList, Subject: "list " + name, Says: "the list is not known here, so nothing of it is shown", Settle: "name one of " + strings.Join(a.catalog.Names(), ", ")}
	f.Places = known(a.named())
	if near, ok := finding.Nearest(name, a.catalog.Names()); ok {
		f.Settle = "did you mean " + near + "?"
	}
	a.out.Findings = append(a.out.Findings, f)
}

// chosen are the lists that a hull must answer, each once.
func chosen(in Input) []string {
	names := in.Builder.Lists.V
	if in.Hull.Conformity.Lists.Set {
		names = in.Hull.Conformity.Lists.V
	}
	var out []string
	for _, n := range names {
		if !slices.Contains(out, n) {
			out = append(out, n)
		}
	}
	return out
}

type assessor struct {
	in      Input
	catalog *Catalog
	facts   *method.Facts
	rules   []ruled           // checks and findings by their rule
	made    map[string]Answer // by word
	out     Result
}

// list judges one list. One of which it is not known whether it applies is answered as if it did.
func (a *assessor) list(l *list) List {
	out := List{Record: l.List, Applies: true}
	if l.when != nil {
		h := l.when.Hold(a.facts)
		out.Applies = h.Holds || !h.Known
		out.Why = because(h, l.Else.V)
	}
	if !out.Applies {
		return out
	}
	for i := range l.Items {
		it := a.item(l, i)
		switch {
		case !it.Applies:
			out.Idle++
		case it.Standing == finding.Met:
			out.Met++
		case it.Standing == finding.Short:
			out.Short++
		default:
			out.NotShown++
		}
		out.Items = append(out.Items, it)
	}
	return out
}

// because says why something does not apply, with the facts; empty where it applies.
func because(h method.Held, otherwise string) string {
	switch {
	case !h.Known:
		return "it is not known whether it applies: not written: " + strings.Join(h.Lacks, ", ")
	case h.Holds:
		return ""
	}
	return "does not apply, because " + otherwise + " (" + seen(h) + ")"
}

// seen names the facts that a condition looked at.
func seen(h method.Held) string {
	var facts []string
	for _, s := range h.Seen {
		if s.State != method.Missing {
			facts = append(facts, s.Name+" "+s.Text())
		}
	}
	return strings.Join(facts, ", ")
}

// item judges one item.
func (a *assessor) item(l *list, i int) Item {
	rec := &l.Items[i]
	it := Item{List: l.List, Record: rec, Applies: true, Basis: finding.Basis(rec.Basis.V)}
	if it.Basis == "" {
		it.Basis = finding.Basis(l.Basis.V)
	}
	for j := range a.in.Hull.Accepted {
		if acc := &a.in.Hull.Accepted[j]; acc.List.V == l.Name && (acc.Item.V == rec.ID || acc.Item.V == "all") {
			it.Accepted = append(it.Accepted, acc)
		}
	}
	if when := l.items[i]; when != nil {
		h := when.Hold(a.facts)
		it.Facts, it.Says, it.Lacks = h.Seen, because(h, rec.Else.V), h.Lacks
		if !h.Known {
			it.Standing, it.Settle = finding.NotShown, "write "+strings.Join(h.Lacks, ", ")
		}
		if it.Applies = h.Holds || !h.Known; !h.Holds {
			return it
		}
	}
	a.answer(&it)
	return it
}

// answer gathers the evidence of an item and gives its standing: all that is needed, and one of those of which one is
// enough. What stands beside it decides nothing.
func (a *assessor) answer(it *Item) {
	add := func(role Role, words []string) (all []Answer) {
		for _, w := range words {
			ans := a.word(a.catalog.words[w])
			ans.Role = role
			all = append(all, ans)
		}
		it.Answers = append(it.Answers, all...)
		return all
	}
	it.Standing = finding.Met
	for _, ans := range add(Needed, it.Record.Needed.V) {
		it.take(ans)
	}
	if some := add(Either, it.Record.Either.V); len(some) > 0 {
		it.take(best(some))
	}
	add(Supports, it.Record.Supports.V)
	if it.Standing == finding.Met {
		it.Says = ""
	}
}

// take lowers the standing of an item by an answer.
func (it *Item) take(ans Answer) {
	worse := finding.Worst(it.Standing, ans.Standing)
	if ans.Standing != finding.Met && (worse != it.Standing || it.Standing == finding.Met) {
		it.Says, it.Settle = ans.Word.Says.V+": "+ans.Says, ans.Settle
	}
	if ans.Standing != finding.Met {
		it.Lacks = append(it.Lacks, ans.Lacks...)
	}
	it.Standing = worse
}

// best gives the answer that stands highest; where none is met, one that is short says more than one that is not there.
func best(some []Answer) Answer {
	order := []finding.Standing{finding.Met, finding.NotShown, finding.Short}
	return slices.MinFunc(some, func(x, y Answer) int {
		return slices.Index(order, x.Standing) - slices.Index(order, y.Standing)
	})
}

// open gathers what is not met, what blocks most first; what is equally grave stays in the order of the lists.
func (a *assessor) open() {
	for i := range a.out.Lists {
		for j := range a.out.Lists[i].Items {
			if it := &a.out.Lists[i].Items[j]; it.Applies && it.Standing != finding.Met {
				a.out.Open = append(a.out.Open, it)
			}
		}
	}
	slices.SortStableFunc(a.out.Open, func(x, y *Item) int { return gravity(x.Record.Blocks.V) - gravity(y.Record.Blocks.V) })
}

// Title names an item as a sentence does.
func (it *Item) Title() string { return fmt.Sprintf("%s %s", it.Record.ID, it.Record.Heading.V) }
