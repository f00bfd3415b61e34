package method

import (
	"math"
	"testing"
)

// formulaOf reads one formula over the symbols of the random formulas.
func formulaOf(t testing.TB, text string) *Formula {
	t.Helper()
	s, err := Load("f.toml", []byte(sheetOf(text)))
	if err != nil {
		t.Fatal(err)
	}
	return s.Scopes[0].Steps[0].Formula
}

func TestText(t *testing.T) {
	values := func(symbol string) (*Shown, bool) {
		switch symbol {
		case "a":
			return &Shown{Said: &Said{}, Value: -3.25, State: Sound}, true
		case "b_1":
			return &Shown{Said: &Said{}, Value: 2750, State: Sound}, true
		case "m_LDC":
			return &Shown{Said: &Said{Formula: &Formula{}}, Value: 62.1349, State: Outside}, true
		case "z":
			return &Shown{Said: &Said{IsWord: true}, Word: "two words", State: Sound}, true
		}
		return &Shown{Said: &Said{}, State: Missing}, true
	}
	rows := []struct{ formula, want, with string }{
		{"a", "a", "−3.25"},
		{"sigma_d*a", "σ_d a", "σ_d (−3.25)"},
		{"b_1*sqrt(m_LDC*a/(1000*sigma_d))", "b_1 √(m_LDC a / (1000 σ_d))", "2 750 √(62.1 (−3.25) / (1000 σ_d))"},
		{"a - (b_1 - m_LDC)", "a − (b_1 − m_LDC)", "−3.25 − (2 750 − 62.1)"},
		{"a - b_1 - m_LDC", "a − b_1 − m_LDC", "−3.25 − 2 750 − 62.1"},
		{"a + (b_1 + m_LDC)", "a + b_1 + m_LDC", "−3.25 + 2 750 + 62.1"},
		{"b_1 + a", "b_1 + a", "2 750 + (−3.25)"},
		{"a/b_1/m_LDC", "(a/b_1) / m_LDC", "(−3.25 / 2 750) / 62.1"},
		{"a/(b_1/m_LDC)", "a / (b_1/m_LDC)", "−3.25 / (2 750 / 62.1)"},
		{"a/b_1*m_LDC", "(a/b_1) m_LDC", "(−3.25 / 2 750) × 62.1"},
		{"2*3*a*4", "2 × 3 a × 4", "2 × 3 (−3.25) × 4"},
		{"(a + b_1)*m_LDC", "(a + b_1) m_LDC", "(−3.25 + 2 750) × 62.1"},
		{"-a**2", "−a²", "−(−3.25)²"},
		{"(-a)**2", "(−a)²", "(−(−3.25))²"},
		{"a**b_1**2", "a^(b_1²)", "(−3.25)^(2 750²)"},
		{"(a**b_1)**2", "(a^b_1)²", "((−3.25)^2 750)²"},
		{"m_LDC**0.33", "m_LDC^0.33", "62.1^0.33"},
		{"m_LDC**-1", "m_LDC^(−1)", "62.1^(−1)"},
		{"a*1e-6 + 2.5e3", "a × 10⁻⁶ + 2.5×10³", "(−3.25) × 10⁻⁶ + 2.5×10³"},
		{".5*a", "0.5 a", "0.5 (−3.25)"},
		{"0.910*a", "0.910 a", "0.910 (−3.25)"},
		{"2*pi*a", "2 π a", "2 π (−3.25)"},
		{"sqrt(a)**2", "(√a)²", "(√(−3.25))²"},
		{"clamp(a, 0, 5)", "max(0, min(a, 5))", "max(0, min(−3.25, 5))"},
		{"sind(m_LDC) + sind(m_LDC + 1)", "sin(m_LDC) + sin(m_LDC + 1)", "sin(62.1°) + sin(62.1 + 1)"},
		{"atand(a)", "arctan(a)", "arctan(−3.25)"},
		{"T(a)", "T(a)", "T(−3.25)"},
		{"a > 1 ? a : a > 0 ? 1 : 2", "a if a > 1, 1 if a > 0, otherwise 2", "−3.25 if −3.25 > 1, 1 if −3.25 > 0, otherwise 2"},
		{"a > 1 ? (a > 2 ? 3 : 4) : 5", "3 if a > 1 and a > 2, 4 if a > 1, otherwise 5", "3 if −3.25 > 1 and −3.25 > 2, 4 if −3.25 > 1, otherwise 5"},
		{"1 + (a > 1 ? a : 2)", "1 + (a if a > 1, otherwise 2)", "1 + (−3.25 if −3.25 > 1, otherwise 2)"},
		{"max(a > 1 ? a : 2, 3)", "max((a if a > 1, otherwise 2), 3)", "max((−3.25 if −3.25 > 1, otherwise 2), 3)"},
		{`a/b_1 <= 2 and b_1 > 0 ? 1 : 2`, "1 if a/b_1 ≤ 2 and b_1 > 0, otherwise 2", "1 if −3.25 / 2 750 ≤ 2 and 2 750 > 0, otherwise 2"},
		{`a < b_1 < 3 ? 1 : 2`, "1 if a < b_1 and b_1 < 3, otherwise 2", "1 if −3.25 < 2 750 and 2 750 < 3, otherwise 2"},
		{`(a > 1 or a < 0) and a != 3 ? 1 : 2`, "1 if (a > 1 or a < 0) and a ≠ 3, otherwise 2", "1 if (−3.25 > 1 or −3.25 < 0) and −3.25 ≠ 3, otherwise 2"},
		{`z == "side" ? 1 : 2`, "1 if z is side, otherwise 2", "1 if z is side, otherwise 2"},
		{`z != "two words" ? 1 : 2`, `1 if z is not "two words", otherwise 2`, `1 if z is not "two words", otherwise 2`},
		{`z in ["side", "bottom"] ? 1 : 2`, "1 if z is side or bottom, otherwise 2", "1 if z is side or bottom, otherwise 2"},
		{`z not in ["side", "bottom"] ? 1 : 2`, "1 if z is neither side nor bottom, otherwise 2", "1 if z is neither side nor bottom, otherwise 2"},
		{`not (z in ["side"]) ? 1 : 2`, "1 if z is not side, otherwise 2", "1 if z is not side, otherwise 2"},
		{`not (a == 1) ? 1 : 2`, "1 if not (a = 1), otherwise 2", "1 if not (−3.25 = 1), otherwise 2"},
	}
	for _, r := range rows {
		f := formulaOf(t, r.formula)
		if got := spaced(f.String()); got != r.want {
			t.Errorf("%s is written %s, want %s", r.formula, got, r.want)
		}
		if got := spaced(f.With(values)); got != r.with {
			t.Errorf("%s with values is written %s, want %s", r.formula, got, r.with)
		}
	}
	var none *Formula
	if none.String() != "" || none.With(values) != "" {
		t.Errorf("no formula is written %q and %q, want nothing", none.String(), none.With(values))
	}
}

