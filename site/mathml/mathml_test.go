package mathml

import (
	"fmt"
	"strconv"
	"strings"
	"testing"

	"hullfile/engine/method"
)

const sheetHead = `title = "t"
work = "w"
standing = "s"
[[c.input]]
symbol = "a"
name = "n"
unit = ""
from = "boat.a"
[[c.input]]
symbol = "sigma_d"
name = "n"
unit = ""
from = "boat.stress"
[[c.input]]
symbol = "P_BM_min"
name = "n"
unit = ""
from = "boat.pressure"
[[c.input]]
symbol = "theta"
name = "n"
unit = "°"
from = "boat.angle_deg"
[[c.input]]
symbol = "z"
name = "n"
from = "boat.z"
words = ["side", "<script>alert(1)</script>", "a & \"b\""]
[table.K_DC]
title = "t"
clause = "1"
basis = "read"
x = [0, 1]
y = [1, 2]
[table.design_area]
title = "t"
clause = "1"
basis = "read"
x = [0, 1]
y = [1, 2]
`

// working reckons one formula over a = -3.25, σ_d = 2750, P_BM,min not given, θ = 20° and a hostile word.
func working(t testing.TB, formula, unit string) *method.Working {
	t.Helper()
	text := sheetHead + fmt.Sprintf("[[c.step]]\nsymbol = 'y_1'\nname = 'n'\nunit = '%s'\nclause = '1'\nbasis = 'read'\nformula = %s\n", unit, strconv.Quote(formula))
	s, err := method.Load("f.toml", []byte(text))
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	w, err := s.Evaluate("c", method.GivenMap{
		"boat.a":         {Number: -3.25},
		"boat.stress":    {Number: 2750},
		"boat.angle_deg": {Number: 20, Unit: "°"},
		"boat.z":         {Word: "<script>alert(1)</script>", IsWord: true},
	}, nil)
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	return w
}

// short writes markup so that it can be read in a table of tests: without the math element, with common spaces and
// names for the two invisible operators.
func short(markup string) string {
	return strings.NewReplacer(`<math displaystyle="true">`, "", "</math>", "", "\u00a0", " ", "<mo>\u2062</mo>", "·", "<mo>\u2061</mo>", "@").Replace(markup)
}

