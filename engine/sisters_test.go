package engine

import (
	"bytes"
	"fmt"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// manySisters is a yard of so many hulls of one design; on those named a crack was found.
func manySisters(n int, cracked ...int) *record.Yard {
	y := &record.Yard{}
	for i := range n {
		h := &record.Hull{Number: fmt.Sprintf("H%03d", i)}
		h.Design = record.Written("D", finding.Place{})
		y.Hulls = append(y.Hulls, h)
	}
	for _, i := range cracked {
		y.Hulls[i].Looks = []record.Look{{Indications: []record.Indication{{Is: record.Written("crack", finding.Place{})}}}}
	}
	return y.Settled()
}

func TestSistersAreThoseNextToAHullAndThoseThatCracked(t *testing.T) {
	rows := []struct {
		where       string
		hulls, of   int
		cracked     []int
		first, last string
		count       int
	}{
		{"a small design", 5, 2, nil, "H000", "H004", 4},
		{"as many as are counted", 41, 0, nil, "H001", "H040", 40},
		{"in the middle", 200, 100, nil, "H080", "H120", 40},
		{"at the beginning", 200, 3, nil, "H000", "H040", 40},
		{"at the end", 200, 199, nil, "H159", "H198", 40},
		{"cracked ones far off", 200, 100, []int{5, 100, 101, 190}, "H005", "H190", 42},
	}
	for _, r := range rows {
		y := manySisters(r.hulls, r.cracked...)
		all := sisters(y, y.Hulls[r.of])
		if len(all) != r.count || all[0].Number != r.first || all[len(all)-1].Number != r.last {
			t.Errorf("%s: %d hulls from %s to %s, want %d from %s to %s", r.where, len(all), all[0].Number, all[len(all)-1].Number, r.count, r.first, r.last)
		}
		for _, s := range all {
			if s == y.Hulls[r.of] {
				t.Errorf("%s: the hull is its own sister", r.where)
			}
		}
	}
}

// A file does not change with what happens far from it, unless a crack is found.
func TestFarSistersDoNotChangeAFile(t *testing.T) {
	y := manySisters(200)
	h := y.Hulls[100]
	was := NewNeighbours(y).Digest(h)
	if now := NewNeighbours(manySisters(201)).Digest(h); now != nil {
		t.Error("a hull of another yard has a digest")
	}
	more := *y
	more.Hulls = append(more.Hulls[:200:200], &record.Hull{Number: "H200", HullFile: record.HullFile{Design: h.Design}})
	if now := NewNeighbours(more.Settled()).Digest(h); !bytes.Equal(was, now) {
		t.Error("another hull at the end of the yard changes the digest")
	}
	for at, differs := range map[int]bool{10: false, 90: true} {
		other := y.Hulls[at]
		other.Hours = []record.Hours{{}}
		if now := NewNeighbours(y.Settled()).Digest(h); bytes.Equal(was, now) == differs {
			t.Errorf("hours of %s change the digest: %v, want %v", other.Number, !differs, differs)
		}
		other.Hours = nil
	}
	y.Hulls[10].Looks = manySisters(1, 0).Hulls[0].Looks
	if now := NewNeighbours(y.Settled()).Digest(h); bytes.Equal(was, now) {
		t.Error("a crack found far off does not change the digest")
	}
}
