package engine

import (
	"slices"
	"strings"
	"sync"

	"hullfile/engine/proof"
	"hullfile/engine/record"
)

// asking notes by which names a hull asks for what a yard may have of its own: method sheets and lists of requirements. A hull
// takes part of these only what it asks for, so that one of another boat leaves its file alone, and its file need enclose no more.
type asking struct {
	of *Reference

	mu     sync.Mutex
	sheets map[string]bool // by file name
	lists  []string
}

// asking gives the reference as one hull sees it, and what notes the asking.
func (r *Reference) asking(y *record.Yard, h *record.Hull) (*Reference, *asking) {
	a, seen := &asking{of: r, sheets: map[string]bool{}}, *r
	seen.Library = r.Library.Watched(a.sheet)
	if r.Requirements != nil {
		a.lists = r.Requirements.Asks(h, &y.Builder)
		seen.Requirements = r.Requirements.Only(a.lists, r.listed)
	}
	return &seen, a
}

// sheet is told of a sheet that is asked for.
func (a *asking) sheet(name string) {
	a.mu.Lock()
	defer a.mu.Unlock()
	a.sheets[name] = true
}

// proofs are those that belong to the hull: through the own sheets that it asks for.
func (a *asking) proofs() *proof.Sheet {
	return a.of.proofs.of(slices.DeleteFunc(a.of.Library.Own(), func(name string) bool { return !a.sheets[name] }))
}

// files gives what was asked for as files of the yard folder, in order, whether they are there or not.
func (a *asking) files() []string {
	var all []string
	for name := range a.sheets {
		all = append(all, record.OwnSheet(name))
	}
	for _, name := range a.lists {
		all = append(all, record.OwnList(name))
	}
	all = slices.DeleteFunc(all, func(file string) bool { return strings.Count(file, "/") != 1 }) // no file has a name with a slash
	slices.Sort(all)
	return all
}
