package method

import (
	"fmt"
	"math"
	"slices"
	"sort"
	"strconv"

	"hullfile/engine/unit"
)

// tables reads the tables of the sheet.
func (p *page) tables(top *block) []*Table {
	all := top.sub("table")
	if all == nil {
		return nil
	}
	var out []*Table
	for _, name := range all.names() {
		if t := all.sub(name); t != nil {
			out = append(out, p.table(name, t))
		}
	}
	return out
}

func (p *page) table(name string, t *block) *Table {
	read := &Table{Name: name, Title: t.must("title", "say what the table gives"), Clause: t.must("clause", "name clause, table or page of the work"), Basis: t.basis()}
	read.Step, read.X, read.Y, read.Words = t.flag("step"), t.numbers("x"), t.numbers("y"), t.words("words")
	t.close()
	if why := reserved(name); why != "" {
		p.fault(p.ofKey(t.path), t.shown, name+" "+why, "choose another name")
	} else if !isSymbol(name) {
		p.fault(p.ofKey(t.path), t.shown, strconv.Quote(clip(name))+" cannot be the name of a table", "a letter, then letters, digits and single _")
	}
	t.rowsMatch(read)
	return read
}

// rowsMatch checks that every row has its value and that the rows rise.
func (t *block) rowsMatch(read *Table) {
	_, x := t.rows["x"]
	_, words := t.rows["words"]
	rows := len(read.X) + len(read.Words)
	place := t.page.ofKey(t.path)
	switch {
	case x == words:
		t.page.fault(place, t.shown, "must have either x or words", "")
	case words && read.Step:
		t.wrong("step", "stands beside words", "leave it out: rows of words are looked up")
	case rows != len(read.Y):
		t.page.fault(place, t.key("y"), fmt.Sprintf("has %d values for %d rows", len(read.Y), rows), "")
	case rows == 0 || x && rows < 2:
		t.page.fault(place, t.shown, "has too few rows", "")
	}
	for i := 1; i < len(read.X); i++ {
		if read.X[i] <= read.X[i-1] {
			t.wrong("x", fmt.Sprintf("does not rise: %v after %v", read.X[i], read.X[i-1]), "write the rows in rising order")
			return
		}
	}
	for i, w := range read.Words {
		if slices.Contains(read.Words[:i], w) {
			t.wrong("words", "holds "+strconv.Quote(clip(w))+" twice", "")
			return
		}
	}
}

// row reads a table. Past the ends of a table of numbers the last value is held and the reading marked.
func (r *reckoner) row(n *Node) (float64, bool) {
	t := n.table
	if !r.bare && !slices.Contains(r.tables, t) {
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
	switch {
	case inside:
	case r.bare:
		r.outside = true
	default:
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

// Reads gives what a part that reads a table finds there, as Number writes it: the value of a row of words as it stands in
// the sheet, an interpolated one with three significant figures. It is empty where the argument has no value, or is more
// than one symbol, number or word.
func (n *Node) Reads(look func(symbol string) (*Shown, bool)) string {
	if n.Op != OpTable {
		return ""
	}
	at, ok := n.Args[0].given(look)
	switch i := slices.Index(n.table.Words, at.Word); {
	case !ok:
		return ""
	case n.table.Words == nil:
		v, _ := n.table.at(at.Value)
		return (&Shown{Said: &Said{Formula: &Formula{}}, Value: v, State: Sound}).Number()
	case i >= 0:
		return unit.Plain(n.table.Y[i])
	}
	return ""
}

// given is the value of a part that is one symbol, number or word.
func (n *Node) given(look func(symbol string) (*Shown, bool)) (Shown, bool) {
	switch n.Op {
	case OpNumber:
		return Shown{Said: &Said{}, Value: n.Number}, true
	case OpWord:
		return Shown{Said: &Said{IsWord: true}, Word: n.Word}, true
	case OpSymbol:
		if s, ok := look(n.Symbol); ok && s.usable() {
			return *s, true
		}
	}
	return Shown{}, false
}
