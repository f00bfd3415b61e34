package survey

import "slices"

// Assess makes the sheet of a hull and judges what was filled in. An item with a reading stays on the sheet, however many
// stand before it; a reading of an item that the file does not make is a doubt and is kept.
func Assess(in Input) Result {
	var r Result
	all := in.all()
	byKey := map[string]int{}
	for i := range all {
		byKey[all[i].Key] = i
	}
	for i := range in.Hull.Survey {
		rec := &in.Hull.Survey[i]
		at, known := byKey[rec.Item.V]
		if !known {
			r.stray(rec)
			continue
		}
		all[at].Readings = append(all[at].Readings, r.judge(in.Builder, &all[at], rec))
	}
	r.Items, r.Left = listed(all)
	return r
}

// all gives every item that could stand on a sheet, class by class, each key once.
func (in *Input) all() []Item {
	classes := slices.Concat(in.contradictions(), in.shortfalls(), in.openSeams(), in.mendedSeams(), in.spots(), in.panels(), in.lots(), in.holds(), in.tape())
	seen := map[string]bool{}
	return slices.DeleteFunc(classes, func(i Item) bool {
		twice := seen[i.Key]
		seen[i.Key] = true
		return twice
	})
}
