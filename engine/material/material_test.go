package material_test

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/unit"
)

func shipped(t testing.TB) *material.Table {
	t.Helper()
	table, err := material.Load(os.DirFS("../../content"))
	if err != nil {
		t.Fatalf("shipped alloys: %v", err)
	}
	return table
}

func find(t testing.TB, name string) *material.Alloy {
	t.Helper()
	a, ok := shipped(t).Find(name)
	if !ok {
		t.Fatalf("alloy %s is not in the table", name)
	}
	return a
}

func TestShippedAlloysAreThere(t *testing.T) {
	names := shipped(t).Names()
	for _, want := range []string{"5083-H116", "5083-H321", "5083-O", "5083-H111", "5086-H116", "5086-O", "5086-H111",
		"5754-O", "5754-H111", "6061-T6", "6082-T6", "6005A-T6", "6060-T5"} {
		if !slices.Contains(names, want) {
			t.Errorf("%s is missing from %v", want, names)
		}
	}
	if !slices.IsSorted(names) {
		t.Errorf("names are not in order: %v", names)
	}
}

// Thickness decides the parent strength. EN 485-2 as a maker publishes it: 305/215 to 40 mm, 285/200 above.
func TestParentByThickness(t *testing.T) {
	rows := []struct {
		where     string
		thickness unit.MM
		yield     unit.MPa
		stretch   unit.Percent
		source    string
	}{
		{"EN 485-2, lower end of the first range", 1.5, 215, 8, "EN 485-2"},
		{"EN 485-2, up to 3 mm", 3, 215, 8, "EN 485-2"},
		{"EN 485-2, over 3 mm", 3.01, 215, 10, "EN 485-2"},
		{"EN 485-2, up to 40 mm", 40, 215, 10, "EN 485-2"},
		{"EN 485-2, over 40 mm", 40.1, 200, 10, "EN 485-2"},
		{"below the range of EN 485-2 and of the design manual", 1.2, 215, 0, "LR linkspan"},
	}
	a := find(t, "5083-H116")
	for _, r := range rows {
		s, why := a.ParentFor(material.Asked{Thickness: r.thickness, Form: "plate"})
		if s == nil {
			t.Errorf("%s: %s", r.where, why)
			continue
		}
		if s.Yield != r.yield || s.Elongation != r.stretch || s.Source.Name != r.source {
			t.Errorf("%s: got %v, %v %%, %s", r.where, s.Yield, s.Elongation, s.Source.Name)
		}
	}
}

// Two tables of one alloy in one file: each form has its own row.
func TestFormDecides(t *testing.T) {
	a := find(t, "6061-T6")
	plate, _ := a.ParentFor(material.Asked{Form: "plate"})
	profile, _ := a.ParentFor(material.Asked{Form: "extrusion"})
	if plate == nil || profile == nil || plate.Tensile != 290 || profile.Tensile != 260 {
		t.Errorf("LR linkspan table 2.1.2: plate %+v, profile %+v, want 290 and 260", plate, profile)
	}
	if s, why := find(t, "6060-T5").ParentFor(material.Asked{Form: "plate"}); s == nil {
		t.Errorf("an alloy that is only extruded is taken as it is made: %s", why)
	}
}

func TestWeldedStaysWithItsSource(t *testing.T) {
	a := find(t, "5083-H116")
	rows := []struct {
		source string
		yield  unit.MPa
		basis  finding.Basis
	}{
		{"ISO 12215-5", 125, finding.Recalled},
		{"LR linkspan", 125, finding.Read},
		{"EN 1999-1-1", 155, finding.Recalled},
		{"ABS HSC", 165, finding.Read},
	}
	for _, r := range rows {
		s, why := a.WeldedBy(material.Asked{Source: r.source, Form: "plate", Thickness: 6})
		if s == nil {
			t.Errorf("%s: %s", r.source, why)
			continue
		}
		if s.Yield != r.yield || s.Basis != r.basis {
			t.Errorf("%s: %v %s, want %v %s", r.source, s.Yield, s.Basis, r.yield, r.basis)
		}
	}
	if s, why := a.WeldedBy(material.Asked{Source: "the yard's own rule"}); s != nil || !strings.Contains(why, "ISO 12215-5") {
		t.Errorf("another source stood in: %+v, %q", s, why)
	}
	if s, why := find(t, "5086-O").WeldedBy(material.Asked{Source: "ISO 12215-5"}); s != nil || why == "" {
		t.Errorf("5086-O has no value under ISO 12215-5, got %+v", s)
	}
}

