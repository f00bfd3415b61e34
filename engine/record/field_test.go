package record

import (
	"reflect"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/unit"
)

// eachField calls f for every field of every table.
func eachField(f func(t *table, f *field)) {
	for _, t := range byType {
		for _, one := range t.fields {
			f(t, one)
		}
	}
}

// suffixes of all quantities, the longest first, so that mm2 is not taken for m.
func suffixes() []string {
	var all []string
	for _, name := range unit.Types() {
		if u, _ := unit.Of(name); u.Suffix != "" {
			all = append(all, u.Suffix)
		}
	}
	slices.SortFunc(all, func(a, b string) int { return len(b) - len(a) })
	return all
}

// TestKeySaysItsUnit holds the end of every key and the type of its value together.
func TestKeySaysItsUnit(t *testing.T) {
	checked := 0
	eachField(func(tab *table, f *field) {
		typ := tab.typ.Field(f.index).Type
		if f.kind != number {
			return
		}
		checked++
		quantity, ok := unit.Of(typ.Field(0).Type.Name())
		if !ok {
			t.Errorf("%s.%s: %s is no quantity", tab.typ.Name(), f.key, typ.Field(0).Type)
		}
		if quantity.Suffix != "" && !strings.HasSuffix(f.key, "_"+quantity.Suffix) {
			t.Errorf("%s.%s is kept in %s and must end in _%s", tab.typ.Name(), f.key, quantity.Words, quantity.Suffix)
		}
	})
	eachField(func(tab *table, f *field) {
		for _, s := range suffixes() {
			if strings.HasSuffix(f.key, "_"+s) {
				if f.unit.Suffix != s {
					t.Errorf("%s.%s ends in _%s, but is kept in %q", tab.typ.Name(), f.key, s, f.unit.Words)
				}
				return
			}
		}
		if f.unit.Suffix != "" {
			t.Errorf("%s.%s does not say its unit, %s", tab.typ.Name(), f.key, f.unit.Words)
		}
	})
	if checked < 60 {
		t.Errorf("only %d numbers were looked at", checked)
	}
}

// TestTagsMakeSense holds the tags against the fields they speak of.
func TestTagsMakeSense(t *testing.T) {
	refs := []string{"", "alloy", "sheet", "person", "instrument", "design", "document", "weight", "panel", "welder", "inspector",
		"procedure_test", "inspection", "imperfection", "nonconformity", "repair", "stage", "leak_test", "care", "warranty", "list", "evidence", "section", "frame"}
	eachField(func(tab *table, f *field) {
		what := tab.typ.Name() + "." + f.key
		if f.key == "" || f.doc == "" {
			t.Errorf("%s has no key or no doc", what)
		}
		if f.key == absentKey || f.key == idColumn || f.key == "key" {
			t.Errorf("%s: the key is taken", what)
		}
		if !slices.Contains(refs, f.ref) {
			t.Errorf("%s: nobody checks references to %q", what, f.ref)
		}
		for _, other := range append(slices.Clone(f.after), f.upto) {
			if o := tab.byKey[other]; other != "" && (o == nil || o.kind != f.kind) {
				t.Errorf("%s: %s beside it is not of the same kind", what, other)
			}
		}
		if (f.above.set || f.least.set || f.most.set || f.low.set) && f.kind != number && f.kind != whole {
			t.Errorf("%s: a range for what is no number", what)
		}
		if f.low.set && (f.most.set && f.high.v > f.most.v || f.least.set && f.low.v < f.least.v || f.low.v > f.high.v) {
			t.Errorf("%s: what is usual is not possible", what)
		}
		if f.csv != "" && f.kind != entries {
			t.Errorf("%s: a CSV table for what has no rows", what)
		}
	})
}

// TestExamplesArePossible: an example in a hint must not be a fault itself.
func TestExamplesArePossible(t *testing.T) {
	seen := 0
	eachField(func(tab *table, f *field) {
		if f.eg == "" {
			return
		}
		seen++
		v, says, _ := cell(f, f.eg, false)
		var fs faults
		c := checker{fs: &fs, what: "hull", names: map[string][]string{}}
		c.value(f, &node{value: v}, (*trail)(nil).to(f.key))
		if says != "" || len(fs.all) > 0 {
			t.Errorf("%s.%s: the example %s is refused: %s%v", tab.typ.Name(), f.key, f.eg, says, fs.all)
		}
	})
	if seen < 50 {
		t.Errorf("only %d examples", seen)
	}
}

// TestRequiredFitsInCells: a list cannot stand in a cell, so no table with a CSV beside it has a required one.
func TestRequiredFitsInCells(t *testing.T) {
	for _, s := range slices.Concat(sources(hullTable), sources(builderTable), sources(stockTable), sources(proceduresTable)) {
		for _, f := range s.f.sub.fields {
			if f.must && !f.scalar() {
				t.Errorf("%s cannot hold %s, which is required", s.file, f.key)
			}
		}
	}
}

// TestEveryTableIsKnown: Lookup finds tables by their type.
func TestEveryTableIsKnown(t *testing.T) {
	for _, typ := range []reflect.Type{reflect.TypeFor[Panel](), reflect.TypeFor[Run](), reflect.TypeFor[WeighPoint](), reflect.TypeFor[Boat](), reflect.TypeFor[Person]()} {
		if byType[typ] == nil {
			t.Errorf("%s is not in the field table", typ)
		}
	}
}
