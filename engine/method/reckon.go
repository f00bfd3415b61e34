package method

import (
	"math"
	"slices"
	"sort"
)

// reckoner evaluates formulas, each part only where it is needed: the branch of a ternary that is not taken, and the
// side of and / or that cannot change the outcome, may lack their values. It walks the very tree that is shown.
//
// Each method gives ok false where a value that is needed is not there, or where a part has no finite value; then
// broken is that part.
type reckoner struct {
	scope  *Scope
	all    []*Shown // by slot
	used   []bool   // by slot: looked at since the last reset
	seen   []int    // the slots looked at, in that order
	broken *Node    // first part without a finite value
	beyond []*Node  // tables that were read past their ends
	tables []*Table // tables that were read
	rows   []float64
}

func (r *reckoner) reset() {
	for _, slot := range r.seen {
		r.used[slot] = false
	}
	r.seen = r.seen[:0]
	r.broken, r.beyond, r.tables = nil, r.beyond[:0], r.tables[:0]
}

// number gives the value of a part that is a number.
func (r *reckoner) number(n *Node) (v float64, ok bool) {
	switch n.Op {
	case OpNumber:
		return n.Number, true
	case OpSymbol:
		s := r.see(n)
		return s.Value, s.usable()
	case OpCases:
		holds, ok := r.truth(n.Args[0])
		switch {
		case !ok:
			return 0, false
		case holds:
			return r.number(n.Args[1])
		}
		return r.number(n.Args[2])
	case OpTable:
		return r.row(n)
	case OpCall, OpRoot:
		return r.called(n)
	case OpNeg:
		v, ok := r.number(n.Args[0])
		return -v, ok
	}
	return r.two(n)
}

// two gives the value of an operation on two numbers. Both are looked at, so that all that is missing can be named.
func (r *reckoner) two(n *Node) (v float64, ok bool) {
	a, left := r.number(n.Args[0])
	b, right := r.number(n.Args[1])
	if !left || !right {
		return 0, false
	}
	switch n.Op {
	case OpAdd:
		v = a + b
	case OpSub:
		v = a - b
	case OpMul:
		v = a * b
	case OpDiv:
		v = a / b
	case OpPow:
		v = math.Pow(a, b)
	}
	return r.finite(n, v)
}

func (r *reckoner) finite(n *Node, v float64) (float64, bool) {
	if math.IsNaN(v) || math.IsInf(v, 0) {
		if r.broken == nil {
			r.broken = n
		}
		return 0, false
	}
	return v, true
}

func (r *reckoner) called(n *Node) (float64, bool) {
	start, all := len(r.rows), true
	for _, a := range n.Args {
		v, ok := r.number(a)
		all = all && ok
		r.rows = append(r.rows, v)
	}
	args := r.rows[start:]
	r.rows = r.rows[:start]
	if !all {
		return 0, false
	}
	return r.finite(n, n.call(args))
}

func (r *reckoner) see(n *Node) *Shown {
	if !r.used[n.slot] {
		r.used[n.slot] = true
		r.seen = append(r.seen, n.slot)
	}
	return r.all[n.slot]
}

// row reads a table. Past the ends of a table of numbers the last value is held and the reading marked.
func (r *reckoner) row(n *Node) (float64, bool) {
	t := n.table
	if !slices.Contains(r.tables, t) {
		r.tables = append(r.tables, t)
	}
	if t.Words != nil {
		w, ok := r.word(n.Args[0])
		i := slices.Index(t.Words, w)
		switch {
		case !ok:
			return 0, false
		case i < 0:
			return r.finite(n, math.NaN())
		}
		return t.Y[i], true
	}
	x, ok := r.number(n.Args[0])
	if !ok {
		return 0, false
	}
	v, inside := t.at(x)
	if !inside {
		r.beyond = append(r.beyond, n)
	}
	return v, true
}

// at reads a table of numbers at x: by the last row that is not above it, or by straight line between two rows. inside
// is false where x lies before the first row, or past the last row of an interpolated table; the end value is given then.
func (t *Table) at(x float64) (y float64, inside bool) {
	last := len(t.X) - 1
	switch {
	case x < t.X[0]:
		return t.Y[0], false
	case x >= t.X[last]:
		return t.Y[last], t.Step || x == t.X[last]
	}
	i := sort.SearchFloat64s(t.X, x)
	if t.X[i] == x {
		return t.Y[i], true
	}
	if t.Step {
		return t.Y[i-1], true
	}
	part := (x - t.X[i-1]) / (t.X[i] - t.X[i-1])
	return t.Y[i-1] + float64(part*(t.Y[i]-t.Y[i-1])), true
}

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
		return s.Word, s.usable()
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

func (s *Shown) usable() bool { return s.State == Sound || s.State == Outside }
