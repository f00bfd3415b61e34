package main

import (
	"fmt"
	"math"
	"strings"

	"golang.org/x/net/html"
)

// This file reckons a formula from the MathML of a page, with no word of the program that drew it. Values are spans: a
// figure of n decimals may be half a unit of its last digit more or less.

// asRead says what the digits of figures leave open: nothing where asPrinted is set, and nothing in those that stand in the
// formula itself.
type asRead struct {
	asPrinted bool
	ofFormula map[string]bool
}

// reckon gives the value of a <math> element.
func (g *asRead) reckon(n *html.Node) (s span, err error) {
	defer func() {
		if lost, ok := recover().(lostError); ok {
			err = lost
		}
	}()
	r := &rowReader{asRead: g, nodes: laidFlat(n, nil)}
	s = r.sum()
	if r.at < len(r.nodes) {
		panic(lostError("what follows " + textOf(r.nodes[r.at])))
	}
	return s, nil
}

type lostError string

func (e lostError) Error() string { return "cannot make out " + string(e) }

// laidFlat opens the rows of an element, so that brackets and what they hold stand in one line.
func laidFlat(n *html.Node, into []*html.Node) []*html.Node {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		switch {
		case c.Type != html.ElementNode, c.Data == "mspace", textOf(c) == "°":
		case c.Data == "mrow":
			into = laidFlat(c, into)
		default:
			into = append(into, c)
		}
	}
	return into
}

// rowReader reads a run of elements from left to right.
type rowReader struct {
	*asRead
	nodes []*html.Node
	at    int
}

func (r *rowReader) sign() string {
	if r.at >= len(r.nodes) || r.nodes[r.at].Data != "mo" {
		return ""
	}
	return textOf(r.nodes[r.at])
}

func (r *rowReader) takes(sign string) bool {
	if r.sign() != sign {
		return false
	}
	r.at++
	return true
}

func (r *rowReader) sum() span {
	v := r.product()
	for {
		switch {
		case r.takes("+"):
			b := r.product()
			v = span{v.low + b.low, v.high + b.high}
		case r.takes("−"):
			b := r.product()
			v = span{v.low - b.high, v.high - b.low}
		default:
			return v
		}
	}
}

func (r *rowReader) product() span {
	v := r.factor()
	for {
		switch {
		case r.takes("×"), r.takes("\u2062"):
			v = corners(v, r.factor(), func(a, b float64) float64 { return a * b })
		case r.takes("/"):
			v = corners(v, r.factor(), func(a, b float64) float64 { return a / b })
		default:
			return v
		}
	}
}

func (r *rowReader) factor() span {
	if r.takes("−") {
		v := r.factor()
		return span{-v.high, -v.low}
	}
	for opening, closing := range map[string]string{"(": ")", "|": "|", "⌊": "⌋", "⌈": "⌉"} {
		if !r.takes(opening) {
			continue
		}
		v := r.sum()
		if !r.takes(closing) {
			panic(lostError("the bracket " + opening))
		}
		return bracketed(opening, v)
	}
	if r.at >= len(r.nodes) {
		panic(lostError("the end of the line"))
	}
	n := r.nodes[r.at]
	r.at++
	if r.takes("\u2061") {
		return r.function(textOf(n))
	}
	return r.element(n)
}

func bracketed(opening string, v span) span {
	switch opening {
	case "⌊":
		return span{math.Floor(v.low), math.Floor(v.high)}
	case "⌈":
		return span{math.Ceil(v.low), math.Ceil(v.high)}
	case "|":
		return span{max(0, v.low, -v.high), max(-v.low, v.high)}
	}
	return v
}

// function reads the arguments of a function and gives its value; every one of them rises or falls all the way between the
// ends of a span that is half a digit wide.
func (r *rowReader) function(name string) span {
	if !r.takes("(") {
		panic(lostError("what " + name + " is of"))
	}
	args := []span{r.sum()}
	for r.takes(",") {
		args = append(args, r.sum())
	}
	if !r.takes(")") {
		panic(lostError("where " + name + " ends"))
	}
	turned := math.Pi / 180
	of := map[string]func(float64) float64{
		"sin": func(x float64) float64 { return math.Sin(x * turned) }, "cos": func(x float64) float64 { return math.Cos(x * turned) },
		"tan": func(x float64) float64 { return math.Tan(x * turned) }, "arctan": func(x float64) float64 { return math.Atan(x) / turned },
		"arcsin": func(x float64) float64 { return math.Asin(x) / turned }, "arccos": func(x float64) float64 { return math.Acos(x) / turned },
		"ln": math.Log, "log10": math.Log10, "exp": math.Exp, "round": math.Round,
	}
	switch one, known := of[name]; {
	case known && len(args) == 1:
		return corners(args[0], span{}, func(a, _ float64) float64 { return one(a) })
	case name == "min" || name == "max":
		v := args[0]
		for _, a := range args[1:] {
			if name == "min" {
				v = span{min(v.low, a.low), min(v.high, a.high)}
			} else {
				v = span{max(v.low, a.low), max(v.high, a.high)}
			}
		}
		return v
	}
	panic(lostError("the function " + name))
}

// element gives the value of one element: a number, a fraction, a power or a root.
func (g *asRead) element(n *html.Node) span {
	parts := elementsOf(n)
	switch {
	case n.Data == "mn":
		if s, ok := figureOf(textOf(n)); ok {
			if g.asPrinted || g.ofFormula[textOf(n)] {
				return exactly(s)
			}
			return s
		}
	case n.Data == "mi" && textOf(n) == "π":
		return span{math.Pi, math.Pi}
	case n.Data == "mfrac" && len(parts) == 2:
		return corners(g.whole(parts[0]), g.whole(parts[1]), func(a, b float64) float64 { return a / b })
	case n.Data == "msup" && len(parts) == 2:
		return corners(g.whole(parts[0]), exactly(g.whole(parts[1])), math.Pow)
	case n.Data == "msqrt":
		r := &rowReader{asRead: g, nodes: laidFlat(n, nil)}
		return corners(r.sum(), span{}, func(a, _ float64) float64 { return math.Sqrt(max(a, 0)) })
	case n.Data == "mroot" && len(parts) == 2:
		return corners(g.whole(parts[0]), span{}, func(a, _ float64) float64 { return math.Cbrt(a) })
	}
	panic(lostError(strings.TrimSpace(n.Data + " " + textOf(n))))
}

func elementsOf(n *html.Node) (out []*html.Node) {
	for c := n.FirstChild; c != nil; c = c.NextSibling {
		if c.Type == html.ElementNode {
			out = append(out, c)
		}
	}
	return out
}

// whole reads an element that may be a row.
func (g *asRead) whole(n *html.Node) span {
	if n.Data != "mrow" {
		return g.element(n)
	}
	r := &rowReader{asRead: g, nodes: laidFlat(n, nil)}
	v := r.sum()
	if r.at < len(r.nodes) {
		panic(lostError(fmt.Sprint("the row ", textOf(n))))
	}
	return v
}

// exactly takes the middle: exponents are those of the formula, or reckoned to more digits than would matter.
func exactly(s span) span { return span{(s.low + s.high) / 2, (s.low + s.high) / 2} }

// corners gives the least and the greatest of a function over the ends of two spans.
func corners(a, b span, f func(a, b float64) float64) span {
	v := [4]float64{f(a.low, b.low), f(a.low, b.high), f(a.high, b.low), f(a.high, b.high)}
	return span{min(v[0], v[1], v[2], v[3]), max(v[0], v[1], v[2], v[3])}
}
