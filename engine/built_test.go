package engine

import (
	"errors"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/held"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

func TestTablesOfAYardsOwn(t *testing.T) {
	content := os.DirFS(contentFolder)
	ref, err := NewReference(content, nil)
	if err != nil {
		t.Fatal(err)
	}
	own := func(name, text string) record.SheetSource {
		return record.SheetSource{Name: name, Path: "limits/" + name, Text: []byte(text)}
	}
	shipped, err := os.ReadFile(contentFolder + "/limits/iso-10042.toml")
	if err != nil {
		t.Fatal(err)
	}
	who := "confirmed_by = \"A. Nobody\"\nconfirmed_edition = \"ISO 10042:2018\"\nconfirmed_on = 2026-01-12\nconfirmed_rows = \"" + held.Mark(shipped) + "\"\n"
	with, err := ref.WithLimits(content, []record.SheetSource{own("iso-10042.toml", who)})
	if err != nil {
		t.Fatal(err)
	}
	if !with.Building.Flaws.Held.Holds() || ref.Building.Flaws.Held.Holds() {
		t.Error("a confirmation does not reach the reference that it is for, or reaches another")
	}

	_, err = ref.WithLimits(content, []record.SheetSource{own("certificates.toml", "[corrosion]\nmet_mg_cm2 = -1\n"), own("sea.toml", "a = 1\n"), own("welder-ranges.toml", "[[scheme]]\nstandard = \"X\"\n")})
	var faults finding.Faults
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	for _, want := range []string{"limits/sea.toml:1:1: the program has no table", "limits/certificates.toml:1:1: corrosion: corrosion needs", "limits/welder-ranges.toml:1:1: scheme[1]: scheme X needs"} {
		if !slices.ContainsFunc(faults, func(f finding.Fault) bool { return strings.HasPrefix(f.String(), want) }) {
			t.Errorf("no fault begins with %q in\n%v", want, faults)
		}
	}
}

// TestWeldMetalInTheWeights: the figures are our own. A fillet of 3 mm throat takes 1.15 x 9 mm² x 2660 kg/m³ = 0.0275 kg/m.
func TestWeldMetalInTheWeights(t *testing.T) {
	item := func(name string, kg float64) weight.Item {
		it := weight.Item{Record: &record.Weight{}, HasMass: true, Mass: unit.KG(kg)}
		it.Record.Name = record.Val[string]{V: name, Set: true}
		it.Record.At = finding.Place{File: "weights.csv", Line: 2}
		return it
	}
	for _, c := range []struct {
		where string
		items []weight.Item
		metal float64
		want  finding.Standing
	}{
		{"more is counted", []weight.Item{item("Weld metal", 4), item("weld metal, fittings", 1)}, 4.6, finding.Met},
		{"as much", []weight.Item{item("weld metal", 4.6)}, 4.6, finding.Met},
		{"less", []weight.Item{item("weld metal", 4.5)}, 4.6, finding.Short},
		{"none", []weight.Item{item("paint", 9)}, 4.6, finding.NotShown},
		{"no seams", []weight.Item{item("paint", 9)}, 0, ""},
		{"no weights", nil, 4.6, ""},
	} {
		d := &Dossier{}
		d.Weight.Items, d.Welding.Sums.Metal, d.Welding.Sums.Metres = c.items, c.metal, 100
		got := finding.Standing("")
		for _, one := range d.weldMetal() {
			got = one.Standing
		}
		if got != c.want {
			t.Errorf("%s: %q, want %q", c.where, got, c.want)
		}
	}
}

// TestEveryTableOfLimitsIsRead: a table of limits that no trade reads judges nothing, and a yard could not lay its own in its
// place.
func TestEveryTableOfLimitsIsRead(t *testing.T) {
	files, err := filepath.Glob(filepath.Join(contentFolder, "limits", "*.toml"))
	if err != nil || len(files) < 5 {
		t.Fatalf("%v, %v", files, err)
	}
	ref, err := NewReference(os.DirFS(contentFolder), nil)
	if err != nil {
		t.Fatal(err)
	}
	var told []string
	for _, table := range ref.Building.tables() {
		told = append(told, table.File)
	}
	for _, f := range files {
		name := filepath.Base(f)
		if !slices.Contains(limitTables, name) {
			t.Errorf("content/limits/%s is not among limitTables of built.go", name)
		}
		if !slices.Contains(told, "limits/"+name) {
			t.Errorf("content/limits/%s is not among the tables that built.go gives to the pages", name)
		}
	}
}

// TestAStaleConfirmation: limits that were confirmed for other rows than those in use are doubted, and count for nothing.
func TestAStaleConfirmation(t *testing.T) {
	content := os.DirFS(contentFolder)
	ref, err := NewReference(content, nil)
	if err != nil {
		t.Fatal(err)
	}
	text := "confirmed_by = \"A. Nobody\"\nconfirmed_edition = \"EN 10204:2004\"\nconfirmed_on = 2026-01-12\nconfirmed_rows = \"0123abcd\"\n"
	if ref, err = ref.WithLimits(content, []record.SheetSource{{Name: "certificates.toml", Path: "limits/certificates.toml", Text: []byte(text)}}); err != nil {
		t.Fatal(err)
	}
	d := Assess(&record.Yard{}, &record.Hull{Number: "X"}, ref, nil)
	if !slices.ContainsFunc(d.Findings, func(f finding.Finding) bool {
		return f.Rule == "limits-stale" && f.Kind == finding.Doubt && strings.Contains(f.Says, "0123abcd")
	}) {
		t.Error("a confirmation of other rows is not doubted")
	}
}
