package finding

import (
	"errors"
	"fmt"
	"path"
	"sort"
)

// Fault is one thing in the records, or in what comes with the program, that cannot be read as it stands. Any fault
// keeps the file from being made.
type Fault struct {
	Place Place  `json:"place"`
	Key   string `json:"key,omitempty"`  // dotted record key, e.g. panel.B3.thickness_mm
	Says  string `json:"says"`           // what is wrong, with the value
	Hint  string `json:"hint,omitempty"` // what to write instead

	Shipped bool `json:"shipped,omitempty"` // it stands in what comes with the program, not in the records
}

// String gives the fault on one line: file:line:column: key: what is wrong.
func (f Fault) String() string {
	s := f.Place.String()
	if f.Key != "" {
		s += ": " + f.Key
	}
	return s + ": " + f.Says
}

// Faults is all the faults of one reading, in file order. It is an error so that a reader can return it as one.
type Faults []Fault

// Error gives every fault on a line of its own, each with its hint below it.
func (fs Faults) Error() string {
	s := ""
	for i, f := range fs {
		if i > 0 {
			s += "\n"
		}
		s += f.String()
		if f.Hint != "" {
			s += "\n    " + f.Hint
		}
	}
	return s
}

// Count says how many there are and where: "2 faults in the records".
func (fs Faults) Count() string {
	shipped := 0
	for _, f := range fs {
		if f.Shipped {
			shipped++
		}
	}
	const own, others = "in the records", "in what comes with the program"
	switch records := len(fs) - shipped; {
	case shipped == 0:
		return faults(records) + " " + own
	case records == 0:
		return faults(shipped) + " " + others + ", not in the records"
	default:
		return faults(records) + " " + own + " and " + faults(shipped) + " " + others
	}
}

func faults(n int) string {
	if n == 1 {
		return "1 fault"
	}
	return fmt.Sprintf("%d faults", n)
}

// Shipped marks the faults of an error as those of what comes with the program, in files below a folder of the project.
// Any other error is given back as it is.
func Shipped(err error, folder string) error {
	var all Faults
	if !errors.As(err, &all) {
		return err
	}
	out := make(Faults, len(all))
	for i, f := range all {
		if !f.Shipped {
			f.Place.File, f.Shipped = path.Join(folder, f.Place.File), true
		}
		out[i] = f
	}
	return out
}

// Sort puts the faults in file order.
func (fs Faults) Sort() {
	sort.SliceStable(fs, func(i, j int) bool {
		a, b := fs[i], fs[j]
		if a.Place != b.Place {
			return a.Place.Before(b.Place)
		}
		if a.Key != b.Key {
			return a.Key < b.Key
		}
		return a.Says < b.Says
	})
}
