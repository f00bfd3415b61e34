package weight

import (
	"fmt"
	"math"
	"os"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"

	"pgregory.net/rapid"
)

func put[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: 7})
}

// item makes an item of the light craft with mass and position.
func item(key string, mass unit.KG, x, y, z unit.M) record.Weight {
	return record.Weight{
		Entry: record.Entry{ID: key, At: finding.Place{File: "hulls/H1/weights.csv", Line: 3}},
		Group: put("outfit"), Basis: put("weighed"), Mass: put(mass), X: put(x), Y: put(y), Z: put(z),
	}
}

// carry makes an item of the load.
func carry(key string, mass unit.KG, x unit.M) record.Weight {
	w := item(key, mass, x, 0, 0.6)
	w.Group, w.Load = put("people"), put(true)
	return w
}

func boat(items ...record.Weight) *record.Hull {
	h := &record.Hull{Number: "H1"}
	h.Weights = items
	return h
}

func close(t *testing.T, where string, got, want, tol float64) {
	t.Helper()
	if math.Abs(got-want) > tol {
		t.Errorf("%s: %v, want %v", where, got, want)
	}
}

func TestWaysToAMass(t *testing.T) {
	made := func(alter func(*record.Weight)) record.Weight {
		w := item("a", 0, 1, 0, 0.5)
		w.Mass, w.Basis = record.Val[unit.KG]{}, put("reckoned")
		alter(&w)
		return w
	}
	rows := []struct {
		where   string
		rec     record.Weight
		mass    float64
		margin  float64
		working string
	}{
		{"own arithmetic: written", item("a", 45, 1, 0, 0.5), 45, 0, "45.0 kg"},
		{"own arithmetic: plate 4.32 x 0.006 x 2660", made(func(w *record.Weight) {
			w.Area, w.Thickness, w.Density = put(unit.M2(4.32)), put(unit.MM(6)), put(unit.KGPerM3(2660))
		}), 68.9472, 0, "4.32 m² × 6.0 mm × 2\u00a0660 kg/m³ = 68.9 kg"},
		{"own arithmetic: profile 22 x 610e-6 x 2700, two of them", made(func(w *record.Weight) {
			w.Length, w.Section, w.Density, w.Count = put(unit.M(22)), put(unit.MM2(610)), put(unit.KGPerM3(2700)), put(2)
		}), 72.468, 0, "2 × 22.00 m × 610 mm² × 2\u00a0700 kg/m³ = 72.5 kg"},
		{"own arithmetic: mass of a metre 12 x 1.65", made(func(w *record.Weight) {
			w.Length, w.LineMass = put(unit.M(12)), put(unit.KGPerM(1.65))
		}), 19.8, 0, "12.00 m × 1.65 kg/m = 19.8 kg"},
		{"own arithmetic: 40 with 10 % margin", made(func(w *record.Weight) {
			w.Mass, w.Margin = put(unit.KG(40)), put(unit.Percent(10))
		}), 44, 4, "40.0 kg; margin 10.0 % = 4.0 kg; together 44.0 kg"},
		{"own arithmetic: taken out, the margin still adds", made(func(w *record.Weight) {
			w.Mass, w.Margin = put(unit.KG(-40)), put(unit.Percent(10))
		}), -36, 4, "−40.0 kg; margin 10.0 % = 4.0 kg; together −36.0 kg"},
	}
	for _, r := range rows {
		it, _ := reckon(&r.rec, nil)
		close(t, r.where, float64(it.Mass), r.mass, 1e-9)
		close(t, r.where+", margin", float64(it.Margin), r.margin, 1e-9)
		if it.Working != r.working {
			t.Errorf("%s: %q, want %q", r.where, it.Working, r.working)
		}
	}
}

