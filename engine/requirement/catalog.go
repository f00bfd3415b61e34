// Package requirement holds what laws, standards and a yard's own plan ask of a boat against what the file shows. It knows
// no trade: content says by which word of evidence an item is answered, and which rules of checks, papers and records
// stand behind a word. A trade that lands later appears by its rules.
//
//   - Question: what is asked of this boat, and what answers it?
//   - In: the lists in force, the facts of the boat, the checks, papers and records.
//   - Out: every item met, short, not shown or not applying, with why; the modules that are open; statements to sign.
//   - Source: each list names its work and edition, each item its clause and basis.
package requirement

import (
	"io/fs"
	"maps"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Catalog is every list of requirements that can be asked for, and the words for evidence. It is never changed after Load.
type Catalog struct {
	lists  []*list // in order of name
	words  map[string]*record.Evidence
	facts  *method.Vocabulary
	names  map[string]*record.Fact // by record name
	silent []string                // rules that answer no requirement
}

// list is one list with its conditions compiled.
type list struct {
	*record.List
	when   *method.Condition
	scope  *method.Condition   // nil where the work sets none
	items  []*method.Condition // beside List.Items; nil where an item always applies
	routes []*method.Condition
}

// Shipped is the lists and words for evidence that come with the program, read and not compiled. It is never changed.
type Shipped struct {
	lists []record.List
	files []record.EvidenceFile
}

// Read reads requirements/*.toml and evidence/*.toml of the content folder. The error is finding.Faults, or one of reading.
func Read(content fs.FS) (*Shipped, error) {
	files, err := record.ReadEvidence(content, "evidence")
	if err != nil {
		return nil, err
	}
	lists, err := record.ReadLists(content, "requirements")
	return &Shipped{lists, files}, err
}

// With lays the yard's own lists over the shipped ones: one with the name of a shipped list takes its place. The error is
// finding.Faults of all of them.
func (s *Shipped) With(own []record.List) (*Catalog, error) {
	files, shipped := s.files, s.lists
	c := &Catalog{words: map[string]*record.Evidence{}, names: map[string]*record.Fact{}}
	var l loader
	l.Catalog = c
	l.vocabulary(files)
	all := slices.Clone(own)
	for i := range shipped {
		if !slices.ContainsFunc(own, func(o record.List) bool { return o.Name == shipped[i].Name }) {
			all = append(all, shipped[i])
		}
	}
	slices.SortFunc(all, func(a, b record.List) int { return strings.Compare(a.Name, b.Name) })
	for i := range all {
		l.addWords(all[i].Evidence)
	}
	for i := range all {
		l.list(&all[i])
	}
	if len(l.faults) > 0 {
		l.faults.Sort()
		return nil, l.faults
	}
	return c, nil
}

// Names gives the name of every list, for messages.
func (c *Catalog) Names() []string {
	var out []string
	for _, l := range c.lists {
		out = append(out, l.Name)
	}
	return out
}

// Words gives every word for evidence, in order.
func (c *Catalog) Words() []string {
	return slices.Sorted(maps.Keys(c.words))
}

// Answers reports whether a rule stands behind some word for evidence, or is one of those that answer no requirement.
func (c *Catalog) Answers(rule string) bool {
	for _, w := range c.words {
		if takes(w.Rules.V, rule) || takes(w.Also.V, rule) {
			return true
		}
	}
	return takes(c.silent, rule)
}

// Find gives a list by its name.
func (c *Catalog) Find(name string) (*record.List, bool) {
	for _, l := range c.lists {
		if l.Name == name {
			return l.List, true
		}
	}
	return nil, false
}

// takes reports whether a rule is one of those named; a * at the end stands for any ending.
func takes(names []string, rule string) bool {
	for _, n := range names {
		before, any := strings.CutSuffix(n, "*")
		if n == rule || any && strings.HasPrefix(rule, before) {
			return true
		}
	}
	return false
}

// loader collects every fault.
type loader struct {
	*Catalog
	faults finding.Faults
}

func (l *loader) fault(at finding.Place, key, says, hint string) {
	l.faults = append(l.faults, finding.Fault{Place: at, Key: key, Says: says, Hint: hint})
}
