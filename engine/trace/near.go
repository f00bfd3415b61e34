package trace

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/weld"
)

// mostNear is how many marks are offered where nothing carries the one that was asked for.
const mostNear = 3

// near gives marks of the yard that are written almost like the one asked for.
func near(y *record.Yard, mark string) []string {
	var all []string
	for i := 0; i < mostNear; i++ {
		found, ok := finding.Nearest(mark, slices.DeleteFunc(marks(y), func(m string) bool { return slices.Contains(all, m) }))
		if !ok {
			break
		}
		all = append(all, found)
	}
	return all
}

// marks lists what the records of the yard itself can be asked for, each once.
func marks(y *record.Yard) []string {
	var all []string
	add := func(texts ...string) { all = append(all, words(texts...)...) }
	for i := range y.Stock.Lots {
		l := &y.Stock.Lots[i]
		add(l.ID, l.Cast.V, l.Certificate.V)
	}
	for i := range y.Stock.Consumables {
		c := &y.Stock.Consumables[i]
		add(c.ID, c.Batch.V)
	}
	for i := range y.Welding.Procedures {
		add(weld.Number(&y.Welding.Procedures[i]))
	}
	for i := range y.Builder.Welders {
		add(y.Builder.Welders[i].Stamp.V)
	}
	for i := range y.Builder.People {
		add(y.Builder.People[i].ID)
	}
	for i := range y.Builder.Instruments {
		add(y.Builder.Instruments[i].ID)
	}
	slices.Sort(all)
	return slices.Compact(all)
}
