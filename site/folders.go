package site

import (
	"slices"
	"strings"
)

// folderLists are lists that books have, such as those of their folders. Books have hundreds of lists among thousands of them, because the
// folder that bears the number of the hull stands in them without it.
type folderLists struct {
	all [][]string
	at  map[string]int
}

// ownRecords begins the name of that folder; numberless stands for it with the number.
const (
	ownRecords = "records/hulls/"
	numberless = "\x00"
)

// add gives the place of a list of folders.
func (l *folderLists) add(number string, names []string) int {
	own := ownRecords + number
	shared := slices.Clone(names)
	for i, name := range shared {
		if below, is := strings.CutPrefix(name, own); is {
			shared[i] = numberless + below
		}
	}
	return l.put(shared)
}

func (l *folderLists) put(names []string) int {
	key := strings.Join(names, "//") // no name of a folder holds that
	at, known := l.at[key]
	if known {
		return at
	}
	if l.at == nil {
		l.at = map[string]int{}
	}
	l.at[key] = len(l.all)
	l.all = append(l.all, names)
	return l.at[key]
}

// shared gives a list as it was put.
func (l *folderLists) shared(at int) []string {
	if at < 0 || at >= len(l.all) {
		return nil
	}
	return l.all[at]
}

// of gives the folders of a book.
func (l *folderLists) of(number string, at int) []string {
	names := slices.Clone(l.shared(at))
	for i, name := range names {
		if below, own := strings.CutPrefix(name, numberless); own {
			names[i] = ownRecords + number + below
		}
	}
	return names
}
