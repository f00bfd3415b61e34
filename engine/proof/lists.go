package proof

import (
	"fmt"
	"maps"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// ofList asks the lists of requirements themselves. The result is 1 or 0 for yes and no, or a count.
func (r *runner) ofList(c *row) (outcome, error) {
	facts := maps.Clone(c.Inputs)
	word := func(key string) string {
		s, _ := facts[key].(string)
		delete(facts, key)
		return s
	}
	list, module, item, basis, begins := word("list"), word("module"), word("item"), word("basis"), word("begins")
	for key, v := range facts {
		if x, ok := number(v); ok {
			facts[key] = x
		}
	}
	out := outcome{inputs: spelt(c.Inputs)}
	switch c.Function {
	case "module open":
		open, err := r.lists.ModulesOpen(list, "construction", facts)
		out.got = truth(slices.Contains(open, module))
		if err == nil && len(open) == 0 {
			err = fmt.Errorf("no row of the table holds")
		}
		return out, err
	case "item applies":
		applies, err := r.lists.ItemApplies(list, item, facts)
		out.got = truth(applies)
		return out, err
	}
	n, err := r.lists.ItemsOf(list, begins, finding.Basis(basis))
	out.got = float64(n)
	return out, err
}

// listFunctions are the functions that ask lists.
var listFunctions = []string{"module open", "item applies", "items listed"}

func truth(is bool) float64 {
	if is {
		return 1
	}
	return 0
}

// spelt gives inputs of words and numbers in order of their names.
func spelt(in map[string]any) string {
	var parts []string
	for _, name := range slices.Sorted(maps.Keys(in)) {
		if x, ok := number(in[name]); ok {
			parts = append(parts, name+" "+plain(x))
			continue
		}
		parts = append(parts, fmt.Sprintf("%s %v", name, in[name]))
	}
	return strings.Join(parts, ", ")
}
