package proof

import (
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// Cause says why a formula has no outside check.
type Cause string

// The causes, the gravest first.
const (
	Unread  Cause = "from memory, the text was not before us"
	Custom  Cause = "common practice, which no source prints"
	Theory  Cause = "theory or arithmetic, no published figure found"
	Figures Cause = "text read, no published figure found"
	Plain   Cause = "no figure of its own: adds, divides or picks other values"
	Yards   Cause = "the yard's own figure"
)

// Causes lists the causes in the order in which they are told.
func Causes() []Cause { return []Cause{Unread, Custom, Theory, Figures, Plain, Yards} }

// causeOf takes the cause from how the formula is known. A formula that has no figure of its own gives a source nothing to
// print; but where it is recalled or practice, that is the graver cause.
func causeOf(sheet *method.Sheet, st *method.Step) Cause {
	switch {
	case sheet.Yards, st.Basis == finding.Yard:
		return Yards
	case st.Basis == finding.Recalled:
		return Unread
	case st.Basis == finding.Practice:
		return Custom
	case plainly(st.Formula.Root):
		return Plain
	case st.Basis == finding.Read:
		return Figures
	}
	return Theory
}

// plainly reports whether a formula does no more than add, take away, multiply, divide or pick values of others. A power of
// ten only turns units.
func plainly(n *method.Node) bool {
	switch n.Op {
	case method.OpSymbol, method.OpWord:
		return true
	case method.OpNumber:
		return n.Number == 0 || math.Mod(math.Log10(n.Number), 1) == 0
	case method.OpAdd, method.OpSub, method.OpMul, method.OpDiv, method.OpNeg:
	case method.OpCall:
		if n.Symbol != "min" && n.Symbol != "max" {
			return false
		}
	default:
		return false
	}
	return !slices.ContainsFunc(n.Args, func(arg *method.Node) bool { return !plainly(arg) })
}

// Tally counts the formulas of one cause.
type Tally struct {
	Cause Cause
	N     int
}

// TallyOf counts formulas by cause, in the order of Causes; a cause that none has is left out.
func TallyOf(all []Untouched) []Tally {
	var out []Tally
	for _, cause := range Causes() {
		n := 0
		for i := range all {
			if all[i].Cause == cause {
				n++
			}
		}
		if n > 0 {
			out = append(out, Tally{cause, n})
		}
	}
	return out
}

// Lack is what one sheet lacks: its formulas without an outside check, and why.
type Lack struct {
	Method string
	All    []Untouched
	Reason Reason // empty if none is written
}

// BySheet gathers the formulas without an outside check by sheet, in the order of the sheets.
func (s *Sheet) BySheet() []Lack {
	var out []Lack
	for _, u := range s.Without {
		if n := len(out); n == 0 || out[n-1].Method != u.Method {
			out = append(out, Lack{Method: u.Method, Reason: s.reason(u.Method)})
		}
		last := &out[len(out)-1]
		last.All = append(last.All, u)
	}
	return out
}

// Kinds gathers formulas that stand in several scopes alike, so that each is told once.
func Kinds(all []Untouched) []Kind {
	var out []Kind
	at := map[[5]string]int{}
	for _, u := range all {
		key := [5]string{u.Method, u.Symbol, u.Name, u.When, u.Clause}
		n, known := at[key]
		if !known {
			n = len(out)
			at[key] = n
			out = append(out, Kind{Untouched: u})
		}
		if !slices.Contains(out[n].Scopes, u.Scope) {
			out[n].Scopes = append(out[n].Scopes, u.Scope)
		}
	}
	return out
}

// Kind is a formula with all the scopes in which it stands alike.
type Kind struct {
	Untouched
	Scopes []string
}
