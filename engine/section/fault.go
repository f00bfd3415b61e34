package section

import "strings"

// Fault is one dimension that makes a section impossible.
type Fault struct {
	Dimension string // the field of Shape, in words: "web thickness"
	Says      string // what is wrong, with the value
}

// Faults is all that is wrong with one shape. It is an error.
type Faults []Fault

// Error gives every fault on a line of its own.
func (fs Faults) Error() string {
	all := make([]string, len(fs))
	for i, f := range fs {
		all[i] = f.Dimension + ": " + f.Says
	}
	return strings.Join(all, "\n")
}
