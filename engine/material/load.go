package material

import (
	"fmt"
	"io/fs"
	"math"
	"slices"
	"sort"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Load reads alloys/*.toml below files, which is the content folder. The error is finding.Faults with everything that
// is wrong in any of the files, or an I/O error.
func Load(files fs.FS) (*Table, error) {
	read, faults, err := readFiles(files)
	if err != nil {
		return nil, err
	}
	l := &loader{table: &Table{byName: map[string]*Alloy{}, compositions: map[string]*Composition{}}, sources: map[string]*Source{}, faults: faults}
	for _, f := range read {
		l.takeSources(f)
	}
	for _, f := range read {
		l.takeAlloys(f)
		l.takeCompositions(f)
	}
	if len(l.table.alloys) == 0 && len(l.faults) == 0 {
		l.fault("alloys", "", "no alloy in any file")
	}
	if len(l.faults) > 0 {
		return nil, l.faults
	}
	l.order()
	return l.table, nil
}

// loader turns what was written into the table and keeps what is wrong with it.
type loader struct {
	table   *Table
	sources map[string]*Source
	faults  finding.Faults
}

func (l *loader) fault(file, key, says string, args ...any) {
	l.faults = append(l.faults, finding.Fault{Place: finding.Place{File: file}, Key: key, Says: fmt.Sprintf(says, args...)})
}

func (l *loader) takeSources(f *alloyFile) {
	names := make([]string, 0, len(f.Sources))
	for name := range f.Sources {
		names = append(names, name)
	}
	sort.Strings(names)
	for _, name := range names {
		row, key := f.Sources[name], "source."+name
		if _, twice := l.sources[name]; twice {
			l.fault(f.name, key, "source %q is named in two files", name)
		}
		if row.Work == "" || row.Edition == "" {
			l.fault(f.name, key, "source needs a work and an edition")
		}
		if row.Use < 1 {
			l.fault(f.name, key, "use = %d, must be 1 or more", row.Use)
		}
		if other := l.sameUse(row.Use); other != "" {
			l.fault(f.name, key, "use = %d is that of source %q too, so the order of use is open", row.Use, other)
		}
		s := &Source{Name: name, Work: row.Work, Edition: row.Edition, Use: row.Use}
		l.sources[name] = s
		l.table.Sources = append(l.table.Sources, s)
	}
}

func (l *loader) sameUse(use int) string {
	for _, s := range l.table.Sources {
		if s.Use == use {
			return s.Name
		}
	}
	return ""
}

func (l *loader) takeAlloys(f *alloyFile) {
	for i, row := range f.Alloys {
		if len(row.Names) == 0 {
			l.fault(f.name, fmt.Sprintf("alloy[%d]", i+1), "alloy has no names")
		}
		for _, name := range row.Names {
			l.takeAlloy(f.name, name, row)
		}
	}
}

func (l *loader) takeAlloy(file, name string, row alloyRow) {
	key := "alloy." + name
	if _, twice := l.table.byName[name]; twice {
		l.fault(file, key, "alloy %q is there twice", name)
		return
	}
	if len(row.Forms) == 0 {
		l.fault(file, key, "alloy has no forms")
	}
	l.positive(file, key+".density_kg_m3", row.Density)
	l.positive(file, key+".elastic_kn_mm2", row.Elastic)
	l.positive(file, key+".poisson", row.Poisson)
	a := &Alloy{
		Name: name, About: row.About, Forms: row.Forms,
		Density: unit.KGPerM3(row.Density), Elastic: unit.GPa(row.Elastic), Poisson: row.Poisson,
		DensityFrom: l.citation(file, key+".density", row.DensitySource, "", row.DensityBasis, ""),
		ElasticFrom: l.citation(file, key+".elastic", row.ElasticSource, "", row.ElasticBasis, ""),
		Parent:      l.strengths(file, key+".parent", row.Forms, row.Parent),
		Welded:      l.strengths(file, key+".welded", row.Forms, row.Welded),
	}
	l.table.byName[name] = a
	l.table.alloys = append(l.table.alloys, a)
}

func (l *loader) strengths(file, key string, forms []string, rows []strengthRow) []Strength {
	out := make([]Strength, 0, len(rows))
	for i, r := range rows {
		at := fmt.Sprintf("%s[%d]", key, i+1)
		l.checkRow(file, at, forms, r)
		out = append(out, Strength{
			Citation: l.citation(file, at, r.Source, r.Table, r.Basis, r.Note),
			Form:     r.Form, Filler: r.Filler, From: unit.MM(r.From), To: unit.MM(r.To),
			Tensile: unit.MPa(r.Tensile), TensileMost: unit.MPa(r.TensileMost), Yield: unit.MPa(r.Yield),
			Elongation: unit.Percent(r.Elongation), FactorF1: r.FactorF1,
		})
	}
	return out
}

// checkRow keeps out rows that would answer with nothing, or with a number that cannot be a strength.
func (l *loader) checkRow(file, key string, forms []string, r strengthRow) {
	strength := (r.Tensile > 0 && r.Yield > 0) || r.FactorF1 > 0
	switch {
	case !strength:
		l.fault(file, key, "row gives neither tensile_n_mm2 with yield_n_mm2 nor factor_f1")
	case r.Yield > r.Tensile:
		l.fault(file, key, "yield_n_mm2 %v is above tensile_n_mm2 %v", r.Yield, r.Tensile)
	case r.TensileMost != 0 && r.TensileMost < r.Tensile:
		l.fault(file, key, "tensile_most_n_mm2 %v is below tensile_n_mm2 %v", r.TensileMost, r.Tensile)
	}
	if r.From < 0 || (r.To != 0 && r.To <= r.From) {
		l.fault(file, key, "thickness from %v to %v mm is no range", r.From, r.To)
	}
	if r.Form != "" && !slices.Contains(forms, r.Form) {
		l.fault(file, key, "form %q is not among the forms of the alloy: %s", r.Form, strings.Join(forms, ", "))
	}
	for _, v := range []float64{r.From, r.To, r.Tensile, r.TensileMost, r.Yield, r.Elongation, r.FactorF1} {
		if v < 0 || math.IsNaN(v) || math.IsInf(v, 0) {
			l.fault(file, key, "value %v is impossible", v)
		}
	}
}

func (l *loader) positive(file, key string, v float64) {
	if !(v > 0) || math.IsInf(v, 0) {
		l.fault(file, key, "value %v, must be above 0", v)
	}
}

func (l *loader) citation(file, key, source, table, basis, note string) Citation {
	s, ok := l.sources[source]
	if !ok {
		l.fault(file, key, "source %q is not named in any file", source)
	}
	if !slices.Contains(finding.Bases(), finding.Basis(basis)) {
		l.fault(file, key, "basis %q is none of read, derived, yard, practice, recalled", basis)
	}
	return Citation{Source: s, Table: table, Basis: finding.Basis(basis), Note: note}
}

// order puts alloys by name, sources and rows by their use.
func (l *loader) order() {
	t := l.table
	sort.Slice(t.alloys, func(i, j int) bool { return t.alloys[i].Name < t.alloys[j].Name })
	sort.SliceStable(t.Sources, func(i, j int) bool { return t.Sources[i].Use < t.Sources[j].Use })
	for _, a := range t.alloys {
		byUse(a.Parent)
		byUse(a.Welded)
	}
}

func byUse(rows []Strength) {
	sort.SliceStable(rows, func(i, j int) bool { return rows[i].Source.Use < rows[j].Source.Use })
}
