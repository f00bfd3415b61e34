package stock

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// casts tells of one cast with two analyses: metal out of one furnace has one. Lots of this hull are held against all
// lots of the stock; each pair is told once.
func (a *assessor) casts() {
	all := a.yard.Stock.Lots
	for _, mine := range a.Lots {
		for j := range all {
			other := &all[j]
			if other == mine.Record || !mine.Record.Cast.Set || other.Cast.V != mine.Record.Cast.V || a.hasLot(other) && other.ID < mine.Record.ID {
				continue
			}
			if x, y, differ := differing(mine.Record, other); differ {
				a.find(finding.Contradiction, ruleCastTwo, "lot "+mine.Record.ID,
					"lots "+mine.Record.ID+" and "+other.ID+" are of one cast, "+other.Cast.V+", with two analyses: "+x.name+" "+x.val.Text+" % and "+y.val.Text+" %",
					"read cast and analysis off both certificates again", x.val.At, y.val.At)
			}
		}
	}
}

func (a *assessor) hasLot(l *record.Lot) bool {
	for _, one := range a.Lots {
		if one.Record == l {
			return true
		}
	}
	return false
}

// differing finds the first element for which two lots print values that no rounding brings together.
func differing(one, two *record.Lot) (x, y printed, differ bool) {
	b := analysis(two)
	for i, p := range analysis(one) {
		if p.val.Set && b[i].val.Set && math.Abs(float64(p.val.V-b[i].val.V)) > coarser(p, b[i]) {
			return p, b[i], true
		}
	}
	return printed{}, printed{}, false
}

// coarser is half a unit in the last place of the value with fewer decimals, so that 4.5 and 4.51 are one value.
func coarser(a, b printed) float64 {
	const hair = 1e-9
	places := func(p printed) int {
		n := 0
		for i := len(p.val.Text) - 1; i >= 0; i-- {
			if p.val.Text[i] == '.' {
				return n
			}
			n++
		}
		return 0
	}
	return 0.5*math.Pow10(-min(places(a), places(b))) + hair
}
