// Package detail ranks welded details by how fast impacts use them up: where to look first, not how long they last.
//
//   - Question: which welded detail do impacts use up first?
//   - In: details on record (stress per g, class), rides with their impact ranges.
//   - Out: details in order, the damage of a hundred hours and how far that scatters; a ranking, never hours of life.
//   - Source: classes by Hobbacher, IIW document 1823-07, recalled; scatter of Miner's sum from the JCSS code, after
//     Wirsching 1984.
package detail

import (
	"fmt"
	"io/fs"
	"math"
	"slices"
	"strings"

	"github.com/BurntSushi/toml"

	"hullfile/engine/fatigue"
	"hullfile/engine/finding"
)

// Class is one class of detail with where it is from.
type Class struct {
	Key    string
	Name   string
	Note   string
	Line   fatigue.Detail
	Source string
	Basis  finding.Basis
}

// Table is every class that is known, in order of its key.
type Table struct{ all []Class }

// file is one file of content/details as it is written.
type file struct {
	Title, Work, Edition, About string
	Basis                       finding.Basis
	Detail                      map[string]struct {
		Name, Note string
		Class      float64 `toml:"class_n_mm2"`
		Slope      float64
	}
}

// Load reads details/*.toml below files. The error is finding.Faults, or one of reading.
func Load(files fs.FS) (*Table, error) {
	names, err := fs.Glob(files, "details/*.toml")
	if err != nil {
		return nil, err
	}
	t := &Table{}
	var faults finding.Faults
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		faults = append(faults, t.read(name, string(text))...)
	}
	slices.SortFunc(t.all, func(a, b Class) int { return strings.Compare(a.Key, b.Key) })
	for i := 1; i < len(t.all); i++ {
		if t.all[i].Key == t.all[i-1].Key {
			faults = append(faults, finding.Fault{Key: t.all[i].Key, Says: "detail is given twice"})
		}
	}
	if len(faults) > 0 {
		return nil, faults
	}
	return t, nil
}

func (t *Table) read(name, text string) finding.Faults {
	var f file
	var faults finding.Faults
	fault := func(key, says string) {
		faults = append(faults, finding.Fault{Place: finding.Place{File: name}, Key: key, Says: says})
	}
	meta, err := toml.Decode(text, &f)
	if err != nil {
		fault("", err.Error())
		return faults
	}
	for _, key := range meta.Undecoded() {
		fault(key.String(), "unknown key")
	}
	if f.Title == "" || f.Work == "" || !slices.Contains(finding.Bases(), f.Basis) || len(f.Detail) == 0 {
		fault("", "a table of details needs title, work, basis and at least one detail")
	}
	for key, d := range f.Detail {
		if d.Name == "" || !(d.Class > 0 && d.Class < 500) || !(d.Slope >= 2 && d.Slope <= 20) {
			fault("detail."+key, fmt.Sprintf("class %g N/mm² with slope %g, or no name", d.Class, d.Slope))
		}
		t.all = append(t.all, Class{Key: key, Name: d.Name, Note: d.Note, Line: fatigue.Detail{Class: d.Class, Slope: d.Slope},
			Source: strings.TrimSuffix(f.Work+", "+f.Edition, ", "), Basis: f.Basis})
	}
	faults.Sort()
	return faults
}

// Find gives the class of a key.
func (t *Table) Find(key string) (Class, bool) {
	if t == nil {
		return Class{}, false
	}
	i, ok := slices.BinarySearchFunc(t.all, key, func(c Class, key string) int { return strings.Compare(c.Key, key) })
	if !ok {
		return Class{}, false
	}
	return t.all[i], true
}

// All gives every class in order of its key.
func (t *Table) All() []Class {
	if t == nil {
		return nil
	}
	return slices.Clone(t.all)
}

func (t *Table) keys() []string {
	var out []string
	for _, c := range t.All() {
		out = append(out, c.Key)
	}
	return out
}

// Scatter is the spread of the sum of Miner's rule at failure: lognormal with mean 1.0 and coefficient of variation 0.3
// (JCSS Probabilistic Model Code, part 3, after Wirsching 1984). Low and High are what five in a hundred lie under and over.
type Scatter struct{ Low, High float64 }

// MinerScatter gives it.
func MinerScatter() Scatter {
	const cov, five = 0.3, 1.6448536269514722
	sigma := math.Sqrt(math.Log(1 + float64(cov*cov)))
	middle := -sigma * sigma / 2
	return Scatter{math.Exp(middle - five*sigma), math.Exp(middle + five*sigma)}
}
