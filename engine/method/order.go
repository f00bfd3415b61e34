package method

import (
	"slices"
	"strings"
)

// ordered puts the symbols of a scope into an order in which each comes after all that it needs, keeping the order of
// the sheet where that is free. Rings are faults; the symbols of a ring, and those that need them, come last.
func (c *compiler) ordered(s *Scope, all []*gathered) []*gathered {
	at := make(map[*symbol]*gathered, len(all))
	for _, g := range all {
		at[g.symbol] = g
	}
	done := make(map[*gathered]bool, len(all))
	ready := func(g *gathered) bool {
		for _, need := range g.needs() {
			if other := at[need]; other != nil && !done[other] {
				return false
			}
		}
		return true
	}
	var out []*gathered
	for len(out) < len(all) {
		next := slices.IndexFunc(all, func(g *gathered) bool { return !done[g] && ready(g) })
		if next < 0 {
			break
		}
		done[all[next]] = true
		out = append(out, all[next])
	}
	if len(out) < len(all) {
		c.rings(all, at, done)
	}
	for _, g := range all {
		if !done[g] {
			out = append(out, g)
		}
	}
	return out
}

// needs lists every symbol that a step for this one may use.
func (g *gathered) needs() []*symbol {
	var all []*symbol
	for _, st := range g.steps {
		all = append(all, st.uses...)
		all = append(all, st.ranges...)
	}
	return all
}

// rings faults every ring once, at its first step in the sheet.
func (c *compiler) rings(all []*gathered, at map[*symbol]*gathered, done map[*gathered]bool) {
	told := map[*gathered]bool{}
	for _, g := range all {
		if done[g] || told[g] {
			continue
		}
		ring := follow(g, at, done)
		if told[ring[0]] {
			continue
		}
		first := ring[0]
		var names []string
		for _, one := range ring {
			told[one] = true
			names = append(names, one.symbol.name)
			if one.drafts[0].step.Line < first.drafts[0].step.Line {
				first = one
			}
		}
		turn := slices.Index(ring, first)
		names = append(append(names[turn:len(names):len(names)], names[:turn]...), names[turn])
		t := first.drafts[0].table
		c.fault(c.ofKey(t.path), t.shown, "needs itself: "+strings.Join(names, " needs "), "one of these must be reckoned without the others")
	}
}

// follow goes from a symbol to the first that it still needs, and on, until it meets one again: that is the ring.
func follow(g *gathered, at map[*symbol]*gathered, done map[*gathered]bool) []*gathered {
	var way []*gathered
	for {
		if i := slices.Index(way, g); i >= 0 {
			return way[i:]
		}
		way = append(way, g)
		for _, need := range g.needs() {
			if other := at[need]; other != nil && !done[other] {
				g = other
				break
			}
		}
	}
}
