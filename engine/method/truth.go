package method

import "slices"

// truth gives the value of a part that is a condition.
func (r *reckoner) truth(n *Node) (holds, ok bool) {
	switch n.Op {
	case OpNot:
		holds, ok = r.truth(n.Args[0])
		return !holds, ok
	case OpAnd, OpOr:
		return r.joined(n)
	case OpCases:
		first, ok := r.truth(n.Args[0])
		switch {
		case !ok:
			return false, false
		case first:
			return r.truth(n.Args[1])
		}
		return r.truth(n.Args[2])
	}
	if n.Args[0].IsWord() {
		return r.sameWord(n)
	}
	a, left := r.number(n.Args[0])
	b, right := r.number(n.Args[1])
	return compare(n.Symbol, a, b), left && right
}

// joined gives and / or. One side alone may settle it, whatever the other lacks.
func (r *reckoner) joined(n *Node) (holds, ok bool) {
	settles := n.Op == OpOr
	left, leftOK := r.truth(n.Args[0])
	if leftOK && left == settles {
		return settles, true
	}
	right, rightOK := r.truth(n.Args[1])
	if rightOK && right == settles {
		return settles, true
	}
	return !settles, leftOK && rightOK
}

func compare(sign string, a, b float64) bool {
	switch sign {
	case "<":
		return a < b
	case "<=":
		return a <= b
	case ">":
		return a > b
	case ">=":
		return a >= b
	case "!=":
		return a != b
	}
	return a == b
}

func (r *reckoner) sameWord(n *Node) (holds, ok bool) {
	w, left := r.word(n.Args[0])
	if n.Symbol == "in" {
		return slices.ContainsFunc(n.Args[1].Args, func(one *Node) bool { return one.Word == w }), left
	}
	other, right := r.word(n.Args[1])
	return (w == other) == (n.Symbol == "=="), left && right
}

// word gives the value of a part that is a word.
func (r *reckoner) word(n *Node) (w string, ok bool) {
	switch n.Op {
	case OpWord:
		return n.Word, true
	case OpSymbol:
		s := r.see(n)
		return s.word, s.usable
	}
	holds, ok := r.truth(n.Args[0])
	switch {
	case !ok:
		return "", false
	case holds:
		return r.word(n.Args[1])
	}
	return r.word(n.Args[2])
}

// IsWord reports whether a part of a formula is a word; kinds has checked that it is one thing in all its branches.
func (n *Node) IsWord() bool {
	switch n.Op {
	case OpWord:
		return true
	case OpSymbol:
		return n.means.kind == word
	case OpCases:
		return n.Args[1].IsWord()
	}
	return false
}
