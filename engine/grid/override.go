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
}

// stands reports whether it stands for a name of the grid.
func (h *byHand) stands(name string) bool { return h.id == name || slices.Contains(h.replaces, name) }

// overridden takes out of the grid what is listed by hand, and gives out the rest.
func (b *builder) overridden() {
	var panels, members []byHand
	for i := range b.rec.Panels {
		p := &b.rec.Panels[i]
		panels = append(panels, byHand{p.ID, p.At, p.Replaces.V})
	}
	for i := range b.rec.Members {
		m := &b.rec.Members[i]
		members = append(members, byHand{m.ID, m.At, m.Replaces.V})
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

// keepPanel takes out of a record what is listed by hand, side by side, and gives out the rest.
func (b *builder) keepPanel(l *laidPanel, hands []byHand) {
	for _, k := range l.patches {
		p := &b.out.Patches[k]
		p.Panel = l.rec.ID
		if h := b.replaced(p.ID, l.rec.ID, sideOf(p.Port), hands); h != nil {
			p.Panel = h.id
			l.rec.Count.V--
		}
	}
	if len(l.patches) == 0 && b.replaced(l.rec.ID, l.rec.ID, "", hands) != nil {
		return
	}
	if l.rec.Count.V > 0 {
		b.out.Panels = append(b.out.Panels, l.rec)
	}
}

func (b *builder) keepMember(l *laidMember, hands []byHand) {
	for _, k := range l.lines {
		line := &b.out.Lines[k]
		line.Member = l.rec.ID
		if h := b.replaced(line.ID, l.rec.ID, sideOf(line.Port), hands); h != nil {
			line.Member = h.id
			l.rec.Count.V--
		}
	}
	if l.rec.Count.V > 0 {
		b.out.Members = append(b.out.Members, l.rec)
	}
}

func sideOf(port bool) string {
	if port {
		return " port"
	}
	return " starboard"
}

// replaced finds what is listed by hand in place of a name, of the group it is in, or of the name on one side.
func (b *builder) replaced(name, group, side string, hands []byHand) *byHand {
	for i := range hands {
		if h := &hands[i]; h.stands(name) || h.stands(group) || h.stands(name+side) {
			b.out.Replaced = append(b.out.Replaced, Replaced{ID: name + side, By: h.id, Place: h.at})
			return h
		}
	}
	return nil
}

// unmatched tells of names that are not in the grid.
func (b *builder) unmatched(kind string, hands []byHand) {
	known := map[string]bool{}
	knows := func(group string, names []string) {
		known[group] = true
		for _, n := range names {
			known[n], known[n+" port"], known[n+" starboard"] = true, true, true
		}
	}
	for i := range b.laid {
		if kind == "panel" {
			knows(b.laid[i].rec.ID, b.laid[i].names)
		}
	}
	for i := range b.members {
		if kind == "member" {
			knows(b.members[i].rec.ID, b.members[i].names)
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
