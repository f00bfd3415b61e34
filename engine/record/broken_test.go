package record

import (
	"errors"
	"flag"
	"os"
	"path/filepath"
	"testing"

	"hullfile/engine/finding"
)

var update = flag.Bool("update", false, "write the messages that are given now into expected.txt; read them before you keep them")

var knownForTests = Known{
	Alloys: []string{"5083-H116", "5083-H32", "5754-H34", "6082-T6"},
	Sheets: []string{"iso-12215-5-2008"},
	Lists:  []string{"eu-2013-53", "uk-2017-737"},
	Words:  []string{"plating", "owners-manual"},
}

// brokenCases is the least number of broken yards; the guard keeps a folder that was lost from passing unseen.
const brokenCases = 56

// TestBrokenYards holds every message word for word: they are what a builder gets to see.
func TestBrokenYards(t *testing.T) {
	folders, err := filepath.Glob("../../testdata/broken/*")
	if err != nil || len(folders) < brokenCases {
		t.Fatalf("%d broken yards, %d are expected (%v)", len(folders), brokenCases, err)
	}
	for _, dir := range folders {
		t.Run(filepath.Base(dir), func(t *testing.T) { holdsMessages(t, dir) })
	}
}

func holdsMessages(t *testing.T, dir string) {
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	y, err := Read(root, knownForTests)
	if y != nil || err == nil {
		t.Fatal("a broken yard was read without a fault")
	}
	if all := (finding.Faults)(nil); !errors.As(err, &all) {
		t.Fatalf("not a list of faults: %v", err)
	}
	got, file := err.Error()+"\n", filepath.Join(dir, "expected.txt")
	if *update {
		if err := os.WriteFile(file, []byte(got), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if got != string(want) {
		t.Errorf("messages differ\n--- expected\n%s--- given\n%s", want, got)
	}
}
