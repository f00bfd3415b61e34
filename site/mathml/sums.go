package mathml

import (
	"unicode"
	"unicode/utf8"

	"hullfile/engine/method"
)

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
		if single(f) || f.Op == method.OpTable {
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
	case method.OpNumber, method.OpSymbol, method.OpTable:
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