func TestFormula(t *testing.T) {
	const sigma = "<msub><mi>σ</mi><mi mathvariant=\"normal\">d</mi></msub>"
	rows := []struct{ formula, want string }{
		{"a", "<mi>a</mi>"},
		{"sigma_d", sigma},
		{"P_BM_min", "<msub><mi>P</mi><mrow><mi>BM</mi><mo>,</mo><mi>min</mi></mrow></msub>"},
		{"a*sigma_d", "<mi>a</mi>·" + sigma},
		{"2*a*3", "<mn>2</mn>·<mi>a</mi><mo>×</mo><mn>3</mn>"},
		{"(a + 1)*2", "<mrow><mo>(</mo><mi>a</mi><mo>+</mo><mn>1</mn><mo>)</mo></mrow><mo>×</mo><mn>2</mn>"},
		{"a - (1 - a)", "<mi>a</mi><mo>−</mo><mrow><mo>(</mo><mn>1</mn><mo>−</mo><mi>a</mi><mo>)</mo></mrow>"},
		{"a/2", "<mfrac><mi>a</mi><mn>2</mn></mfrac>"},
		{"(a + a/2)/3", "<mfrac><mrow><mi>a</mi><mo>+</mo><mi>a</mi><mo>/</mo><mn>2</mn></mrow><mn>3</mn></mfrac>"},
		{"a/2*3", "<mfrac><mi>a</mi><mn>2</mn></mfrac><mo>×</mo><mn>3</mn>"},
		{"3*(1/2)", "<mn>3</mn><mo>×</mo><mfrac><mn>1</mn><mn>2</mn></mfrac>"},
		{"sqrt(a)", "<msqrt><mi>a</mi></msqrt>"},
		{"cbrt(a)", "<mroot><mi>a</mi><mn>3</mn></mroot>"},
		{"a**2", "<msup><mi>a</mi><mn>2</mn></msup>"},
		{"sigma_d**0.33", "<msubsup><mi>σ</mi><mi mathvariant=\"normal\">d</mi><mn>0.33</mn></msubsup>"},
		{"(a + 1)**(1/3)", "<msup><mrow><mo>(</mo><mi>a</mi><mo>+</mo><mn>1</mn><mo>)</mo></mrow><mrow><mn>1</mn><mo>/</mo><mn>3</mn></mrow></msup>"},
		{"(a/2)**2", "<msup><mrow><mo>(</mo><mfrac><mi>a</mi><mn>2</mn></mfrac><mo>)</mo></mrow><mn>2</mn></msup>"},
		{"-a**2", "<mo>−</mo><msup><mi>a</mi><mn>2</mn></msup>"},
		{"(-a)**2", "<msup><mrow><mo>(</mo><mo>−</mo><mi>a</mi><mo>)</mo></mrow><mn>2</mn></msup>"},
		{"1e-6*a", "<mrow><msup><mn>10</mn><mrow><mo>−</mo><mn>6</mn></mrow></msup></mrow>·<mi>a</mi>"},
		{"2.5e3", "<mrow><mn>2.5</mn><mo>×</mo><msup><mn>10</mn><mn>3</mn></msup></mrow>"},
		{"2*pi", "<mn>2</mn>·<mi>π</mi>"},
		{"abs(a)", `<mrow><mo stretchy="true" form="prefix">|</mo><mi>a</mi><mo stretchy="true" form="postfix">|</mo></mrow>`},
		{"min(a, 2)", "<mi>min</mi>@<mrow><mo>(</mo><mi>a</mi><mo>,</mo><mn>2</mn><mo>)</mo></mrow>"},
		{"sind(theta) + sind(30)", "<mi>sin</mi>@<mrow><mo>(</mo><mi>θ</mi><mo>)</mo></mrow><mo>+</mo><mi>sin</mi>@<mrow><mo>(</mo><mn>30</mn><mtext class=\"unit\">°</mtext><mo>)</mo></mrow>"},
		{"log10(sigma_d)", "<msub><mi>log</mi><mn>10</mn></msub>@<mrow><mo>(</mo>" + sigma + "<mo>)</mo></mrow>"},
		{"design_area(a)", "<mtext>design area</mtext>@<mrow><mo>(</mo><mi>a</mi><mo>)</mo></mrow>"},
		{"K_DC(a)", "<msub><mi>K</mi><mi>DC</mi></msub>@<mrow><mo>(</mo><mi>a</mi><mo>)</mo></mrow>"},
		{"a > 1 ? a/2 : 3", `<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases"><mtr><mtd><mi>a</mi><mo>/</mo><mn>2</mn></mtd><mtd><mtext> if </mtext><mi>a</mi><mo>&gt;</mo><mn>1</mn></mtd></mtr><mtr><mtd><mn>3</mn></mtd><mtd><mtext> otherwise </mtext></mtd></mtr></mtable></mrow>`},
		{`a > 1 ? (z == "side" ? 3 : 4) : 5`, `<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases"><mtr><mtd><mn>3</mn></mtd><mtd><mtext> if </mtext><mi>a</mi><mo>&gt;</mo><mn>1</mn><mtext> and </mtext><mi>z</mi><mtext> is </mtext><mtext>side</mtext></mtd></mtr><mtr><mtd><mn>4</mn></mtd><mtd><mtext> if </mtext><mi>a</mi><mo>&gt;</mo><mn>1</mn></mtd></mtr><mtr><mtd><mn>5</mn></mtd><mtd><mtext> otherwise </mtext></mtd></mtr></mtable></mrow>`},
		{`not (a <= 1 and z in ["side"]) ? 1 : 2`, `<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases"><mtr><mtd><mn>1</mn></mtd><mtd><mtext> if </mtext><mtext> not </mtext><mrow><mo>(</mo><mi>a</mi><mo>≤</mo><mn>1</mn><mtext> and </mtext><mi>z</mi><mtext> is </mtext><mtext>side</mtext><mo>)</mo></mrow></mtd></mtr><mtr><mtd><mn>2</mn></mtd><mtd><mtext> otherwise </mtext></mtd></mtr></mtable></mrow>`},
		{`z == "<script>alert(1)</script>" ? 1 : 2`, `<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases"><mtr><mtd><mn>1</mn></mtd><mtd><mtext> if </mtext><mi>z</mi><mtext> is </mtext><mtext>&lt;script&gt;alert(1)&lt;/script&gt;</mtext></mtd></mtr><mtr><mtd><mn>2</mn></mtd><mtd><mtext> otherwise </mtext></mtd></mtr></mtable></mrow>`},
	}
	for _, r := range rows {
		if got := short(Formula(working(t, r.formula, "").Steps[0].Formula)); got != r.want {
			t.Errorf("%s\n is drawn %s\n want     %s", r.formula, got, r.want)
		}
	}
	if got := Formula(nil) + With(nil, nil); got != "" {
		t.Errorf("no formula is drawn %s", got)
	}
}

