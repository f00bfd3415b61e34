package held

import (
	"strings"

	"hullfile/engine/finding"
)

// Cited is what a table or a row of limits says of where it comes from.
type Cited struct {
	Work    string        `toml:"work"`
	Edition string        `toml:"edition"`
	Clause  string        `toml:"clause"`
	Basis   finding.Basis `toml:"basis"`
}

// String gives work, edition and clause on one line.
func (c Cited) String() string {
	var parts []string
	for _, p := range []string{c.Work, c.Edition, c.Clause} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, ", ")
}
