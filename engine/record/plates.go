package record

import (
	"cmp"
	"slices"

	"hullfile/engine/unit"
)

// StockedPlate is a thickness of plate of one alloy that a yard has in its stock.
type StockedPlate struct {
	Alloy     string  `json:"alloy"`
	Thickness unit.MM `json:"thickness_mm"`
}

// StockedPlates lists what plate the yard has in its stock, each alloy and thickness once, in order.
func (y *Yard) StockedPlates() []StockedPlate {
	all := slices.Clone(y.Elsewhere)
	for i := range y.Stock.Lots {
		if l := &y.Stock.Lots[i]; l.Kind.V == "plate" && l.Thickness.Set {
			all = append(all, StockedPlate{l.Alloy.V, l.Thickness.V})
		}
	}
	slices.SortFunc(all, func(a, b StockedPlate) int {
		return cmp.Or(cmp.Compare(a.Alloy, b.Alloy), cmp.Compare(a.Thickness, b.Thickness))
	})
	return slices.Compact(all)
}
