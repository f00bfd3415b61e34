package requirement

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// judge gives one check for each list, so that the findings show what is open in it.
func (a *assessor) judge() {
	for i := range a.out.Lists {
		if l := &a.out.Lists[i]; l.Applies {
			a.out.Checks = append(a.out.Checks, a.check(l))
		}
		a.signed(&a.out.Lists[i])
	}
	a.recalled()
}

// recalled doubts in one sentence all items whose text was not at hand.
func (a *assessor) recalled() {
	asked, soft := 0, 0
	for i := range a.out.Lists {
		for j := range a.out.Lists[i].Items {
			if it := &a.out.Lists[i].Items[j]; it.Applies {
				asked++
				if it.Basis == finding.Recalled {
					soft++
				}
			}
		}
	}
	if soft == 0 {
		return
	}
	a.out.Findings = append(a.out.Findings, finding.Finding{
		Kind: finding.Doubt, Rule: ruleRecalled, Subject: "requirements",
		Says:   fmt.Sprintf("%d of %d items that apply are recalled: the text that asks was not at hand, or only its forerunner", soft, asked),
		Settle: "hold the lists against the texts that they name", Places: known(a.named()),
	})
}

// beyond doubts that a list of a law is answered for a boat that the law is not about, or of which that is not known.
func (a *assessor) beyond(l *list) {
	if l.scope == nil || !a.out.Lists[len(a.out.Lists)-1].Applies {
		return
	}
	h := l.scope.Hold(a.facts)
	if h.Known && h.Holds {
		return
	}
	why := "not written: " + strings.Join(h.Lacks, ", ")
	if h.Known {
		why = seen(h)
	}
	a.out.Findings = append(a.out.Findings, finding.Finding{
		Kind: finding.Doubt, Rule: ruleScope, Subject: "list " + l.Name, Named: spoken(l.List),
		Says:   "this boat may stand outside it: " + l.Beyond.V + " (" + why + ")",
		Settle: "ask the authority of the place which law holds for this boat, and write conformity.intended_use", Places: known(a.named()),
	})
}

// known gives a place as a list, none where it is nowhere.
func known(at finding.Place) []finding.Place {
	if !at.Known() {
		return nil
	}
	return []finding.Place{at}
}

// spoken is a list as its readers call it; its key is the name of a file.
func spoken(l *record.List) string { return `list "` + l.Title.V + `"` }

func (a *assessor) check(l *List) finding.Check {
	c := finding.Check{
		Rule: ruleList, Subject: "list " + l.Record.Name, Named: spoken(l.Record), Standing: l.Standing(), Basis: finding.Basis(l.Record.Basis.V),
		Asks: "every item of the list that applies is answered", Source: source(l.Record),
		Needed: unit.Count(l.Asked(), "item", "items"), Has: fmt.Sprintf("%d met", l.Met),
	}
	c.Places = known(a.named())
	if c.Standing == finding.Met {
		c.Says = fmt.Sprintf("all %s that apply are met", unit.Count(l.Asked(), "item", "items"))
		return c
	}
	c.Says = fmt.Sprintf("%d of %d items met", l.Met, l.Asked())
	if l.Short > 0 {
		c.Says += fmt.Sprintf(", %d short", l.Short)
	}
	if l.NotShown > 0 {
		c.Says += fmt.Sprintf(", %d not shown", l.NotShown)
	}
	if first := a.gravest(l.Record); first != nil {
		c.Says += "; what blocks most is item " + first.Title()
		c.Settle = first.Settle
		c.Missing = slices.Clone(first.Lacks)
	}
	return c
}

// gravest is the open item of a list that blocks most.
func (a *assessor) gravest(of *record.List) *Item {
	for _, it := range a.out.Open {
		if it.List == of {
			return it
		}
	}
	return nil
}

// named is where the record chose its lists.
func (a *assessor) named() finding.Place {
	if v := a.in.Hull.Conformity.Lists; v.Set {
		return v.At
	}
	return a.in.Builder.Lists.At
}

