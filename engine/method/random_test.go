package method

import (
	"fmt"
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// These give the text of random formulas, every part in brackets, over the numbers a, b_1, m_LDC and σ_d, and the word z.

func randomNumber(t *rapid.T, depth int) string {
	leaf := depth <= 0
	switch rapid.IntRange(0, 12).Draw(t, "number") {
	case 0, 1:
		return rapid.SampledFrom([]string{"0", "1", "2", "3", "0.5", "0.910", "1.25e-3", "1e3", "12", "10", "pi"}).Draw(t, "literal")
	case 2, 3, 4:
		return rapid.SampledFrom([]string{"a", "b_1", "m_LDC", "σ_d", "sigma_d"}).Draw(t, "symbol")
	case 5:
		return "(" + randomNumber(t, depth-1) + " + " + randomNumber(t, depth-1) + ")"
	}
	if leaf {
		return "a"
	}
	x, y := randomNumber(t, depth-1), randomNumber(t, depth-1)
	switch rapid.IntRange(0, 9).Draw(t, "made") {
	case 0, 1:
		return "(" + x + " * " + y + ")"
	case 2:
		return "(" + x + " - " + y + ")"
	case 3, 4:
		return "(" + x + " / " + y + ")"
	case 5:
		return "(" + x + " ** " + rapid.SampledFrom([]string{"2", "3", "0.5", "(1/3)", "(-1)", y}).Draw(t, "exponent") + ")"
	case 6:
		return "(-" + x + ")"
	case 7:
		return "sqrt(" + x + ")"
	case 8:
		f := rapid.SampledFrom([]string{"min(%s, %s)", "max(%s, %s)", "(clamp(%s, 0, 5) + %s)", "(abs(%s) - exp(-abs(%s)))", "(sind(%s)*ln(%s))", "(T(%s) + cbrt(%s))"}).Draw(t, "function")
		return fmt.Sprintf(f, x, y)
	}
	return "(" + randomTruth(t, depth-1) + " ? " + x + " : " + y + ")"
}

func randomTruth(t *rapid.T, depth int) string {
	if depth <= 0 {
		return "(a > 1)"
	}
	switch rapid.IntRange(0, 6).Draw(t, "truth") {
	case 0:
		return "(" + randomTruth(t, depth-1) + " and " + randomTruth(t, depth-1) + ")"
	case 1:
		return "(" + randomTruth(t, depth-1) + " or " + randomTruth(t, depth-1) + ")"
	case 2:
		return "(not " + randomTruth(t, depth-1) + ")"
	case 3:
		return "(z " + rapid.SampledFrom([]string{`== "side"`, `!= "bottom"`, `in ["side", "bottom"]`, `not in ["two words", "side"]`}).Draw(t, "word") + ")"
	}
	sign := rapid.SampledFrom([]string{"<", "<=", ">", ">=", "==", "!="}).Draw(t, "sign")
	return "(" + randomNumber(t, depth-1) + " " + sign + " " + randomNumber(t, depth-1) + ")"
}

// randomValues gives values for the symbols.
func randomValues(t *rapid.T) GivenMap {
	value := rapid.SampledFrom([]float64{0, 1, 2, 3, -1, -2.5, 0.5, 0.125, 300, 2750, 1e-6})
	given := GivenMap{}
	for _, name := range []string{"boat.a", "boat.b", "boat.mass", "boat.stress"} {
		given[name] = Quantity{Number: value.Draw(t, name)}
	}
	given["boat.z"] = Quantity{Word: rapid.SampledFrom([]string{"side", "bottom", "two words"}).Draw(t, "boat.z"), IsWord: true}
	return given
}

// sheetOf is a sheet with one step for y.
func sheetOf(formula string) string {
	var b strings.Builder
	b.WriteString(head)
	for _, in := range [][2]string{{"a", "boat.a"}, {"b_1", "boat.b"}, {"m_LDC", "boat.mass"}, {"sigma_d", "boat.stress"}} {
		fmt.Fprintf(&b, "[[c.input]]\nsymbol = %q\nname = 'n'\nunit = ''\nfrom = %q\n", in[0], in[1])
	}
	b.WriteString("[[c.input]]\nsymbol = 'z'\nname = 'n'\nfrom = 'boat.z'\nwords = ['side', 'bottom', 'two words']\n")
	b.WriteString("[table.T]\ntitle = 't'\nclause = '1'\nbasis = 'read'\nx = [0, 1, 3]\ny = [1, 5, -2]\n")
	fmt.Fprintf(&b, "[[c.step]]\nsymbol = 'y'\nname = 'n'\nunit = ''\nclause = '1'\nbasis = 'read'\nformula = %s\n", strconv.Quote(formula))
	return b.String()
}