func TestFigure(t *testing.T) {
	reckoned := &Formula{}
	rows := []struct {
		name, want string
		said       Said
		value      float64
		word       string
		state      State
	}{
		{"record value as written", "34.25 kn", Said{Unit: "kn"}, 34.25, "", Sound},
		{"reckoned value to three figures", "3.50 mm", Said{Unit: "mm", Formula: reckoned}, 3.49846, "", Sound},
		{"reckoned value that four figures say in full", "112.5 N/mm²", Said{Unit: "N/mm²", Formula: reckoned}, 112.5, "", Sound},
		{"reckoned value with a bit of noise", "0.3", Said{Formula: reckoned}, 0.1 + 0.2, "", Sound},
		{"degree stands close", "18°", Said{Unit: "°"}, 18, "", Sound},
		{"nought below nought", "0 m", Said{Unit: "m", Formula: reckoned}, math.Copysign(0, -1), "", Sound},
		{"word", "planing", Said{IsWord: true}, 0, "planing", Outside},
		{"missing", "", Said{Unit: "m"}, 0, "", Missing},
	}
	for _, r := range rows {
		shown := Shown{Said: &r.said, Value: r.value, Word: r.word, State: r.state}
		if got := spaced(shown.Figure()); got != r.want {
			t.Errorf("own arithmetic: %s: %q, want %q", r.name, got, r.want)
		}
	}
}

func TestLetters(t *testing.T) {
	rows := []struct {
		symbol, written, letter string
		below                   []string
	}{
		{"t", "t", "t", nil},
		{"sigma_d", "σ_d", "σ", []string{"d"}},
		{"σ_d", "σ_d", "σ", []string{"d"}},
		{"P_BM_min", "P_BM_min", "P", []string{"BM", "min"}},
		{"b04", "b04", "b", []string{"04"}},
		{"beta04", "beta04", "β", []string{"04"}},
		{"k_beta", "k_β", "k", []string{"β"}},
		{"beta", "β", "β", nil},
		{"Delta", "Δ", "Δ", nil},
		{"betas", "betas", "betas", nil},
		{"DC_f", "ΔC_f", "ΔC", []string{"f"}},
		{"k_DC", "k_DC", "k", []string{"DC"}},
	}
	for _, r := range rows {
		letter, below := Letters(r.symbol)
		if Written(r.symbol) != r.written || letter != r.letter || len(below) != len(r.below) {
			t.Errorf("%s: written %s, letter %s, below %v, want %s, %s, %v", r.symbol, Written(r.symbol), letter, below, r.written, r.letter, r.below)
			continue
		}
		for i := range below {
			if below[i] != r.below[i] {
				t.Errorf("%s: below %v, want %v", r.symbol, below, r.below)
			}
		}
	}
}
