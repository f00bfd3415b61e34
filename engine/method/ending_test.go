package method

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

// TestLineEndingsMeanNothing: a sheet saved on Windows is the same sheet, word for word.
func TestLineEndingsMeanNothing(t *testing.T) {
	names, err := filepath.Glob("../../content/methods/*.toml")
	if err != nil || len(names) < 5 {
		t.Fatalf("%d sheets: %v", len(names), err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		a, err := Load("s.toml", text)
		if err != nil {
			t.Fatal(err)
		}
		b, err := Load("s.toml", append([]byte("\xef\xbb\xbf"), bytes.ReplaceAll(text, []byte("\n"), []byte("\r\n"))...))
		if err != nil {
			t.Errorf("%s with the line ends of Windows: %v", name, err)
			continue
		}
		if a.Title != b.Title || a.About != b.About || len(a.Scopes) != len(b.Scopes) {
			t.Errorf("%s: %q and %q", name, a.About, b.About)
		}
		for i := range a.Scopes {
			x, y := a.Scopes[i], b.Scopes[i]
			if len(x.Inputs) != len(y.Inputs) || !reflect.DeepEqual(x.Gives, y.Gives) || len(x.Steps) != len(y.Steps) {
				t.Errorf("%s: scope %s differs", name, x.Name)
				continue
			}
			for k := range x.Steps {
				if p, q := x.Steps[k], y.Steps[k]; p.Formula.String() != q.Formula.String() || p.Note != q.Note || p.Clause != q.Clause {
					t.Errorf("%s: %s differs", name, p.Symbol)
				}
			}
		}
	}
}
