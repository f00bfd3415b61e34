package requirement

import (
	"maps"
	"slices"
	"strings"

	"hullfile/engine/record"
)

// Asks gives the names of the lists that a hull asks for, in order, whether there are such lists or not: those that its record or
// that of the yard names, and those whose words for evidence its papers and these lists use. No other list of the yard takes
// part in what is said of the hull.
func (c *Catalog) Asks(h *record.Hull, b *record.Builder) []string {
	asked := map[string]bool{}
	from := c.definers()
	var words func(all []string)
	names := func(all []string) {
		for _, name := range all {
			if asked[name] {
				continue
			}
			asked[name] = true
			l, _ := c.Find(name)
			for i := 0; l != nil && i < len(l.Items); i++ {
				it := &l.Items[i]
				words(slices.Concat(it.Needed.V, it.Either.V, it.Supports.V))
			}
		}
	}
	words = func(all []string) {
		for _, w := range all {
			names(from[w])
		}
	}
	names(b.Lists.V)
	names(h.Conformity.Lists.V)
	for i := range h.Accepted {
		names([]string{h.Accepted[i].List.V})
	}
	for i := range h.Documents {
		words(h.Documents[i].Shows.V)
	}
	return slices.Sorted(maps.Keys(asked))
}

// definers gives the list that defines each word for evidence that is none of the program's.
func (c *Catalog) definers() map[string][]string {
	from := map[string][]string{}
	for _, l := range c.lists {
		for i := range l.Evidence {
			from[l.Evidence[i].ID] = []string{l.Name}
		}
	}
	return from
}

// Only is the catalog of a yard that has of its own lists only those named; shipped is that of one that has none.
func (c *Catalog) Only(own []string, shipped *Catalog) *Catalog {
	out := *c
	out.lists, out.words = nil, maps.Clone(shipped.words)
	for _, l := range c.lists {
		if l.Yards && !slices.Contains(own, l.Name) {
			continue
		}
		out.lists = append(out.lists, l)
		for i := range l.Evidence {
			out.words[l.Evidence[i].ID] = &l.Evidence[i]
		}
	}
	for _, l := range shipped.lists {
		if _, stands := out.Find(l.Name); !stands {
			out.lists = append(out.lists, l)
		}
	}
	slices.SortFunc(out.lists, func(a, b *list) int { return strings.Compare(a.Name, b.Name) })
	return &out
}
