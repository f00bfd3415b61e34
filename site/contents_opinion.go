package site

import "slices"

// second is a panel or member that the pages of the rules that do not govern work: an index into the result, the other is -1.
type second struct{ panel, member int }

// secondContents adds a page for each rule that does not govern and judges: how it comes to what it would ask.
func (b *book) secondContents(top *section) {
	r := &b.dossier.Structure
	pieces := b.secondPieces()
	for _, q := range pieces {
		name := q.name(b)
		b.secondAt[name] = b.anchors.take("by-" + name)
	}
	for i := range r.Rules {
		rule := &r.Rules[i]
		if rule.Governs || rule.Sheet == nil || rule.Refuses != "" || len(pieces) == 0 {
			continue
		}
		b.seconds[i] = below(top, ruleLetter(i)+": "+rule.Cite, "structure/"+b.panelSlugs.take("by-"+rule.Name)+".html", "opinion",
			page(func(l *leaf) (OpinionPage, error) { return l.opinionPage(i, pieces) }))
	}
}

// secondPieces are those that have a page or are worked in full on one, and those with the least room in a zone by any rule:
// to work all by every rule would make the file half as large again, and their formulas are the same.
func (b *book) secondPieces() []second {
	r := &b.dossier.Structure
	var panels, members []int
	for i := range r.Panels {
		if b.panelAt[r.Panels[i].Record.ID] != nil {
			panels = append(panels, i)
		}
	}
	for _, f := range b.kin {
		if f.kind == "panel" {
			panels = append(panels, f.worst(r))
		} else {
			members = append(members, f.worst(r))
		}
	}
	for i := range r.Zones {
		for _, v := range r.Zones[i].ByRule {
			if v.Panel >= 0 {
				panels = append(panels, v.Panel)
			}
			if v.Member >= 0 {
				members = append(members, v.Member)
			}
		}
	}
	var out []second
	for _, i := range sortedOnce(panels) {
		out = append(out, second{i, -1})
	}
	for _, i := range sortedOnce(members) {
		out = append(out, second{-1, i})
	}
	return out
}

func sortedOnce(all []int) []int {
	slices.Sort(all)
	return slices.Compact(all)
}

// name is the subject.
func (q second) name(b *book) string {
	if q.panel >= 0 {
		return "panel " + b.dossier.Structure.Panels[q.panel].Record.ID
	}
	return "member " + b.dossier.Structure.Members[q.member].Record.ID
}

// secondWay leads to how a rule that does not govern comes to what it says of a subject, or of all where none is named.
func (l *leaf) secondWay(rule int, subject string) Link {
	page := l.seconds[rule]
	if page == nil {
		return Link{}
	}
	return Link{Text: "working", Href: l.to(page.path, l.secondAt[subject]), To: page.no}
}
