package main

import (
	"bytes"
	"math"
	"os"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"golang.org/x/net/html"
)

// small names the lines that tell a difference of two figures that are nearly alike: three figures of each are too few for it.
const small = "room up to the critical trim; lift left over, of the lift asked for; bow-down moment left over; arm of the pressure"

// TestWorkingsReadBack reckons every line of every working of the demo again, from nothing but the formula with its values
// as the page prints it, and holds the outcome against the result that stands beside it. The reckoner here knows the markup
// and nothing of the sheets. What it allows is what three figures leave open in most lines, 0.6 %, and
// half of the last digit that is printed.
func TestWorkingsReadBack(t *testing.T) {
	t.Parallel()
	var back, lines int
	for _, page := range pagesOf(t, demoFiles(t)) {
		doc := parsed(t, page)
		name := filepath.Base(filepath.Dir(page)) + "/" + filepath.Base(page)
		eachNode(doc, func(n *html.Node) {
			if class, _ := attr(n, "class"); n.Data != "table" || class != "calc" {
				return
			}
			eachNode(n, func(row *html.Node) {
				if row.Data != "tr" {
					return
				}
				formula, literal, result := workedRow(row)
				printed, tells := figureOf(result)
				if formula == nil || !tells {
					return
				}
				lines++
				where := name + ", " + textOf(first(row, "th")) + ": " + textOf(formula)
				point, err := (&asRead{asPrinted: true}).reckon(formula)
				if err != nil {
					t.Errorf("%s cannot be reckoned from the page: %v", where, err)
					return
				}
				off := 0.006 * math.Max(math.Abs(printed.low), math.Abs(printed.high))
				if point.low >= printed.low-off && point.high <= printed.high+off {
					back++
					return
				}
				open, _ := (&asRead{ofFormula: literal}).reckon(formula)
				switch within := open.low <= printed.high && open.high >= printed.low; {
				case !within:
					t.Errorf("%s gives %g to %g, printed %s", where, open.low, open.high, result)
				case !strings.Contains(small, textOf(first(row, "th"))):
					t.Errorf("%s gives %g, printed %s: the figures in it are too much rounded", where, point.low, result)
				}
			})
		})
	}
	if back < 2000 {
		t.Errorf("only %d of %d lines read back; the test has lost sight of the workings", back, lines)
	}
}

// TestReadBackSeesWhatItMust proves that the check above can fail.
func TestReadBackSeesWhatItMust(t *testing.T) {
	rows := []struct {
		markup  string
		is, not float64
	}{
		{"<mn>2</mn><mo>×</mo><mn>3</mn><mo>+</mo><mn>1</mn>", 7, 8},
		{"<mfrac><mn>1</mn><mn>4</mn></mfrac><mo>\u2062</mo><msup><mn>10</mn><mrow><mo>−</mo><mn>3</mn></mrow></msup>", 0.25e-3, 0.26e-3},
		{"<mi>max</mi><mo>\u2061</mo><mrow><mo>(</mo><mn>1</mn><mo>,</mo><mn>2</mn><mo>)</mo></mrow>", 2, 1},
		{"<mi>sin</mi><mo>\u2061</mo><mrow><mo>(</mo><mn>30</mn><mtext>°</mtext><mo>)</mo></mrow>", 0.5, -0.988},
		{"<mo>−</mo><msup><mn>3</mn><mn>2</mn></msup>", -9, 9},
	}
	for _, r := range rows {
		doc, err := html.Parse(strings.NewReader("<math>" + r.markup + "</math>"))
		if err != nil {
			t.Fatal(err)
		}
		got, err := (&asRead{asPrinted: true}).reckon(first(doc, "math"))
		if err != nil || got.low-1e-12 > r.is || got.high+1e-12 < r.is || got.low <= r.not && r.not <= got.high {
			t.Errorf("%s gives %v, %v; want %g and not %g", r.markup, got, err, r.is, r.not)
		}
	}
	lost, err := html.Parse(strings.NewReader("<math><mn>2</mn><mo>×</mo><msub><mi>k</mi><mi>C</mi></msub></math>"))
	if err != nil {
		t.Fatal(err)
	}
	if got, err := (&asRead{asPrinted: true}).reckon(first(lost, "math")); err == nil {
		t.Errorf("a line with a symbol that has no value gives %v", got)
	}
}

func parsed(t *testing.T, page string) *html.Node {
	t.Helper()
	text, err := os.ReadFile(page)
	if err != nil {
		t.Fatal(err)
	}
	doc, err := html.Parse(bytes.NewReader(text))
	if err != nil {
		t.Fatal(err)
	}
	return doc
}

// workedRow finds the formula with its values in a row of a working, nil where there is none to reckon: where the line is a
// symbol, a table by its name or a choice between words; the figures of the formula itself; and the result that is printed.
func workedRow(row *html.Node) (formula *html.Node, literal map[string]bool, result string) {
	var shown []*html.Node
	for c := row.FirstChild; c != nil; c = c.NextSibling {
		class, _ := attr(c, "class")
		switch class {
		case "how":
			for d := c.FirstChild; d != nil; d = d.NextSibling {
				if class, _ := attr(d, "class"); d.Data == "div" && class == "f" {
					shown = append(shown, d)
				}
			}
		case "num result":
			for d := c.FirstChild; d != nil; d = d.NextSibling {
				if d.Type == html.TextNode {
					result += d.Data
				}
			}
		}
	}
	if len(shown) < 2 {
		return nil, nil, result
	}
	literal = map[string]bool{}
	eachNode(shown[0], func(n *html.Node) {
		if n.Data == "mn" {
			literal[textOf(n)] = true
		}
	})
	eachNode(shown[len(shown)-1], func(n *html.Node) {
		if n.Data == "math" {
			formula = n
		}
	})
	if formula != nil && (first(formula, "mtable") != nil || byName(formula)) {
		return nil, nil, result
	}
	return formula, literal, result
}

// byName reports whether a line is nothing but a table with its row.
func byName(formula *html.Node) bool {
	n := formula.FirstChild
	return n != nil && (n.Data == "mtext" || n.Data == "msub") && n.NextSibling != nil && textOf(n.NextSibling) == "\u2061" &&
		textOf(n) != "log10" && n.NextSibling.NextSibling == formula.LastChild
}

// span is a figure with what its digits leave open.
type span struct{ low, high float64 }

// figureOf reads a printed figure; tells is false for a word. A whole number below a hundred is one that somebody wrote or
// counted: what is reckoned has three figures.
func figureOf(text string) (s span, tells bool) {
	text = strings.NewReplacer("\u00a0", "", "\u202f", "", "\u2009", "", " ", "", "\n", "", "−", "-").Replace(text)
	mantissa, power, raised := strings.Cut(text, "×10")
	scale := 1.0
	if raised {
		n, err := strconv.Atoi(strings.NewReplacer("⁻", "-", "⁰", "0", "¹", "1", "²", "2", "³", "3", "⁴", "4", "⁵", "5", "⁶", "6", "⁷", "7", "⁸", "8", "⁹", "9").Replace(power))
		if err != nil {
			return s, false
		}
		scale = math.Pow10(n)
	}
	v, err := strconv.ParseFloat(mantissa, 64)
	if err != nil {
		return s, false
	}
	_, digits, _ := strings.Cut(mantissa, ".")
	open := 0.5000001 * math.Pow10(-len(digits))
	if digits == "" && math.Abs(v) < 100 {
		open = 0
	}
	return span{(v - open) * scale, (v + open) * scale}, true
}
