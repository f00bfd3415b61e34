package weight

import (
	"cmp"
	"math"
	"slices"

	"hullfile/engine/unit"
)

// tenth is the part of an item by which it is moved to see what it does, and mostShown how many items are named.
const (
	tenth     = 0.1
	mostShown = 10
)

// sensitivity says for every item what a tenth more of it does to the mass and to the centre of the loaded boat.
// The centre moves by dm·(x - X)/(M + dm): moments about the old centre (own derivation).
func (r *Result) sensitivity() {
	total := float64(r.Loaded.Mass)
	for i := range r.Items {
		it := &r.Items[i]
		if !it.HasMass {
			continue
		}
		more := float64(tenth * float64(it.Mass))
		it.MovesKG = unit.KG(more)
		if r.Loaded.HasX && it.HasX && total+more > 0 {
			arm := float64(it.Record.X.V - r.Loaded.X)
			it.MovesX = unit.MM(more * arm / (total + more) / metresPerMM)
		}
	}
	r.MostMass = most(r.Items, func(it *Item) float64 { return float64(it.MovesKG) })
	r.MostCentre = most(r.Items, func(it *Item) float64 { return float64(it.MovesX) })
}

// most gives the indices of the items with the greatest effect, whatever its sign, greatest first; items with none are left out.
func most(items []Item, effect func(*Item) float64) []int {
	var order []int
	for i := range items {
		if effect(&items[i]) != 0 {
			order = append(order, i)
		}
	}
	slices.SortStableFunc(order, func(a, b int) int {
		return cmp.Compare(math.Abs(effect(&items[b])), math.Abs(effect(&items[a])))
	})
	return order[:min(len(order), mostShown)]
}
