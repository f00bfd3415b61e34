package record

import (
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

// readYard reads a yard that must be without fault.
func readYard(t *testing.T, dir string) *Yard {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	y, err := Read(root, knownForTests)
	if err != nil {
		t.Fatal(err)
	}
	return y
}

func yardOf(t *testing.T, name string) *Yard {
	t.Helper()
	return readYard(t, filepath.Join("../../testdata/yards", name))
}

// isAt holds a value and the place it came from.
func isAt[T comparable](t *testing.T, what string, v Val[T], want T, at finding.Place) {
	t.Helper()
	if !v.Set || v.V != want || v.At != at {
		t.Errorf("%s is %v (written: %t) at %s, expected %v at %s", what, v.V, v.Set, v.At, want, at)
	}
}

func place(file string, line, col int) finding.Place {
	return finding.Place{File: file, Line: line, Col: col}
}

func TestLoneHull(t *testing.T) {
	y := yardOf(t, "lone")
	if len(y.Hulls) != 1 || y.Hulls[0].Number != "L1" || y.Hulls[0].Folder != "" || y.Builder.Name.Set {
		t.Fatalf("hulls %v, builder %v", y.Hulls, y.Builder.Name)
	}
	h := y.Hulls[0]
	isAt(t, "mass", h.Boat.LoadedMass, 1150, place("hull.toml", 7, 18))
	isAt(t, "thickness of S1", h.Panels[1].Thickness, 4, place("hull.toml", 22, 17))
	isAt(t, "mass of the engine", h.Weights[1].Mass, 92, place("weights.csv", 3, 35))
	isAt(t, "name with a comma", h.Weights[0].Name, "plate, bottom", place("weights.csv", 2, 7))
	runs := h.Trials[0].Runs
	if len(runs) != 2 || runs[0].ID != "1" || runs[1].ID != "2" || runs[1].At != place("runs.csv", 3, 1) {
		t.Errorf("runs without a key are numbered by their order: %+v", runs)
	}
	isAt(t, "speed of run 2", runs[1].Speed, 23.1, place("runs.csv", 3, 9))
	if want := []string{"hull.toml", "weights.csv", "runs.csv"}; !slices.Equal(h.Over, want) {
		t.Errorf("made of %v, expected %v", h.Over, want)
	}
}

func TestLayers(t *testing.T) {
	y := yardOf(t, "layers")
	if len(y.Hulls) != 2 || len(y.Designs) != 2 || y.Designs[1].BasedOn != "D60" {
		t.Fatalf("hulls %d, designs %v", len(y.Hulls), y.Designs)
	}
	h, plain := y.Hulls[0], y.Hulls[1]
	hull, design := "hulls/D60-001/hull.toml", "designs/D60/design.toml"
	isAt(t, "speed", h.Boat.Speed, 26.5, place(hull, 5, 12))
	isAt(t, "length", h.Boat.LengthHull, 6.0, place(design, 4, 17))
	isAt(t, "title", h.Title, "launch with wheelhouse", place("designs/D60W/design.toml", 2, 9))
	isAt(t, "thickness of B1", h.Panels[0].Thickness, 6.0, place(hull, 8, 16))
	isAt(t, "short side of B1", h.Panels[0].Short, 300, place(design, 12, 17))
	isAt(t, "design", h.Design, "D60W", place(hull, 1, 10))
	if h.Panels[0].At != place(design, 10, 8) {
		t.Errorf("B1 begins at %s", h.Panels[0].At)
	}
	if got := keysOf(h.Panels, func(p Panel) string { return p.ID }); !slices.Equal(got, []string{"B1", "B3"}) {
		t.Errorf("panels %v", got)
	}
	if got := keysOf(h.Weights, func(w Weight) string { return w.ID }); !slices.Equal(got, []string{"engine", "house", "locker"}) {
		t.Errorf("weights %v", got)
	}
	isAt(t, "thickness of B1 in the other hull", plain.Panels[0].Thickness, 5.0, place(design, 14, 16))
	if len(plain.Weights) != 3 || len(plain.Absent) != 0 {
		t.Errorf("a hull changed what another is laid over: %v", plain.Weights)
	}
}

func keysOf[T any](all []T, key func(T) string) []string {
	var keys []string
	for _, one := range all {
		keys = append(keys, key(one))
	}
	return keys
}

// TestAbsentIsVisible: what is taken away stays named, and what comes back is no longer absent.
func TestAbsentIsVisible(t *testing.T) {
	want := []Absent{
		{Subject: "weight seat", At: place("designs/D60W/design.toml", 12, 9), Was: place("designs/D60/weights.csv", 3, 1)},
		{Subject: "panel B2", At: place("hulls/D60-001/hull.toml", 10, 8), Was: place("designs/D60/design.toml", 18, 8)},
	}
	if got := yardOf(t, "layers").Hulls[0].Absent; !slices.Equal(got, want) {
		t.Errorf("absent %+v\nexpected %+v", got, want)
	}
}

// TestReplacedIsVisible: a value of the design that the hull has otherwise is named with both, and one that stands the same is not.
func TestReplacedIsVisible(t *testing.T) {
	got := yardOf(t, "layers").Hulls[0].Replaced
	if len(got) == 0 {
		t.Fatal("nothing is told as replaced")
	}
	for _, r := range got {
		if r.Old == r.New || r.Key == "" || !strings.HasPrefix(r.Was.File, "designs/") || r.At == r.Was {
			t.Errorf("%+v", r)
		}
	}
	if i := slices.IndexFunc(got, func(r Replaced) bool { return r.Key == "panel.B1.thickness_mm" }); i < 0 {
		t.Errorf("the plate that the hull has otherwise is not told: %+v", got)
	}
}

func TestDoubts(t *testing.T) {
	want := []struct {
		hull, rule, subject string
		kind                finding.Kind
		at                  finding.Place
	}{
		{"", "folder-not-read", "logs", finding.Doubt, finding.Place{File: "logs"}},
		{"D60-001", "unlikely-value", "panel B3", finding.Doubt, place("hulls/D60-001/hull.toml", 17, 16)},
		{"D60-001", "date-after-issue", "trial T1", finding.Contradiction, place("hulls/D60-001/hull.toml", 28, 8)},
		{"D60-001", "trial-before-launch", "trial T1", finding.Contradiction, place("hulls/D60-001/hull.toml", 28, 8)},
	}
	got := map[string]YardDoubt{}
	for _, d := range yardOf(t, "layers").Doubts {
		got[d.Finding.Rule] = d
	}
	if len(got) != len(want) {
		t.Errorf("%d rules, expected %d: %v", len(got), len(want), got)
	}
	for _, w := range want {
		d := got[w.rule]
		if d.Hull != w.hull || d.Finding.Subject != w.subject || d.Finding.Kind != w.kind || len(d.Finding.Places) == 0 || d.Finding.Places[0] != w.at {
			t.Errorf("%s: %+v", w.rule, d)
		}
	}
	if says := got["unlikely-value"].Finding.Says; says != "thickness_mm is 40 mm; 2 to 16 mm is usual" {
		t.Errorf("the doubt says %q", says)
	}
}

func TestSpreadsheetTables(t *testing.T) {
	y := yardOf(t, "spreadsheet")
	h, file := y.Hulls[0], "hulls/S1/panels.csv"
	isAt(t, "name of the yard", y.Builder.Name, "Tøst Yard", place("yard.toml", 1, 8))
	isAt(t, "address of two lines", y.Builder.Address, "Quay 1\nPort", place("yard.toml", 2, 11))
	isAt(t, "since", y.Builder.People[0].Since, Date{2020, 1, 31}, place("people.csv", 2, 25))
	isAt(t, "decimal comma", h.Panels[0].Short, 312.5, place(file, 2, 43))
	isAt(t, "text in quotes", h.Panels[0].Where, `forward; under the "pulpit"`, place(file, 2, 11))
	isAt(t, "TRUE", h.Panels[0].Walked, true, place(file, 2, 74))
	isAt(t, "count", h.Panels[0].Count, 2, place(file, 2, 79))
	isAt(t, "exponent with a comma", h.Panels[1].Short, 120, place(file, 4, 21))
	if h.Panels[1].Count.Set || h.Panels[1].ID != "Ø2" {
		t.Errorf("an empty cell is not written: %+v", h.Panels[1])
	}
	isAt(t, "mass", h.Weights[0].Mass, 92.4, place("hulls/S1/weights.csv", 2, 39))
	isAt(t, "speed after a byte order mark", h.Boat.Speed, 28.5, place("hulls/S1/hull.toml", 4, 12))
}

// TestFilesTravelAsTheyAre: the records inside a technical file must be the bytes that were read.
func TestFilesTravelAsTheyAre(t *testing.T) {
	for _, name := range []string{"lone", "layers", "spreadsheet"} {
		y := yardOf(t, name)
		if len(y.Files) == 0 || !slices.IsSortedFunc(y.Files, func(a, b File) int { return slices.Compare([]byte(a.Path), []byte(b.Path)) }) {
			t.Errorf("%s: files are not in order", name)
		}
		for _, f := range y.Files {
			want, err := os.ReadFile(filepath.Join("../../testdata/yards", name, filepath.FromSlash(f.Path)))
			if err != nil || !slices.Equal(want, f.Text) {
				t.Errorf("%s: %s is not as on disk (%v)", name, f.Path, err)
			}
		}
	}
}
