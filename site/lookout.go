package site

import (
	"io/fs"
	"slices"
	"strings"
)

// sight is what the disk says of one file without it being read.
type sight struct {
	kind    fs.FileMode // type bits alone
	size    int64
	written int64 // nanoseconds since 1970
	number  int64 // on its disk; nought where the system does not tell
	changed int64 // when anything of it was changed last, which no program can set back; nought where the system does not tell
}

// seen is one entry of a folder.
type seen struct {
	name string
	kind fs.FileMode // type bits alone
}

// byNames sorts entries by their names.
func byNames(all []seen) {
	slices.SortFunc(all, func(a, b seen) int { return strings.Compare(a.name, b.name) })
}
