package chart

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
)

// half is an invented half section: a bottom and a side with their frames, four stringers and a keel bar.
func half() FrameCut {
	c := FrameCut{Name: "frame 5", X: 2, Skins: []CutSkin{{Way: [][2]float64{{0, 0}, {1, 0.3}}, Words: "bottom 6 mm"}, {Way: [][2]float64{{1, 0.3}, {1.2, 1.1}}, Words: "side 4 mm"}}}
	up := Inward([2]float64{0, 0}, [2]float64{1, 0.3}, [2]float64{0, 0.6})
	c.Webs = []CutWeb{{Way: c.Skins[0].Way, Inward: up, Height: 0.14, Of: "bottom frame", Name: "bottom frame 5", Section: "FL140x4"},
		{Way: c.Skins[1].Way, Inward: [2]float64{-1, 0}, Height: 0.08, Of: "side frame", Name: "side frame 5", Section: "FL80x4"}}
	for i := range 4 {
		y := 0.2 + 0.2*float64(i)
		c.Cuts = append(c.Cuts, CutBar{At: [2]float64{y, 0.3 * y}, Inward: up, Height: 0.06, Of: "bottom stringer", Name: "bottom stringer " + strconv.Itoa(i+1), Section: "FB60x6"})
	}
	c.Cuts = append(c.Cuts, CutBar{At: [2]float64{0, 0}, Inward: [2]float64{0, 1}, Height: 0.08, Of: "keel bar K", Name: "keel bar K frames 4-5", Section: "FB80x8"})
	return c
}

// Every member bears the number of its kind and section, discs do not lie on each other, and list and table say the same.
func TestMembersAtAFrameAreNumbered(t *testing.T) {
	f := FrameSection(half())
	page, _, _ := strings.Cut(f.SVG, "g-narrow")
	for number, want := range map[string]int{"1": 2, "2": 2, "3": 5, "4": 2} { // once in the list, else in discs
		if got := strings.Count(page, ">"+number+"</text>"); got != want {
			t.Errorf("number %s stands %d times, %d are wanted", number, got, want)
		}
	}
	for _, words := range []string{"bottom frame FL140x4", "bottom stringers FB60x6", "keel bar K FB80x8"} {
		if !strings.Contains(page, words+"</text>") {
			t.Errorf("the list does not say %s", words)
		}
	}
	var discs []point
	for _, m := range regexp.MustCompile(`class="g-open" cx="([\d.]+)" cy="([\d.]+)"`).FindAllStringSubmatch(page, -1) {
		x, _ := strconv.ParseFloat(m[1], 64)
		y, _ := strconv.ParseFloat(m[2], 64)
		discs = append(discs, point{x, y})
	}
	if len(discs) != 7 {
		t.Fatalf("%d discs, 7 are wanted", len(discs))
	}
	for i, a := range discs {
		for _, b := range discs[:i] {
			if math.Hypot(a.x-b.x, a.y-b.y) < 2*disc {
				t.Errorf("discs at %v and %v lie on each other", a, b)
			}
		}
	}
	if row := f.Table[len(f.Table)-1]; row[0] != "4" || row[1] != "keel bar K frames 4-5" {
		t.Errorf("the table ends with %v", row)
	}
}

// The surface of the water, low in the boat as the list is on the sheet, ends before the words of the list.
func TestWaterEndsBeforeTheList(t *testing.T) {
	cut := half()
	cut.HasWater, cut.Water = true, 0.1
	all, err := drawingsOf(FrameSection(cut).SVG)
	if err != nil {
		t.Fatal(err)
	}
	wide := all[0]
	if water := wide.of["g-water"]; len(water) != 2 || water[1].x > wide.width-listWide {
		t.Errorf("%v wide: the water goes to %v, the list begins at %v", wide.width, water, wide.width-listWide)
	}
}
