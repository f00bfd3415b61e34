package method

import (
	"math"
	"strconv"
	"strings"

	"hullfile/engine/unit"
)

// needs says what is missing under a result: the record values that nobody wrote, then the results that are not there.
func (r *reckoner) needs(out *Shown) string {
	var parts []string
	if len(out.Lacks) > 0 {
		parts = append(parts, listed(out.Lacks, "and")+isAre(out.Lacks)+"not given")
	}
	for _, cause := range out.Causes {
		if s := r.all[r.scope.symbols[Written(cause)].slot]; len(s.Lacks) == 0 {
			parts = append(parts, "needs "+Written(cause)+": "+s.Why)
		}
	}
	return strings.Join(parts, "; ")
}

// lack says why a condition could not be told, as the end of a sentence.
func (r *reckoner) lack() string {
	var out Shown
	for _, slot := range r.seen {
		if from := r.all[slot]; !from.usable() {
			out.lack(from)
		}
	}
	if len(out.Causes) == 0 {
		return ""
	}
	return ": " + r.needs(&out)
}

// noValue says which part of a formula has no finite value, and with what.
func (r *reckoner) noValue() string {
	if r.broken == nil {
		return "has no finite value"
	}
	says := r.broken.String() + " has no finite value"
	if with := r.values(r.broken.gather(nil)); with != "" {
		says += " with " + with
	}
	return says
}

// pastEnd says that a table was read past its ends.
func (r *reckoner) pastEnd(n *Node) string {
	t := n.table
	x, _ := r.number(n.Args[0])
	return n.Args[0].String() + " = " + unit.Figures(x, 3) + " lies outside table " + t.Name + ", which goes from " +
		unit.Plain(t.X[0]) + " to " + unit.Plain(t.X[len(t.X)-1])
}

// appliesWhere says under which conditions a symbol would have a value, and what holds instead.
func (r *reckoner) appliesWhere(g *group) string {
	var wheres []string
	var of []*symbol
	for _, st := range g.steps {
		wheres = append(wheres, st.When.String())
		of = st.When.gather(of)
	}
	return "applies only where " + strings.Join(wheres, ", or where ") + "; here " + r.values(of)
}

// values lists symbols with their values: "l = 900 mm and b = 300 mm".
func (r *reckoner) values(of []*symbol) string {
	var out []string
	for _, sym := range of {
		if s := r.all[sym.slot]; s.usable() {
			out = append(out, Written(sym.name)+" = "+s.Figure())
		}
	}
	return listed(out, "and")
}

// Figure gives the value of a result for people, with its unit: a record value as it was written, a reckoned one with
// three significant figures, or as it is where four say it exactly. It is empty where there is no value.
func (s *Shown) Figure() string {
	switch {
	case !s.usable():
		return ""
	case s.IsWord:
		return s.Word
	}
	return joined(s.Number(), s.Unit)
}

// Number gives the value like Figure, without its unit; empty for a word and where there is no value.
func (s *Shown) Number() string {
	switch {
	case !s.usable() || s.IsWord:
		return ""
	case s.Formula == nil || exact(s.Value):
		return unit.Plain(s.Value)
	}
	return unit.Figures(s.Value, 3)
}

// exact reports whether four significant figures say a number in full; the last bits of reckoning do not count.
func exact(v float64) bool {
	short, err := strconv.ParseFloat(strconv.FormatFloat(v, 'e', 3, 64), 64)
	return err == nil && math.Abs(v-short) <= 1e-12*math.Abs(v)
}

// measured gives a bare number of a record or sheet with its unit.
func measured(v float64, sign string) string { return joined(unit.Plain(v), sign) }

// joined puts a unit behind a number; the degree sign stands close, as it is written.
func joined(number, sign string) string {
	switch sign {
	case "":
		return number
	case "°":
		return number + sign
	}
	return number + "\u00a0" + sign
}

// listed joins words as people do: a, b and c.
func listed(all []string, last string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " " + last + " " + all[len(all)-1]
}

func isAre(all []string) string {
	if len(all) == 1 {
		return " is "
	}
	return " are "
}
