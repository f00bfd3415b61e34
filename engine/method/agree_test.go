package method

import (
	"math"
	"regexp"
	"strconv"
	"strings"
	"testing"
	"unicode"

	"github.com/expr-lang/expr"
	"pgregory.net/rapid"
)

// reckoned evaluates one formula over given values; skip is true where the formula is refused for its size.
func reckoned(t *rapid.T, formula string, given GivenMap) (y *Shown, skip bool) {
	s, err := Load("f.toml", []byte(sheetOf(formula)))
	if err != nil {
		if strings.Contains(err.Error(), "more than") || strings.Contains(err.Error(), "may have") {
			return nil, true
		}
		t.Fatalf("%s: %v", formula, err)
	}
	w, err := s.Evaluate("c", given, nil)
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	return &w.Steps[0], false
}

// TestAgreesWithTheLanguage holds our evaluation of the tree against the virtual machine of the expression language,
// which compiles the same text by its own way.
func TestAgreesWithTheLanguage(t *testing.T) {
	tried, finite := 0, 0 // how many are tried is the library's choice, and fewer in a short run
	rapid.Check(t, func(t *rapid.T) {
		tried++
		formula, given := randomNumber(t, 3), randomValues(t)
		y, skip := reckoned(t, formula, given)
		if skip || y.State == Broken {
			return // the virtual machine goes on with Inf and NaN where we stop
		}
		want := byTheLanguage(t, formula, given)
		if y.Value != want {
			t.Fatalf("%s = %v, the language gives %v", formula, y.Value, want)
		}
		finite++
	})
	if finite == 0 || finite < tried/4 {
		t.Errorf("only %d of %d formulas had a finite value", finite, tried)
	}
}

func byTheLanguage(t *rapid.T, formula string, given GivenMap) float64 {
	env := map[string]any{"pi": math.Pi, "z": given["boat.z"].Word}
	for symbol, from := range map[string]string{"a": "boat.a", "b_1": "boat.b", "m_LDC": "boat.mass", "σ_d": "boat.stress", "sigma_d": "boat.stress"} {
		env[symbol] = given[from].Number
	}
	options := []expr.Option{expr.DisableAllBuiltins(), expr.Env(env)}
	for name, f := range functions {
		options = append(options, expr.Function(name, func(args ...any) (any, error) { return f.call(floats(args)), nil }))
	}
	table := &Table{X: []float64{0, 1, 3}, Y: []float64{1, 5, -2}}
	options = append(options, expr.Function("T", func(args ...any) (any, error) {
		y, _ := table.at(floats(args)[0])
		return y, nil
	}))
	program, err := expr.Compile(formula, options...)
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	out, err := expr.Run(program, env)
	if err != nil {
		t.Fatalf("%s: %v", formula, err)
	}
	return floats([]any{out})[0]
}

func floats(args []any) []float64 {
	out := make([]float64, len(args))
	for i, a := range args {
		switch a := a.(type) {
		case int:
			out[i] = float64(a)
		case float64:
			out[i] = a
		}
	}
	return out
}

// TestTextSaysWhatIsReckoned reads the plain text of random formulas back by the rules of handwriting (products stand
// beside each other) and holds the value against that of the tree; with the symbols first, then with their values put in.
func TestTextSaysWhatIsReckoned(t *testing.T) {
	tried, read := 0, 0
	rapid.Check(t, func(t *rapid.T) {
		tried++
		formula, given := randomNumber(t, 3), randomValues(t)
		y, skip := reckoned(t, formula, given)
		if skip || y.State == Broken {
			return
		}
		s, _ := Load("f.toml", []byte(sheetOf(formula)))
		w, _ := s.Evaluate("c", given, nil)
		for _, text := range []string{y.Formula.String(), y.Formula.With(w.Get)} {
			back, skip := reckoned(t, typed(text), given)
			if skip {
				continue
			}
			if back.State == Broken || !close(back.Value, y.Value) {
				t.Fatalf("%s = %v; its text %s, read back as %s, gives %v (%s)", formula, y.Value, text, typed(text), back.Value, back.Why())
			}
			read++
		}
	})
	if read == 0 || read < tried/5 { // two texts a formula; many have no finite value, which nobody reads back
		t.Errorf("only %d texts of %d formulas were read back", read, tried)
	}
}

// close allows for factors taken in another order.
func close(a, b float64) bool {
	return math.Abs(a-b) <= 1e-9*math.Max(1, math.Max(math.Abs(a), math.Abs(b)))
}

var (
	lexeme = regexp.MustCompile(`"[^"]*"|10[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+|[0-9][0-9.\x{00a0}]*°?|π|[\pL][\pL0-9_]*|[⁻⁰¹²³⁴⁵⁶⁷⁸⁹]+|.`)
)

// typed turns handwriting back into the formula language.
func typed(text string) string {
	return spread(lexeme.FindAllString(text, -1))
}

// spread reads a run of lexemes; brackets first, so that what is inside is read by itself.
func spread(all []string) string {
	var parts []string
	for i := 0; i < len(all); i++ {
		if all[i] != "(" {
			parts = append(parts, all[i])
			continue
		}
		depth, j := 1, i+1
		for ; depth > 0; j++ {
			switch all[j] {
			case "(":
				depth++
			case ")":
				depth--
			}
		}
		inner := "(" + spread(all[i+1:j-1]) + ")"
		parts = append(parts, inner)
		i = j - 1
	}
	return cased(parts)
}

