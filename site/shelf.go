package site

import (
	"crypto/sha256"
	"reflect"
	"slices"
	"strings"
	"sync"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// shelf finds the record files of a yard, so that no hull has to look through those of all others.
type shelf struct {
	common []record.File // those of the yard as a whole, in order of name
	byPath map[string]record.File
	doubts map[string][]record.YardDoubt // by hull
	stock  map[string][]string           // files of the stock by the keys and numbers of what they list
	marks  map[string][]string           // and the other way round
	plates []record.StockedPlate         // what plate the yard has
	hashed func() map[uint64]string      // the keys of stock by their hashes
}

func newShelf(y *record.Yard) *shelf {
	s := &shelf{byPath: map[string]record.File{}, doubts: map[string][]record.YardDoubt{}, stock: map[string][]string{}, marks: map[string][]string{}}
	for _, f := range y.Files {
		if top, _, _ := strings.Cut(f.Path, "/"); top != "hulls" && top != "designs" {
			s.common = append(s.common, f)
		}
		s.byPath[f.Path] = f
	}
	for _, d := range y.Doubts {
		s.doubts[d.Hull] = append(s.doubts[d.Hull], d)
	}
	for i := range y.Stock.Lots {
		l := &y.Stock.Lots[i]
		s.lists(l.At.File, l.ID, l.Cast.V, l.MakersLot.V, l.Certificate.V)
	}
	s.plates = y.StockedPlates()
	s.hashed = sync.OnceValue(s.byHash)
	for i := range y.Stock.Consumables {
		c := &y.Stock.Consumables[i]
		s.lists(c.At.File, c.ID, c.Cast.V, c.Batch.V, c.Certificate.V)
	}
	return s
}

// file finds a file by its path.
func (s *shelf) file(path string) (record.File, bool) {
	f, known := s.byPath[path]
	return f, known
}

func (s *shelf) lists(file string, marks ...string) {
	for _, mark := range marks {
		if mark == "" || slices.Contains(s.stock[mark], file) {
			continue
		}
		s.stock[mark] = append(s.stock[mark], file)
		s.marks[file] = append(s.marks[file], mark)
	}
}

// of gives the record files that made a hull: those that it is laid over, and those of the yard as a whole, but of the
// stock only what the hull draws on. A yard that keeps the metal of each year or boat in a file of its own does not carry
// the stock of all its boats in every file. Its own files are given where they are not on the shelf.
func (s *shelf) of(h *record.Hull, own ...record.File) []record.File {
	var out []record.File
	for _, f := range s.common {
		if !s.isStock(f) {
			out = append(out, f)
		}
	}
	out = append(out, s.stockOf(h)...)
	for _, name := range h.Over {
		f, known := s.file(name)
		if i := slices.IndexFunc(own, func(o record.File) bool { return o.Path == name }); i >= 0 {
			f, known = own[i], true
		}
		if known && !slices.ContainsFunc(out, func(o record.File) bool { return o.Path == name }) {
			out = append(out, f)
		}
	}
	slices.SortFunc(out, func(a, b record.File) int { return strings.Compare(a.Path, b.Path) })
	return out
}

// isStock reports a file that lists metal or consumables.
func (s *shelf) isStock(f record.File) bool {
	_, stock := s.marks[f.Path]
	return stock
}

// stockOf gives the files of the stock that a hull draws on; all where it draws on none.
func (s *shelf) stockOf(h *record.Hull) []record.File {
	return s.filesOf(s.drawnOn(h))
}

// filesOf gives the files of the stock that are drawn on; all where none is.
func (s *shelf) filesOf(drawn map[string]bool) []record.File {
	var out []record.File
	for _, f := range s.common {
		if s.isStock(f) && (len(drawn) == 0 || drawn[f.Path]) {
			out = append(out, f)
		}
	}
	return out
}

// sumOf hashes them.
func (s *shelf) sumOf(drawn map[string]bool) [sha256.Size]byte {
	all := sha256.New()
	for _, f := range s.filesOf(drawn) {
		hashFile(all, f)
	}
	return [sha256.Size]byte(all.Sum(nil))
}

// drawnOn gives the files of the stock that a hull draws on: those that list what one of its records names by key, cast,
// batch or certificate, and those that list the same again. A hull that names nothing of it draws on none.
func (s *shelf) drawnOn(h *record.Hull) map[string]bool {
	drawn := map[string]bool{}
	eachText(reflect.ValueOf(&h.HullFile).Elem(), func(text string) { s.draw(drawn, text) })
	return drawn
}

// drawnBy does the same from the hashes of its texts.
func (s *shelf) drawnBy(all textList) map[string]bool {
	drawn := map[string]bool{}
	for _, one := range all {
		if mark, known := s.hashed()[one]; known {
			s.draw(drawn, mark)
		}
	}
	return drawn
}

func (s *shelf) draw(drawn map[string]bool, mark string) {
	for _, file := range s.stock[mark] {
		if drawn[file] {
			continue
		}
		drawn[file] = true
		for _, also := range s.marks[file] {
			s.draw(drawn, also)
		}
	}
}

func (s *shelf) byHash() map[uint64]string {
	all := make(map[uint64]string, len(s.stock))
	for mark := range s.stock {
		all[hashOfText(mark)] = mark
	}
	return all
}

// eachText calls do with every text in a record.
func eachText(v reflect.Value, do func(string)) {
	switch v.Kind() {
	case reflect.String:
		do(v.String())
	case reflect.Struct:
		for i := range v.NumField() {
			if f := v.Field(i); f.Type() != reflect.TypeFor[finding.Place]() {
				eachText(f, do)
			}
		}
	case reflect.Slice:
		for i := range v.Len() {
			eachText(v.Index(i), do)
		}
	}
}
