package method

import (
	"slices"
	"strings"

	"hullfile/engine/unit"
)

// spoken writes a condition as one would say it, with the names of the sheet for its symbols: "centre of the panel above
// the loaded waterline is below 0 m". What is reckoned inside a comparison stays a formula, "c / b is above 0.18"; the
// values that stand behind it then name its symbols.
func (r *reckoner) spoken(n *Node) string {
	switch n.Op {
	case OpAnd:
		return r.clause(n.Args[0], OpOr) + " and " + r.clause(n.Args[1], OpOr)
	case OpOr:
		return r.spoken(n.Args[0]) + " or " + r.spoken(n.Args[1])
	case OpNot:
		return r.denied(n.Args[0])
	case OpCompare:
		return r.compared(n)
	}
	return n.String()
}

// clause puts brackets around a side of "and" in which "or" stands.
func (r *reckoner) clause(n *Node, loose Op) string {
	if n.Op == loose {
		return "(" + r.spoken(n) + ")"
	}
	return r.spoken(n)
}

func (r *reckoner) denied(n *Node) string {
	if n.Op == OpCompare && n.Symbol == "in" {
		last := "nor"
		if len(n.Args[1].Args) == 1 {
			return r.named(n.Args[0]) + " is not " + quoted(n.Args[1].Args[0].Word)
		}
		return r.named(n.Args[0]) + " is neither " + (&printer{}).words(n.Args[1], last)
	}
	return "not (" + r.spoken(n) + ")"
}

// saidAs gives the signs of comparisons in words.
var saidAs = map[string]string{"<": " is below ", "<=": " is at most ", ">": " is above ", ">=": " is at least ", "==": " is ", "!=": " is not "}

func (r *reckoner) compared(n *Node) string {
	a, b := n.Args[0], n.Args[1]
	if n.Symbol == "in" {
		return r.named(a) + " is " + (&printer{}).words(b, "or")
	}
	if b.Op == OpWord && (b.Word == "true" || b.Word == "false") {
		return r.named(a) + ": " + yesNo((b.Word == "true") == (n.Symbol == "=="))
	}
	return r.measure(a, b) + saidAs[n.Symbol] + r.measure(b, a)
}

func yesNo(v bool) string {
	if v {
		return "yes"
	}
	return "no"
}

// measure names one side of a comparison; a bare number takes the unit of what it is compared with.
func (r *reckoner) measure(n, with *Node) string {
	if n.Op == OpNumber && with.Op == OpSymbol {
		return joined(RawNumber(n.Raw), with.means.unit)
	}
	return r.named(n)
}

// named gives the name of a symbol, and anything else as a formula.
func (r *reckoner) named(n *Node) string {
	if n.Op == OpSymbol {
		if name := r.all[n.slot].Name; name != "" {
			return name
		}
	}
	return n.String()
}

// unmet gives the parts of a condition that do not hold: of "a and b" those of a and b that fail, else the whole.
func (r *reckoner) unmet(n *Node, into []*Node) []*Node {
	if n.Op == OpAnd {
		return r.unmet(n.Args[1], r.unmet(n.Args[0], into))
	}
	if holds, ok := r.truth(n); ok && !holds {
		return append(into, n)
	}
	return into
}

// against says what holds instead of some conditions, each told once: "…; here it is 0.30 m".
func (r *reckoner) against(failed []*Node) string {
	var of []*symbol
	for _, n := range failed {
		of = n.gather(of)
	}
	if len(of) == 1 && allNames(failed) {
		if s := r.all[of[0].slot]; s.usable() {
			return "; here it is " + s.saying()
		}
	}
	if here := r.pair(failed); here != "" {
		return "; here " + here
	}
	if here := r.values(of, failed); here != "" {
		return "; here " + here
	}
	return ""
}

// pair gives the two values of one comparison of two symbols, in its order, so that long names are not told twice.
func (r *reckoner) pair(failed []*Node) string {
	if len(failed) != 1 || failed[0].Op != OpCompare || failed[0].Args[0].Op != OpSymbol || failed[0].Args[1].Op != OpSymbol {
		return ""
	}
	a, b := r.all[failed[0].Args[0].slot], r.all[failed[0].Args[1].slot]
	if !a.usable() || !b.usable() || a.IsWord || b.IsWord {
		return ""
	}
	return a.Figure() + " against " + b.Figure()
}

// allNames reports whether conditions name symbols alone and reckon nothing.
func allNames(all []*Node) bool {
	return !slices.ContainsFunc(all, func(n *Node) bool { return !speaksNames(n) })
}

func speaksNames(n *Node) bool {
	switch n.Op {
	case OpSymbol, OpNumber, OpWord, OpList:
		return true
	case OpCompare, OpAnd, OpOr, OpNot:
		return allNames(n.Args)
	}
	return false
}

// reckonedIn reports whether a symbol stands inside something that is reckoned, so that its letter is needed.
func reckonedIn(sym *symbol, all []*Node) bool {
	return slices.ContainsFunc(all, func(n *Node) bool {
		switch n.Op {
		case OpSymbol:
			return false
		case OpCompare, OpAnd, OpOr, OpNot:
			return reckonedIn(sym, n.Args)
		}
		return slices.Contains(n.gather(nil), sym)
	})
}

// saying gives a value for a sentence: yes and no for words that are true or false.
func (s *Shown) saying() string {
	if s.IsWord && (s.Word == "true" || s.Word == "false") {
		return yesNo(s.Word == "true")
	}
	return s.Figure()
}

// values lists symbols by their names with their values: "longer side of the panel is 900 mm". The letter stands beside
// the name where in, the conditions they come from, reckon with it; without conditions it always does.
func (r *reckoner) values(of []*symbol, in []*Node) string {
	var out []string
	for _, sym := range of {
		s := r.all[sym.slot]
		if !s.usable() {
			continue
		}
		name := s.Name
		switch {
		case name == "":
			name = Written(sym.name)
		case in == nil || reckonedIn(sym, in):
			name += " " + Written(sym.name)
		}
		link := " is "
		if s.IsWord && (s.Word == "true" || s.Word == "false") {
			link = ": "
		}
		out = append(out, name+link+s.saying())
	}
	return listed(out, "and")
}

// called gives the name of a symbol with its letter, for sentences about a result.
func (r *reckoner) calledBy(name string) string {
	if sym := r.scope.symbols[Written(name)]; sym != nil {
		if s := r.all[sym.slot]; s != nil && s.Name != "" {
			return s.Name + " " + Written(name)
		}
	}
	return Written(name)
}

// given names record values as the sheet does.
func (r *reckoner) given(keys []string) []string {
	out := make([]string, 0, len(keys))
	for _, key := range keys {
		name := key
		for _, s := range r.all {
			if s != nil && s.From == key && s.Name != "" {
				name = s.Name
				break
			}
		}
		out = append(out, name)
	}
	return out
}

// table says where a table ends, with the name of what it was asked for.
func (r *reckoner) ends(n *Node, x float64) string {
	t, what := n.table, n.Args[0].String()
	sign := ""
	if of := n.Args[0]; of.Op == OpSymbol {
		what, sign = r.calledBy(of.Symbol), of.means.unit
	}
	return what + " is " + joined(unit.Figures(x, 3), sign) + ", outside the table " + strings.ReplaceAll(t.Name, "_", " ") + ", which goes from " +
		unit.Plain(t.X[0]) + " to " + joined(unit.Plain(t.X[len(t.X)-1]), sign)
}