func TestWith(t *testing.T) {
	const minus = "<mrow><mo>−</mo><mn>3.25</mn></mrow>"
	rows := []struct{ formula, want string }{
		{"a*sigma_d", "<mrow><mo>(</mo>" + minus + "<mo>)</mo></mrow><mo>×</mo><mn>2 750</mn>"},
		{"sigma_d*a", "<mn>2 750</mn>·<mrow><mo>(</mo>" + minus + "<mo>)</mo></mrow>"},
		{"a**2", "<msup><mrow><mo>(</mo>" + minus + "<mo>)</mo></mrow><mn>2</mn></msup>"},
		{"sigma_d**0.5", "<msup><mn>2 750</mn><mn>0.5</mn></msup>"},
		{"1 + a", "<mn>1</mn><mo>+</mo><mrow><mo>(</mo>" + minus + "<mo>)</mo></mrow>"},
		{"a/sigma_d", "<mfrac>" + minus + "<mn>2 750</mn></mfrac>"},
		{"sind(theta)", "<mi>sin</mi>@<mrow><mo>(</mo><mn>20</mn><mtext class=\"unit\">°</mtext><mo>)</mo></mrow>"},
		{"sind(2*theta)", "<mi>sin</mi>@<mrow><mo>(</mo><mrow><mo>(</mo><mn>2</mn><mo>×</mo><mn>20</mn><mo>)</mo></mrow><mtext class=\"unit\">°</mtext><mo>)</mo></mrow>"},
		{"2*K_DC(sigma_d)", "<mn>2</mn><mo>×</mo><mn>2</mn>"},
		{"design_area(theta)", "<mtext>design area</mtext>@<mrow><mo>(</mo><mn>20</mn><mo>)</mo></mrow>"},
		{`z == "side" ? a : sigma_d`, `<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases"><mtr><mtd>` + minus + `</mtd><mtd><mtext> if </mtext><mi>z</mi><mtext> is </mtext><mtext>side</mtext></mtd></mtr><mtr><mtd><mn>2 750</mn></mtd><mtd><mtext> otherwise </mtext></mtd></mtr></mtable></mrow>`},
		{"P_BM_min + 1", "<msub><mi>P</mi><mrow><mi>BM</mi><mo>,</mo><mi>min</mi></mrow></msub><mo>+</mo><mn>1</mn>"},
	}
	for _, r := range rows {
		w := working(t, r.formula, "")
		if got := short(With(w.Steps[0].Formula, w.Get)); got != r.want {
			t.Errorf("%s\n is drawn %s\n want     %s", r.formula, got, r.want)
		}
	}
}

