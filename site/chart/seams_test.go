package chart

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
)

// A seam whose ends lie on the chine follows it; one across the bottom is straight; one that is short carries a cross.
func TestSeamMap(t *testing.T) {
	r := sampleLines(t)
	v, ok := shapeOf(r)
	if !ok {
		t.Fatal("the sample has no lines")
	}
	m := seamMap{shape: v}
	first, last := v.stations[0], v.stations[len(v.stations)-1]
	at := func(x, girth float64) point { return point{x, girth} }
	along := Seam{Key: "C1", X: first.X, Girth: girths(first, 1), ToX: last.X, ToGirth: girths(last, 1)}
	if n := len(m.way(along, at)); n != len(v.stations) {
		t.Errorf("along the chine the seam has %d places for %d stations", n, len(v.stations))
	}
	across := Seam{Key: "F1", X: first.X, Girth: 0.2, ToX: first.X, ToGirth: girths(first, 1) - 0.2}
	if n := len(m.way(across, at)); n != 2 {
		t.Errorf("across the bottom the seam has %d places", n)
	}
	short := across
	short.Key, short.Standing, short.Name, short.Href = "F<2", finding.Short, true, "seams/F2.html"
	f := SeamMap(r, []Seam{along, short})
	if f.Empty || strings.Count(f.SVG, "g-seam g-bad") != 6 || strings.Contains(f.SVG, "F<2") || !strings.Contains(f.SVG, `href="seams/F2.html"`) {
		t.Errorf("the picture lacks the cross, the link or its escape: %d", strings.Count(f.SVG, "g-seam g-bad"))
	}
	if !strings.Contains(f.Alt, "2 of 2 joints drawn: 0 met, 1 short") {
		t.Errorf("in words: %q", f.Alt)
	}
	if f := SeamMap(r, nil); !f.Empty {
		t.Error("without a seam there is a picture")
	}
}