// cased turns "x if c, otherwise y" into "c ? x : y"; lists of arguments are read one by one.
func cased(parts []string) string {
	var words []int
	for i, p := range parts {
		if p == "if" {
			words = append(words, i)
		}
	}
	if len(words) == 0 {
		return argued(parts)
	}
	first := words[0]
	comma := first + 1
	for parts[comma] != "," {
		comma++
	}
	rest := parts[comma+1:]
	for len(rest) > 0 && (rest[0] == " " || rest[0] == "otherwise") {
		rest = rest[1:]
	}
	return "(" + condition(parts[first+1:comma]) + ") ? (" + argued(parts[:first]) + ") : (" + cased(rest) + ")"
}

func argued(parts []string) string {
	var out []string
	start := 0
	for i := 0; i <= len(parts); i++ {
		if i == len(parts) || parts[i] == "," {
			out = append(out, condition(parts[start:i]))
			start = i + 1
		}
	}
	return strings.Join(out, ", ")
}

// condition turns "z is neither A nor B" and the other words of conditions back.
func condition(parts []string) string {
	var out []string
	for i := 0; i < len(parts); i++ {
		if wordAfter(parts[i:i+1]) && !strings.HasPrefix(parts[i], `"`) {
			parts[i] = strconv.Quote(parts[i])
		}
		if parts[i] != "is" {
			out = append(out, parts[i])
			continue
		}
		sign, words, j := "in", []string{}, i+1
		for ; j < len(parts); j++ {
			p := parts[j]
			if p == "not" || p == "neither" {
				sign = "not in"
				continue
			}
			if p == "and" || p == "or" && !wordAfter(parts[j+1:]) {
				break
			}
			if p != " " && p != "or" && p != "nor" {
				words = append(words, strconv.Quote(strings.Trim(p, `"`)))
			}
		}
		out = append(out, " ", sign, " [", strings.Join(words, ","), "] ")
		i = j - 1
	}
	return multiplied(out)
}

// wordAfter reports whether the next lexeme is a word in a list and not the beginning of a condition.
func wordAfter(parts []string) bool {
	var next []string
	for _, p := range parts {
		if p != " " {
			next = append(next, p)
		}
	}
	return len(next) > 0 && isWordOfZone(next[0]) && (len(next) == 1 || next[1] != "is")
}

func isWordOfZone(p string) bool { return p == "side" || p == "bottom" || strings.HasPrefix(p, `"`) }

// multiplied puts the sign of multiplication between factors that stand beside each other.
func multiplied(parts []string) string {
	var b strings.Builder
	operand := false // the last thing written can be multiplied
	for i := 0; i < len(parts); i++ {
		p := parts[i]
		switch {
		case p == " ":
			continue
		case p == "√":
			if operand {
				b.WriteString("*")
			}
			b.WriteString("sqrt(" + bare(parts[i+1]) + ")")
			i++
			operand = true
			continue
		case strings.ContainsAny(p, "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"):
			digits := strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9").Replace(p)
			if strings.HasPrefix(p, "10") {
				b.WriteString("(10**(" + digits[2:] + "))")
			} else {
				b.WriteString("**" + digits)
			}
			operand = true
			continue
		}
		if sign, ok := map[string]string{"−": "-", "×": "*", "^": "**", "≤": "<=", "≥": ">=", "≠": "!=", "=": "=="}[p]; ok {
			b.WriteString(" " + sign + " ")
			operand = false
			continue
		}
		if strings.ContainsAny(p, "+/<>[]") && !strings.HasPrefix(p, "(") || p == "and" || p == "or" || p == "not" || p == "in" || p == "not in" {
			b.WriteString(" " + p + " ")
			operand = false
			continue
		}
		name := i+1 < len(parts) && strings.HasPrefix(parts[i+1], "(") && unicode.IsLetter([]rune(p)[0]) && p != "π"
		if operand {
			b.WriteString("*")
		}
		if name { // a function stands close to its bracket, a factor does not
			b.WriteString(map[string]string{"sin": "sind"}[p])
			if p != "sin" {
				b.WriteString(p)
			}
			b.WriteString(parts[i+1])
			i++
		} else {
			b.WriteString(bare(p))
		}
		operand = true
	}
	return b.String()
}

// bare takes the dress of numbers off.
func bare(p string) string {
	return strings.NewReplacer("\u00a0", "", "°", "", "π", "pi").Replace(p)
}

func TestTyped(t *testing.T) {
	rows := []struct{ text, want string }{
		{"a b_1 √(a / (2 σ_d))", "a*b_1*sqrt((a / (2*σ_d)))"},
		{"2 a^0.33 + 3 (a − 1)²", "2*a ** 0.33 + 3*(a - 1)**2"},
		{"1 if a > 1, otherwise 2", "(a > 1) ? (1) : (2)"},
	}
	for _, r := range rows {
		if got := typed(r.text); got != r.want {
			t.Errorf("own arithmetic: typed(%s) = %s, want %s", r.text, got, r.want)
		}
	}
}