func TestLine(t *testing.T) {
	const y = "<msub><mi>y</mi><mn>1</mn></msub>"
	rows := []struct{ name, formula, unit, want string }{
		{"formula, values, result", "sigma_d/1000 + 0.123", "m²", y + "<mo>=</mo><mfrac><msub><mi>σ</mi><mi mathvariant=\"normal\">d</mi></msub><mn>1000</mn></mfrac><mo>+</mo><mn>0.123</mn> <mo>=</mo><mfrac><mn>2 750</mn><mn>1000</mn></mfrac><mo>+</mo><mn>0.123</mn> <mo>=</mo><mn>2.873</mn><mspace width=\"0.25em\"/><mtext class=\"unit\">m²</mtext>"},
		{"a bare number is its own result", "0.5", "mm", y + "<mo>=</mo><mn>0.5</mn><mspace width=\"0.25em\"/><mtext class=\"unit\">mm</mtext>"},
		{"one symbol needs no second line", "a", "m", y + "<mo>=</mo><mi>a</mi> <mo>=</mo><mrow><mo>−</mo><mn>3.25</mn></mrow><mspace width=\"0.25em\"/><mtext class=\"unit\">m</mtext>"},
		{"no result", "P_BM_min + 1", "", y + "<mo>=</mo><msub><mi>P</mi><mrow><mi>BM</mi><mo>,</mo><mi>min</mi></mrow></msub><mo>+</mo><mn>1</mn>"},
		{"a word", "z", "", y + "<mo>=</mo><mi>z</mi> <mo>=</mo><mtext>&lt;script&gt;alert(1)&lt;/script&gt;</mtext>"},
		{"hostile unit", "0.5", "<b>", y + "<mo>=</mo><mn>0.5</mn><mspace width=\"0.25em\"/><mtext class=\"unit\">&lt;b&gt;</mtext>"},
	}
	for _, r := range rows {
		w := working(t, r.formula, r.unit)
		if got := short(Line(&w.Steps[0], w.Get)); got != r.want {
			t.Errorf("%s\n is drawn %s\n want     %s", r.name, got, r.want)
		}
	}
	w := working(t, "1", "")
	inputs := []string{
		"<mi>a</mi><mo>=</mo><mrow><mo>−</mo><mn>3.25</mn></mrow>",
		"<msub><mi>σ</mi><mi mathvariant=\"normal\">d</mi></msub><mo>=</mo><mn>2 750</mn>",
		"<msub><mi>P</mi><mrow><mi>BM</mi><mo>,</mo><mi>min</mi></mrow></msub>",
		"<mi>θ</mi><mo>=</mo><mn>20</mn><mtext class=\"unit\">°</mtext>",
		"<mi>z</mi><mo>=</mo><mtext>&lt;script&gt;alert(1)&lt;/script&gt;</mtext>",
	}
	for i, want := range inputs {
		if got := short(Line(&w.Inputs[i], w.Get)); got != want {
			t.Errorf("input %s\n is drawn %s\n want     %s", w.Inputs[i].Symbol, got, want)
		}
	}
}

func TestSymbol(t *testing.T) {
	if got, want := Symbol("m_LDC"), "<math><msub><mi>m</mi><mi>LDC</mi></msub></math>"; got != want {
		t.Errorf("m_LDC is drawn %s, want %s", got, want)
	}
	if got, want := Symbol("<b>_&"), "<math><msub><mi>&lt;b&gt;</mi><mi>&amp;</mi></msub></math>"; !strings.Contains(got, "&lt;b&gt;") || strings.Contains(got, "<b>") {
		t.Errorf("a hostile symbol is drawn %s, want %s", got, want)
	}
}

func BenchmarkLine(b *testing.B) {
	w := working(b, "0.32*(a/(10*sigma_d) + 0.084)*(50 - clamp(theta, 10, 30))*a**2*sigma_d**2/sqrt(sigma_d)", "")
	b.ReportAllocs()
	for b.Loop() {
		if len(Line(&w.Steps[0], w.Get)) < 100 {
			b.Fatal("short line")
		}
	}
}
