package chart

import (
	"fmt"
	"math"
	"os"
	"strings"
	"sync"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// hostile is text that somebody could write into a record to break a page.
const hostile = `A & B <x onload="alert(1)">'"</text></svg><script>alert(1)</script>` + "\x00\x1b\u202e]]>\xff <!-- \U0001F6A4 船 "

func TestSamplesAreSound(t *testing.T) {
	for i, f := range samples() {
		sound(t, fmt.Sprintf("figure %d, %s", i, f.Alt), f)
	}
}

// hostileFigures puts the hostile text into everything that comes from a record.
func hostileFigures() []Figure {
	tr := sampleTrial()
	tr.Record.ID, tr.RangeWhy = hostile, hostile
	for i := range tr.Settings {
		tr.Settings[i].Name = hostile
	}
	panels := samplePanels(9)
	for i := range panels {
		r := panels[i].Record
		r.ID, r.Zone, r.Alloy, r.Edges = hostile+fmt.Sprint(i), wr(hostile), wr(hostile), wr(hostile)
	}
	w := sampleWeight()
	for i := range w.Items {
		w.Items[i].Record.Name, w.Items[i].Record.ID = wr(hostile), hostile
	}
	for i := range w.Groups {
		w.Groups[i].Name = hostile
	}
	w.Weighings[0].Record.ID = hostile
	link := func(p scantling.Panel) string { return "structure/" + hostile }
	spec := Spec{ID: hostile, Title: hostile, Desc: hostile, Note: hostile, X: Axis{Name: hostile, Unit: hostile}, Y: Axis{Name: hostile}, Y2: Axis{Name: hostile},
		Lines: []Line{{Name: hostile, X: []float64{1, 2}, Y: []float64{3, 4}}, {Name: hostile, X: []float64{1, 2}, Y: []float64{9, 4}, Right: true}},
		Dots:  []Dots{{Name: hostile, X: []float64{1}, Y: []float64{2}, Class: Class(hostile)}}, Marks: []Mark{{X: 1.5, Y: 3.5, Text: hostile}}}
	return []Figure{SpeedFuel(tr), MileRange(tr), Trim(tr), Margins(panels, link), Panel(panels[0], sampleBoat()), WeightGroups(w),
		Centres(w, sampleBoat()), Weighing(w.Weighings[0]), Sensitivity(w), Plot(spec), blank("fig", hostile, hostile, nil)}
}

func TestHostileTextStaysText(t *testing.T) {
	for i, f := range hostileFigures() {
		sound(t, fmt.Sprintf("figure %d", i), f)
		if strings.Contains(f.SVG, "<script") || strings.Contains(f.SVG, "<x ") {
			t.Errorf("figure %d lets markup through", i)
		}
	}
}

func TestLinksStayInTheFile(t *testing.T) {
	rows := []struct {
		href string
		kept bool
	}{
		{"structure/B3.html", true}, {"B3.html", true}, {"#B3", true}, {"../index.html", true},
		{"javascript:alert(1)", false}, {"https://example.com", false}, {"//example.com", false}, {"/etc", false}, {`\\host\share`, false}, {"", false},
	}
	for _, row := range rows {
		f := Margins(samplePanels(2), func(scantling.Panel) string { return row.href })
		all, err := drawingsOf(f.SVG)
		if err != nil {
			t.Fatal(err)
		}
		if got := len(all[0].links) > 0; got != row.kept {
			t.Errorf("link to %q kept: %v, want %v", row.href, got, row.kept)
		}
		if got := strings.Contains(f.SVG, `role="group"`); got != row.kept {
			t.Errorf("link to %q makes the drawing a group: %v, want %v", row.href, got, row.kept)
		}
	}
}

func TestSlugKeepsKeysApart(t *testing.T) {
	keys := []string{"B3", "b3", "B-3", "B 3", "B_3", "B_20", "B ", "", "é", "e"}
	seen := map[string]string{}
	for _, key := range keys {
		if other, twice := seen[slug(key)]; twice {
			t.Errorf("%q and %q both give %q", key, other, slug(key))
		}
		seen[slug(key)] = key
	}
}

// TestClassesAreListed holds the style sheet and the package comment together.
func TestClassesAreListed(t *testing.T) {
	comment, err := os.ReadFile("doc.go")
	if err != nil {
		t.Fatal(err)
	}
	if len(styled()) < 30 {
		t.Fatalf("only %d classes found in the style sheet", len(styled()))
	}
	listed := words(strings.NewReplacer("//", "", ",", " ").Replace(string(comment)))
	for class := range styled() {
		if !listed[class] {
			t.Errorf("%s has a rule in templates/chart.css and no line in the package comment", class)
		}
	}
}

func TestSameInputSameBytes(t *testing.T) {
	first, second := samples(), samples()
	for i := range first {
		if first[i].SVG != second[i].SVG || first[i].Note != second[i].Note || fmt.Sprint(first[i].Table) != fmt.Sprint(second[i].Table) {
			t.Errorf("figure %d differs from one drawing to the next", i)
		}
	}
}

// TestManyAtOnce draws from many goroutines; the race detector does the judging, and the bytes must be the same.
func TestManyAtOnce(t *testing.T) {
	want := samples()
	var group sync.WaitGroup
	for range 8 {
		group.Go(func() {
			for i, f := range samples() {
				if f.SVG != want[i].SVG {
					t.Errorf("figure %d differs when drawn beside others", i)
				}
			}
		})
	}
	group.Wait()
}

func TestNothingToDraw(t *testing.T) {
	none := trial.Trial{Best: -1, Top: -1}
	for name, f := range map[string]Figure{
		"plot": Plot(Spec{ID: "fig"}), "speed": SpeedFuel(none), "mile": MileRange(none), "trim": Trim(none), "margins": Margins(nil, nil),
		"panel": Panel(scantling.Panel{}, nil), "groups": WeightGroups(weight.Result{}), "centres": Centres(weight.Result{}, nil),
		"weighing": Weighing(weight.Weighing{}), "sensitivity": Sensitivity(weight.Result{}),
	} {
		sound(t, name, f)
		if !f.Empty || f.Alt == "" || !strings.Contains(f.SVG, "<text") {
			t.Errorf("%s does not say that there is nothing to draw", name)
		}
	}
}

func TestDegenerateSeries(t *testing.T) {
	nan, inf := math.NaN(), math.Inf(1)
	many := make([]float64, 50_000)
	noise := make([]float64, len(many))
	for i := range many {
		many[i], noise[i] = float64(i), float64(i*7919%1000)
	}
	rows := []struct {
		name  string
		x, y  []float64
		empty bool
		says  string
	}{
		{"no points", nil, nil, true, ""},
		{"one point", []float64{3}, []float64{4}, false, ""},
		{"constant y", []float64{1, 2, 3}, []float64{5, 5, 5}, false, ""},
		{"constant nought", []float64{1, 2, 3}, []float64{0, 0, 0}, false, ""},
		{"constant x", []float64{2, 2}, []float64{1, 9}, false, ""},
		{"not numbers", []float64{1, 2}, []float64{nan, inf}, true, "2 of 2 points"},
		{"a gap", []float64{1, 2, 3, 4, 5}, []float64{1, 2, nan, 4, 5}, false, "1 of 5 points"},
		{"infinite", []float64{1, inf, 3}, []float64{1, 2, -inf}, false, "2 of 3 points"},
		{"x longer", []float64{1, 2, 3}, []float64{1, 2}, true, "3 values along the axis and 2 up"},
		{"y longer", []float64{1}, []float64{1, 2}, true, "1 values along the axis and 2 up"},
		{"huge", []float64{1, 2}, []float64{1e8, -9e8}, false, ""},
		{"beyond drawing", []float64{1, 2}, []float64{1e300, -1e300}, true, "2 of 2"},
		{"tiny", []float64{1, 2}, []float64{1e-300, 2e-300}, false, ""},
		{"close together", []float64{1, 2}, []float64{1e8, 1e8 + 1e-3}, false, ""},
		{"very many", many, noise, false, "drawn thinned"},
		{"very many, not in order", noise, many, false, "drawn thinned"},
	}
	for _, row := range rows {
		line := Line{Name: "s", X: row.x, Y: row.y, Area: true}
		dots := Dots{Name: "d", X: row.x, Y: row.y, Class: Raw}
		f := Plot(Spec{ID: "fig", Title: row.name, Lines: []Line{line}, Dots: []Dots{dots}, Marks: []Mark{{X: nan, Y: 1, Text: "m"}}})
		sound(t, row.name, f)
		if f.Empty != row.empty || !strings.Contains(f.Note+f.Alt, row.says) {
			t.Errorf("%s: empty %v, says %q %q; want empty %v and %q", row.name, f.Empty, f.Note, f.Alt, row.empty, row.says)
		}
		if strings.Contains(f.SVG, "NaN") || strings.Contains(f.SVG, "Inf") {
			t.Errorf("%s: a coordinate is no number", row.name)
		}
		if strings.Contains(f.SVG, "could not be drawn") {
			t.Errorf("%s: fault while drawing", row.name)
		}
	}
}

func TestGapParts(t *testing.T) {
	nan := math.NaN()
	f := Plot(Spec{ID: "fig", Lines: []Line{{X: []float64{1, 2, 3, 4, 5}, Y: []float64{1, 2, nan, 4, 5}}}})
	if got := strings.Count(f.SVG, `<path class="g-a"`); got != 4 {
		t.Errorf("%d pieces of line in two drawings, want 2 in each", got)
	}
}

func TestFaultWhileDrawingIsSaid(t *testing.T) {
	p := plate{id: "fig", title: "t", alt: "a", paint: func(s *sheet) { s.line("g-axis", 1, 1, 2, 2); panic("ruler bent") }}
	f := p.finished("", nil)
	sound(t, "fault", f)
	if !strings.Contains(f.SVG, "ruler bent") || strings.Contains(f.SVG, "<line") {
		t.Errorf("the fault is not said, or half a drawing is left: %s", f.SVG)
	}
}

func TestOriginIsSaid(t *testing.T) {
	at := func(lo, hi float64, from0 bool) string {
		return Plot(Spec{ID: "fig", X: Axis{Name: "Engine speed", Unit: "rpm"}, Y: Axis{Name: "Speed", Unit: "kn", From0: from0},
			Lines: []Line{{X: []float64{0, 10}, Y: []float64{lo, hi}}}}).Note
	}
	for _, row := range []struct {
		lo, hi float64
		from0  bool
		want   string
	}{
		{20, 30, false, "Speed begins at 20 kn"}, {20, 30, true, "All axes begin at 0."}, {5, 30, false, "All axes begin at 0."}, {-12, 30, false, "Speed begins at −20 kn"},
	} {
		if got := at(row.lo, row.hi, row.from0); !strings.Contains(strings.ReplaceAll(got, "\u00a0", " "), row.want) {
			t.Errorf("from %v to %v, nought asked %v: %q does not say %q", row.lo, row.hi, row.from0, got, row.want)
		}
	}
}

// TestValuesCanBeReadOff puts points on ticks: each must stand where the grid line of its tick is, within a tenth of a unit,
// which is less than the width of any line. The figure has two axes, whose grid is shared.
func TestValuesCanBeReadOff(t *testing.T) {
	x, y := []float64{0, 10, 20, 30, 40}, []float64{0, 20, 40, 60, 80}
	f := Plot(Spec{ID: "fig", X: Axis{Name: "x"}, Y: Axis{Name: "y"}, Y2: Axis{Name: "z"},
		Dots: []Dots{{X: x, Y: x, Class: MeanA}, {X: x, Y: y, Class: OneWay, Right: true}}, Lines: []Line{{X: x, Y: y, Right: true, Class: LineB}}})
	all, err := drawingsOf(f.SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		for _, class := range []string{"g-pa", "g-open", "g-b"} {
			dots := d.of[class]
			if len(dots) < len(x) {
				t.Fatalf("width %v: %d places of %s, want %d at least", d.width, len(dots), class, len(x))
			}
			for _, p := range dots[:len(x)] {
				if !d.onGrid(p) {
					t.Errorf("width %v: %s at %v is not where the grid is", d.width, class, p)
				}
			}
		}
	}
}

// onGrid reports whether a place stands on an upright and on a level line of the grid or the axes.
func (d *picture) onGrid(p point) bool {
	const tenth = 0.1
	across, up := false, false
	for _, g := range append(append([]point{}, d.of["g-grid"]...), d.of["g-axis"]...) {
		across = across || math.Abs(g.x-p.x) < tenth
		up = up || math.Abs(g.y-p.y) < tenth
	}
	return across && up
}

// wildPanel stands for what a record may hold at its limits.
func wildPanel(short, long, camber, fitted, needed float64) scantling.Panel {
	r := &record.Panel{Short: wr(unit.MM(short)), Long: wr(unit.MM(long)), Camber: wr(unit.MM(camber)), Thickness: wr(unit.MM(fitted)), X: wr(unit.M(long / 100))}
	return scantling.Panel{Record: r, Fitted: unit.MM(fitted), Needed: unit.MM(needed), Margin: fitted / needed, Standing: "met"}
}

func TestPanelsAtTheLimits(t *testing.T) {
	rows := [][5]float64{{1, 10000, 0, 1, 1}, {5000, 10000, 2000, 60, 1}, {60, 60, 2000, 60, 0.01}, {200, 5000, 5, 2, 300}, {500, 100, 0, 3, 3}, {200, 400, 0, 0, 0}}
	for _, r := range rows {
		for _, boat := range []*record.Boat{nil, {}, sampleBoat()} {
			f := Panel(wildPanel(r[0], r[1], r[2], r[3], r[4]), boat)
			sound(t, fmt.Sprint(r), f)
			if f.Empty || strings.Contains(f.SVG, "could not be drawn") {
				t.Errorf("%v is not drawn", r)
			}
		}
	}
}
