package site

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"slices"
	"strings"
	"sync/atomic"
	"testing"
	"time"

	"hullfile/site/typeset"
)

// lookedAt makes a run long after everything was written, so that the times of files are trusted, and gives the hulls whose
// records it read to look at them and those whose files it wrote.
func (e *editor) lookedAt() (read, written []string) {
	e.t.Helper()
	job := e.job(e.out)
	p, err := openPlace(job)
	if err != nil {
		e.t.Fatal(err)
	}
	press, err := newPress(job)
	if err != nil {
		e.t.Fatal(err)
	}
	pages := press.pages
	var printed atomic.Bool
	press.pages = func() (*typeset.Set, error) {
		printed.Store(true)
		return pages()
	}
	defer func() { e.printed = printed.Load() }()
	s, err := openStage(p)
	if err != nil {
		e.t.Fatal(err)
	}
	defer s.discard()
	s.began += int64(time.Hour)
	r, err := newRun(e.t.Context(), press, s)
	if err != nil {
		e.t.Fatal(err)
	}
	read = slices.Sorted(slices.Values(r.supply.(*pieces).kept.fresh))
	e.lean = r.supply.(*pieces).stocked != nil
	if err := errors.Join(r.books(e.t.Context()), r.close(e.t.Context()), s.swap()); err != nil {
		e.t.Fatal(err)
	}
	for _, h := range r.report().Hulls {
		if !h.Kept {
			written = append(written, h.Number)
		}
	}
	return read, written
}

// What a hull draws on of a stock that changed is told by the hashes of its texts: no hull is read for it, and those that
// draw on the changed file are written.
func TestAChangedStockReadsNoHull(t *testing.T) {
	e := newEditor(t)
	all := []string{"HL74-012", "HL74-013", "LT56-031"}
	lot := filepath.Join(e.yard, "stock", "later.toml")
	steps := []struct {
		where         string
		do            func()
		read, written []string
	}{
		{"at first", func() {}, all, all},
		{"nothing", func() {}, nil, nil},
		{"a lot that nobody draws on", func() { e.put(lot, laterLot("Z900", "")) }, nil, nil},
		{"a lot of a cast that is drawn on", func() { e.put(lot, laterLot("Z900", castOf(t, e.yard))) }, nil, drawOnLots(t, e.yard)},
		{"the same, where the texts of a hull are lost", func() {
			e.put(lot, laterLot("Z901", castOf(t, e.yard)))
			e.put(filepath.Join(e.out, keptName, "LT56-031"), []byte("lost"))
		}, []string{"LT56-031"}, drawOnLots(t, e.yard)},
		{"the lot is gone", func() { os.Remove(lot) }, nil, drawOnLots(t, e.yard)},
		{"of the register a page was written over", func() { e.put(filepath.Join(e.out, coverName), []byte("another")) }, nil, nil},
		{"of the register a file was added", func() { e.put(filepath.Join(e.out, "assets", "more.css"), []byte("more")) }, nil, nil},
		{"of the register a list was taken away", func() { os.Remove(filepath.Join(e.out, "assets", "book.js")) }, nil, nil},
		{"nothing once again", func() {}, nil, nil},
		{"a second file", func() {
			e.put(filepath.Join(e.yard, "stock", "other.toml"), laterLot("Z902", ""))
		}, nil, nil},
		{"one hull, and the stock is not read", func() { e.remark("LT56-031") }, []string{"LT56-031"}, []string{"LT56-031"}},
		{"one hull, where what the stock lists is lost", func() {
			e.remark("LT56-031")
			os.Remove(filepath.Join(e.out, keptName, keptStock))
		}, []string{"LT56-031"}, []string{"LT56-031"}},
		{"one hull once more", func() { e.remark("LT56-031") }, []string{"LT56-031"}, []string{"LT56-031"}},
	}
	for _, s := range steps {
		s.do()
		read, written := e.lookedAt()
		if !slices.Equal(read, s.read) || !slices.Equal(written, s.written) {
			t.Errorf("%s: read %v and wrote %v, want %v and %v", s.where, read, written, s.read, s.written)
		}
		if lean := strings.HasSuffix(s.where, "not read") || strings.HasSuffix(s.where, "once more"); lean != e.lean {
			t.Errorf("%s: only what is drawn on of the stock is read: %v, want %v", s.where, e.lean, lean)
		}
		if quiet := s.written == nil && !strings.HasPrefix(s.where, "of the register"); quiet == e.printed {
			t.Errorf("%s: templates are read for a page: %v", s.where, e.printed)
		}
		fresh := filepath.Join(t.TempDir(), "fresh")
		rendered(t, jobIn(t, e.yard, fresh))
		same(t, s.where, tree(t, fresh), tree(t, e.out))
		os.RemoveAll(fresh)
	}
}

// remark changes the records of a hull and nothing that they say.
func (e *editor) remark(number string) {
	name := filepath.Join(e.yard, "hulls", number, "hull.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(name, append(text, "\n# a remark\n"...))
}

// laterLot is a lot of plate as thick as some that the yard has, of a cast if one is named.
func laterLot(key, cast string) []byte {
	text := "[lot." + key + "]\nkind = \"plate\"\nalloy = \"5083-H116\"\nthickness_mm = 5.0\n"
	if cast != "" {
		text += "cast = \"" + cast + "\"\n"
	}
	return []byte(text)
}

// castOf gives a cast of the demo that hulls draw on.
func castOf(t *testing.T, yard string) string {
	t.Helper()
	y := jobIn(t, yard, t.TempDir()).Yard
	for i := range y.Stock.Lots {
		if cast := y.Stock.Lots[i].Cast.V; cast != "" {
			return cast
		}
	}
	t.Fatal("the demo has no cast")
	return ""
}

// drawOnLots gives the hulls that draw on the table of lots.
func drawOnLots(t *testing.T, yard string) []string {
	t.Helper()
	y := jobIn(t, yard, t.TempDir()).Yard
	shelf := newShelf(y)
	var all []string
	for _, h := range y.Hulls {
		is := shelf.drawing.Of(h)
		if is.Has("stock/lots.csv") {
			all = append(all, h.Number)
		}
		if by := shelf.drawnBy(textsOf(h)); !reflect.DeepEqual(by, is) {
			t.Errorf("hull %s draws on %v by its texts, on %v by its records", h.Number, by, is)
		}
	}
	if len(all) == 0 {
		t.Fatal("no hull of the demo draws on lots.csv; the test shows nothing")
	}
	return all
}
