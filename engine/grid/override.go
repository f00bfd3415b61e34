package grid

import (
	"fmt"
	"slices"

	"hullfile/engine/finding"
)

// byHand is a panel or member listed by hand, with the names of the grid in whose place it stands.
type byHand struct {
	id       string
	at       finding.Place
	replaces []string
	said     bool // by replaces, and not only by its name
}

// stands reports whether it stands for a name of the grid.
func (h *byHand) stands(name string) bool { return h.id == name || slices.Contains(h.replaces, name) }

// overridden takes out of the grid what is listed by hand, and gives out the rest.
func (b *builder) overridden() {
	var panels, members []byHand
	for i := range b.rec.Panels {
		p := &b.rec.Panels[i]
		panels = append(panels, byHand{p.ID, p.At, p.Replaces.V, p.Replaces.Set})
	}
	for i := range b.rec.Members {
		m := &b.rec.Members[i]
		members = append(members, byHand{m.ID, m.At, m.Replaces.V, m.Replaces.Set})
	}
	for i := range b.laid {
		b.keepPanel(&b.laid[i], panels)
	}
	for i := range b.members {
		b.keepMember(&b.members[i], members)
	}
	b.unmatched("panel", panels)
	b.unmatched("member", members)
}

func (b *builder) keepPanel(l *laidPanel, hands []byHand) {
	each := l.rec.Count.V / len(l.names)
	for k, name := range l.names {
		owner := l.rec.ID
		if h := b.replaced(name, l.rec.ID, hands); h != nil {
			owner = h.id
			l.rec.Count.V -= each
		}
		for i := k * len(l.patches) / len(l.names); i < (k+1)*len(l.patches)/len(l.names); i++ {
			b.out.Patches[l.patches[i]].Panel = owner
		}
	}
	if l.rec.Count.V > 0 {
		b.out.Panels = append(b.out.Panels, l.rec)
	}
}

func (b *builder) keepMember(l *laidMember, hands []byHand) {
	each := l.rec.Count.V / len(l.names)
	for k, name := range l.names {
		owner := l.rec.ID
		if h := b.replaced(name, l.rec.ID, hands); h != nil {
			owner = h.id
			l.rec.Count.V -= each
		}
		for i := k * len(l.lines) / len(l.names); i < (k+1)*len(l.lines)/len(l.names); i++ {
			b.out.Lines[l.lines[i]].Member = owner
		}
	}
	if l.rec.Count.V > 0 {
		b.out.Members = append(b.out.Members, l.rec)
	}
}

// replaced finds what is listed by hand in place of a name, or of the group it is in.
func (b *builder) replaced(name, group string, hands []byHand) *byHand {
	for i := range hands {
		if h := &hands[i]; h.stands(name) || h.stands(group) {
			b.out.Replaced = append(b.out.Replaced, Replaced{ID: name, By: h.id, Place: h.at})
			return h
		}
	}
	return nil
}

// unmatched tells of names that are not in the grid.
func (b *builder) unmatched(kind string, hands []byHand) {
	known := map[string]bool{}
	for i := range b.laid {
		if kind == "panel" {
			known[b.laid[i].rec.ID] = true
			for _, n := range b.laid[i].names {
				known[n] = true
			}
		}
	}
	for i := range b.members {
		if kind == "member" {
			known[b.members[i].rec.ID] = true
			for _, n := range b.members[i].names {
				known[n] = true
			}
		}
	}
	for _, h := range hands {
		for _, n := range h.replaces {
			if !known[n] {
				b.say(wrong("replaces-nothing", kind+" "+h.id, fmt.Sprintf("%s %s stands in place of %q, and the grid has no %s of that name", kind, h.id, n, kind),
					"take the name from the list of the structure", h.at))
			}
		}
	}
}

// Names lists the panels that a record of the grid stands for.
func (r *Result) Names(panel string) []string {
	var out []string
	for _, p := range r.Patches {
		if p.Panel == panel && !slices.Contains(out, p.ID) {
			out = append(out, p.ID)
		}
	}
	return out
}
