package crosscheck

import (
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// largerThanSheet finds parts that are in one piece and do not fit on one sheet of the lot from which they were cut: then a butt is
// missing on the weld map, or the part came from another lot. Bars and profiles are not sheets.
func largerThanSheet(b *build) []told {
	sheets := map[string]*record.Lot{}
	for i := range b.yard.Stock.Lots {
		if l := &b.yard.Stock.Lots[i]; l.Kind.V == "plate" && l.Width.Set && l.Length.Set {
			sheets[l.ID] = l
		}
	}
	var all []told
	for i := range b.Hull.Parts {
		p := &b.Hull.Parts[i]
		l := sheets[p.Lot.V]
		if l == nil || !p.Length.Set || !p.Width.Set {
			continue
		}
		long, wide := float64(p.Length.V)*1000, float64(p.Width.V)*1000
		if lies(long, wide, float64(l.Length.V), float64(l.Width.V)) {
			continue
		}
		all = append(all, tell("part "+p.ID, "find out of which pieces it was made and put their butt on the weld map, or from which lot it came", at(p.Length.At, l.Length.At),
			"part %s measures %s × %s mm in one piece, a sheet of lot %s %s × %s mm", p.ID, unit.Text(long, 0), unit.Text(wide, 0), l.ID, unit.Text(l.Length.V, 0), unit.Text(l.Width.V, 0)))
	}
	return all
}

// lies reports whether a rectangle fits on another, laid along it or aslant (J. E. Wetzel, Rectangles in rectangles, 2000;
// recalled). Sizes in millimetres, to half a millimetre.
func lies(long, wide, sheet, breadth float64) bool {
	const slack = 0.5
	p, q := max(long, wide)-slack, min(long, wide)-slack
	a, b := max(sheet, breadth), min(sheet, breadth)
	if p <= a && q <= b {
		return true
	}
	s, d := (a+b)/(p+q), (a-b)/(p-q)
	return q <= b && p > a && float64(s*s)+float64(d*d) >= 2
}
