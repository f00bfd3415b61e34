package method

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"

	"hullfile/engine/unit"
)

// String gives the formula in plain text as it would be written by hand: t is not part of it, products stand beside
// each other, and brackets only where they are needed: "b k_C √(P k_2 / (1000 σ_d))".
func (f *Formula) String() string {
	if f == nil {
		return ""
	}
	return f.Root.String()
}

// With gives the same text with the values of the symbols put in. A symbol that look does not know, or that has no value,
// stays as it is.
func (f *Formula) With(look func(symbol string) (*Shown, bool)) string {
	if f == nil {
		return ""
	}
	return (&printer{look}).piece(f.Root).text
}

// String gives one part of a formula in plain text.
func (n *Node) String() string { return (&printer{}).piece(n).text }

// binds is how firmly a piece of text holds together; a piece needs brackets where something firmer is asked for.
type binds int

const (
	loose  binds = iota // a if b, otherwise c
	either              // or
	both                // and
	denied              // not
	held                // comparison
	sum                 // a + b
	minus               // −a
	times               // a b
	over                // a / b
	rooted              // √a
	raised              // a²
	atom                // a, 3, f(x), (…)
)

type piece struct {
	text  string
	binds binds
}

// printer writes a formula, with values where look gives them.
type printer struct {
	look func(symbol string) (*Shown, bool)
}

func (p *printer) piece(n *Node) piece {
	switch n.Op {
	case OpNumber:
		return numeral(RawNumber(n.Raw))
	case OpWord:
		return piece{quoted(n.Word), atom}
	case OpSymbol:
		return p.symbol(n)
	case OpAdd, OpSub:
		return p.sum(n)
	case OpMul:
		return p.product(n)
	case OpDiv:
		return p.fraction(n)
	case OpPow:
		return p.power(n)
	case OpNeg:
		return piece{"−" + p.at(n.Args[0], times), minus}
	case OpRoot:
		return p.root(n)
	case OpCompare:
		return p.comparison(n)
	case OpAnd:
		return piece{p.at(n.Args[0], both) + " and " + p.at(n.Args[1], both), both}
	case OpOr:
		return piece{p.at(n.Args[0], either) + " or " + p.at(n.Args[1], either), either}
	case OpNot:
		return p.denial(n)
	case OpCases:
		return p.cases(n)
	}
	return p.call(n)
}

// at writes a part that must hold together at least so firmly.
func (p *printer) at(n *Node, least binds) string { return p.piece(n).at(least) }

func (x piece) at(least binds) string {
	if x.binds < least {
		return "(" + x.text + ")"
	}
	return x.text
}

func (p *printer) symbol(n *Node) piece {
	if p.look != nil {
		if s, ok := p.look(n.Symbol); ok && s.usable() {
			if s.IsWord {
				return piece{quoted(s.Word), atom}
			}
			return numeral(s.Number())
		}
	}
	return piece{Written(n.Symbol), atom}
}

// numeral is a number as text; a minus sign or a power of ten makes it hold together less firmly.
func numeral(text string) piece {
	switch {
	case strings.HasPrefix(text, "−"):
		return piece{text, minus}
	case strings.ContainsAny(text, "×⁻⁰¹²³⁴⁵⁶⁷⁸⁹"):
		return piece{text, times}
	}
	return piece{text, atom}
}

// RawNumber gives a number as it stands in the sheet for people: 1e-6 becomes 10⁻⁶ and 2.5e3 becomes 2.5×10³.
func RawNumber(raw string) string {
	mantissa, exponent, has := strings.Cut(strings.ToLower(raw), "e")
	if strings.HasPrefix(mantissa, ".") {
		mantissa = "0" + mantissa
	}
	mantissa = strings.TrimSuffix(mantissa, ".")
	if !has {
		return mantissa
	}
	power, err := strconv.Atoi(exponent)
	switch {
	case err != nil:
		return raw
	case mantissa == "1":
		return unit.TenTo(power)
	}
	return mantissa + "×" + unit.TenTo(power)
}

// quoted gives a word bare where it reads as one, else in quotes.
func quoted(w string) string {
	bare := w != "" && strings.IndexFunc(w, func(r rune) bool { return !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != '-' }) < 0
	if bare {
		return w
	}
	return strconv.Quote(w)
}

func (p *printer) sum(n *Node) piece {
	sign, least := " + ", sum
	if n.Op == OpSub {
		sign, least = " − ", times
	}
	right := p.piece(n.Args[1])
	if right.binds == minus {
		least = times
	}
	return piece{p.at(n.Args[0], sum) + sign + right.at(least), sum}
}

// product writes factors beside each other, with a sign before a factor that begins with a digit.
func (p *printer) product(n *Node) piece {
	var text strings.Builder
	for i, f := range factors(n, nil) {
		next := p.piece(f)
		least := rooted
		if next.binds == times { // a power of ten, which reads well beside other factors
			least = times
		}
		s := next.at(least)
		switch first, _ := utf8.DecodeRuneInString(s); {
		case i == 0:
		case unicode.IsDigit(first):
			text.WriteString(" × ")
		default:
			text.WriteByte(' ')
		}
		text.WriteString(s)
	}
	return piece{text.String(), times}
}

func factors(n *Node, into []*Node) []*Node {
	if n.Op != OpMul {
		return append(into, n)
	}
	return factors(n.Args[1], factors(n.Args[0], into))
}

// fraction writes a/b close where both are single, and a / b with its brackets elsewhere.
func (p *printer) fraction(n *Node) piece {
	a, b := p.piece(n.Args[0]), p.piece(n.Args[1])
	sign := " / "
	if a.single() && b.single() {
		sign = "/"
	}
	switch {
	case n.Args[0].Op == OpDiv:
		return piece{"(" + a.text + ")" + sign + b.at(rooted), over}
	case a.binds == minus:
		return piece{a.text + sign + b.at(rooted), minus}
	}
	return piece{a.at(times) + sign + b.at(rooted), over}
}

func (x piece) single() bool { return x.binds == atom && !strings.ContainsAny(x.text, "(\u00a0") }

func (p *printer) power(n *Node) piece {
	base := p.at(n.Args[0], atom)
	if e := n.Args[1]; e.Op == OpNumber && len(e.Raw) <= 2 && strings.Trim(e.Raw, "0123456789") == "" {
		return piece{base + unit.Raised(e.Raw), raised}
	}
	return piece{base + "^" + p.at(n.Args[1], atom), raised}
}

func (p *printer) root(n *Node) piece {
	of := p.piece(n.Args[0])
	if of.single() {
		return piece{"√" + of.text, rooted}
	}
	return piece{"√(" + of.text + ")", rooted}
}
