package site

import (
	"flag"
	"os"
	"path/filepath"
	"regexp"
	"testing"
)

var update = flag.Bool("update", false, "write the golden pages anew")

// goldenPages are looked at line by line when they change: one of each form that a reader meets first.
var goldenPages = []string{"index.html", "K-1/index.html", "K-1/findings.html", "K-1/structure/B1.html", "K-1/weight.html", "K-1/trials.html"}

// hashes change with every file of the book; what they are is tested elsewhere.
var (
	svgs   = regexp.MustCompile(`(?s)<svg.*?</svg>`)
	hashes = regexp.MustCompile(`\b[0-9a-f]{64}\b`)
)

// TestGoldenPages holds the pages of a small yard, with something short, missing and contradictory in it, to what was
// last looked at. The drawings have tests of their own and are left out. After a change: go test ./site -run Golden -update.
func TestGoldenPages(t *testing.T) {
	dir := rendered(t, yardJob(t, os.DirFS("testdata/yard")))
	for _, name := range goldenPages {
		holdsGolden(t, dir, name)
	}
}

// TestGoldenRequirements does the same for the pages of requirements, by a list of a yard's own with an item of each kind
// and hostile words.
func TestGoldenRequirements(t *testing.T) {
	dir := rendered(t, yardJob(t, os.DirFS("testdata/asked")))
	readOutput(t, dir).check(t)
	for _, name := range []string{"K-2/requirements.html", "K-2/requirements/own.html", "K-2/requirements/declaration-eu-draft.html"} {
		holdsGolden(t, dir, name)
	}
}

func holdsGolden(t *testing.T, dir, name string) {
	t.Helper()
	got, err := os.ReadFile(filepath.Join(dir, filepath.FromSlash(name)))
	if err != nil {
		t.Fatal(err)
	}
	got = hashes.ReplaceAll(svgs.ReplaceAll(got, []byte("<svg/>")), []byte("HASH"))
	file := filepath.Join("testdata/golden", filepath.FromSlash(name))
	if *update {
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(file, got, 0o644); err != nil {
			t.Fatal(err)
		}
	}
	want, err := os.ReadFile(file)
	if err != nil {
		t.Fatal(err)
	}
	if string(got) != string(want) {
		at := 0
		for at < len(got) && at < len(want) && got[at] == want[at] {
			at++
		}
		t.Errorf("%s differs at byte %d: %q, was %q", name, at, got[at:min(at+120, len(got))], want[at:min(at+120, len(want))])
	}
}
