package method

import "math"

// reckoner evaluates formulas, each part only where it is needed: the branch of a ternary that is not taken, and the
// side of and / or that cannot change the outcome, may lack their values. It walks the very tree that is shown.
//
// Each method gives ok false where a value that is needed is not there, or where a part has no finite value; then
// broken is that part.
type reckoner struct {
	scope  *Scope
	of     *Working // whose results they are; nil where sentences are told at once
	cells  []cell   // by slot: what formulas see
	all    []*Shown // by slot: what sentences tell; nil on a slate
	used   []bool   // by slot: looked at since the last reset
	seen   []int    // the slots looked at, in that order
	broken *Node    // first part without a finite value
	beyond []*Node  // tables that were read past their ends
	tables []*Table // tables that were read
	rows   []float64
	silent bool // no sentences are wanted
	told   bool // that something is nought but for rounding
	bare   bool // nor basis, causes or what was looked at: numbers alone

	outside bool // something that a bare reckoner looked at lies outside a range
}

// cell is a value as formulas see it.
type cell struct {
	value   float64
	word    string
	usable  bool
	outside bool
	none    bool // no step for it holds; what needs it is missing
}

// cell is what formulas see of a result.
func (s *Shown) cell() cell {
	return cell{value: s.Value, word: s.Word, usable: s.usable(), outside: s.State == Outside, none: s.State == NotSet}
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
		return s.value, s.usable
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

func (r *reckoner) see(n *Node) *cell {
	c := &r.cells[n.slot]
	switch {
	case r.bare:
		r.outside = r.outside || c.outside
	case !r.used[n.slot]:
		r.used[n.slot] = true
		r.seen = append(r.seen, n.slot)
	}
	return c
}

func (s *Shown) usable() bool { return s.State == Sound || s.State == Outside }
