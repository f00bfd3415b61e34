package crosscheck

import (
	"hullfile/engine/unit"
)

// thinnerThanNeeded finds parts that measure less than the structure asks of their panel.
func thinnerThanNeeded(b *build) []told {
	if b.books.Needed == nil {
		return nil
	}
	var all []told
	for i := range b.Hull.Parts {
		p := &b.Hull.Parts[i]
		thick := p.Measured
		if !thick.Set {
			thick = p.Drawn
		}
		if needed, known := b.books.Needed(p.Panel.V); thick.Set && known && float64(thick.V) < needed-1e-9 {
			all = append(all, tell("part "+p.ID, "measure again; if it is so, let whoever reckoned the structure decide", at(thick.At),
				"part %s is %s mm thick; the structure asks %s mm of panel %s", p.ID, unit.Text(thick.V, 2), unit.Text(needed, 2), p.Panel.V))
		}
	}
	return all
}

// orphanLot finds a lot whose certificate lies in this hull's file and from which nothing in it was cut.
func orphanLot(b *build) []told {
	used, certified := map[string]bool{}, map[string]bool{}
	for i := range b.Hull.Parts {
		used[b.Hull.Parts[i].Lot.V] = true
	}
	for _, p := range b.Hull.Plated() {
		used[p.Lot.V] = true
	}
	for i := range b.yard.Stock.Lots {
		if l := &b.yard.Stock.Lots[i]; used[l.ID] || used[l.Cast.V] {
			certified[l.Certificate.V] = true
		}
	}
	var all []told
	for i := range b.yard.Stock.Lots {
		l := &b.yard.Stock.Lots[i]
		if paper := b.Papers[l.Certificate.V]; paper != nil && !certified[l.Certificate.V] && len(b.Hull.Parts) > 0 {
			all = append(all, tell("lot "+l.ID, "find out where the lot went, or take its certificate out of this file", at(l.At, paper.At),
				"certificate %s of lot %s lies in this file, but no part of this hull was cut from the lot", l.Certificate.V, l.ID))
		}
	}
	return all
}
