package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/json"
	"slices"
	"strings"
	"sync"

	"hullfile/engine/record"
)

// keptStock is the name under which is remembered what the files of the stock list. No hull can have it.
const keptStock = ".stock"

// stocked is what is remembered of the stock, so that a run in which one hull changed reads what that hull draws on and not
// the metal of all boats.
type stocked struct {
	Files  []stockedFile         `json:"files"` // those that list something, in order of name
	Plates []record.StockedPlate `json:"plates"`
}

type stockedFile struct {
	Path  string            `json:"path"`
	Sum   [sha256.Size]byte `json:"sum"`
	Marks []string          `json:"marks"`
}

// stockedOn gives what there is to remember of the stock on a shelf.
func stockedOn(s *shelf) *stocked {
	all := &stocked{Plates: s.plates}
	for _, f := range s.common {
		if s.isStock(f.Path) {
			all.Files = append(all.Files, stockedFile{f.Path, s.sums[f.Path], s.drawing.Marks(f.Path)})
		}
	}
	return all
}

// fewStockFiles is how many files of the stock stay in memory. Metal that fills more is kept by boat or by year: each hull then
// reads its own, and a fleet is not held in memory for it.
const fewStockFiles = 32

// letGoOfStock forgets what is in the files of the stock, where they are many, as if it had been remembered by an earlier run.
func (p *pieces) letGoOfStock() error {
	if p.stocked != nil {
		return nil
	}
	of := stockedOn(p.shelved())
	if len(of.Files) <= fewStockFiles {
		return nil
	}
	whole, err := p.begin()
	if err != nil {
		return err
	}
	lean := whole.WithoutStock(of.has)
	p.stocked, p.begin = of, func() (*record.Piecewise, error) { return lean, nil }
	p.shared, p.shelved, p.files = sync.OnceValue(p.yardOnly), sync.OnceValue(p.shelve), sync.OnceValue(p.byPath)
	return nil
}

// has reports whether something is remembered of a file.
func (s *stocked) has(file string) bool {
	_, known := slices.BinarySearchFunc(s.Files, file, func(f stockedFile, name string) int { return strings.Compare(f.Path, name) })
	return known
}

// lay puts what is remembered on a shelf on which the files themselves do not lie.
func (s *stocked) lay(on *shelf) {
	for _, f := range s.Files {
		on.common = append(on.common, record.File{Path: f.Path})
		on.sums[f.Path] = f.Sum
		on.drawing.Lists(f.Path, f.Marks...)
	}
	slices.SortFunc(on.common, func(a, b record.File) int { return strings.Compare(a.Path, b.Path) })
	on.plates = s.Plates
}

// stock gives what is remembered of the stock, where the file belongs to the state.
func (k *kept) stock(is mark) (*stocked, bool) {
	text, err := plainText(k.stage.final(keptName), keptStock)
	sum := sha256.Sum256(text)
	if err != nil || markOf(sum[:]) != is {
		return nil, false
	}
	s := &stocked{}
	return s, json.NewDecoder(bytes.NewReader(text)).Decode(s) == nil
}
