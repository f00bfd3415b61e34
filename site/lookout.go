package site

import (
	"io/fs"
	"os"
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

// lookout is an open folder from which files are looked at by their names. From it the system need not go the whole path
// for every file, of which a run over a fleet looks at tens of thousands.
type lookout struct{ at *os.File }

func (l lookout) close() { l.at.Close() }

// entries lists the folder in order of name.
func (l lookout) entries() ([]fs.DirEntry, error) {
	all, err := l.at.ReadDir(-1)
	if err != nil {
		return nil, err
	}
	slices.SortFunc(all, func(a, b fs.DirEntry) int { return strings.Compare(a.Name(), b.Name()) })
	return all, nil
}
