package engine

import (
	"crypto/sha256"
	"encoding/binary"
	"hash"
	"slices"

	"hullfile/engine/crosscheck"
	"hullfile/engine/record"
)

// Neighbours tells, for every hull of a yard, what its dossier takes from the records of other hulls. It is made once
// and only read after. As long as a hull's own records, those of the yard and its digest here are the same, so is its
// dossier.
type Neighbours struct {
	tokens  []Token // in order of number
	at      map[string]int
	bottom  map[string]string // design -> design that it comes from in the end
	designs map[string]*kin[int]
	family  map[string]*kin[int]
	circles map[uint64]*circle // of two hulls and more
	names   *crosscheck.Names
	load    Loader
	of      map[*record.Hull]bool // the hulls of a yard that is in memory as a whole
}

// Loader gives the brief of a hull; without metal its parts and welds may be missing.
type Loader func(number string, metal bool) (*Brief, error)

// circle are the hulls of one group.
type circle struct {
	members []int // in order of number
	what    Mark
}

// NewNeighbours gathers what hulls bring to each other, from a yard that is in memory as a whole.
func NewNeighbours(y *record.Yard) *Neighbours {
	briefs := map[string]*Brief{}
	of := map[*record.Hull]bool{}
	tokens := make([]Token, len(y.Hulls))
	for i, h := range y.Hulls {
		b := BriefOf(h)
		briefs[h.Number], tokens[i], of[h] = b, b.Token(), true
	}
	n := NeighboursBy(y.Designs, tokens, func(number string, _ bool) (*Brief, error) { return briefs[number], nil })
	n.of = of
	return n
}

// NeighboursBy does the same from the tokens of all hulls, in order of number; load gives the brief of one of them.
func NeighboursBy(designs []record.DesignName, tokens []Token, load Loader) *Neighbours {
	n := &Neighbours{tokens: tokens, at: make(map[string]int, len(tokens)), bottom: map[string]string{}, load: load}
	for _, d := range designs {
		n.bottom[d.Name] = bottomDesign(designs, d.Name)
	}
	marks := make([]crosscheck.Marks, len(tokens))
	for i := range tokens {
		n.at[tokens[i].Number] = i
		marks[i] = crosscheck.Marks{Number: tokens[i].Number, HIN: tokens[i].HIN}
	}
	n.names = crosscheck.NewNames(marks)
	one := func(i int) (int, kinship) {
		t := &tokens[i]
		return i, kinship{t.Number, t.Design, t.Cracked}
	}
	n.designs = kinBy(len(tokens), one, func(design string) string { return design })
	n.family = kinBy(len(tokens), one, n.bottomOf)
	n.circles = circlesOf(tokens)
	return n
}

// circlesOf finds the groups that more than one hull belongs to.
func circlesOf(tokens []Token) map[uint64]*circle {
	var groups []uint64
	for i := range tokens {
		for _, s := range tokens[i].Shares {
			groups = append(groups, s.Group)
		}
	}
	slices.Sort(groups)
	all := map[uint64]*circle{}
	for i := 1; i < len(groups); i++ {
		if groups[i] == groups[i-1] {
			all[groups[i]] = &circle{}
		}
	}
	sums := map[uint64]hash.Hash{}
	for i := range tokens {
		for _, s := range tokens[i].Shares {
			c := all[s.Group]
			if c == nil {
				continue
			}
			if sums[s.Group] == nil {
				sums[s.Group] = sha256.New()
			}
			tell(sums[s.Group], tokens[i].Number, s.What)
			if k := len(c.members); k == 0 || c.members[k-1] != i {
				c.members = append(c.members, i)
			}
		}
	}
	for group, sum := range sums {
		copy(all[group].what[:], sum.Sum(nil))
	}
	return all
}

// tell adds a name and a mark to a hash.
func tell(to hash.Hash, name string, m Mark) {
	to.Write(binary.AppendUvarint(nil, uint64(len(name))))
	to.Write([]byte(name))
	to.Write(m[:])
}

// bottomOf gives the design that one comes from in the end.
func (n *Neighbours) bottomOf(design string) string {
	if bottom, known := n.bottom[design]; known {
		return bottom
	}
	return design
}

// Digest changes when something changes that the hull's dossier takes from another hull. It also changes with what the
// hull itself brings to the others. A hull of another yard has none.
func (n *Neighbours) Digest(h *record.Hull) []byte {
	if !n.of[h] {
		return nil
	}
	b, err := n.load(h.Number, true)
	if err != nil {
		return nil
	}
	return n.DigestOf(h.Number, n.Named(b))
}

// DigestOf does the same by number; named are the hulls that its papers may be taken to name.
func (n *Neighbours) DigestOf(number string, named []string) []byte {
	at, known := n.at[number]
	if !known {
		return nil
	}
	t := &n.tokens[at]
	all := sha256.New()
	tell(all, number, t.Marked)
	tell(all, t.Design, t.Boat)
	tell(all, n.bottomOf(t.Design), t.Life)
	for _, s := range t.Shares {
		if c := n.circles[s.Group]; c != nil {
			tell(all, "group", c.what)
		}
		tell(all, "own", s.What)
	}
	for _, i := range n.family[n.bottomOf(t.Design)].around(number, false) {
		tell(all, "family "+n.tokens[i].Number, n.tokens[i].Boat)
	}
	for _, i := range n.designs[t.Design].around(number, true) {
		tell(all, "design "+n.tokens[i].Number, n.tokens[i].Life)
	}
	for _, other := range named {
		tell(all, "named "+other, n.tokens[n.at[other]].Marked)
	}
	return all.Sum(nil)
}

// Named gives the numbers of the other hulls that the papers of a hull may be taken to name. It changes only with those
// papers and with the numbers on the hulls of the yard.
func (n *Neighbours) Named(b *Brief) []string {
	var all []string
	for _, i := range n.names.Named(b.Papers, b.Number) {
		all = append(all, n.tokens[i].Number)
	}
	return all
}
