package method

import (
	"fmt"
	"strconv"
)

// kind is what a part of a formula is.
type kind string

const (
	number kind = "a number"
	word   kind = "a word"
	truth  kind = "a condition"
)

// symbol is what a scope knows about one of its symbols.
type symbol struct {
	name  string
	unit  string
	kind  kind
	words []string // the words it can be; nil where any word can come
	slot  int
	own   bool // of this scope, not of one above
	line  int
}

// kinds checks that numbers, words and conditions stand where they can. The empty kind is that of a symbol whose own
// formula is at fault: it passes everywhere, so that one fault is not told twice.
type kinds struct{}

// of gives the kind of a part of a formula.
func (k kinds) of(n *Node) (kind, *slip) {
	switch n.Op {
	case OpNumber:
		return number, nil
	case OpWord:
		return word, nil
	case OpSymbol:
		return n.means.kind, nil
	case OpList:
		return "", &slip{n.at, "a list of words may stand only after in", ""}
	case OpCompare:
		return truth, k.compared(n)
	case OpAnd, OpOr:
		return truth, k.all(n, truth)
	case OpNot:
		return truth, k.denied(n)
	case OpCases:
		return k.cases(n)
	case OpTable:
		if n.table.Words != nil {
			return number, k.rows(n)
		}
	}
	return number, k.all(n, number)
}

// all checks that every argument is of one kind.
func (k kinds) all(n *Node, want kind) *slip {
	for _, a := range n.Args {
		if wrong := k.is(a, want); wrong != nil {
			return wrong
		}
	}
	return nil
}

// denied checks "not", which binds more firmly than a comparison.
func (k kinds) denied(n *Node) *slip {
	wrong := k.is(n.Args[0], truth)
	if wrong != nil && wrong.hint == "" {
		wrong.hint = "put what not denies in brackets: not (a > b)"
	}
	return wrong
}

func (k kinds) is(n *Node, want kind) *slip {
	got, wrong := k.of(n)
	if wrong == nil && got != want && got != "" && want != "" {
		wrong = &slip{n.at, fmt.Sprintf("%s is %s, here must stand %s", clip(n.String()), got, want), ""}
	}
	return wrong
}

func (k kinds) compared(n *Node) *slip {
	a, b := n.Args[0], n.Args[1]
	if n.Symbol == "in" {
		return k.among(n)
	}
	left, wrong := k.of(a)
	switch {
	case wrong != nil:
		return wrong
	case left == number || left == "":
		return k.is(b, left)
	case left == truth || n.Symbol != "==" && n.Symbol != "!=":
		return &slip{a.at, fmt.Sprintf("%s is %s and cannot be compared so", clip(a.String()), left), ""}
	}
	if wrong := k.is(b, word); wrong != nil {
		return wrong
	}
	if wrong := k.possible(a, []*Node{b}); wrong != nil {
		return wrong
	}
	return k.possible(b, []*Node{a})
}

// among checks "value in [words]".
func (k kinds) among(n *Node) *slip {
	value, list := n.Args[0], n.Args[1]
	if list.Op != OpList {
		return &slip{n.at, "after in must stand a list of words", `write category in ["A", "B"]`}
	}
	if wrong := k.is(value, word); wrong != nil {
		return wrong
	}
	return k.possible(value, list.Args)
}

// possible refuses a comparison with a word that the value can never be.
func (k kinds) possible(value *Node, with []*Node) *slip {
	can := k.wordsOf(value)
	if can == nil || value.Op == OpWord {
		return nil
	}
	for _, w := range with {
		if w.Op == OpWord && !holds(can, w.Word) {
			return &slip{w.at, fmt.Sprintf("%s is never %s", clip(value.String()), strconv.Quote(clip(w.Word))), didYouMean(w.Word, can)}
		}
	}
	return nil
}

// wordsOf lists the words that a part of a formula can be, nil where that cannot be told.
func (k kinds) wordsOf(n *Node) []string {
	switch n.Op {
	case OpWord:
		return []string{n.Word}
	case OpSymbol:
		return n.means.words
	case OpCases:
		a, b := k.wordsOf(n.Args[1]), k.wordsOf(n.Args[2])
		if a == nil || b == nil {
			return nil
		}
		return append(append([]string(nil), a...), b...)
	}
	return nil
}

func (k kinds) cases(n *Node) (kind, *slip) {
	if wrong := k.is(n.Args[0], truth); wrong != nil {
		return "", wrong
	}
	first, wrong := k.of(n.Args[1])
	if wrong != nil {
		return "", wrong
	}
	return first, k.is(n.Args[2], first)
}

// rows checks the value with which a table of words is read.
func (k kinds) rows(n *Node) *slip {
	if wrong := k.is(n.Args[0], word); wrong != nil {
		return wrong
	}
	for _, w := range k.wordsOf(n.Args[0]) {
		if n.Args[0].Op == OpWord && !holds(n.table.Words, w) {
			return &slip{n.Args[0].at, fmt.Sprintf("table %s has no row %s", n.table.Name, strconv.Quote(clip(w))), didYouMean(w, n.table.Words)}
		}
	}
	return nil
}

func holds(all []string, word string) bool {
	for _, w := range all {
		if w == word {
			return true
		}
	}
	return false
}
