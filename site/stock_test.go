package site

import (
	"fmt"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

// Metal that comes in for one boat does not write the files of the others anew; a thickness that the yard never had does,
// because a sheet may now find a plate of it that would do.
func TestMetalThatComesIn(t *testing.T) {
	e := newEditor(t)
	lot := func(file, key, thickness string) {
		e.put(filepath.Join(e.yard, "stock", file), []byte("[lot."+key+"]\nkind = \"plate\"\nalloy = \"5083-H116\"\nthickness_mm = "+thickness+"\n"))
	}
	all := []string{"HL74-012", "HL74-013", "LT56-031"}
	if got := e.written(); !slices.Equal(got, all) {
		t.Fatalf("at first %v are written", got)
	}
	lot("later.toml", "Z900", "5.0")
	if got := e.written(); len(got) > 0 {
		t.Errorf("a lot of a thickness that was there writes %v anew", got)
	}
	lot("later.toml", "Z900", "7.0")
	if got := e.written(); !slices.Equal(got, all) {
		t.Errorf("a new thickness writes %v anew, want all", got)
	}
	os.Remove(filepath.Join(e.yard, "stock", "later.toml"))
	if got := e.written(); !slices.Equal(got, all) {
		t.Errorf("a thickness that is gone writes %v anew, want all", got)
	}
}

// Metal that lies in many files is let go of when all hulls were read, and each hull reads its own again: what is written is the
// same, also where files differ in what a hull draws on, and where one has a doubt.
func TestMuchMetalIsLetGo(t *testing.T) {
	e := newEditor(t)
	for i := range fewStockFiles {
		key, cast := fmt.Sprintf("M%02d", i), ""
		if i%3 == 0 {
			cast = castOf(t, e.yard)
		}
		text := laterLot(key, cast)
		if i%4 == 0 {
			text = append(text, "tensile_n_mm2 = 480\n"...)
		}
		e.put(filepath.Join(e.yard, "stock", key+".toml"), text)
	}
	for _, again := range []bool{false, true} {
		if again {
			e.remark("LT56-031")
		}
		if e.lookedAt(); !e.lean {
			t.Error("the metal of all hulls is in memory")
		}
		fresh := filepath.Join(t.TempDir(), "fresh")
		rendered(t, jobIn(t, e.yard, fresh))
		same(t, fmt.Sprintf("one hull again: %v", again), tree(t, fresh), tree(t, e.out))
	}
}
