package method

import (
	"fmt"
	"slices"
	"strings"
)

// formulas reads the formulas of every step for one symbol and finds what their symbols mean.
func (c *compiler) formulas(s *Scope, g *gathered) {
	for _, st := range g.drafts {
		step, t := st.step, st.table
		step.Formula = c.formula(s, t, "formula")
		step.When = c.formula(s, t, "when")
		step.Range = c.formula(s, t, "range")
		if _, written := t.rows["formula"]; !written {
			c.fault(c.ofKey(t.path), t.key("formula"), "is missing", `write formula = "..."`)
		}
		step.uses = step.When.gather(step.Formula.gather(nil))
		for _, sym := range step.uses {
			step.named = append(step.named, sym.name)
		}
		step.named = slices.Clip(step.named) // results share it
		step.ranges = step.Range.gather(nil)
	}
}

// formula reads one formula; nil where it is not written or at fault.
func (c *compiler) formula(s *Scope, t *block, name string) *Formula {
	text, ok := t.text(name)
	if !ok {
		return nil
	}
	if strings.TrimSpace(text) == "" {
		t.wrong(name, "is empty", "")
		return nil
	}
	lead := t.lead(name)
	f, wrong := c.grammar.read(text)
	if wrong != nil {
		c.slip(t, name, lead, wrong)
		return nil
	}
	before := len(c.faults)
	c.meanings(s, t, name, lead, f.Root)
	if len(c.faults) > before {
		return nil
	}
	return f
}

// lead counts the characters before the first that is no space; text is read without them.
func (t *block) lead(name string) int {
	whole, _ := t.rows[name].(string)
	return len([]rune(whole)) - len([]rune(strings.TrimLeft(whole, " \t\r\n")))
}

func (c *compiler) slip(t *block, name string, lead int, wrong *slip) {
	c.fault(c.inside(child(t.path, name), lead+wrong.at), t.key(name), wrong.says, wrong.hint)
}

// meanings binds every symbol of a formula to its declaration.
func (c *compiler) meanings(s *Scope, t *block, name string, lead int, n *Node) {
	if n.Op == OpSymbol {
		sym, ok := s.symbols[Written(n.Symbol)]
		if !ok {
			c.slip(t, name, lead, c.unknown(s, n))
			return
		}
		n.Symbol, n.means, n.slot = sym.name, sym, sym.slot
	}
	for _, a := range n.Args {
		c.meanings(s, t, name, lead, a)
	}
}

// unknown says that a scope does not see a symbol, and where else it stands or what is near.
func (c *compiler) unknown(s *Scope, n *Node) *slip {
	says := clip(n.Symbol) + " is no symbol of scope " + s.Name
	if other := c.elsewhere(n.Symbol); other != "" {
		return &slip{n.at, says, fmt.Sprintf("it stands in scope %s, which %s does not see; above = %q would show it", other, s.Name, other)}
	}
	if c.grammar.callable(n.Symbol) {
		return &slip{n.at, says, "a function or table is read as " + n.Symbol + "(value)"}
	}
	var known []string
	for _, sym := range s.symbols {
		known = append(known, sym.name)
	}
	slices.Sort(known)
	return &slip{n.at, says, didYouMean(n.Symbol, known)}
}

// elsewhere names a scope of the sheet in which a symbol is declared.
func (c *compiler) elsewhere(name string) string {
	for _, d := range c.drafts {
		for _, in := range d.scope.Inputs {
			if Written(in.Symbol) == Written(name) {
				return d.scope.Name
			}
		}
		for _, st := range d.steps {
			if Written(st.step.Symbol) == Written(name) {
				return d.scope.Name
			}
		}
	}
	return ""
}

// gather adds the symbols of a formula to a list, each once, in the order in which they stand.
func (f *Formula) gather(into []*symbol) []*symbol {
	if f == nil {
		return into
	}
	return f.Root.gather(into)
}

func (n *Node) gather(into []*symbol) []*symbol {
	if n.Op == OpSymbol && !slices.Contains(into, n.means) {
		into = append(into, n.means)
	}
	for _, a := range n.Args {
		into = a.gather(into)
	}
	return into
}

// judge checks kinds and units of the steps for one symbol, whose own symbols have been judged before.
func (c *compiler) judge(g *gathered) {
	for i, st := range g.drafts {
		c.condition(st.table, "when", st.step.When)
		c.condition(st.table, "range", st.step.Range)
		if st.step.Formula == nil {
			continue
		}
		got, wrong := kinds{}.of(st.step.Formula.Root)
		switch {
		case wrong != nil:
		case got == truth:
			wrong = &slip{0, "is a condition, must give a number or a word", "write condition ? one : other"}
		case got == word && g.unit != "":
			wrong = &slip{0, "gives a word, which has no unit", `write unit = ""`}
		case i > 0 && g.symbol.kind != "" && got != "" && got != g.symbol.kind:
			wrong = &slip{0, fmt.Sprintf("gives %s, the first step for %s gives %s", got, g.symbol.name, g.symbol.kind), ""}
		default:
			g.symbol.kind = got
			c.measure(st, g)
		}
		if wrong != nil {
			c.slip(st.table, "formula", st.table.lead("formula"), wrong)
		}
	}
	g.symbol.words = c.wordsOf(g)
	if first := g.drafts[0]; first.bare && g.symbol.kind != word {
		c.fault(c.ofKey(first.table.path), first.table.key("unit"), "is missing", `write unit = "" for a number without unit`)
	}
}

// measure checks the unit of a formula where it is plain.
func (c *compiler) measure(st *draftStep, g *gathered) {
	unit, wrong := units{}.of(st.step.Formula.Root)
	if wrong == nil && unit != "" && unit != g.unit {
		wrong = &slip{0, fmt.Sprintf("gives %s, the unit of %s is %q", unit, g.symbol.name, g.unit), "turn it into the unit of the step"}
	}
	if wrong != nil {
		c.slip(st.table, "formula", st.table.lead("formula"), wrong)
	}
}

// condition checks a when or a range.
func (c *compiler) condition(t *block, name string, f *Formula) {
	if f == nil {
		return
	}
	wrong := kinds{}.is(f.Root, truth)
	if wrong == nil {
		_, wrong = units{}.of(f.Root)
	}
	if wrong != nil {
		c.slip(t, name, t.lead(name), wrong)
	}
}

// wordsOf lists the words that a symbol can be by its steps, nil where that cannot be told.
func (c *compiler) wordsOf(g *gathered) []string {
	if g.symbol.kind != word {
		return nil
	}
	var all []string
	for _, st := range g.steps {
		if st.Formula == nil {
			return nil
		}
		words := kinds{}.wordsOf(st.Formula.Root)
		if words == nil {
			return nil
		}
		all = append(all, words...)
	}
	return all
}
