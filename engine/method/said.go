package method

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

// comparison writes a comparison of numbers with its sign and one of words in words. Words are not put in for symbols
// there: "zone is side" can be read, "bottom is side" cannot.
func (p *printer) comparison(n *Node) piece {
	if n.Args[0].IsWord() {
		return (&printer{}).saying(n)
	}
	a := p.at(n.Args[0], sum)
	return piece{a + " " + Sign(n.Symbol) + " " + p.at(n.Args[1], sum), held}
}

func (p *printer) saying(n *Node) piece {
	a := p.at(n.Args[0], sum)
	switch n.Symbol {
	case "in":
		return piece{a + " is " + p.words(n.Args[1], "or"), held}
	case "==":
		return piece{a + " is " + p.at(n.Args[1], sum), held}
	}
	return piece{a + " is not " + p.at(n.Args[1], sum), held}
}

// Sign gives the sign of a comparison as it is written by hand.
func Sign(symbol string) string {
	switch symbol {
	case "<=":
		return "≤"
	case ">=":
		return "≥"
	case "!=":
		return "≠"
	case "==":
		return "="
	}
	return symbol
}

func (p *printer) words(list *Node, last string) string {
	var all []string
	for _, w := range list.Args {
		all = append(all, quoted(w.Word))
	}
	return listed(all, last)
}

// denial writes "not", and "is neither A nor B" for words.
func (p *printer) denial(n *Node) piece {
	of := n.Args[0]
	if of.Op == OpCompare && of.Args[0].IsWord() {
		p = &printer{}
	}
	switch {
	case of.Op == OpCompare && of.Symbol == "in" && len(of.Args[1].Args) == 1:
		return piece{p.at(of.Args[0], sum) + " is not " + p.words(of.Args[1], "or"), held}
	case of.Op == OpCompare && of.Symbol == "in":
		return piece{p.at(of.Args[0], sum) + " is neither " + p.words(of.Args[1], "nor"), held}
	}
	return piece{"not (" + p.piece(of).text + ")", denied}
}

func (p *printer) cases(n *Node) piece {
	var rows []string
	for _, c := range n.Cases() {
		if c.If == nil {
			rows = append(rows, "otherwise "+p.at(c.Then, either))
			continue
		}
		rows = append(rows, p.at(c.Then, either)+" if "+p.at(c.If, either))
	}
	return piece{strings.Join(rows, ", "), loose}
}

func (p *printer) call(n *Node) piece {
	if n.Symbol == "clamp" {
		return p.call(n.Clamped())
	}
	name, degrees := FunctionName(n.Symbol)
	var args []string
	for _, a := range n.Args {
		arg := p.piece(a)
		if first, _ := utf8.DecodeRuneInString(arg.text); degrees && arg.single() && unicode.IsDigit(first) {
			arg.text += "°"
		}
		args = append(args, arg.at(either)) // the comma of a case distinction is not one of the list
	}
	return piece{name + "(" + strings.Join(args, ", ") + ")", atom}
}

// Clamped writes clamp(x, least, most) with functions that every reader knows: max(least, min(x, most)).
func (n *Node) Clamped() *Node {
	inner := &Node{Op: OpCall, Symbol: "min", Args: []*Node{n.Args[0], n.Args[2]}}
	return &Node{Op: OpCall, Symbol: "max", Args: []*Node{n.Args[1], inner}}
}

// FunctionName gives a function as it is written by hand; degrees says that its argument is an angle in degrees.
func FunctionName(symbol string) (name string, degrees bool) {
	switch symbol {
	case "sind", "cosd", "tand":
		return strings.TrimSuffix(symbol, "d"), true
	case "asind", "acosd", "atand":
		return "arc" + strings.TrimSuffix(symbol[1:], "d"), false
	}
	return symbol, false
}
