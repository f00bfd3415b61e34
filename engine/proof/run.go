package proof

import (
	"fmt"
	"io/fs"
	"slices"

	"hullfile/engine/crew"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/requirement"
	"hullfile/engine/unit"
)

// Sets are the proofs as they are written, before they are run.
type Sets struct {
	all     []*set
	reasons []Reason
}

// Read reads proofs/*.toml below files, which is the content folder. The error is finding.Faults of the proof files, or one
// of reading.
func Read(files fs.FS) (Sets, error) {
	all, err := readSets(files)
	if err != nil {
		return Sets{}, err
	}
	reasons, err := readReasons(files)
	return Sets{all, reasons}, err
}

// Run runs them against the method sheets, the alloys, the lists of requirements and the functions of the calculator. A case
// that does not give what its source prints is a Case that does not pass.
func (s Sets) Run(lib *method.Library, alloys *material.Table, lists *requirement.Catalog) Sheet {
	return s.Runs(lib, alloys, lists).sheet(lib)
}

// Runs are proofs that were run through one library, from which those through another that differs from it in a few sheets follow
// without running all again. They may be asked from many goroutines.
type Runs struct {
	Sets
	alloys *material.Table
	lists  *requirement.Catalog
	ran    []ran
}

// Runs runs them, as Run does.
func (s Sets) Runs(lib *method.Library, alloys *material.Table, lists *requirement.Catalog) *Runs {
	r := &Runs{Sets: s, alloys: alloys, lists: lists, ran: make([]ran, len(s.all))}
	r.through(lib)
	return r
}

// Through gives what comes of another library: the sets that used a sheet for which it has another are run again.
func (r *Runs) Through(lib *method.Library) Sheet {
	other := *r
	other.ran = slices.Clone(r.ran)
	other.through(lib)
	return other.sheet(lib)
}

// through runs what was not run with the sheets of a library, side by side, each set with a runner of its own.
func (r *Runs) through(lib *method.Library) {
	var each crew.Crew
	for k, s := range r.all {
		if r.ran[k].by(lib) {
			continue
		}
		each.Go(func() {
			one := ran{runner: &runner{alloys: r.alloys, lists: r.lists, touched: map[*method.Formula]*touch{}}, cases: make([]Case, len(s.Cases)), used: map[string]*method.Sheet{}}
			one.lib = lib.Watched(func(name string) { one.used[name], _ = lib.Sheet(name) })
			for i := range s.Cases {
				one.cases[i] = one.run(s, &s.Cases[i])
			}
			one.lib, one.over = nil, nil
			r.ran[k] = one
		})
	}
	each.Wait()
}

// ran is what came of one set, and of which sheets.
type ran struct {
	*runner
	cases []Case
	used  map[string]*method.Sheet
}

// by reports whether a set was run, and with the sheets of a library.
func (one *ran) by(lib *method.Library) bool {
	for name, used := range one.used {
		if s, _ := lib.Sheet(name); s != used {
			return false
		}
	}
	return one.runner != nil
}

// sheet gathers what came of all sets, in their order.
func (r *Runs) sheet(lib *method.Library) Sheet {
	whole := &runner{lib: lib, touched: map[*method.Formula]*touch{}}
	var out Sheet
	for _, one := range r.ran {
		out.Cases = append(out.Cases, one.cases...)
		whole.take(one.runner)
	}
	out.Without, out.Reasons = whole.without(), r.reasons
	return out
}

// take adds what another runner touched.
func (r *runner) take(other *runner) {
	for f, t := range other.touched {
		mine := r.touched[f]
		if mine == nil {
			mine = &touch{}
			r.touched[f] = mine
		}
		mine.outside = mine.outside || t.outside
		for _, name := range t.softly {
			if !slices.Contains(mine.softly, name) {
				mine.softly = append(mine.softly, name)
			}
		}
	}
}

// runner runs cases and remembers which formulas an outside check has touched.
type runner struct {
	lib     *method.Library
	alloys  *material.Table
	touched map[*method.Formula]*touch
	lists   *requirement.Catalog
	over    *method.Working // of the case before, whose room the next one takes
}

// touch is which sets used a formula in a case that passed.
type touch struct {
	outside bool     // one of them is an outside check
	softly  []string // the others, in order of name
}

// outcome is what the calculator gives for a case.
type outcome struct {
	got    float64
	unit   string
	inputs string
	under  *method.Working // working of a case of a method sheet
	symbol string
}

func (r *runner) run(s *set, c *row) Case {
	want, tolerance, _ := c.wanted()
	out := Case{Set: s.name, Title: s.Title, Source: s.cited(), Basis: s.Basis, Name: c.Name, Printed: c.Printed,
		Want: want, Tolerance: tolerance, Why: c.Why, Unit: c.Unit, Note: c.Note}
	got, err := r.reckon(s, c)
	out.Inputs = got.inputs
	if err != nil {
		out.Fails = err.Error()
		return out
	}
	out.Got = got.got
	if got.unit != "" {
		out.Unit = got.unit
	}
	out.Pass = agrees(out.Got, want, tolerance)
	if !out.Pass {
		return out
	}
	if missed := r.touch(s, c.Checks, got); missed != "" {
		out.Pass, out.Fails = false, fmt.Sprintf("checks names %s, on which %s does not rest", missed, got.symbol)
	}
	return out
}

// cited is the source with its edition.
func (s *set) cited() string {
	if s.Edition == "" {
		return s.Source
	}
	return s.Source + ", " + s.Edition
}

func (r *runner) reckon(s *set, c *row) (outcome, error) {
	switch {
	case c.Symbol != "":
		return r.bySheet(s, c)
	case c.Alloy != "":
		return r.ofAlloy(s, c)
	}
	if planingSymbols[c.Function] != "" {
		return r.balanced(c)
	}
	if slices.Contains(listFunctions, c.Function) {
		return r.ofList(c)
	}
	return ofFunction(c)
}

// ofAlloy looks up one value of one source in the alloy table.
func (r *runner) ofAlloy(s *set, c *row) (outcome, error) {
	a, ok := r.alloys.Find(c.Alloy)
	if !ok {
		return outcome{}, fmt.Errorf("alloy %q is not in the table", c.Alloy)
	}
	ask := material.Asked{Source: s.Values, Thickness: unit.MM(c.Thickness), Form: c.Form, Filler: c.Filler}
	out := outcome{inputs: alloyInputs(c)}
	v, sign, why := a.Value(c.Value, ask)
	if why != "" {
		return out, fmt.Errorf("%s", why)
	}
	out.got, out.unit = v, sign
	return out, nil
}

func alloyInputs(c *row) string {
	s := c.Alloy + ", " + c.Value
	if c.Form != "" {
		s += ", " + c.Form
	}
	if c.Filler != "" {
		s += ", wire " + c.Filler
	}
	if c.Thickness != 0 {
		s += ", " + plain(c.Thickness) + " mm"
	}
	return s
}

func ofFunction(c *row) (outcome, error) {
	if read, ok := textFunctionNamed(c.Function); ok {
		return read.ofText(c)
	}
	f, ok := functionNamed(c.Function)
	if !ok {
		return outcome{}, fmt.Errorf("no function %q", c.Function)
	}
	in := map[string]float64{}
	for name, v := range c.Inputs {
		x, ok := number(v)
		if !ok {
			return outcome{}, fmt.Errorf("input %s is no number", name)
		}
		in[name] = x
	}
	out := outcome{inputs: listed(in)}
	got, err := f.run(in)
	out.got = got
	return out, err
}
