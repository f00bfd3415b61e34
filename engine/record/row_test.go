package record

import (
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/finding"
)

const loneBoat = `number = "R1"
[boat]
length_hull_m = 6.5
`

// framesOf reads a lone hull with these frames behind it.
func framesOf(t *testing.T, frames string) (*Yard, error) {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "hull.toml"), []byte(loneBoat+frames), 0o644); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	return Read(root, knownForTests)
}

// Frames written as a row become single ones, in order, with the places of the entry. Own arithmetic.
func TestFramesInARow(t *testing.T) {
	y, err := framesOf(t, `
[section.FB]
shape = "flat bar"
height_mm = 60
web_mm = 6
alloy = "5083-H116"
[frame.1]
x_m = 0.4
to_x_m = 2.0
spacing_mm = 400
bottom = "FB"
[frame.bow]
x_m = 2.5
to_x_m = 3.2
spacing_mm = 300
[frame.stem]
x_m = 4
kind = "bulkhead"
[bracket.K]
joins = "frame to keel"
frames = ["3", "bow-2"]
arms_mm = 60
throat_mm = 3.5
thickness_mm = 5
`)
	if err != nil {
		t.Fatal(err)
	}
	var got []string
	for _, f := range y.Hulls[0].Frames {
		got = append(got, f.ID)
	}
	if want := "1 2 3 4 5 bow-1 bow-2 bow-3 stem"; strings.Join(got, " ") != want {
		t.Fatalf("frames %v, want %s", got, want)
	}
	for i, x := range []float64{0.4, 0.8, 1.2, 1.6, 2.0, 2.5, 2.8, 3.1, 4} {
		if f := y.Hulls[0].Frames[i]; float64(f.X.V) != x || f.Spacing.Set || f.To.Set {
			t.Errorf("frame %s stands at %v, want %v", f.ID, f.X.V, x)
		}
	}
	f := y.Hulls[0].Frames[2]
	isAt(t, "place of frame 3", f.X, 1.2, place("hull.toml", 11, 7))
	isAt(t, "section of frame 3", f.Bottom, "FB", place("hull.toml", 14, 10))
}

// What is wrong with a row is told at its place, and a second frame of one key is not lost.
func TestRowsThatCannotBe(t *testing.T) {
	for _, r := range []struct{ frames, want string }{
		{"[frame.1]\nx_m = 1\nspacing_mm = 500\n", "hull.toml:6:1: frame.1.spacing_mm: a row of frames without its end"},
		{"[frame.1]\nx_m = 1\nto_x_m = 3\n", "hull.toml:6:1: frame.1.to_x_m: a row of frames without its spacing"},
		{"[frame.1]\nx_m = 3\nto_x_m = 1\nspacing_mm = 500\n", "hull.toml:6:10: frame.1.to_x_m: the row ends at 1 m, no further forward than it begins, 3 m"},
		{"[frame.1]\nx_m = 0\nto_x_m = 6\nspacing_mm = 0.5\n", "hull.toml:7:14: frame.1.spacing_mm: 12001 frames in one row, most is 160"},
		{"[frame.1]\nx_m = 1\nto_x_m = 2\nspacing_mm = 500\n[frame.3]\nx_m = 3\n", "hull.toml:8:8: frame.3: frame 3 comes out of a row of frames and stands on record by itself too, written at hull.toml:4:8"},
		{"[frame.1]\nto_x_m = 2\nspacing_mm = 500\n", "hull.toml:4:8: frame.1.x_m: missing"},
	} {
		_, err := framesOf(t, r.frames)
		var faults finding.Faults
		if !errors.As(err, &faults) {
			t.Errorf("%q: no fault but %v", r.frames, err)
			continue
		}
		if all := faults.Error(); !strings.Contains(all, r.want) {
			t.Errorf("%q:\n%s\nwant %s", r.frames, all, r.want)
		}
	}
}
