// Package material holds the aluminium alloys as data: density, stiffness, and the strength of the parent metal and of
// the metal beside a weld as each source gives it. The sources disagree, so a value is never separated from its source.
// Which source is taken for as-welded values belongs to the method that asks, not to the alloy.
//
//   - Question: how strong is this metal, and who says so?
//   - In: an alloy and temper, form, thickness, wire, and the source that is asked.
//   - Out: density, stiffness, strength of parent and welded metal, each with its citation; why there is none.
//   - Source: content/alloys cites each value.
package material

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Table is all alloys, read once and never changed after; it may be used from many goroutines.
type Table struct {
	Sources []*Source // in their order of use
	alloys  []*Alloy  // in order of name
	byName  map[string]*Alloy

	compositions map[string]*Composition // by alloy without temper, or classification of filler
}

// Find finds an alloy by alloy and temper, e.g. "5083-H116".
func (t *Table) Find(name string) (*Alloy, bool) {
	a, ok := t.byName[name]
	return a, ok
}

// Names lists the alloys in order of name.
func (t *Table) Names() []string {
	names := make([]string, len(t.alloys))
	for i, a := range t.alloys {
		names[i] = a.Name
	}
	return names
}

// All lists the alloys in order of name.
func (t *Table) All() []*Alloy { return t.alloys }

// Source is a work that gives strengths.
type Source struct {
	Name    string // as the alloy files and the methods name it, e.g. "ISO 12215-5"
	Work    string
	Edition string
	Use     int // order in which parent values are taken; one first
}

// Alloy is one alloy in one temper.
type Alloy struct {
	Name    string // "5083-H116"
	About   string
	Forms   []string // plate, extrusion, drawn tube
	Density unit.KGPerM3
	Elastic unit.GPa // modulus of elasticity
	Poisson float64

	DensityFrom Citation
	ElasticFrom Citation // for the modulus and for Poisson's number

	Parent []Strength // in the order of use of their sources, then of the file
	Welded []Strength // as-welded, likewise
}

// Citation says where a value comes from and how it is known.
type Citation struct {
	Source *Source
	Table  string
	Basis  finding.Basis
	Note   string
}

// String gives work, edition and table on one line.
func (c Citation) String() string {
	if c.Source == nil {
		return ""
	}
	parts := []string{c.Source.Work}
	for _, p := range []string{c.Source.Edition, c.Table} {
		if p != "" {
			parts = append(parts, p)
		}
	}
	return strings.Join(parts, ", ")
}

// Strength is one row of one source. A strength of zero is one that the source does not give.
type Strength struct {
	Citation
	Form        string  // form that the row is for; empty for every form
	Filler      string  // filler wire that an as-welded row is for; empty for any
	From, To    unit.MM // thickness, both ends included; zero for an open end
	Tensile     unit.MPa
	TensileMost unit.MPa     // upper limit of the tensile strength, where the source gives one
	Yield       unit.MPa     // 0.2 % proof strength
	Elongation  unit.Percent // least elongation after fracture
	FactorF1    float64      // material factor of a class rule: design strength over 240 N/mm²
}

// Holds reports whether the row is for this thickness; a thickness of zero asks for no thickness in particular.
func (s *Strength) Holds(thickness unit.MM) bool {
	if thickness == 0 {
		return true
	}
	return thickness >= s.From && (s.To == 0 || thickness <= s.To)
}
