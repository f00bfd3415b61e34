package site

import (
	"crypto/sha256"
	"fmt"
	"slices"
	"strings"
	"sync"

	"hullfile/engine/record"
)

// shelf finds the record files of a yard, so that no hull has to look through those of all others.
type shelf struct {
	common []record.File // those of the yard as a whole, in order of name
	byPath map[string]record.File
	doubts map[string][]record.YardDoubt // by hull
	plates []record.StockedPlate         // what plate the yard has

	sums    map[string][sha256.Size]byte // of the texts of the common files
	drawing *record.Drawing
	hashed  func() map[uint64]string // marks of the stock by their hashes
}

func newShelf(y *record.Yard) *shelf {
	s := &shelf{byPath: map[string]record.File{}, doubts: map[string][]record.YardDoubt{}, drawing: record.DrawingOf(y), sums: map[string][sha256.Size]byte{}}
	for _, f := range y.Files {
		if top, _, _ := strings.Cut(f.Path, "/"); top != "hulls" && top != "designs" {
			s.common = append(s.common, f)
			s.sums[f.Path] = sha256.Sum256(f.Text)
		}
		s.byPath[f.Path] = f
	}
	for _, d := range y.Doubts {
		s.doubts[d.Hull] = append(s.doubts[d.Hull], d)
	}
	s.plates = y.StockedPlates()
	s.hashed = sync.OnceValue(s.byHash)
	return s
}

// file finds a file by its path.
func (s *shelf) file(path string) (record.File, bool) {
	f, known := s.byPath[path]
	return f, known
}

// of gives the record files that made a hull: those that it is laid over, and those of the yard as a whole, but of the
// stock only what the hull draws on. A yard that keeps the metal of each year or boat in a file of its own does not carry
// the stock of all its boats in every file. Its own files are given where they are not on the shelf.
func (s *shelf) of(h *record.Hull, own ...record.File) []record.File {
	var out []record.File
	for _, f := range s.common {
		if !s.isStock(f.Path) {
			out = append(out, f)
		}
	}
	for _, f := range s.stockOf(h) {
		if i := byName(own, f.Path); i >= 0 {
			f = own[i]
		}
		out = append(out, f)
	}
	for _, name := range h.Over {
		f, known := s.file(name)
		if i := byName(own, name); i >= 0 {
			f, known = own[i], true
		}
		if known && byName(out, name) < 0 {
			out = append(out, f)
		}
	}
	slices.SortFunc(out, func(a, b record.File) int { return strings.Compare(a.Path, b.Path) })
	return out
}

func byName(files []record.File, name string) int {
	return slices.IndexFunc(files, func(f record.File) bool { return f.Path == name })
}

// isStock reports a file that lists metal or consumables.
func (s *shelf) isStock(file string) bool { return len(s.drawing.Marks(file)) > 0 }

// stockOf gives the files of the stock that a hull draws on; all where it draws on none.
func (s *shelf) stockOf(h *record.Hull) []record.File {
	return s.filesOf(s.drawing.Of(h))
}

// filesOf gives the files of the stock that are drawn on; all where none is.
func (s *shelf) filesOf(drawn *record.Drawn) []record.File {
	var out []record.File
	for _, f := range s.common {
		if s.isStock(f.Path) && drawn.Has(f.Path) {
			out = append(out, f)
		}
	}
	return out
}

// sumOf hashes them.
func (s *shelf) sumOf(drawn *record.Drawn) [sha256.Size]byte {
	all := sha256.New()
	for _, f := range s.filesOf(drawn) {
		fmt.Fprintf(all, "%q %x", f.Path, s.sums[f.Path])
	}
	return [sha256.Size]byte(all.Sum(nil))
}

// drawnBy gives what a hull draws on from the hashes of its texts.
func (s *shelf) drawnBy(all textList) *record.Drawn {
	drawn := s.drawing.Nothing()
	for _, one := range all {
		if mark, known := s.hashed()[one]; known {
			drawn.By(mark)
		}
	}
	return drawn
}

func (s *shelf) byHash() map[uint64]string {
	all := map[uint64]string{}
	for _, mark := range s.drawing.All() {
		all[hashOfText(mark)] = mark
	}
	return all
}
