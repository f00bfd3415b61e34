package scantling

import (
	"fmt"
	"slices"
	"sort"
	"strings"

	"hullfile/engine/finding"
)

// mostCritical is how many are told.
const mostCritical = 10

// worst ranks all that is shown by its room, the least first. Equal ones are told once.
func (j *judge) worst(out *Result) {
	var all []Critical
	first := map[string]int{}
	add := func(c Critical, id, same string) {
		if c.Standing == finding.NotShown {
			return
		}
		if at, known := first[same]; known && same != "" {
			all[at].Equal++
			return
		}
		at := slices.IndexFunc(all, func(o Critical) bool { return o.Says == c.Says && o.Zone == c.Zone && o.What == c.What })
		if at >= 0 {
			first[id] = at
			all[at].Equal++
			return
		}
		first[id] = len(all)
		all = append(all, c)
	}
	for i := range out.Panels {
		p := &out.Panels[i]
		add(p.critical(), "panel "+p.Record.ID, prefixed("panel ", p.Same))
	}
	for i := range out.Members {
		m := &out.Members[i]
		add(m.critical(), "member "+m.Record.ID, prefixed("member ", m.Same))
	}
	for i := range out.Brackets {
		b := &out.Brackets[i]
		add(b.critical(b.ID, b.Record.Joins.V), b.ID, b.alike(out.Brackets[:i]))
	}
	for i := range out.Fittings {
		f := &out.Fittings[i]
		add(f.critical("fitting "+f.Record.ID, f.Record.Where.V), "fitting "+f.Record.ID, "")
	}
	out.rank(all)
}

// rank keeps the first of all that is shown by its room, and of the members the very first.
func (out *Result) rank(all []Critical) {
	sort.SliceStable(all, func(a, b int) bool { return all[a].Margin < all[b].Margin })
	for i := range all {
		if strings.HasPrefix(all[i].Subject, "member ") {
			c := all[i]
			out.Critical = &c
			break
		}
	}
	out.Worst = slices.Clip(all[:min(len(all), mostCritical)])
}

func prefixed(prefix, id string) string {
	if id == "" {
		return ""
	}
	return prefix + id
}

// alike names an earlier bracket of the same record with the same outcome.
func (b *Bracket) alike(before []Bracket) string {
	for i := range before {
		if a := &before[i]; a.Record == b.Record && a.Margin == b.Margin && a.Governs.Symbol == b.Governs.Symbol {
			return a.ID
		}
	}
	return ""
}

func (p *Panel) critical() Critical {
	c := Critical{Subject: "panel " + p.Record.ID, Zone: p.Record.Zone.V, Where: p.Record.Where.V, What: "thickness", Margin: p.Margin, Standing: p.Standing, Basis: p.Basis}
	if p.Standing == finding.NotShown {
		return c
	}
	name := ""
	for _, a := range p.Asks {
		if a.Symbol == p.Governs {
			name = " (" + a.Name + ")"
		}
	}
	c.Says = fmt.Sprintf("%s mm of plate where %s mm are needed%s: %s times", fittedText(p.Fitted), neededText(p.Needed, p.Fitted), name, marginText(p.Margin, p.Standing == finding.Met))
	return c
}

func (m *Member) critical() Critical {
	c := Critical{Subject: "member " + m.Record.ID, Zone: m.Record.Zone.V, Where: m.Record.Where.V, What: m.Governs, Margin: m.Margin, Standing: m.Standing, Basis: m.Basis}
	if m.Standing == finding.NotShown {
		return c
	}
	n, ok := m.Need(m.Governs)
	needed, has := n.sizes()
	switch {
	case !ok:
		c.Says = fmt.Sprintf("%s: %s times", m.Governs, marginText(m.Margin, m.Margin >= 1))
	case n.Most:
		c.Says = fmt.Sprintf("%s of %s, %s: %s times", m.Governs, m.Record.Section.V, has+" where at most "+needed+" is allowed", marginText(m.Margin, m.Margin >= 1))
	default:
		c.Says = fmt.Sprintf("%s of %s, %s where %s are needed: %s times", m.Governs, m.Record.Section.V, has, needed, marginText(m.Margin, m.Margin >= 1))
	}
	for i := range m.Together {
		if t := &m.Together[i]; !t.Decides && t.Alone < 1 && t.Margin >= 1 {
			c.Says += fmt.Sprintf("; among its neighbours %s times in bending and shear", marginText(t.Margin, true))
		}
	}
	return c
}

func (l *Local) critical(subject, where string) Critical {
	c := Critical{Subject: subject, Where: where, What: l.Governs.What, Margin: l.Margin, Standing: l.Standing, Basis: l.Basis}
	if l.Standing == finding.NotShown {
		return c
	}
	word := "at least"
	if l.Governs.Most {
		word = "at most"
	}
	needed, has := l.Governs.sizes()
	c.Says = fmt.Sprintf("%s: %s, %s %s is asked: %s times", l.Governs.Name, has, word, needed, marginText(l.Margin, l.Margin >= 1))
	return c
}
