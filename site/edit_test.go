package site

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io/fs"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"testing"
)

var editRounds = flag.Int("edits", 20, "rounds of the test that edits a yard at random")

// A yard is edited at random, by hand and in the output; reading it in pieces and writing it over the last output gives
// what reading it whole and writing it to an empty folder gives, byte for byte.
func TestIncrementalEqualsFresh(t *testing.T) {
	e := newEditor(t)
	kept := 0
	rounds := *editRounds
	if testing.Short() {
		rounds = min(rounds, 4)
	}
	for round := range rounds {
		var did []string
		for range 1 + e.rand.IntN(2) {
			did = append(did, e.edit())
		}
		e.clear()
		report, err := Render(context.Background(), e.job(e.out))
		if err != nil {
			t.Fatalf("round %d, after %v: %v", round, did, err)
		}
		for _, h := range report.Hulls {
			if h.Kept {
				kept++
			}
		}
		fresh := filepath.Join(t.TempDir(), "fresh")
		if _, err := Render(context.Background(), jobIn(t, e.yard, fresh)); err != nil {
			t.Fatal(err)
		}
		same(t, fmt.Sprintf("round %d, after %v", round, did), tree(t, fresh), tree(t, e.out))
		if n := len(report.Hulls); n > 0 && round%3 == 0 {
			e.rebuilds(report.Hulls[e.rand.IntN(n)].Number)
		}
		if t.Failed() {
			return
		}
		os.RemoveAll(fresh)
		if (round+1)%25 == 0 {
			t.Logf("%d rounds of %d, %d books kept", round+1, rounds, kept)
		}
	}
	if kept == 0 {
		t.Error("no book was kept in any round; nothing was incremental")
	}
}

// editor changes a yard and its output.
type editor struct {
	t    *testing.T
	rand *rand.Rand
	yard string
	out  string
	lean bool // the last run read only what was drawn on of the stock

	printed bool // it read the templates, to print a page
}

// newEditor lays out the demo without what takes long to reckon and is like everything else to this test: the lines
// and the logs of instruments.
func newEditor(t *testing.T) *editor {
	job := demoJob(t)
	for _, name := range []string{"lines.csv", "logs"} {
		found, err := filepath.Glob(filepath.Join(job.Root.Name(), "*", "*", name))
		if err != nil {
			t.Fatal(err)
		}
		for _, f := range found {
			away := filepath.Join(t.TempDir(), "away")
			if err := os.Rename(f, away); err != nil {
				t.Fatal(err)
			}
			if !readable(t, job.Root.Name()) {
				t.Logf("%s is needed", f)
				if err := os.Rename(away, f); err != nil {
					t.Fatal(err)
				}
			}
		}
	}
	return &editor{t: t, rand: rand.New(rand.NewPCG(1, 2)), yard: job.Root.Name(), out: job.Out}
}

// job reads the yard in pieces, as a run of the command does.
func (e *editor) job(out string) Job {
	e.t.Helper()
	return piecesIn(e.t, e.yard, out)
}

// edit makes one change and says which. A change that would leave records with faults is taken back.
func (e *editor) edit() string {
	edits := []func() string{e.value, e.value, e.line, e.comment, e.paper, e.copyHull, e.removeHull, e.metal, e.sheet, e.sheet, e.list, e.asks, e.asks, e.damage, e.addFile, e.dropState, e.garble, e.touch, e.nothing}
	return edits[e.rand.IntN(len(edits))]()
}

// records lists the files of records below the yard.
func (e *editor) records(ends ...string) []string {
	var out []string
	err := filepath.WalkDir(e.yard, func(p string, d fs.DirEntry, err error) error {
		if err == nil && !d.IsDir() && slices.Contains(ends, filepath.Ext(p)) {
			out = append(out, p)
		}
		return err
	})
	if err != nil {
		e.t.Fatal(err)
	}
	return out
}

func (e *editor) pick(from []string) string { return from[e.rand.IntN(len(from))] }

// change writes a file, and writes what was there back if the yard can no longer be read.
func (e *editor) change(name string, text []byte) string {
	was, err := os.ReadFile(name)
	if err != nil {
		e.t.Fatal(err)
	}
	e.put(name, text)
	if !readable(e.t, e.yard) {
		e.put(name, was)
		return "a change that was taken back of " + name
	}
	return "a change of " + name
}

func (e *editor) put(name string, text []byte) {
	if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, text, 0o644)); err != nil {
		e.t.Fatal(err)
	}
}
