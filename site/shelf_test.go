package site

import (
	"slices"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func TestStockThatAHullDrawsOn(t *testing.T) {
	lot := func(file, id, cast string) record.Lot {
		l := record.Lot{Entry: record.Entry{ID: id, At: finding.Place{File: file, Line: 1}}}
		if cast != "" {
			l.Cast = record.Written(cast, finding.Place{File: file, Line: 2})
		}
		return l
	}
	y := &record.Yard{}
	for _, name := range []string{"yard.toml", "stock/a.toml", "stock/b.toml", "stock/c.toml", "stock/empty.toml"} {
		y.Files = append(y.Files, record.File{Path: name})
	}
	y.Stock.Lots = []record.Lot{lot("stock/a.toml", "L1", "C1"), lot("stock/b.toml", "L2", "C1"), lot("stock/c.toml", "L3", "C3")}
	s := newShelf(y)
	rows := []struct {
		where string
		lot   string
		want  []string
	}{
		{"a lot and the file with the same cast again", "L1", []string{"stock/a.toml", "stock/b.toml", "stock/empty.toml", "yard.toml"}},
		{"a lot by itself", "L3", []string{"stock/c.toml", "stock/empty.toml", "yard.toml"}},
		{"a lot that is in no file", "L9", []string{"stock/a.toml", "stock/b.toml", "stock/c.toml", "stock/empty.toml", "yard.toml"}},
	}
	for _, r := range rows {
		h := &record.Hull{}
		h.Parts = []record.Part{{Lot: record.Written(r.lot, finding.Place{File: "hulls/H1/parts.csv", Line: 2})}}
		var got []string
		for _, f := range s.of(h) {
			got = append(got, f.Path)
		}
		if !slices.Equal(got, r.want) {
			t.Errorf("%s: %v, want %v", r.where, got, r.want)
		}
	}
}
