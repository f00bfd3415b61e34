package proof_test

import (
	"fmt"
	"io/fs"
	"os"
	"testing"

	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/proof"
	"hullfile/engine/requirement"
)

func shipped(t testing.TB) (fs.FS, *method.Library, *material.Table) {
	t.Helper()
	content := os.DirFS("../../content")
	methods, err := fs.Sub(content, "methods")
	if err != nil {
		t.Fatal(err)
	}
	lib, err := method.ReadShipped(methods).Library(nil)
	if err != nil {
		t.Fatalf("shipped sheets: %v", err)
	}
	table, err := material.Load(content)
	if err != nil {
		t.Fatalf("shipped alloys: %v", err)
	}
	return content, lib, table
}

// ranIn runs the proofs below files; the lists of requirements are the shipped ones.
func ranIn(files fs.FS, lib *method.Library, alloys *material.Table) (proof.Sheet, error) {
	sets, err := proof.Read(files)
	if err != nil {
		return proof.Sheet{}, err
	}
	shipped, err := requirement.Read(os.DirFS("../../content"))
	if err != nil {
		return proof.Sheet{}, err
	}
	lists, err := shipped.With(nil)
	if err != nil {
		return proof.Sheet{}, err
	}
	return sets.Run(lib, alloys, lists), nil
}

// TestShippedProofs runs every published value, one sub-test each.
func TestShippedProofs(t *testing.T) {
	sheet, err := ranIn(shipped(t))
	if err != nil {
		t.Fatal(err)
	}
	for i, c := range sheet.Cases {
		t.Run(fmt.Sprintf("%s/%03d %s", c.Set, i+1, c.Name), func(t *testing.T) {
			if !c.Pass {
				t.Errorf("%s: printed %s, got %v %s (tolerance %v) %s; inputs %s", c.Source, c.Printed, c.Got, c.Unit, c.Tolerance, c.Fails, c.Inputs)
			}
		})
	}
}

// TestListedSetsAreThere guards against a set that vanishes, or is emptied so that it passes.
func TestListedSetsAreThere(t *testing.T) {
	sheet, err := ranIn(shipped(t))
	if err != nil {
		t.Fatal(err)
	}
	have := map[string]int{}
	for _, c := range sheet.Cases {
		have[c.Set]++
		if c.Source == "" || c.Title == "" || c.Printed == "" || c.Inputs == "" {
			t.Errorf("%s, %s: source %q, title %q, printed %q, inputs %q", c.Set, c.Name, c.Source, c.Title, c.Printed, c.Inputs)
		}
	}
	for set, least := range map[string]int{
		"iso-12215-5-example": 8, "iso-12215-5-k2": 15, "clamped-plate-theory": 7, "plate-and-beam": 14, "beams": 6, "clamped-plate-edges": 7, "area-factor": 6,
		"practice-7m-c": 17, "practice-7m-b": 1, "practice-7m-members": 5, "practice-7m-2019-frame": 4, "mean-of-means": 4, "propeller-slip": 2, "student-t": 10,
		"alloys-en-485-2": 60, "alloys-design-manual": 10, "alloys-lr": 34, "alloys-dnv": 11, "alloys-en-1999": 16, "alloys-abs": 12,
		"class-service-factors": 33, "class-allowable-stresses": 30, "class-minimum-thickness": 3, "effective-plate": 12, "weld-factors": 4, "weld-factor-throats": 16,
		"strong-points": 3, "strong-point-categories": 4, "local-loads-arithmetic": 20, "brackets-arithmetic": 8, "renewal-arithmetic": 6,
		"second-opinion-class": 4, "second-opinion-europe": 5, "second-opinion-literature": 10,
		"beam-sizing-open": 2, "beam-sizing-european": 2, "beam-sizing-class": 2, "beam-sizing-iso-2008": 2, "beam-sizing-iso-2019": 2,
		"fixed-beam-open": 6, "fixed-beam-european": 4, "fixed-beam-class": 4, "fixed-beam-iso-2008": 4, "fixed-beam-iso-2019": 4, "simple-beam-open": 4, "simple-beam-european": 2, "simple-beam-class": 2, "simple-beam-iso-2008": 2, "simple-beam-iso-2019": 2, "whisker-friction": 1, "web-shear-iso-2008": 2, "web-shear-iso-2019": 2, "crouch-form": 3, "exponential-highest-open": 1, "exponential-highest-1976": 2,
		"clamped-plate-class": 1, "clamped-plate-open": 1, "clamped-plate-european": 1, "clamped-plate-iso-2008": 1, "clamped-plate-iso-2019": 1,
		"clamped-plate-edges-table": 7, "iso-12215-5-2019-k2": 15, "iso-12215-5-2019-example": 8, "taylor-quotient-2008": 1, "taylor-quotient-2019": 1,
		"member-buckling-open": 4, "member-buckling-european": 4, "member-buckling-class": 4, "member-buckling-iso-2008": 4, "member-buckling-iso-2019": 4,
		"imo-a749-limits": 6, "crowding-limits": 4, "tp-14619-rules": 2, "fr-undecked-rules": 3, "iso-12217-3-worksheet": 7, "iso-12217-1-constants": 4,
		"collision-loads": 4, "strong-point-lines": 1, "us-small-outboard": 3, "us-outboard-rows": 4, "us-flotation-steps": 3, "us-basic-flotation": 2,
		"us-powering-rows": 8, "unit-definitions-us": 4, "unit-definitions-crouch": 1, "inclining-nicholls": 4, "arc-efficiency": 3, "fillet-components": 2,
		"class-members": 3, "class-slamming": 3, "savitsky-lengths": 9, "planing-power-example": 2, "weld-metal": 1, "weld-metal-arithmetic": 5,
		"tp-14619-table": 16, "iso-12217-worksheet": 4, "iso-12217-arithmetic": 16, "inclining": 2, "stability-textbook": 2, "hydrostatics-arithmetic": 19,
	} {
		if have[set] < least {
			t.Errorf("set %s has %d cases, want %d or more", set, have[set], least)
		}
	}
}

// The formulas that the standard's own figures touch must be off the list, those that nothing touches on it.
func TestWithoutAnOutsideCheck(t *testing.T) {
	sheet, err := ranIn(shipped(t))
	if err != nil {
		t.Fatal(err)
	}
	on := map[string]bool{}
	for _, u := range sheet.Without {
		if u.Method == "iso-12215-5-2008.toml" {
			on[u.Scope+" "+u.Symbol] = true
		}
	}
	for _, symbol := range []string{"craft n_1", "craft P_BMPBASE", "craft P_BMMIN", "craft P_DMBASE", "panel k_2", "panel k_C", "panel t_P", "stiffener SM", "primary M"} {
		if on[symbol] {
			t.Errorf("%s has an outside check, yet it is on the list", symbol)
		}
	}
	for _, symbol := range []string{"craft n_2", "panel k_Z", "panel sigma_d", "panel t_min", "panel k_SUP", "stiffener k_CS", "stiffener k_SA"} {
		if !on[symbol] {
			t.Errorf("%s has no outside check, yet it is not on the list", symbol)
		}
	}
}

func BenchmarkRun(b *testing.B) {
	content, lib, table := shipped(b)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := ranIn(content, lib, table); err != nil {
			b.Fatal(err)
		}
	}
}
