package requirement

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// What proofs ask of a catalog: the tables of the lists themselves, without a hull.

// named is facts by the symbol under which a condition names them.
type named struct {
	catalog *Catalog
	given   map[string]any // numbers and words
}

// Lookup gives a fact by its record name.
func (n named) Lookup(from string) (method.Quantity, bool) {
	f := n.catalog.names[from]
	if f == nil {
		return method.Quantity{}, false
	}
	switch v := n.given[f.ID].(type) {
	case string:
		return method.Quantity{Word: v, IsWord: true}, true
	case float64:
		return method.Quantity{Number: v, Unit: f.Unit.V}, true
	}
	return method.Quantity{}, false
}

// ModulesOpen lists the modules that a list opens for a boat of these facts. The error says that a list or a fact is not
// known, or that a fact that decides is not given.
func (c *Catalog) ModulesOpen(name, about string, facts map[string]any) ([]string, error) {
	l, f, err := c.ask(name, facts)
	if err != nil {
		return nil, err
	}
	var out []string
	for i := range l.Routes {
		if l.Routes[i].About.V != about {
			continue
		}
		h := l.routes[i].Hold(f)
		if h.Holds {
			out = append(out, l.Routes[i].Modules.V...)
		}
	}
	return out, nil
}

// ItemApplies reports whether an item of a list applies to a boat of these facts.
// Errors: no such list or item; a fact that the list does not know or that is missing.
func (c *Catalog) ItemApplies(name, item string, facts map[string]any) (bool, error) {
	l, f, err := c.ask(name, facts)
	if err != nil {
		return false, err
	}
	for i := range l.Items {
		if l.Items[i].ID != item {
			continue
		}
		if l.items[i] == nil {
			return true, nil
		}
		h := l.items[i].Hold(f)
		if !h.Known {
			return false, fmt.Errorf("whether it applies needs %v", h.Lacks)
		}
		return h.Holds, nil
	}
	return false, fmt.Errorf("list %s has no item %q", name, item)
}

// ItemsOf counts the items of a list whose number begins so and that are known in a way; an empty text stands for all.
// Error: no such list.
func (c *Catalog) ItemsOf(name, begins string, basis finding.Basis) (int, error) {
	l, _, err := c.ask(name, nil)
	if err != nil {
		return 0, err
	}
	n := 0
	for i := range l.Items {
		b := l.Items[i].Basis.V
		if b == "" {
			b = l.Basis.V
		}
		if strings.HasPrefix(l.Items[i].ID, begins) && (basis == "" || finding.Basis(b) == basis) {
			n++
		}
	}
	return n, nil
}

func (c *Catalog) ask(name string, facts map[string]any) (*list, *method.Facts, error) {
	i := slices.IndexFunc(c.lists, func(l *list) bool { return l.Name == name })
	if i < 0 {
		return nil, nil, fmt.Errorf("no list %q", name)
	}
	for symbol := range facts {
		known := false
		for _, f := range c.names {
			known = known || f.ID == symbol
		}
		if !known {
			return nil, nil, fmt.Errorf("%q is no fact of a boat", symbol)
		}
	}
	return c.lists[i], c.facts.Facts(named{c, facts}), nil
}
