package mathml

import (
	"encoding/xml"
	"errors"
	"io"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// arguments is how many elements an element must hold; 0 for any number. Nothing else may be drawn.
var arguments = map[string]int{
	"math": 0, "mrow": 0, "mi": 0, "mn": 0, "mo": 0, "mtext": 0, "mspace": 0, "msqrt": 0, "mtable": 0, "mtr": 0, "mtd": 0,
	"mfrac": 2, "msub": 2, "msup": 2, "mroot": 2, "msubsup": 3,
}

// wellFormed reads markup as XML and checks elements, attributes and the number of arguments.
func wellFormed(markup string) error {
	d := xml.NewDecoder(strings.NewReader("<all>" + markup + "</all>"))
	type open struct {
		name string
		held int
	}
	var way []open
	for {
		token, err := d.Token()
		if errors.Is(err, io.EOF) {
			return nil
		}
		if err != nil {
			return err
		}
		switch e := token.(type) {
		case xml.StartElement:
			name := e.Name.Local
			if _, known := arguments[name]; !known && name != "all" {
				return errors.New("element " + name)
			}
			for _, a := range e.Attr {
				switch a.Name.Local {
				case "class", "displaystyle", "mathvariant", "width", "stretchy", "form":
				default:
					return errors.New("attribute " + a.Name.Local)
				}
			}
			if len(way) > 0 {
				way[len(way)-1].held++
			}
			way = append(way, open{name: name})
		case xml.EndElement:
			last := way[len(way)-1]
			if want := arguments[last.name]; want > 0 && want != last.held {
				return errors.New(last.name + " with the wrong number of arguments")
			}
			way = way[:len(way)-1]
		case xml.CharData:
			switch way[len(way)-1].name {
			case "mi", "mn", "mo", "mtext":
			default:
				if strings.TrimSpace(string(e)) != "" {
					return errors.New("text outside a token: " + string(e))
				}
			}
		}
	}
}

// random gives the text of a formula over the symbols of the test sheet.
func random(t *rapid.T, depth int) string {
	leaf := rapid.SampledFrom([]string{"a", "sigma_d", "σ_d", "(2*theta)", "P_BM_min", "2", "0.910", "1e-6", "2.5e3", "pi"}).Draw(t, "leaf")
	if depth == 0 {
		return leaf
	}
	form := rapid.SampledFrom([]string{
		"(X + Y)", "(X - Y)", "(X * Y)", "(X / Y)", "(X ** Y)", "(-X)", "sqrt(X)", "cbrt(X)", "abs(X)", "min(X, Y)", "clamp(X, 1, Y)",
		"floor(X)", "ceil(X)", "sind(X)", "acosd(X)", "log10(X)", "K_DC(X)", "(X > Y ? X : Y)", "(X != 1 and not (Y <= X) ? X : X > 2 ? Y : 3)",
		`(z in ["side", "a & \"b\""] or z == "<script>alert(1)</script>" ? X : Y)`, `(z not in ["side", "<script>alert(1)</script>"] ? X : Y)`,
	}).Draw(t, "form")
	x, y := random(t, depth-1), random(t, depth-1)
	return strings.NewReplacer("X", x, "Y", y).Replace(form)
}

func TestWellFormed(t *testing.T) {
	tried, drawn := 0, 0
	rapid.Check(t, func(r *rapid.T) {
		tried++
		formula := random(r, rapid.IntRange(0, 3).Draw(r, "depth"))
		if len(formula) > 1500 {
			return
		}
		w := working(t, formula, "")
		s := w.Steps[0]
		for _, markup := range []string{Formula(s.Formula), With(s.Formula, w.Get), Line(&s, w.Get)} {
			if err := wellFormed(markup); err != nil {
				r.Fatalf("%s: %v in %s", formula, err, markup)
			}
			if strings.Contains(markup, "<script") || strings.Contains(markup, " style=") {
				r.Fatalf("%s: %s", formula, markup)
			}
			drawn++
		}
	})
	if drawn == 0 || drawn < 2*tried { // three markups a formula that is not too long
		t.Errorf("only %d markups of %d formulas were drawn", drawn, tried)
	}
}

// TestWellFormedCanFail holds the check above against markup that it must refuse.
func TestWellFormedCanFail(t *testing.T) {
	for _, bad := range []string{"<math><mi>a</math>", "<math><mfrac><mi>a</mi></mfrac></math>", "<math>a</math>", `<math style="color:red"></math>`, "<math><script></script></math>"} {
		if wellFormed(bad) == nil {
			t.Errorf("%s passes", bad)
		}
	}
	if err := wellFormed("<math><mfrac><mi>a</mi><mn>2</mn></mfrac></math>"); err != nil {
		t.Error(err)
	}
}