func TestFillerParts(t *testing.T) {
	a := find(t, "5083-H321")
	if s, why := a.WeldedBy(material.Asked{Source: "DNV HSLC"}); s != nil || !strings.Contains(why, "filler wire") {
		t.Errorf("without a wire there is no value: %+v, %q", s, why)
	}
	for wire, want := range map[string]float64{"5183": 0.60, "5356": 0.53} {
		s, why := a.WeldedBy(material.Asked{Source: "DNV HSLC", Filler: wire})
		if s == nil || s.FactorF1 != want {
			t.Errorf("%s: %+v %s, want %v", wire, s, why, want)
		}
	}
	if s, _ := a.WeldedBy(material.Asked{Source: "DNV HSLC", Filler: "4043"}); s != nil {
		t.Errorf("a wire that the table does not give got a value: %+v", s)
	}
}

func TestGivenNamesAndUnits(t *testing.T) {
	g := find(t, "5083-H116").For(material.Asked{Source: "ISO 12215-5", Thickness: 6, Form: "plate"})
	rows := []struct {
		from  string
		want  float64
		unit  string
		basis finding.Basis
	}{
		{"alloy.parent.tensile_n_mm2", 305, "N/mm²", finding.Read},
		{"alloy.parent.yield_n_mm2", 215, "N/mm²", finding.Read},
		{"alloy.welded.tensile_n_mm2", 275, "N/mm²", finding.Recalled},
		{"alloy.welded.yield_n_mm2", 125, "N/mm²", finding.Recalled},
		{"alloy.density_kg_m3", 2660, "kg/m³", finding.Recalled},
		{"alloy.elastic_kn_mm2", 70, "kN/mm²", finding.Read},
		{"alloy.poisson", 0.33, "", finding.Read},
	}
	for _, r := range rows {
		q, ok := g.Lookup(r.from)
		if !ok || q.Number != r.want || q.Unit != r.unit || q.Basis != r.basis || q.Source == "" || q.IsWord {
			t.Errorf("%s: %+v %v", r.from, q, ok)
		}
		if why := g.Why(r.from); why != "" {
			t.Errorf("%s is there, yet: %s", r.from, why)
		}
	}
	// DNV, 2011, tables B1 and B4: factors only, of the parent and by wire.
	class := find(t, "5083-H116").For(material.Asked{Source: "DNV HSLC", Thickness: 6, Form: "plate", Filler: "5356"})
	for from, want := range map[string]float64{"alloy.parent.factor_f1": 0.89, "alloy.welded.factor_f1": 0.53, "alloy.parent.yield_n_mm2": 215} {
		if q, ok := class.Lookup(from); !ok || q.Number != want {
			t.Errorf("%s: %+v %v, want %v", from, q, ok, want)
		}
	}
	none := find(t, "5083-H116").For(material.Asked{Source: "nothing"})
	if _, ok := none.Lookup("alloy.welded.yield_n_mm2"); ok || none.Why("alloy.welded.yield_n_mm2") == "" {
		t.Error("a missing as-welded value must be missing and say why")
	}
}

// What a weld leaves is never more than the parent had, in the same source.
func TestWeldNeverStrengthens(t *testing.T) {
	for _, a := range shipped(t).All() {
		for i := range a.Welded {
			w := &a.Welded[i]
			for j := range a.Parent {
				p := &a.Parent[j]
				if p.Source == w.Source && p.Form == w.Form && (w.Yield > p.Yield || w.Tensile > p.Tensile) {
					t.Errorf("%s by %s: welded %v/%v above parent %v/%v", a.Name, w.Source.Name, w.Tensile, w.Yield, p.Tensile, p.Yield)
				}
			}
		}
	}
}