// shipped reads the alloys that the calculator carries.
func shipped(t *testing.T) *material.Table {
	t.Helper()
	table, err := material.Load(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	return table
}

func TestTheAlloyGivesTheDensity(t *testing.T) {
	alloys := shipped(t)
	w := item("a", 0, 1, 0, 0)
	w.Mass, w.Basis = record.Val[unit.KG]{}, put("reckoned")
	w.Area, w.Thickness, w.Alloy = put(unit.M2(1)), put(unit.MM(10)), put("5083-H116")
	res := Assess(boat(w), alloys)
	alloy, found := alloys.Find("5083-H116")
	if !found {
		t.Fatal("5083-H116 is not in the table of alloys")
	}
	it := res.Items[0]
	close(t, "own arithmetic: one square metre of 10 mm is a hundredth of the density", float64(it.Mass), float64(alloy.Density)/100, 1e-9)
	if it.Source == "" || it.Basis == "" || !strings.Contains(it.Working, "5083-H116") {
		t.Errorf("density without source: %+v", it)
	}
	w.Density = put(unit.KGPerM3(7850))
	if f, found := finds(Assess(boat(w), alloys).Findings, "weight-density"); !found || f.Kind != finding.Contradiction {
		t.Errorf("steel beside an aluminium alloy: %+v", f)
	}
}

func TestWithoutAMass(t *testing.T) {
	rows := []struct {
		where string
		alter func(*record.Weight)
		lacks string
	}{
		{"nothing written", func(*record.Weight) {}, "weight.b.mass_kg"},
		{"plate without thickness", func(w *record.Weight) { w.Area, w.Density = put(unit.M2(2)), put(unit.KGPerM3(2660)) }, "weight.b.thickness_mm"},
		{"plate without metal", func(w *record.Weight) { w.Area, w.Thickness = put(unit.M2(2)), put(unit.MM(5)) }, "weight.b.alloy or density_kg_m3"},
		{"profile without section", func(w *record.Weight) { w.Length, w.Density = put(unit.M(2)), put(unit.KGPerM3(2660)) }, "weight.b.section_mm2 or line_mass_kg_m"},
	}
	for _, r := range rows {
		b := item("b", 0, 2, 0, 1)
		b.Mass = record.Val[unit.KG]{}
		r.alter(&b)
		res := Assess(boat(item("a", 100, 1, 0, 0.5), b), nil)
		close(t, r.where+": sum of the rest", float64(res.Light.Mass), 100, 0)
		if len(res.Light.NoMass) != 1 || res.Light.Whole() {
			t.Errorf("%s: without mass %v", r.where, res.Light.NoMass)
		}
		c := one(t, res.Checks, "weight-breakdown")
		if c.Standing != finding.NotShown || len(c.Missing) != 1 || c.Missing[0] != r.lacks {
			t.Errorf("%s: %s, missing %v, want %s", r.where, c.Standing, c.Missing, r.lacks)
		}
	}
}

func TestTotals(t *testing.T) {
	res := Assess(boat(item("a", 300, 1, 0.2, 0.5), item("b", 100, 3, -0.2, 0.9), carry("crew", 100, 2)), nil)
	for _, r := range []struct {
		where     string
		got, want float64
	}{
		{"own arithmetic: light", float64(res.Light.Mass), 400},
		{"own arithmetic: load", float64(res.Load.Mass), 100},
		{"own arithmetic: loaded", float64(res.Loaded.Mass), 500},
		{"own arithmetic: light x (300 + 300)/400", float64(res.Light.X), 1.5},
		{"own arithmetic: light y (60 - 20)/400", float64(res.Light.Y), 0.1},
		{"own arithmetic: light z (150 + 90)/400", float64(res.Light.Z), 0.6},
		{"own arithmetic: loaded x (600 + 200)/500", float64(res.Loaded.X), 1.6},
		{"own arithmetic: ten more kilograms of b move the centre by 10 x (3 - 1.6)/510", float64(res.Items[1].MovesX), 27.451},
		{"own arithmetic: share of people", res.Groups[1].Share, 0.2},
	} {
		close(t, r.where, r.got, r.want, 0.001)
	}
	if fmt.Sprint(res.MostMass) != "[0 1 2]" || fmt.Sprint(res.MostCentre) != "[0 1 2]" {
		t.Errorf("most mass %v, most centre %v", res.MostMass, res.MostCentre)
	}
}

func TestACentreNeedsEveryPosition(t *testing.T) {
	var none record.Val[unit.M]
	rows := []struct {
		where   string
		alter   func(*record.Weight)
		x, y, z bool
		key     string
	}{
		{"without x", func(w *record.Weight) { w.X = none }, false, true, true, "x_m"},
		{"without y", func(w *record.Weight) { w.Y = none }, true, false, true, "y_m"},
		{"without z", func(w *record.Weight) { w.Z = none }, true, true, false, "z_m"},
	}
	for _, r := range rows {
		b := item("b", 100, 3, 0, 0.9)
		r.alter(&b)
		res := Assess(boat(b, item("a", 300, 1, 0.2, 0.5)), nil)
		if l := res.Light; l.HasX != r.x || l.HasY != r.y || l.HasZ != r.z || fmt.Sprint(l.Without) != "[b]" || l.Mass != 400 {
			t.Errorf("%s: %+v", r.where, l)
		}
		c := one(t, res.Checks, "weight-centre")
		if c.Standing != finding.NotShown || !strings.Contains(c.Says, "b ("+r.key+")") || c.Missing[0] != "weight.b."+r.key {
			t.Errorf("%s: %+v", r.where, c)
		}
	}
}

func TestGroupsStandInTheOrderOfTheRecord(t *testing.T) {
	a, b := item("a", 10, 1, 0, 0), item("b", 30, 1, 0, 0)
	a.Group, b.Group, b.Basis = put("machinery"), put("plating"), put("estimated")
	res := Assess(boat(a, b), nil)
	if len(res.Groups) != 2 || res.Groups[0].Name != "plating" || res.Groups[1].Name != "machinery" {
		t.Fatalf("groups %+v", res.Groups)
	}
	if parts := res.Groups[0].Basis; len(parts) != 1 || parts[0] != (BasisPart{"estimated", 30}) {
		t.Errorf("basis %+v", parts)
	}
}

func TestStatedMasses(t *testing.T) {
	rows := []struct {
		where  string
		loaded record.Val[unit.KG]
		want   finding.Standing
		kind   finding.Kind
	}{
		{"own arithmetic: 2 % of 1020 is 20.4", put(unit.KG(1020)), finding.Met, ""},
		{"own arithmetic: 30 apart, 20.6 allowed", put(unit.KG(1030)), finding.Short, finding.Contradiction},
		{"own arithmetic: below", put(unit.KG(970)), finding.Short, finding.Contradiction},
		{"not stated", record.Val[unit.KG]{}, finding.NotShown, ""},
	}
	for _, r := range rows {
		h := boat(item("a", 1000, 1, 0, 0))
		h.Boat.LoadedMass = r.loaded
		res := Assess(h, nil)
		c := one(t, res.Checks, "loaded-mass")
		if c.Standing != r.want {
			t.Errorf("%s: %s, %s", r.where, c.Standing, c.Says)
		}
		if f, found := finds(res.Findings, "loaded-mass"); found != (r.kind != "") || f.Kind != r.kind {
			t.Errorf("%s: finding %+v", r.where, f)
		}
		if r.loaded.Set && len(res.Assumptions) != 1 {
			t.Errorf("%s: the allowance is not named: %v", r.where, res.Assumptions)
		}
	}
}

func TestItemFindings(t *testing.T) {
	rows := []struct {
		where string
		alter func(*record.Weight)
		rule  string
		kind  finding.Kind
	}{
		{"own arithmetic: 60 written, 68.9 by plate", func(w *record.Weight) {
			w.Area, w.Thickness, w.Density = put(unit.M2(4.32)), put(unit.MM(6)), put(unit.KGPerM3(2660))
		}, "weight-two-ways", finding.Contradiction},
		{"weighed without a mass", func(w *record.Weight) {
			w.Mass = record.Val[unit.KG]{}
			w.Length, w.LineMass = put(unit.M(2)), put(unit.KGPerM(3))
		}, "weight-basis", finding.Contradiction},
		{"people in the light craft", func(w *record.Weight) { w.Group = put("people") }, "weight-load", finding.Doubt},
		{"all estimated", func(w *record.Weight) { w.Basis = put("estimated") }, "weight-estimated", finding.Doubt},
		{"less than nothing", func(w *record.Weight) { w.Mass = put(unit.KG(-60)) }, "weight-sum", finding.Contradiction},
	}
	for _, r := range rows {
		w := item("a", 60, 1, 0, 0)
		r.alter(&w)
		if f, found := finds(Assess(boat(w), nil).Findings, r.rule); !found || f.Kind != r.kind || f.Settle == "" || len(f.Places) == 0 {
			t.Errorf("%s: %+v", r.where, f)
		}
	}
	if all := Assess(boat(item("a", 60, 1, 0, 0)), nil).Findings; len(all) != 0 {
		t.Errorf("findings on an item in order: %v", all)
	}
}

// Moments add: the centre of two sums together is the centre of their items together (property).
func TestMomentsAdd(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(1, 20).Draw(t, "items")
		var items []record.Weight
		for i := range n {
			w := item(fmt.Sprint("i", i), unit.KG(rapid.Float64Range(1, 500).Draw(t, "mass")), unit.M(rapid.Float64Range(-1, 9).Draw(t, "x")),
				unit.M(rapid.Float64Range(-2, 2).Draw(t, "y")), unit.M(rapid.Float64Range(0, 3).Draw(t, "z")))
			w.Load = put(rapid.Bool().Draw(t, "load"))
			items = append(items, w)
		}
		r := Assess(boat(items...), nil)
		mass := float64(r.Light.Mass + r.Load.Mass)
		if math.Abs(mass-float64(r.Loaded.Mass)) > 1e-9*mass {
			t.Fatalf("light and load are %v, loaded %v", mass, r.Loaded.Mass)
		}
		for _, axis := range []func(Total) unit.M{func(t Total) unit.M { return t.X }, func(t Total) unit.M { return t.Y }, func(t Total) unit.M { return t.Z }} {
			parts := float64(r.Light.Mass)*float64(axis(r.Light)) + float64(r.Load.Mass)*float64(axis(r.Load))
			if whole := float64(r.Loaded.Mass) * float64(axis(r.Loaded)); math.Abs(parts-whole) > 1e-8*(1+math.Abs(whole)) {
				t.Fatalf("moments %v of the parts, %v of the whole", parts, whole)
			}
		}
		var ofGroups unit.KG
		for _, g := range r.Groups {
			ofGroups += g.Total.Mass
		}
		if math.Abs(float64(ofGroups-r.Loaded.Mass)) > 1e-9*mass {
			t.Fatalf("groups are %v, loaded %v", ofGroups, r.Loaded.Mass)
		}
	})
}

