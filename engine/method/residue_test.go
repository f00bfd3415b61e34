package method

import (
	"strings"
	"testing"
)

// What cancels but for its last bits is told as nought, with the reason once in a working; what is small by itself is told as
// it is. Own arithmetic.
func TestWhatCancelsIsNought(t *testing.T) {
	const head = "title = \"t\"\nwork = \"w\"\nstanding = \"s\"\n[[c.input]]\nsymbol = \"a\"\nname = \"a\"\nunit = \"\"\nfrom = \"boat.a\"\n[[c.input]]\nsymbol = \"b\"\nname = \"b\"\nunit = \"\"\nfrom = \"boat.b\"\n"
	for _, row := range []struct {
		where, formula string
		a, b           float64
		want           string
	}{
		{"the last bits of a difference", "a - b", 0.1 + 0.2, 0.3, "0"},
		{"a quotient less one, as a search leaves it", "a / b - 1", 1 + 2.75e-11, 1, "0"},
		{"three terms", "a + b - 3", 1, 2 + 1e-10, "0"},
		{"behind a sign", "-a + b", 1e6, 1e6 + 1e-4, "0"},
		{"nought itself", "a - b", 2, 2, "0"},
		{"ten times what counts as rounding", "a - b", 1 + 1e-8, 1, "1.00×10⁻⁸"},
		{"small terms that do not cancel", "a - b", 3e-12, 1e-12, "2×10⁻¹²"},
		{"a small product", "a * b", 1e-6, 1e-6, "1×10⁻¹²"},
	} {
		s, err := Load("f.toml", []byte(head+giving("y", row.formula)+giving("z", row.formula)))
		if err != nil {
			t.Fatal(err)
		}
		w, err := s.Evaluate("c", GivenMap{"boat.a": {Number: row.a}, "boat.b": {Number: row.b}}, nil)
		if err != nil {
			t.Fatal(err)
		}
		notes := 0
		for i := range w.Steps {
			if got := w.Steps[i].Number(); got != row.want {
				t.Errorf("%s: %s is %s, want %s", row.where, row.formula, got, row.want)
			}
			notes += strings.Count(w.Steps[i].Remark(), cancels)
		}
		if told := row.want == "0" && w.Steps[0].Value != 0; told != (notes == 1) || notes > 1 {
			t.Errorf("%s: the reason stands %d times", row.where, notes)
		}
	}
}

// giving is a step of a sheet that gives one symbol.
func giving(symbol, formula string) string {
	return "[[c.step]]\nsymbol = \"" + symbol + "\"\nname = \"" + symbol + "\"\nunit = \"\"\nclause = \"1\"\nbasis = \"derived\"\nformula = \"" + formula + "\"\n"
}
