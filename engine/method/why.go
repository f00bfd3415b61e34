package method

import (
	"math"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/unit"
)

// needs says what is missing under a result: the record values that nobody wrote, then the results that are not there.
func (r *reckoner) needs(d *doubt) string {
	var parts []string
	if len(d.lacks) > 0 {
		parts = append(parts, listed(r.given(d.lacks), "and")+isAre(d.lacks)+"not given")
	}
	for _, cause := range d.causes {
		if s := r.all[r.scope.symbols[Written(cause)].slot]; len(s.Lacks()) == 0 {
			parts = append(parts, "needs "+r.calledBy(cause)+": "+s.Why())
		}
	}
	return strings.Join(parts, "; ")
}

// lack says why a condition could not be told, as the end of a sentence.
func (r *reckoner) lack() string {
	var d doubt
	for _, slot := range r.seen {
		if from := r.all[slot]; !from.usable() {
			d.lack(from)
		}
	}
	if len(d.causes) == 0 {
		return ""
	}
	return ": " + r.needs(&d)
}

// noValue says which part of a formula has no finite value, and with what.
func (r *reckoner) noValue() string {
	if r.broken == nil {
		return "has no finite value"
	}
	says := r.broken.String() + " has no finite value"
	if with := r.values(r.broken.gather(nil), nil); with != "" {
		says += ": " + with
	}
	return says
}

// pastEnd says that a table was read past its ends.
func (r *reckoner) pastEnd(n *Node) string {
	x, _ := r.number(n.Args[0])
	return r.ends(n, x)
}

// appliesWhere says which conditions of a symbol's steps do not hold, and what holds instead. What several steps ask alike
// is said once; what holds of their conditions is left out.
func (r *reckoner) appliesWhere(g *group) string {
	var wheres []string
	var failed []*Node
	words := oneOf{}
	for _, st := range g.steps {
		first := len(failed)
		failed = r.unmet(st.When.Root, failed)
		words.take(failed[first:])
		if where := r.together(failed[first:]); where != "" && !slices.Contains(wheres, where) {
			wheres = append(wheres, where)
		}
	}
	if list := words.list(); list != nil {
		wheres = []string{r.spoken(list)}
	}
	return "applies where " + strings.Join(wheres, ", or where ") + r.against(failed)
}

// together says conditions that must all hold.
func (r *reckoner) together(all []*Node) string {
	if len(all) == 1 {
		return r.spoken(all[0])
	}
	var parts []string
	for _, n := range all {
		parts = append(parts, r.clause(n, OpOr))
	}
	return strings.Join(parts, " and ")
}

// oneOf draws together steps of which each asks for other words of one symbol: "part is bottom, side or deck".
type oneOf struct {
	of    *Node
	words []*Node
	other bool // a step asks for something else
}

func (o *oneOf) take(failed []*Node) {
	if len(failed) != 1 || failed[0].Op != OpCompare || !failed[0].Args[0].IsWord() || failed[0].Args[0].Op != OpSymbol ||
		o.of != nil && failed[0].Args[0].slot != o.of.slot {
		o.other = true
		return
	}
	n := failed[0]
	o.of = n.Args[0]
	switch n.Symbol {
	case "in":
		o.words = append(o.words, n.Args[1].Args...)
	case "==":
		o.words = append(o.words, n.Args[1])
	default:
		o.other = true
	}
}

// list gives the drawn-together condition, nil where there is none.
func (o *oneOf) list() *Node {
	var words []*Node
	for _, w := range o.words {
		if w.Op != OpWord {
			return nil
		}
		if !slices.ContainsFunc(words, func(x *Node) bool { return x.Word == w.Word }) {
			words = append(words, w)
		}
	}
	if o.other || len(words) < 2 {
		return nil
	}
	return &Node{Op: OpCompare, Symbol: "in", Args: []*Node{o.of, {Op: OpList, Args: words}}}
}

// madeFor says which parts of a range do not hold, and what holds instead.
func (r *reckoner) madeFor(st *Step) string {
	failed := r.unmet(st.Range.Root, nil)
	return "made for cases where " + r.together(failed) + r.against(failed)
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

// HasFigure reports whether Figure gives anything, without writing it.
func (s *Shown) HasFigure() bool { return s.usable() && (!s.IsWord || s.Word != "") }

// Alike reports that another result says the same, without writing either. Where it does not, both may still be written alike.
func (s *Shown) Alike(t *Shown) bool {
	return s.State == t.State && s.Formula == t.Formula && s.IsWord == t.IsWord && s.Word == t.Word && s.Value == t.Value && s.nought == t.nought
}

// Number gives the value like Figure, without its unit; empty for a word and where there is no value. What is nought but for
// rounding is 0.
func (s *Shown) Number() string {
	switch {
	case !s.usable() || s.IsWord:
		return ""
	case s.nought:
		return "0"
	case s.Formula == nil || exact(s.Value):
		return unit.Plain(s.Value)
	}
	return unit.Figures(s.Value, 3)
}

// exact reports whether four significant figures say a number in full; the last bits of reckoning do not count.
func exact(v float64) bool {
	var room [16]byte
	short, err := strconv.ParseFloat(string(strconv.AppendFloat(room[:0], v, 'e', 3, 64)), 64)
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
