package method

import "math"

// hair is the part of its greatest term below which a sum is nought: what a search that stops at a thousand-millionth, and the
// last bits of a number, leave where terms cancel.
const hair = 1e-9

// cancels is the remark on the first such result of a working.
const cancels = "0 stands for what is left where terms cancel: less than a thousand-millionth of the greatest of them, which is rounding"

// residue reports whether a value is what rounding left of a sum whose terms cancel.
func (r *reckoner) residue(n *Node, v float64) bool {
	if v == 0 || math.Abs(v) > 1e-3 || n.Op != OpAdd && n.Op != OpSub { // the second only spares the terms of most
		return false
	}
	return math.Abs(v) <= hair*r.greatestTerm(n)
}

func (r *reckoner) greatestTerm(n *Node) float64 {
	switch n.Op {
	case OpAdd, OpSub:
		return math.Max(r.greatestTerm(n.Args[0]), r.greatestTerm(n.Args[1]))
	case OpNeg:
		return r.greatestTerm(n.Args[0])
	}
	v, _ := r.number(n)
	return math.Abs(v)
}

// tell marks such a result, and says why once in a working.
func (r *reckoner) tell(out *Shown) {
	out.nought = true
	if r.told {
		return
	}
	r.told, out.remark = true, true
}

// Remark is what is to be said beside a result because of the values that went in: of the first of a working that is nought
// but for rounding, that it is so.
func (s *Shown) Remark() string {
	if s.remark {
		return cancels
	}
	return ""
}
