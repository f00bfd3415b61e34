package method

import (
	"fmt"
	"slices"
)

// Vocabulary is the values that conditions outside a sheet may name, such as those under which a requirement applies.
// Conditions are read, checked and reckoned by the same machinery as those of the steps of a sheet.
type Vocabulary struct {
	scope   *Scope
	grammar *grammar
}

// Condition is a formula that holds or does not.
type Condition struct {
	Formula *Formula
	words   *Vocabulary
	uses    []*symbol
}

// Slip is what is wrong in a condition, and how many characters in.
type Slip struct {
	At         int
	Says, Hint string
}

// Held is what became of a condition.
type Held struct {
	Holds bool
	Known bool     // false where a value that decides is not written
	Lacks []string // record names of the values that are not written, where it is not known
	Seen  []*Shown // the values that the condition names, as they are, in the order of the condition
}

// NewVocabulary takes the values that may be named. The error says that two have one symbol, or one is no symbol.
func NewVocabulary(inputs []*Input) (*Vocabulary, error) {
	v := &Vocabulary{scope: &Scope{Name: "the boat", Inputs: inputs, symbols: map[string]*symbol{}}, grammar: newGrammar(nil)}
	for i, in := range inputs {
		made := &symbol{name: in.Symbol, unit: in.Unit, kind: number, words: in.Words, slot: i, own: true}
		in.share()
		if in.Words != nil {
			made.kind = word
		}
		written := Written(in.Symbol)
		switch {
		case !isSymbol(in.Symbol) || reserved(in.Symbol) != "":
			return nil, fmt.Errorf("fact %q cannot be named in a condition", clip(in.Symbol))
		case v.scope.symbols[written] != nil:
			return nil, fmt.Errorf("fact %q is given twice", in.Symbol)
		}
		v.scope.symbols[written] = made
	}
	return v, nil
}

// Read reads a condition; wrong is nil where it can be used.
func (v *Vocabulary) Read(text string) (c *Condition, wrong *Slip) {
	f, bad := v.grammar.read(text)
	if bad == nil {
		bad = v.bind(f.Root)
	}
	if bad == nil {
		bad = kinds{}.is(f.Root, truth)
	}
	if bad == nil {
		_, bad = units{}.of(f.Root)
	}
	if bad != nil {
		return nil, &Slip{bad.at, bad.says, bad.hint}
	}
	return &Condition{Formula: f, words: v, uses: f.gather(nil)}, nil
}

// bind finds what the symbols of a condition mean.
func (v *Vocabulary) bind(n *Node) *slip {
	if n.Op == OpSymbol {
		sym, ok := v.scope.symbols[Written(n.Symbol)]
		if !ok {
			return &slip{n.at, clip(n.Symbol) + " is no fact of the boat that is known here", didYouMean(n.Symbol, v.names())}
		}
		n.Symbol, n.means, n.slot = sym.name, sym, sym.slot
	}
	for _, a := range n.Args {
		if wrong := v.bind(a); wrong != nil {
			return wrong
		}
	}
	return nil
}

func (v *Vocabulary) names() []string {
	var all []string
	for _, in := range v.scope.Inputs {
		all = append(all, in.Symbol)
	}
	slices.Sort(all)
	return all
}

// Facts is the values of one boat, taken once for all conditions of a vocabulary.
type Facts struct {
	all   []*Shown
	cells []cell
}

// Facts takes the values of a boat. One that the vocabulary cannot take, by its unit or kind, counts as not written.
func (v *Vocabulary) Facts(given Given) *Facts {
	n := len(v.scope.Inputs)
	w := &Working{Sheet: &Sheet{Name: "facts"}, Scope: v.scope, Inputs: make([]Shown, n), all: make([]*Shown, n), cells: make([]cell, n)}
	if err := w.takeInputs(given); err != nil {
		for _, s := range w.all {
			if s.State == Sound && s.Place == (Shown{}).Place && s.Value == 0 && s.Word == "" {
				s.begin(Missing, s.From+" cannot be used here")
				s.doubt.lacks = []string{s.From}
			}
		}
	}
	for i, s := range w.all {
		w.cells[i] = s.cell()
	}
	return &Facts{w.all, w.cells}
}

// Hold reckons the condition for a boat. As in a sheet, one side of and / or alone may settle it.
func (c *Condition) Hold(f *Facts) Held {
	r := reckoner{scope: c.words.scope, cells: f.cells, all: f.all, used: make([]bool, len(f.all))}
	var h Held
	h.Holds, h.Known = r.truth(c.Formula.Root)
	for _, sym := range c.uses {
		s := f.all[sym.slot]
		h.Seen = append(h.Seen, s)
		if !h.Known && s.State == Missing {
			h.Lacks = append(h.Lacks, s.From)
		}
	}
	h.Holds = h.Holds && h.Known
	return h
}

// Text gives a value as one would say it: 7.40 m, C, or what is missing.
func (s *Shown) Text() string {
	switch {
	case !s.usable():
		return "not written"
	case s.IsWord:
		return s.Word
	}
	return measured(s.Value, s.Unit)
}
