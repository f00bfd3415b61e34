package proof_test

import (
	"fmt"
	"io/fs"
	"os"
	"testing"

	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/proof"
)

func shipped(t testing.TB) (fs.FS, *method.Library, *material.Table) {
	t.Helper()
	content := os.DirFS("../../content")
	methods, err := fs.Sub(content, "methods")
	if err != nil {
		t.Fatal(err)
	}
	lib, err := method.NewLibrary(methods, nil)
	if err != nil {
		t.Fatalf("shipped sheets: %v", err)
	}
	table, err := material.Load(content)
	if err != nil {
		t.Fatalf("shipped alloys: %v", err)
	}
	return content, lib, table
}

// TestShippedProofs runs every published value, one sub-test each.
func TestShippedProofs(t *testing.T) {
	sheet, err := proof.Run(shipped(t))
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
