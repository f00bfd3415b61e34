package site

import (
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