// Every mass k times as great leaves the centres where they are (property).
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.1, 10).Draw(t, "k")
		m := rapid.SliceOfN(rapid.Float64Range(1, 300), 2, 9).Draw(t, "masses")
		build := func(k float64) Result {
			var items []record.Weight
			for i, v := range m {
				items = append(items, item(fmt.Sprint("i", i), unit.KG(k*v), unit.M(i), 0.1, 0.5))
			}
			return Assess(boat(items...), nil)
		}
		one, many := build(1), build(k)
		if math.Abs(float64(many.Light.Mass)-k*float64(one.Light.Mass)) > 1e-8*float64(many.Light.Mass) {
			t.Fatalf("mass %v, want %v times %v", many.Light.Mass, k, one.Light.Mass)
		}
		if math.Abs(float64(many.Light.X-one.Light.X)) > 1e-9 || math.Abs(float64(many.Items[1].MovesX-one.Items[1].MovesX)) > 1e-6 {
			t.Fatalf("centre %v and %v, moves %v and %v", many.Light.X, one.Light.X, many.Items[1].MovesX, one.Items[1].MovesX)
		}
	})
}

func BenchmarkAssess300Weights(b *testing.B) {
	var items []record.Weight
	groups := words("Group", nil, nil)
	for i := range 300 {
		w := item(fmt.Sprint("i", i), unit.KG(1+i%40), unit.M(float64(i%70)/10), 0, 0.5)
		w.Group = put(groups[i%len(groups)])
		items = append(items, w)
	}
	h := boat(items...)
	weighed(h)
	var alloys *material.Table
	for b.Loop() {
		Assess(h, alloys)
	}
}

func one(t *testing.T, all []finding.Check, rule string) finding.Check {
	t.Helper()
	for _, c := range all {
		if c.Rule == rule {
			return c
		}
	}
	t.Fatalf("no check %s", rule)
	return finding.Check{}
}

func finds(all []finding.Finding, rule string) (finding.Finding, bool) {
	for _, f := range all {
		if f.Rule == rule {
			return f, true
		}
	}
	return finding.Finding{}, false
}
