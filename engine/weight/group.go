package weight

import (
	"reflect"
	"slices"
	"strings"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// groups sums the items group by group, in the order in which the record's vocabulary names the groups. A group
// without items is left out.
func groups(items []Item, loaded unit.KG) []Group {
	var out []Group
	for _, name := range words("Group", items, func(it *Item) string { return it.Record.Group.V }) {
		inside := func(it *Item) bool { return it.Record.Group.V == name }
		g := Group{Name: name, Total: sum(items, inside)}
		if g.Total.Items == 0 {
			continue
		}
		if loaded > 0 {
			g.Share = float64(g.Total.Mass) / float64(loaded)
		}
		g.Basis = basisParts(items, inside)
		out = append(out, g)
	}
	return out
}

// basisParts splits the mass of some items by how it is known, in the order of the record's vocabulary.
func basisParts(items []Item, asked func(*Item) bool) []BasisPart {
	var out []BasisPart
	for _, basis := range words("Basis", items, func(it *Item) string { return it.Record.Basis.V }) {
		t := sum(items, func(it *Item) bool { return asked(it) && it.Record.Basis.V == basis })
		if t.Items > len(t.NoMass) {
			out = append(out, BasisPart{Basis: basis, Mass: t.Mass})
		}
	}
	return out
}

// words gives the vocabulary of a field of the weight record from the record's own field table, and behind it any word
// that the items use beyond it, so that no item can fall out of a breakdown.
func words(field string, items []Item, of func(*Item) string) []string {
	var known []string
	if f, ok := reflect.TypeFor[record.Weight]().FieldByName(field); ok {
		known = strings.Split(f.Tag.Get("oneof"), "|")
	}
	for i := range items {
		if w := of(&items[i]); !slices.Contains(known, w) {
			known = append(known, w)
		}
	}
	return known
}
