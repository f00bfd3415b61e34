package mathml

import (
	"strings"
	"unicode"
	"unicode/utf8"

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
	case method.OpNumber, method.OpSymbol:
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
	if s := w.value(n); s != nil {
		return s.Number()
	}
	return ""
}

// value finds what is put in for a symbol, nil where the symbol stays.
func (w *writer) value(n *method.Node) *method.Shown {
	if w.look == nil {
		return nil
	}
	if s, ok := w.look(n.Symbol); ok && s.Figure() != "" {
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
		w.numeral(s.Number())
	}
}

func (w *writer) sum(n *method.Node) {
	sign, least := "+", sum
	if n.Op == method.OpSub {
		sign, least = "−", times
	}
	if w.binds(n.Args[1]) == minus {
		least = times
	}
	w.at(n.Args[0], sum)
	w.sign(sign)
	w.at(n.Args[1], least)
}

// product writes factors beside each other, with × before a factor that begins with a digit.
func (w *writer) product(n *method.Node) {
	for i, f := range factors(n, nil) {
		least := shut
		if f.Op == method.OpNumber || f.Op == method.OpSymbol {
			least = times
		}
		switch {
		case i == 0:
		case w.binds(f) >= least && w.digitFirst(f):
			w.sign("×")
		default:
			w.put("<mo>\u2062</mo>")
		}
		w.at(f, least)
	}
}

func factors(n *method.Node, into []*method.Node) []*method.Node {
	if n.Op != method.OpMul {
		return append(into, n)
	}
	return factors(n.Args[1], factors(n.Args[0], into))
}

// digitFirst reports whether the first thing that a reader sees of a part is a digit.
func (w *writer) digitFirst(n *method.Node) bool {
	switch n.Op {
	case method.OpNumber, method.OpSymbol:
		first, _ := utf8.DecodeRuneInString(w.shown(n))
		return unicode.IsDigit(first)
	case method.OpDiv, method.OpMul, method.OpAdd, method.OpSub:
		return w.digitFirst(n.Args[0])
	case method.OpPow:
		return w.binds(n.Args[0]) == atom && w.digitFirst(n.Args[0])
	}
	return false
}

// onLine reports whether a quotient stands so small that it reads better as a/b on the line, and is simple enough for that.
func (w *writer) onLine(n *method.Node) bool {
	return w.small && flat(n.Args[0]) && flat(n.Args[1])
}

// flat reports whether a part is one number or symbol, its root or power, or a product of such.
func flat(n *method.Node) bool {
	switch n.Op {
	case method.OpMul:
		return flat(n.Args[0]) && flat(n.Args[1])
	case method.OpPow:
		return single(n.Args[0]) && single(n.Args[1])
	case method.OpRoot:
		return single(n.Args[0])
	}
	return single(n)
}

func single(n *method.Node) bool {
	return n.Op == method.OpNumber || n.Op == method.OpSymbol
}

func (w *writer) fraction(n *method.Node) {
	if w.onLine(n) {
		w.at(n.Args[0], times)
		w.sign("/")
		w.at(n.Args[1], shut)
		return
	}
	w.put("<mfrac>")
	w.reduced(func() {
		w.one(n.Args[0], loose)
		w.one(n.Args[1], loose)
	})
	w.put("</mfrac>")
}

// reduced writes something that stands small.
func (w *writer) reduced(body func()) {
	before := w.small
	w.small = true
	body()
	w.small = before
}

func (w *writer) power(n *method.Node) {
	base := n.Args[0]
	exponent := func() { w.reduced(func() { w.one(n.Args[1], loose) }) }
	if base.Op == method.OpSymbol && w.value(base) == nil {
		w.symbol(base.Symbol, exponent)
		return
	}
	w.put("<msup>")
	w.one(base, atom)
	exponent()
	w.put("</msup>")
}
