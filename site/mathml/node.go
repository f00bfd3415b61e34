package mathml

import (
	"strings"

	"hullfile/engine/method"
)

// binds is how firmly a part holds together; a part needs brackets where something firmer is asked for.
type binds int

const (
	loose binds = iota // case distinctions
	either
	both
	denied
	held  // comparisons
	sum   // a + b
	minus // −a
	times // products, quotients on the line
	shut  // fractions, roots, powers
	atom
)

// binds says how firmly a part holds together once its values are put in.
func (w *writer) binds(n *method.Node) binds {
	switch n.Op {
	case method.OpNumber, method.OpSymbol, method.OpTable:
		return numeralBinds(w.shown(n))
	case method.OpCases:
		return loose
	case method.OpOr:
		return either
	case method.OpAnd:
		return both
	case method.OpNot:
		return denied
	case method.OpCompare:
		return held
	case method.OpAdd, method.OpSub:
		return sum
	case method.OpNeg:
		return minus
	case method.OpMul:
		return times
	case method.OpDiv:
		if w.onLine(n) {
			return times
		}
		return shut
	case method.OpRoot, method.OpPow:
		return shut
	}
	return atom
}

func numeralBinds(text string) binds {
	switch {
	case strings.HasPrefix(text, "−"):
		return minus
	case strings.ContainsAny(text, "⁻⁰¹²³⁴⁵⁶⁷⁸⁹"):
		return times
	}
	return atom
}

// shown is the number that stands for a part, empty where its symbol stands.
func (w *writer) shown(n *method.Node) string {
	if n.Op == method.OpNumber {
		return method.RawNumber(n.Raw)
	}
	if n.Op == method.OpTable {
		return w.reading(n)
	}
	if s := w.value(n); s != nil {
		return w.numberOf(s)
	}
	return ""
}

// reading is the number that is put in for a table. A formula that is nothing but a table keeps its name and its row: the
// number stands beside it as the result.
func (w *writer) reading(n *method.Node) string {
	if w.look == nil || n == w.root {
		return ""
	}
	return n.Reads(w.look)
}

// value finds what is put in for a symbol, nil where the symbol stays.
func (w *writer) value(n *method.Node) *method.Shown {
	if w.look == nil {
		return nil
	}
	if s, ok := w.look(n.Symbol); ok && s.HasFigure() {
		return s
	}
	return nil
}

// at writes a part, in brackets where it does not hold together firmly enough.
func (w *writer) at(n *method.Node, least binds) {
	if w.binds(n) < least {
		w.bracketed(n)
		return
	}
	w.row(n)
}

func (w *writer) bracketed(n *method.Node) {
	w.put("<mrow><mo>(</mo>")
	w.row(n)
	w.put("<mo>)</mo></mrow>")
}

// one writes a part as a single element.
func (w *writer) one(n *method.Node, least binds) {
	if w.binds(n) < least {
		w.bracketed(n)
		return
	}
	if w.whole(n) {
		w.row(n)
		return
	}
	w.put("<mrow>")
	w.row(n)
	w.put("</mrow>")
}

// whole reports whether row writes a part as a single element by itself.
func (w *writer) whole(n *method.Node) bool {
	switch n.Op {
	case method.OpNumber, method.OpSymbol, method.OpWord, method.OpPow, method.OpRoot, method.OpCases:
		return true
	case method.OpTable:
		return w.shown(n) != ""
	case method.OpDiv:
		return !w.onLine(n)
	}
	return false
}

// row writes a part as a run of elements.
func (w *writer) row(n *method.Node) {
	switch n.Op {
	case method.OpNumber:
		w.numeral(method.RawNumber(n.Raw))
	case method.OpWord:
		w.element("mtext", n.Word)
	case method.OpSymbol:
		w.valueOrSymbol(n)
	case method.OpAdd, method.OpSub:
		w.sum(n)
	case method.OpMul:
		w.product(n)
	case method.OpDiv:
		w.fraction(n)
	case method.OpPow:
		w.power(n)
	case method.OpNeg:
		w.sign("−")
		w.at(n.Args[0], times)
	case method.OpRoot:
		w.put("<msqrt>")
		w.row(n.Args[0])
		w.put("</msqrt>")
	case method.OpCompare:
		w.comparison(n)
	case method.OpAnd:
		w.joined(n, both, "and")
	case method.OpOr:
		w.joined(n, either, "or")
	case method.OpNot:
		w.denial(n)
	case method.OpCases:
		w.cases(n)
	case method.OpTable:
		if text := w.shown(n); text != "" {
			w.numeral(text)
			return
		}
		w.call(n)
	default:
		w.call(n)
	}
}

func (w *writer) valueOrSymbol(n *method.Node) {
	s := w.value(n)
	switch {
	case s == nil:
		w.symbol(n.Symbol, nil)
	case s.IsWord:
		w.element("mtext", s.Word)
	default:
		w.numeral(w.numberOf(s))
	}
}

// numberOf is the number of a value. It is asked for once to see how it holds together and once more to write it.
func (w *writer) numberOf(s *method.Shown) string {
	if s != w.last {
		w.last, w.text = s, s.Number()
	}
	return w.text
}
