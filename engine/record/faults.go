package record

import (
	"fmt"
	"slices"

	"hullfile/engine/finding"
)

// mostFaults is the number of faults of one file that are told singly; the rest are counted. It keeps a hostile file
// from filling the memory, and a table with one wrong column from hiding everything else.
const mostFaults = 1000

// faults collects what is wrong, over all files.
type faults struct {
	all   finding.Faults
	count map[string]int // by file
}

// add keeps a fault, with what is wrong and the value in it.
func (fs *faults) add(at finding.Place, key, hint, says string, values ...any) {
	fs.keep(finding.Fault{Place: at, Key: key, Says: fmt.Sprintf(says, values...), Hint: hint})
}

func (fs *faults) keep(f finding.Fault) {
	if fs.count == nil {
		fs.count = map[string]int{}
	}
	fs.count[f.Place.File]++
	if fs.count[f.Place.File] <= mostFaults {
		fs.all = append(fs.all, f)
	}
}

// full reports whether a file has so many faults already that further hints are not worth working out.
func (fs *faults) full(file string) bool { return fs.count[file] > mostFaults }

// told gives all faults in file order, each once, however many hulls share the record that it stands in.
func (fs *faults) told() finding.Faults {
	for file, n := range fs.count {
		if n > mostFaults {
			fs.all = append(fs.all, finding.Fault{Place: finding.Place{File: file, Line: 1 << 30}, Says: fmt.Sprintf("%d more faults in this file", n-mostFaults)})
		}
	}
	fs.all.Sort()
	all := once(fs.all)
	for i := range all {
		if all[i].Place.Line == 1<<30 {
			all[i].Place.Line = 0
		}
	}
	return all
}

// once leaves out what was said before of the same place with the same hint: entries that stand for a row of equal ones,
// and hulls that share a record, have their fault once.
func once(all finding.Faults) finding.Faults {
	seen := map[finding.Fault]bool{}
	return slices.DeleteFunc(all, func(f finding.Fault) bool {
		f.Key = ""
		before := seen[f]
		seen[f] = true
		return before
	})
}
