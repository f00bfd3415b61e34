package site

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/record"
)

// ownFile is one of those files of a yard that take part only in the hulls that ask for them by name: a method sheet or a list of
// requirements of its own. A book remembers for which names it asked, in vain too, and the next run looks what is there by these
// names now: one that changed, appeared or went away has the books made anew that asked for it, and no others.
type ownFile struct {
	Path string
	Sum  [sha256.Size]byte
}

// ownOf gives those among the record files of a yard, in order of their path.
func ownOf(files []record.File) []ownFile {
	var own []ownFile
	for _, f := range files {
		if record.AskedByName(f.Path) {
			own = append(own, ownFile{f.Path, sha256.Sum256(f.Text)})
		}
	}
	slices.SortFunc(own, func(a, b ownFile) int { return strings.Compare(a.Path, b.Path) })
	return own
}

// ownMark hashes what there is of what is asked for, in order.
func ownMark(own []ownFile, asked []string) mark {
	sum := sha256.New()
	for i := range own {
		if _, is := slices.BinarySearch(asked, own[i].Path); is {
			fmt.Fprintf(sum, "%q %x", own[i].Path, own[i].Sum)
		}
	}
	return markOf(sum.Sum(nil))
}

// enclosed leaves out of record files those of the yard's own for which a hull does not ask.
func enclosed(files []record.File, asked []string) []record.File {
	return slices.DeleteFunc(slices.Clone(files), func(f record.File) bool {
		_, is := slices.BinarySearch(asked, f.Path)
		return record.AskedByName(f.Path) && !is
	})
}

// ownNames names the yard's own sheets and lists that take part in a book, for what differs with them alone.
func (b *book) ownNames() string {
	var all []string
	for _, f := range b.records {
		if record.AskedByName(f.Path) {
			all = append(all, f.Path)
		}
	}
	return strings.Join(all, "//")
}
