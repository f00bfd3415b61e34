package method

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

// What the quick way reads of a shipped sheet is what the two careful readers give: the same rows, the same order of keys
// and the same lines of steps.
func TestTheQuickWayReadsWhatTheCarefulOneReads(t *testing.T) {
	names, err := filepath.Glob("../../content/methods/*.toml")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d sheets, %v", len(names), err)
	}
	steps := 0
	for _, file := range names {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		name := filepath.Base(file)
		rows, at, ok := quick(name, text)
		careful, fault := decode(name, text)
		if !ok || fault != nil {
			t.Fatalf("%s cannot be read: %v, %v", name, ok, fault)
		}
		if !reflect.DeepEqual(rows, careful) {
			t.Errorf("%s: other rows", name)
		}
		known := locate(name, text)
		for path, one := range at.at {
			if known.at[path] != one {
				t.Errorf("%s: %s stands at %v, not %v", name, path, known.at[path], one)
			}
		}
		want, err := Load(name, text)
		if err != nil {
			t.Fatal(err)
		}
		p := &page{places: at}
		got := p.sheet(name, rows)
		if len(p.faults) > 0 || !at.partly {
			t.Fatalf("%s: %v; scanned a second time: %v", name, p.faults, !at.partly)
		}
		if len(got.Scopes) != len(want.Scopes) || !reflect.DeepEqual(got.Tables, want.Tables) {
			t.Fatalf("%s: other scopes or tables", name)
		}
		for i, sc := range got.Scopes {
			steps += sameSteps(t, name, sc, want.Scopes[i])
		}
	}
	if steps < 500 {
		t.Errorf("only %d steps were held against each other", steps)
	}
}

func sameSteps(t *testing.T, name string, got, want *Scope) int {
	t.Helper()
	if got.Name != want.Name || got.Above != want.Above || !reflect.DeepEqual(got.Inputs, want.Inputs) || !reflect.DeepEqual(got.Gives, want.Gives) || len(got.Steps) != len(want.Steps) {
		t.Fatalf("%s: scope %s is %s", name, want.Name, got.Name)
	}
	for i, g := range got.Steps {
		w := want.Steps[i]
		if g.Symbol != w.Symbol || g.Line != w.Line || g.Clause != w.Clause || g.Formula.Text != w.Formula.Text || g.Formula.String() != w.Formula.String() || g.Basis != w.Basis {
			t.Fatalf("%s, scope %s: %+v, not %+v", name, want.Name, g, w)
		}
	}
	return len(got.Steps)
}

// A fault of a shipped sheet has the place that Load gives it, and what the quick way does not know is left to Load.
func TestFaultsOfAShippedSheet(t *testing.T) {
	const head = "title = \"t\"\nwork = \"w\"\nstanding = \"s\"\n"
	const step = "[[c.step]]\nsymbol = \"a\"\nname = \"a\"\nunit = \"m\"\nclause = \"1\"\nbasis = \"read\"\n"
	for what, text := range map[string]string{
		"unknown symbol":  head + step + "formula = \"b + 1\"\n",
		"unknown key":     head + step + "formula = \"1\"\ncolour = \"red\"\n",
		"a date":          head + "edition = 2026-01-01\n" + step + "formula = \"1\"\n",
		"infinity":        head + "[[c.input]]\nsymbol = \"x\"\nname = \"x\"\nunit = \"m\"\nfrom = \"boat.x_m\"\nleast = inf\n",
		"no TOML":         head + "[c\n",
		"a key twice":     head + "title = \"u\"\n" + step + "formula = 1\n",
		"table and value": head + "c = 1\n[[c.step]]\n",
	} {
		_, want := Load("f.toml", []byte(text))
		_, got := loadShipped("f.toml", []byte(text))
		if what == "a key twice" { // the decoder alone refuses that; tests hold the shipped sheets to it
			if want == nil {
				t.Error("a key twice was taken")
			}
			continue
		}
		if want == nil || got == nil || got.Error() != want.Error() {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
}
