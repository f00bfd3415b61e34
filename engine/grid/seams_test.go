package grid

import (
	"strings"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func seam(t *testing.T, r *Result, name string) *Seam {
	t.Helper()
	for i := range r.Seams {
		if r.Seams[i].Name == name {
			return &r.Seams[i]
		}
	}
	var all []string
	for i := range r.Seams {
		all = append(all, r.Seams[i].Name)
	}
	t.Fatalf("no seam %q among %q", name, all)
	return nil
}

// TestSeamsOfThePontoon holds proposed seams against its measures; own arithmetic.
func TestSeamsOfThePontoon(t *testing.T) {
	h := box6()
	h.Frames[2].Kind, h.Frames[2].Plate, h.Frames[2].Alloy = w("bulkhead"), w(unit.MM(4)), w("5083-H116")
	h.Platings[1].Fore = w(unit.M(3))
	h.Platings = append(h.Platings, record.Plating{Entry: named("side-fore", 43), Zone: w("side"), Aft: w(unit.M(3)), Thickness: w(unit.MM(5)), Alloy: w("5083-H116")})
	r := derive(h)
	for _, c := range []struct {
		name                    string
		typ, category           string
		thickness, other, metre float64
	}{
		{"keel bar to bottom, port", "fillet", "shell", 6, 6, 6},
		{"keel bar to transom", "fillet", "shell", 6, 8, 0.12},
		{"bottom to side, starboard", "fillet", "shell", 6, 4, 6},
		{"plate side to plate side-fore, port", "butt", "shell", 4, 5, 1},
		{"transom to bottom, port", "fillet", "shell", 6, 8, 1},
		{"transom to side, port", "fillet", "shell", 4, 8, 1},
		{"bulkhead 3 to bottom, port", "fillet", "watertight", 4, 6, 1},
		{"bulkhead 3 to side, port", "fillet", "watertight", 4, 4, 1},
		{"stringer L to bottom, port", "fillet", "secondary", 6, 6, 6},
		{"stringer S to side, starboard", "fillet", "secondary", 6, 4, 6},
		{"frame 2 to bottom, port", "fillet", "primary", 6, 6, 1},
		{"frame 2 to side, starboard", "fillet", "primary", 6, 4, 1},
		{"brackets BK, port", "fillet", "primary", 5, 0, 5 * 0.2},
	} {
		s := seam(t, &r, c.name)
		near1(t, c.name+" length", s.Length, c.metre, 1e-9)
		if s.Type != c.typ || s.Category != c.category || s.Thickness != c.thickness || s.Other != c.other || !s.Place.Known() {
			t.Errorf("%s: %+v", c.name, s)
		}
	}
	for _, s := range r.Seams {
		if strings.HasPrefix(s.Name, "frame 3 ") {
			t.Errorf("%s: the frame stands on its bulkhead", s.Name)
		}
	}
}

// TestSeamWhereTheBottomSlams: frames forward of half the waterline, and no farther than nine tenths of it (practice).
func TestSeamWhereTheBottomSlams(t *testing.T) {
	h := box6()
	h.Boat.LengthWL = w(unit.M(5))
	r := derive(h)
	for frame, want := range map[string]string{"2": "primary", "3": "slamming zone", "4": "slamming zone", "5": "primary"} {
		if s := seam(t, &r, "frame "+frame+" to bottom, port"); s.Category != want {
			t.Errorf("frame %s: %s", frame, s.Category)
		}
	}
}
