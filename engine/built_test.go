package engine

import (
	"errors"
	"os"
	"slices"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/held"
	"hullfile/engine/record"
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
