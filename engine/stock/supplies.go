package stock

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// supplies gives the lots of filler and gas that the welds of this hull name, and judges what certificates of filler print.
func (a *assessor) supplies() {
	used := map[string]bool{}
	for i := range a.hull.Welds {
		used[a.hull.Welds[i].Filler.V] = true
		used[a.hull.Welds[i].Gas.V] = true
	}
	for i := range a.yard.Stock.Consumables {
		s := &a.yard.Stock.Consumables[i]
		if !used[s.ID] {
			continue
		}
		out := Supply{Record: s}
		if s.Kind.V == "filler" {
			out.Values = a.filler(s)
		}
		a.Supplies = append(a.Supplies, out)
	}
}

// filler judges the elements that the certificate of a filler prints. What it does not print is not asked for: wire is
// sold by its classification.
func (a *assessor) filler(s *record.Consumable) []Value {
	comp, ok := a.alloys.Composition(s.Classification.V)
	if !ok || !s.Classification.Set {
		return nil
	}
	var there []printed
	for _, p := range []printed{
		{"Si", "silicon", "si_percent", s.Si}, {"Fe", "iron", "fe_percent", s.Fe}, {"Cu", "copper", "cu_percent", s.Cu},
		{"Mn", "manganese", "mn_percent", s.Mn}, {"Mg", "magnesium", "mg_percent", s.Mg}, {"Cr", "chromium", "cr_percent", s.Cr},
		{"Zn", "zinc", "zn_percent", s.Zn}, {"Ti", "titanium", "ti_percent", s.Ti}, {"Be", "beryllium", "be_percent", s.Be},
	} {
		if p.val.Set {
			there = append(there, p)
		}
	}
	if len(there) == 0 {
		return nil
	}
	values := judged(comp, there)
	c := finding.Check{Rule: ruleFiller, Subject: "consumable " + s.ID, Asks: "what the certificate of the filler prints lies within the limits of " + s.Classification.V}
	a.Checks = append(a.Checks, tally(c, values, "element", "consumable."+s.ID+".", s.At))
	a.soft(ruleFiller, "consumable "+s.ID, values)
	return values
}
