package mathml

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"hullfile/engine/method"
)

// comparison writes a comparison of numbers with its sign and one of words in words. Words are not put in for symbols
// there: "zone is side" can be read, "bottom is side" cannot.
func (w *writer) comparison(n *method.Node) {
	if n.Args[0].IsWord() {
		w.bare(func() { w.saying(n) })
		return
	}
	w.at(n.Args[0], sum)
	w.sign(method.Sign(n.Symbol))
	w.at(n.Args[1], sum)
}

// bare writes something without values.
func (w *writer) bare(body func()) {
	before := w.look
	w.look = nil
	body()
	w.look = before
}

func (w *writer) saying(n *method.Node) {
	w.at(n.Args[0], sum)
	switch n.Symbol {
	case "in":
		w.says("is")
		w.list(n.Args[1], "or")
		return
	case "==":
		w.says("is")
	default:
		w.says("is not")
	}
	w.at(n.Args[1], sum)
}

// list writes words as people list them: A, B or C.
func (w *writer) list(list *method.Node, last string) {
	for i, word := range list.Args {
		switch {
		case i == 0:
		case i == len(list.Args)-1:
			w.says(last)
		default:
			w.sign(",")
		}
		w.element("mtext", word.Word)
	}
}

func (w *writer) joined(n *method.Node, level binds, with string) {
	w.at(n.Args[0], level)
	w.says(with)
	w.at(n.Args[1], level)
}

func (w *writer) denial(n *method.Node) {
	of := n.Args[0]
	if of.Op != method.OpCompare || of.Symbol != "in" {
		w.says("not")
		w.bracketed(of)
		return
	}
	w.bare(func() { w.at(of.Args[0], sum) })
	if len(of.Args[1].Args) == 1 {
		w.says("is not")
	} else {
		w.says("is neither")
	}
	w.list(of.Args[1], "nor")
}

// cases writes a case distinction as a brace with one row a case.
func (w *writer) cases(n *method.Node) {
	w.reduced(func() { w.caseRows(n) })
}

func (w *writer) caseRows(n *method.Node) {
	w.put(`<mrow><mo stretchy="true" form="prefix">{</mo><mtable class="cases">`)
	for _, c := range n.Cases() {
		w.put("<mtr><mtd>")
		w.row(c.Then)
		w.put("</mtd><mtd>")
		if c.If == nil {
			w.says("otherwise")
		} else {
			w.says("if")
			w.at(c.If, either)
		}
		w.put("</mtd></mtr>")
	}
	w.put("</mtable></mrow>")
}

func (w *writer) call(n *method.Node) {
	if n.Op == method.OpCall {
		switch n.Symbol {
		case "clamp":
			n = n.Clamped()
		case "abs":
			w.fenced("|", n.Args[0], "|")
			return
		case "floor":
			w.fenced("⌊", n.Args[0], "⌋")
			return
		case "ceil":
			w.fenced("⌈", n.Args[0], "⌉")
			return
		case "cbrt":
			w.put("<mroot>")
			w.one(n.Args[0], loose)
			w.put("<mn>3</mn></mroot>")
			return
		}
	}
	degrees := w.name(n)
	w.put("<mo>\u2061</mo><mrow><mo>(</mo>")
	for i, a := range n.Args {
		if i > 0 {
			w.sign(",")
		}
		if degrees && w.look != nil && !single(a) {
			w.bracketed(a)
			w.put(`<mtext class="unit">°</mtext>`)
			continue
		}
		w.row(a)
		if first, _ := utf8.DecodeRuneInString(w.shownOf(a)); degrees && unicode.IsDigit(first) {
			w.put(`<mtext class="unit">°</mtext>`)
		}
	}
	w.put("<mo>)</mo></mrow>")
}

func (w *writer) shownOf(n *method.Node) string {
	if !single(n) {
		return ""
	}
	return w.shown(n)
}

// name writes the name of a function or of a table; degrees says that its argument is an angle.
func (w *writer) name(n *method.Node) (degrees bool) {
	switch {
	case n.Op == method.OpTable:
		w.table(n.Symbol)
	case n.Symbol == "log10":
		w.put("<msub><mi>log</mi><mn>10</mn></msub>")
	default:
		var name string
		name, degrees = method.FunctionName(n.Symbol)
		w.element("mi", name)
	}
	return degrees
}

// table writes the name of a table: like a symbol where it is one, K_DC, and in words where it is words, design_category.
func (w *writer) table(name string) {
	letter, below := method.Letters(name)
	if len([]rune(letter)) > 3 && len(below) > 0 {
		w.element("mtext", strings.ReplaceAll(name, "_", " "))
		return
	}
	w.symbol(name, nil)
}

func (w *writer) fenced(left string, n *method.Node, right string) {
	w.put("<mrow>")
	w.put(`<mo stretchy="true" form="prefix">` + left + `</mo>`)
	w.row(n)
	w.put(`<mo stretchy="true" form="postfix">` + right + `</mo>`)
	w.put("</mrow>")
}
