package site

import (
	"slices"
	"testing"
)

// Own examples: symbols are parted, keys of records are left alone.
func TestPieces(t *testing.T) {
	for _, c := range []struct {
		says string
		want []Piece
	}{
		{"made for n_1 ≤ 3; here n_1 = 6.97 g", []Piece{{"made for n", "1"}, {" ≤ 3; here n", "1"}, {" = 6.97 g", ""}}},
		{"σ_uw 275 N/mm²", []Piece{{"σ", "uw"}, {" 275 N/mm²", ""}}},
		{"write boat.loaded_mass_kg", []Piece{{"write boat.loaded_mass_kg", ""}}},
		{"survey-desk (x_m, y_m)", []Piece{{"survey-desk (x_m, y_m)", ""}}},
		{"P_BM_min is typed", []Piece{{"P_BM_min is typed", ""}}},
		{"6.0 mm fitted", []Piece{{"6.0 mm fitted", ""}}},
	} {
		if got := Prose(c.says).Pieces(); !slices.Equal(got, c.want) {
			t.Errorf("%q: %v, want %v", c.says, got, c.want)
		}
	}
}

// A sentence that begins with its subject does not say it twice.
func TestUnsaid(t *testing.T) {
	for _, c := range []struct{ subject, says, want string }{
		{"Weld W040", "weld W040 by procedure P-02", ""},
		{"Weld W040", "weld W0401 is not on the map", "Weld W040"},
		{"Lot 4K0344", "15.74 m² were cut from lot 4K0344", "Lot 4K0344"},
	} {
		if got := unsaid(c.subject, c.says); got != c.want {
			t.Errorf("%s: %s: heading %q, want %q", c.subject, c.says, got, c.want)
		}
	}
}
