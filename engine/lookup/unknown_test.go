package lookup

import (
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/method"
	"hullfile/engine/record"
)

func TestOf(t *testing.T) {
	boat := &record.Boat{}
	boat.LoadedMass.V, boat.LoadedMass.Set = 2750, true
	if q, ok := Of(boat, "loaded_mass_kg"); !ok || q.Number != 2750 || q.Unit != "kg" {
		t.Errorf("got %+v, %v", q, ok)
	}
	for _, key := range []string{"speed_kn", "no_such_key"} {
		if q, ok := Of(boat, key); ok {
			t.Errorf("%s: got %+v, though nobody wrote it", key, q)
		}
	}
}

// TestUnknown: a sheet that asks for what no record has is refused with the place of the name and the nearest key.
func TestUnknown(t *testing.T) {
	rows := []struct{ from, unit, hint string }{
		{"panel.short_side_mm", "mm", ""},
		{"panel.short_sid_mm", "mm", "did you mean panel.short_side_mm?"},
		{"boat.beam_hull", "", "did you mean boat.beam_hull_m?"},
		{"boat.lenght_hull_m", "m", "did you mean boat.length_hull_m?"},
		{"boat.colour_of_the_carpet", "", "`hullfile keys boat` lists what there is"},
		{"spot.bolts", "", ""},
		{"spot.boltz", "", "did you mean spot.bolts?"},
		{"bracket.moment", "kN·m", ""},
		{"rules.own_choice", "", ""},
	}
	for _, row := range rows {
		text := "title = 't'\nwork = 'w'\nstanding = 's'\n[[panel.input]]\nsymbol = 'b'\nname = 'n'\nunit = '" + row.unit + "'\nfrom = '" + row.from + "'\n"
		s, err := method.Load("methods/own.toml", []byte(text))
		if err != nil {
			t.Fatalf("%s: %v", row.from, err)
		}
		faults := Unknown([]*method.Sheet{s})
		switch {
		case row.hint == "" && len(faults) > 0:
			t.Errorf("%s: %v", row.from, faults)
		case row.hint != "" && (len(faults) != 1 || faults[0].Hint != row.hint || faults[0].Place.String() != "methods/own.toml:8:8" || faults[0].Key != "panel.b.from"):
			t.Errorf("%s: got %+v, want the hint %q at 8:8", row.from, faults, row.hint)
		}
	}
}

// TestWhatShippedSheetsAskForIsGiven looks for each name that is no key of a record in the text of the engine: a name that
// stands nowhere there is given by nobody.
func TestWhatShippedSheetsAskForIsGiven(t *testing.T) {
	engine := codeOf(t, "..")
	known := tables()
	asked := 0
	for _, s := range shipped(t) {
		for _, sc := range s.Scopes {
			for _, in := range sc.Inputs {
				kind, key, _ := strings.Cut(in.From, ".")
				if _, isTable := known[kind]; isTable || kind == "rules" {
					continue // Unknown looks at these; what a yard chooses for a sheet may have any name
				}
				asked++
				if !given(engine, in.From, kind, key) {
					t.Errorf("%s: %s asks for %s, and nothing in engine gives it", s.Name, in.Symbol, in.From)
				}
			}
		}
	}
	if asked < 100 {
		t.Errorf("only %d names were looked at", asked)
	}
	if given(engine, "seam.no_such_thing", "seam", "no_such_thing") {
		t.Error("a name that nobody gives is found")
	}
}

// given reports whether the name stands in the code, whole or as what is put behind "kind.".
func given(code, from, kind, key string) bool {
	return strings.Contains(code, `"`+from+`"`) || strings.Contains(code, `"`+kind+`."+`) && strings.Contains(code, `"`+key+`"`)
}

// codeOf joins the Go files below a folder, without tests.
func codeOf(t *testing.T, dir string) string {
	t.Helper()
	var all strings.Builder
	err := filepath.WalkDir(dir, func(path string, d fs.DirEntry, err error) error {
		if err != nil || filepath.Ext(path) != ".go" || strings.HasSuffix(path, "_test.go") {
			return err
		}
		text, err := os.ReadFile(path)
		all.Write(text)
		return err
	})
	if err != nil || all.Len() < 100_000 {
		t.Fatalf("%d bytes of code read: %v", all.Len(), err)
	}
	return all.String()
}

func shipped(t *testing.T) []*method.Sheet {
	t.Helper()
	lib, err := method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
	if err != nil {
		t.Fatal(err)
	}
	sheets := lib.Sheets()
	if faults := Unknown(sheets); len(faults) > 0 {
		t.Error(faults)
	}
	if !slices.ContainsFunc(sheets, func(s *method.Sheet) bool { return s.Name == "renewal.toml" }) {
		t.Fatal("the shipped sheets were not read")
	}
	return sheets
}
