package method

import (
	"fmt"
	"slices"
	"strings"
)

// compiler turns the drafts of a sheet into scopes that can be evaluated.
type compiler struct {
	*page
	grammar *grammar
	drafts  []*draft
}

// scopes compiles every scope, those above before those below, and gives them in the order of the sheet.
func (c *compiler) scopes() []*Scope {
	var out []*Scope
	done := map[string]*Scope{}
	for _, d := range c.drafts {
		out = append(out, d.scope)
		c.scope(d, done, nil)
	}
	return out
}

// scope compiles one scope after the one above it.
func (c *compiler) scope(d *draft, done map[string]*Scope, below []string) *Scope {
	s := d.scope
	if done[s.Name] != nil {
		return s
	}
	below = append(below, s.Name)
	if s.Above != "" {
		s.above = c.aboveOf(d, done, below)
	}
	done[s.Name] = s
	c.open(d)
	all := c.gather(d)
	for _, g := range all {
		c.formulas(s, g)
	}
	for _, g := range c.ordered(s, all) {
		c.judge(g)
		g.share()
		s.groups = append(s.groups, g.group)
		s.Steps = append(s.Steps, g.steps...)
	}
	c.answers(d)
	s.spelt = make(map[string]*symbol, len(s.symbols))
	for _, sym := range s.symbols {
		s.spelt[sym.name] = sym
	}
	return s
}

func (c *compiler) aboveOf(d *draft, done map[string]*Scope, below []string) *Scope {
	var known []string
	for _, other := range c.drafts {
		known = append(known, other.scope.Name)
		if other.scope.Name != d.scope.Above {
			continue
		}
		if slices.Contains(below, d.scope.Above) {
			d.table.wrong("above", "the scopes stand above each other in a ring: "+strings.Join(append(below, d.scope.Above), ", "), "")
			return nil
		}
		return c.scope(other, done, below)
	}
	d.table.wrong("above", clip(d.scope.Above)+" is no scope of this sheet", didYouMean(d.scope.Above, known))
	return nil
}

// open declares the inputs of a scope over the symbols that it sees from above.
func (c *compiler) open(d *draft) {
	s := d.scope
	s.symbols = map[string]*symbol{}
	if s.above != nil {
		s.base = len(s.above.symbols)
		for written, sym := range s.above.symbols {
			seen := *sym
			seen.own = false
			s.symbols[written] = &seen
		}
	}
	for i, in := range s.Inputs {
		made := &symbol{name: in.Symbol, unit: in.Unit, kind: number, words: in.Words, line: c.line(d.in[i].path)}
		if in.Words != nil {
			made.kind = word
		}
		c.declare(s, made, d.in[i])
		in.share()
	}
}

// declare adds a symbol to a scope, refusing one that it sees already.
func (c *compiler) declare(s *Scope, made *symbol, at *block) bool {
	if made.name == "" {
		return false
	}
	if old, ok := s.symbols[Written(made.name)]; ok {
		at.wrong("symbol", fmt.Sprintf("%s is declared already, on line %d", made.name, old.line), "choose another symbol")
		return false
	}
	made.own, made.slot = true, len(s.symbols)
	s.symbols[Written(made.name)] = made
	return true
}

// gathered is the steps for one symbol while they are compiled.
type gathered struct {
	*group
	drafts []*draftStep
}

// gather brings the steps for one symbol together and declares it.
func (c *compiler) gather(d *draft) []*gathered {
	var out []*gathered
	at := map[string]*gathered{}
	for _, st := range d.steps {
		written := Written(st.step.Symbol)
		g := at[written]
		if g != nil {
			c.further(g, st)
			continue
		}
		g = c.first(d.scope, st)
		if g != nil && written != "" {
			at[written] = g
			out = append(out, g)
		}
	}
	return out
}

// first opens the group of a symbol; nil where the symbol cannot be declared.
func (c *compiler) first(s *Scope, st *draftStep) *gathered {
	step, t := st.step, st.table
	if step.Name == "" {
		t.must("name", "say in plain words what it is")
	}
	step.Unit = st.unit
	made := &symbol{name: step.Symbol, unit: step.Unit, line: step.Line}
	if !c.declare(s, made, t) {
		return nil
	}
	g := &group{symbol: made, name: step.Name, unit: step.Unit, steps: []*Step{step}}
	return &gathered{g, []*draftStep{st}}
}

// further adds a step for a symbol that has one: same unit, and the step before it must leave room for it.
func (c *compiler) further(g *gathered, st *draftStep) {
	step, t, before := st.step, st.table, g.drafts[len(g.drafts)-1]
	if step.Name == "" {
		step.Name = g.name
	}
	step.Symbol, step.Unit = g.symbol.name, g.unit
	if !st.bare && st.unit != g.unit {
		t.wrong("unit", fmt.Sprintf("is %q, the first step for %s has %q", clip(st.unit), step.Symbol, clip(g.unit)), "all steps for one symbol have one unit")
	}
	if _, conditional := before.table.rows["when"]; !conditional {
		c.fault(c.ofKey(t.path), t.shown, fmt.Sprintf("is never reached: the step for it on line %d has no condition", before.step.Line), "give the earlier step a when")
	}
	g.steps = append(g.steps, step)
	g.drafts = append(g.drafts, st)
}

// answers reads which symbols a scope gives as its answers.
func (c *compiler) answers(d *draft) {
	if d.gives == nil {
		return
	}
	var known []string
	for _, sym := range d.scope.symbols {
		known = append(known, sym.name)
	}
	slices.Sort(known)
	d.scope.Gives = map[string][]string{}
	for _, name := range d.gives.names() {
		for _, asked := range d.gives.words(name) {
			sym := d.scope.symbols[Written(asked)]
			if sym == nil {
				d.gives.wrong(name, clip(asked)+" is no symbol of scope "+d.scope.Name, didYouMean(asked, known))
				continue
			}
			d.scope.Gives[name] = append(d.scope.Gives[name], sym.name)
		}
	}
}
