package stability

import (
	"testing"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// What is left as the boat is must be what the check has; at the turn it is still there, one step beyond it is gone.
func TestWhatIfAgreesWithTheChecks(t *testing.T) {
	h := boat()
	h.Lines.Sides = set("open")
	h.Weights = append(h.Weights, item("outboard", "machinery", false, 150, -0.3, 0, 0.7))
	r := assess(t, h, prism())
	if len(r.WhatIf) != 3 {
		t.Fatalf("%d tables", len(r.WhatIf))
	}
	turned := 0
	for _, w := range r.WhatIf {
		for k, turn := range w.Turns {
			row := rowAt(t, w, w.Base)
			for _, s := range r.Shown {
				if s.Check.Rule == "tp14619-heel" && turn.Rule == "tp14619-heel" {
					limit, _ := s.Working.Value(s.Symbol)
					for _, heeling := range r.Heelings {
						if heeling.Name == "everybody to one side, TP 14619" {
							near(t, w.Name+": what is left of the heel", row.Margins[k], limit-heeling.Heel, 0.05)
						}
					}
				}
			}
			if turn.Never || turn.Now {
				continue
			}
			turned++
			before := true
			for _, row := range w.Rows {
				ok := row.Margins[k] >= 0
				if row.Value <= turn.At && !ok {
					t.Errorf("%s, %s: turns at %g, but is short at %g", w.Name, turn.Rule, turn.At, row.Value)
				}
				if ok && !before {
					t.Errorf("%s, %s: short, and reached again at %g", w.Name, turn.Rule, row.Value)
				}
				before = ok
			}
		}
	}
	n, rule, ok := r.MostPersons()
	if !ok || n < 4 || rule == "" {
		t.Errorf("most persons %d by %q, %v", n, rule, ok)
	}
	if turned == 0 {
		t.Error("nothing turns short over the whole range, so the search is not tried")
	}
}

func rowAt(t *testing.T, w WhatIf, v float64) WhatRow {
	t.Helper()
	for _, r := range w.Rows {
		if r.Value == v {
			return r
		}
	}
	t.Fatalf("%s has no row at %g", w.Name, v)
	return WhatRow{}
}

// launch is a hard-chine hull of 40 stations with a raked stem, of our own making.
func launch() *lines.Hull {
	h := &lines.Hull{HasOuter: true}
	for i := range 40 {
		x := 7.2 * float64(i) / 39
		f := max(0, (x-3.6)/3.6)
		chine := 1.02 * (1 - 0.97*f*f*f)
		keel := 0.62 * f * f * f
		s := lines.Station{X: x}
		s.At[lines.Keel] = hydrostatics.Point{Z: keel}
		s.At[lines.Chine] = hydrostatics.Point{Y: chine * 0.94, Z: min(keel+0.33*chine, 0.9)}
		s.At[lines.Outer] = hydrostatics.Point{Y: chine, Z: s.At[lines.Chine].Z}
		s.At[lines.Knuckle] = s.At[lines.Outer]
		s.At[lines.Sheer] = hydrostatics.Point{Y: 1.22*(1-0.93*f*f*f) + 0.01, Z: 0.95 + 0.25*f}
		h.Stations = append(h.Stations, s)
	}
	return h
}

func launchRecord() *record.Hull {
	h := boat()
	h.Weights = []record.Weight{item("hull", "plating", false, 2000, 2.75, 0, 0.6), item("outboard", "machinery", false, 180, -0.3, 0, 0.8)}
	h.Boat.LengthHull = set(unit.M(7.2))
	h.Boat.Persons = set(6)
	h.CrewAreas[0].Persons = set(6)
	for _, id := range []string{"a", "b"} {
		h.Conditions = append(h.Conditions, record.Condition{Entry: record.Entry{ID: id}, Title: set(id), Kind: set("other"), Persons: set(3), Tanks: set(unit.Percent(50)), Stores: set(unit.Percent(50))})
	}
	return h
}

// BenchmarkSixConditions is the speed that is promised: curves of six conditions at one degree on 40 stations under 50 ms.
func BenchmarkSixConditions(b *testing.B) {
	h, l := launchRecord(), launch()
	w := weight.Assess(h, nil)
	load := loading.Assess(h, w, l)
	j := &judge{hull: h, weight: w, lines: l, loading: load, library: library(b)}
	b.ReportAllocs()
	for b.Loop() {
		j.out = Result{}
		if !j.prepare() || len(j.out.Conditions) != 6 {
			b.Fatal(len(j.out.Conditions))
		}
	}
}

func BenchmarkAssess(b *testing.B) {
	h, l := launchRecord(), launch()
	w := weight.Assess(h, nil)
	load := loading.Assess(h, w, l)
	lib := library(b)
	for b.Loop() {
		if r := Assess(h, w, l, load, lib); len(r.WhatIf) != 3 {
			b.Fatal(len(r.WhatIf))
		}
	}
}
