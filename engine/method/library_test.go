package method

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
)

func sheetFile(text string) *fstest.MapFile { return &fstest.MapFile{Data: []byte(text)} }

func TestLibrary(t *testing.T) {
	shipped := fstest.MapFS{"b.toml": sheetFile(step("2")), "a.toml": sheetFile(step("1")), "notes.md": sheetFile("no sheet"), "old/c.toml": sheetFile("no sheet either")}
	yards := []Source{
		{Name: "own.toml", Path: "methods/own.toml", Text: []byte(step("3"))},
		{Name: "b.toml", Path: "methods/b.toml", Text: []byte(step("4"))},
	}
	lib, err := ReadShipped(shipped).Library(yards)
	if err != nil {
		t.Fatal(err)
	}
	if got := namesOf(lib); got != "a b own" {
		t.Errorf("sheets %s, want a b own", got)
	}
	rows := []struct {
		name            string
		yards, replaces bool
		formula         string
	}{
		{"a", false, false, "1"},
		{"b", true, true, "4"},
		{"own.toml", true, false, "3"},
	}
	for _, r := range rows {
		s, ok := lib.Sheet(r.name)
		if !ok {
			t.Errorf("%s is not there", r.name)
			continue
		}
		if s.Yards != r.yards || s.Replaces != r.replaces || s.Scopes[0].Steps[0].Formula.String() != r.formula {
			t.Errorf("%s: yard's %v, replaces %v, formula %s, want %v, %v, %s", r.name, s.Yards, s.Replaces, s.Scopes[0].Steps[0].Formula, r.yards, r.replaces, r.formula)
		}
		if s.Name != strings.TrimSuffix(r.name, ".toml")+".toml" {
			t.Errorf("%s has the name %s", r.name, s.Name)
		}
	}
	if _, ok := lib.Sheet("c"); ok {
		t.Error("a sheet in a folder below was read")
	}
}

func TestLibraryFaultsOfAllSheets(t *testing.T) {
	shipped := fstest.MapFS{"a.toml": sheetFile(step("w")), "b.toml": sheetFile("= broken, but replaced")}
	yards := []Source{
		{Name: "b.toml", Path: "methods/b.toml", Text: []byte(step("sin(x)"))},
		{Name: "b.toml", Path: "methods/again/b.toml", Text: []byte(step("1"))},
		{Name: "../c.toml", Path: "methods/c.toml", Text: []byte(step("1"))},
	}
	lib, err := ReadShipped(shipped).Library(yards)
	var faults finding.Faults
	if lib != nil || !errors.As(err, &faults) {
		t.Fatalf("got %v, %v, want faults", lib, err)
	}
	want := []string{"a.toml:19:12", "methods/again/b.toml:1:1", "methods/b.toml:19:12", "methods/c.toml:1:1"}
	if len(faults) != len(want) {
		t.Fatalf("%d faults, want %d: %v", len(faults), len(want), err)
	}
	for i, f := range faults {
		if f.Place.String() != want[i] {
			t.Errorf("fault %d at %s, want %s", i, f.Place, want[i])
		}
	}
}

// A sheet takes the strengths of alloys from its own work, or from the source that its head names; a force may be in kN.
func TestStrengths(t *testing.T) {
	own, err := Load("own.toml", []byte(step("1")))
	if err != nil {
		t.Fatal(err)
	}
	if own.Strengths() != own.Work || own.Work == "" {
		t.Errorf("strengths of %q, work %q", own.Strengths(), own.Work)
	}
	text := "strengths = 'LR linkspan'\n" + step("1") + "[[c.step]]\nsymbol = 'F'\nname = 'force'\nunit = 'kN'\nformula = '2'\nclause = '1'\nbasis = 'read'\n"
	other, err := Load("other.toml", []byte(text))
	if err != nil {
		t.Fatal(err)
	}
	if other.Strengths() != "LR linkspan" {
		t.Errorf("strengths of %q", other.Strengths())
	}
	if _, err := Load("knots.toml", []byte(strings.Replace(text, "'kN'", "'KN'", 1))); err == nil || !strings.Contains(err.Error(), `write unit = "kn"`) {
		t.Errorf("KN passed: %v", err)
	}
}

// namesOf gives the names of all sheets of a library, as one text.
func namesOf(lib *Library) string {
	var all []string
	for _, s := range lib.Sheets() {
		all = append(all, strings.TrimSuffix(s.Name, ".toml"))
	}
	return strings.Join(all, " ")
}

// A library with some of the yard's own sheets has the shipped ones in the place of those that are left out, and tells by what
// name it is asked, also in vain.
func TestLibraryWithSomeOfItsOwnSheets(t *testing.T) {
	shipped := fstest.MapFS{"b.toml": sheetFile(step("2")), "a.toml": sheetFile(step("1"))}
	lib, err := ReadShipped(shipped).Library([]Source{{Name: "own.toml", Path: "methods/own.toml", Text: []byte(step("3"))}, {Name: "b.toml", Path: "methods/b.toml", Text: []byte(step("4"))}})
	if err != nil {
		t.Fatal(err)
	}
	if got := strings.Join(lib.Own(), " "); got != "b.toml own.toml" {
		t.Errorf("own sheets %s", got)
	}
	if got := strings.Join(lib.Shipped(), " "); got != "a b" {
		t.Errorf("shipped sheets %s", got)
	}
	for _, r := range []struct {
		own  []string
		all  string
		b    string
		does string
	}{
		{nil, "a b", "2", "none"},
		{[]string{"own.toml"}, "a b own", "2", "one that replaces none"},
		{[]string{"b.toml", "gone.toml"}, "a b", "4", "one that replaces another"},
		{lib.Own(), "a b own", "4", "all"},
	} {
		with := lib.With(r.own)
		b, _ := with.Sheet("b")
		if got := namesOf(with); got != r.all || b.Scopes[0].Steps[0].Formula.String() != r.b {
			t.Errorf("with %s: sheets %s, b is %s; want %s and %s", r.does, got, b.Scopes[0].Steps[0].Formula, r.all, r.b)
		}
		if again := with.With(nil); namesOf(again) != "a b" {
			t.Errorf("with %s, and then with none: %s", r.does, namesOf(again))
		}
	}
	var asked []string
	watched := lib.Watched(func(name string) { asked = append(asked, name) })
	_, own := watched.Sheet("own")
	_, gone := watched.Sheet("gone.toml")
	if got := strings.Join(asked, " "); got != "own.toml gone.toml" || !own || gone {
		t.Errorf("asked for %s, own there %v, gone there %v", got, own, gone)
	}
}