func source(l *record.List) string {
	if l.Edition.V == "" {
		return l.Work.V
	}
	return l.Work.V + ", " + l.Edition.V
}

// signed tells of a signed statement of a list of which something is open that its signature says is not.
func (a *assessor) signed(l *List) {
	for i := range l.Items {
		for _, ans := range l.Items[i].Answers {
			if ans.Word.How.V != "statement" || ans.Role != Needed || ans.Standing != finding.Met {
				continue
			}
			if open := blocking(l); len(open) > 0 {
				f := finding.Finding{
					Kind: finding.Contradiction, Rule: ruleSigned, Subject: "list " + l.Record.Name, Named: spoken(l.Record),
					Says:   fmt.Sprintf("%s is signed while %s open, the first being %s", ans.Word.Says.V, are(len(open)), open[0].Title()),
					Settle: "answer the items, or take the declaration back",
				}
				for _, s := range ans.Shown {
					f.Places = append(f.Places, s.Place)
				}
				a.out.Findings = append(a.out.Findings, f)
				return
			}
		}
	}
}

// blocking are the open items of a list without which nobody may sign or sell.
func blocking(l *List) []*Item {
	var out []*Item
	for i := range l.Items {
		it := &l.Items[i]
		if it.Applies && it.Standing != finding.Met && gravity(it.Record.Blocks.V) <= gravity("signature") {
			out = append(out, it)
		}
	}
	return out
}

func are(n int) string {
	if n == 1 {
		return "1 item is"
	}
	return fmt.Sprintf("%d items are", n)
}

// accepted tells of acceptances of what is not there to be accepted.
func (a *assessor) accepted() {
	for i := range a.in.Hull.Accepted {
		acc := &a.in.Hull.Accepted[i]
		f := finding.Finding{Kind: finding.Contradiction, Rule: ruleAccepted, Subject: "list " + acc.List.V, Places: []finding.Place{acc.Item.At}}
		list, ok := a.out.Find(acc.List.V)
		if ok {
			f.Named = spoken(list.Record)
		}
		if !ok || !list.Applies {
			f.Says, f.Settle = fmt.Sprintf("item %s was accepted, and this hull need not answer the list", acc.Item.V), "take the entry out, or add the list"
			a.out.Findings = append(a.out.Findings, f)
			continue
		}
		found := acc.Item.V == "all"
		for j := range list.Items {
			it := &list.Items[j]
			found = found || it.Record.ID == acc.Item.V
			if it.Record.ID == acc.Item.V && it.Applies && it.Standing != finding.Met {
				a.out.Findings = append(a.out.Findings, finding.Finding{Kind: finding.Doubt, Rule: ruleAccepted, Subject: f.Subject, Named: f.Named, Places: f.Places,
					Says: fmt.Sprintf("%s was accepted on %s and is %s; who accepted it makes nothing met", it.Title(), acc.Date.V, it.Standing), Settle: it.Settle})
			}
		}
		if !found {
			f.Says, f.Settle = fmt.Sprintf("the list has no item %s", acc.Item.V), "write the number as the page of the list shows it"
			a.out.Findings = append(a.out.Findings, f)
		}
	}
}

// routes gathers the rows of the table of modules that hold, and those of which it is not known.
func (a *assessor) routes(l *list) {
	if shown, ok := a.out.Find(l.Name); !ok || !shown.Applies {
		return
	}
	for i := range l.Routes {
		r := &l.Routes[i]
		h := l.routes[i].Hold(a.facts)
		if h.Known && !h.Holds {
			continue
		}
		basis := finding.Basis(r.Basis.V)
		if basis == "" {
			basis = finding.Basis(l.Basis.V)
		}
		a.out.Routes = append(a.out.Routes, Route{List: l.List, Record: r, Basis: basis, Known: h.Known, Facts: h.Seen, Lacks: h.Lacks,
			Chosen: slices.Contains(r.Modules.V, a.in.Hull.Conformity.Module.V), Module: a.in.Hull.Conformity.Module.V})
	}
}
