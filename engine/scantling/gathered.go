package scantling

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
)

// gathered puts checks of panels and members laid out from the grid together that are not shown for the same reason: one
// value that is not written would otherwise be told a hundred times. What is listed by hand keeps a check of its own.
func gathered(checks []finding.Check, g *grid.Result) []finding.Check {
	derived := make(map[string]bool, len(g.Panels)+len(g.Members))
	for i := range g.Panels {
		derived["panel "+g.Panels[i].ID] = true
	}
	for i := range g.Members {
		derived["member "+g.Members[i].ID] = true
	}
	first := map[string]int{}
	more := map[int]int{}
	out := make([]finding.Check, 0, len(checks))
	for _, c := range checks {
		if c.Standing != finding.NotShown || !derived[c.Subject] {
			out = append(out, c)
			continue
		}
		key := c.Rule + "|" + strings.ReplaceAll(c.Says, c.Subject, "")
		if at, known := first[key]; known {
			more[at]++
			continue
		}
		first[key] = len(out)
		out = append(out, c)
	}
	for at, n := range more {
		out[at].Says += fmt.Sprintf(" (%d more likewise)", n)
	}
	return out
}
