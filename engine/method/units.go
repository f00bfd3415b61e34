package method

import "fmt"

// units is the light check of units: it looks only where two named quantities are added, subtracted, compared or chosen
// between, because the constants of rule formulas carry units that nobody wrote down.
type units struct{}

// of gives the unit of a part of a formula where it is plain; empty where it cannot be told.
func (u units) of(n *Node) (string, *slip) {
	switch n.Op {
	case OpSymbol:
		return n.means.unit, nil
	case OpAdd, OpSub:
		unit, all, wrong := u.same(n, n.Args)
		if !all { // a constant or a product beside it may carry any unit
			unit = ""
		}
		return unit, wrong
	case OpCompare:
		_, _, wrong := u.same(n, n.Args)
		return "", wrong
	case OpNeg:
		return u.of(n.Args[0])
	case OpCases:
		if _, wrong := u.of(n.Args[0]); wrong != nil {
			return "", wrong
		}
		unit, _, wrong := u.same(n, n.Args[1:])
		return unit, wrong
	case OpCall:
		switch n.Symbol {
		case "min", "max", "clamp", "abs":
			unit, _, wrong := u.same(n, n.Args)
			return unit, wrong
		}
	}
	for _, a := range n.Args {
		if _, wrong := u.of(a); wrong != nil {
			return "", wrong
		}
	}
	return "", nil
}

// same checks that all parts whose unit is plain have the same one; all says that every part has.
func (u units) same(n *Node, parts []*Node) (unit string, all bool, wrong *slip) {
	of := ""
	all = true
	for _, part := range parts {
		got, wrong := u.of(part)
		switch {
		case wrong != nil:
			return "", false, wrong
		case got == "":
			all = false
		case unit == "":
			unit, of = got, part.String()
		case got != unit:
			return "", false, &slip{n.at, fmt.Sprintf("%s in %s and %s in %s stand together", clip(of), unit, clip(part.String()), got), "turn one into the unit of the other"}
		}
	}
	return unit, all, nil
}