const goodSource = "[source.S]\nuse = 1\nwork = \"W\"\nedition = \"E\"\n"
const goodAlloy = `[[alloy]]
names = ["X"]
forms = ["plate"]
density_kg_m3 = 2700
density_source = "S"
density_basis = "read"
elastic_kn_mm2 = 70
poisson = 0.33
elastic_source = "S"
elastic_basis = "read"
welded = [{source = "S", tensile_n_mm2 = 200, yield_n_mm2 = 100, basis = "read"}]
`

func TestFaults(t *testing.T) {
	rows := []struct {
		name, old, new, says string
	}{
		{"unit left out of a key", "yield_n_mm2", "yield", "unknown key"},
		{"key in capitals", "yield_n_mm2", "Yield_n_mm2", "small letters"},
		{"density left out", "density_kg_m3 = 2700\n", "", "must be above 0"},
		{"density not a number", "2700", "nan", "must be above 0"},
		{"unknown source", `source = "S"`, `source = "T"`, `source "T"`},
		{"unknown basis", `basis = "read"}`, `basis = "sure"}`, `basis "sure"`},
		{"yield above tensile", "yield_n_mm2 = 100", "yield_n_mm2 = 300", "above tensile"},
		{"endless strength", "tensile_n_mm2 = 200", "tensile_n_mm2 = inf", "impossible"},
		{"no strength at all", "tensile_n_mm2 = 200, yield_n_mm2 = 100, ", "", "neither"},
		{"range upside down", "tensile_n_mm2 = 200", "thickness_from_mm = 6, thickness_to_mm = 3, tensile_n_mm2 = 200", "no range"},
		{"form that is not made", "tensile_n_mm2 = 200", "form = \"tube\", tensile_n_mm2 = 200", `form "tube"`},
		{"wrong type", "yield_n_mm2 = 100", `yield_n_mm2 = "100"`, "incompatible types"},
		{"broken file", `names = ["X"]`, `names = ["X"`, "expected"},
		{"twice", `names = ["X"]`, `names = ["X", "X"]`, "twice"},
		{"no name", `names = ["X"]`, `names = []`, "no names"},
		{"source without order", "use = 1", "use = 0", "must be 1 or more"},
	}
	if _, err := load(goodSource + goodAlloy); err != nil {
		t.Fatalf("the sound file has faults: %v", err)
	}
	for _, r := range rows {
		t.Run(r.name, func(t *testing.T) {
			text := strings.Replace(goodSource+goodAlloy, r.old, r.new, 1)
			_, err := load(text)
			var faults finding.Faults
			if !errors.As(err, &faults) || !strings.Contains(err.Error(), r.says) {
				t.Fatalf("got %v, want faults with %q", err, r.says)
			}
			if faults[0].Place.File != "alloys/x.toml" {
				t.Errorf("fault names file %q", faults[0].Place.File)
			}
		})
	}
}

func TestFaultsAreAllTold(t *testing.T) {
	text := goodSource + strings.Replace(strings.Replace(goodAlloy, "poisson = 0.33", "poisson = 0", 1), "2700", "-1", 1)
	_, err := load(text)
	var faults finding.Faults
	if !errors.As(err, &faults) || len(faults) != 2 {
		t.Errorf("two faults in one file, got %v", err)
	}
	if _, err := material.Load(fstest.MapFS{}); err == nil {
		t.Error("no alloy at all is a fault")
	}
}

func load(text string) (*material.Table, error) {
	return material.Load(fstest.MapFS{"alloys/x.toml": {Data: []byte(text)}})
}

func BenchmarkLoad(b *testing.B) {
	files := os.DirFS("../../content")
	b.ReportAllocs()
	for b.Loop() {
		if _, err := material.Load(files); err != nil {
			b.Fatal(err)
		}
	}
}
