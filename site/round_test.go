package site

import (
	"fmt"
	"os"
	"path/filepath"
	"testing"
	"time"

	"hullfile/site/results"
)

// Every book has its turn, however large the output is; a small one is looked at whole in every run.
func TestEveryBookHasItsTurn(t *testing.T) {
	fleet := func(n, files int) (*state, []string) {
		s, hulls := newState(), []string{}
		for i := range n {
			number := fmt.Sprintf("F%03d", i)
			hulls = append(hulls, number)
			s.books[number] = volume{Line: line{Number: number, Files: files}}
		}
		return s, hulls
	}
	small, hulls := fleet(10, fewFiles/10)
	if r := newRound(hulls, small, false); len(r.turn) != 10 || r.next != "" {
		t.Errorf("of a small output %d books have their turn, the next run begins at %q", len(r.turn), r.next)
	}
	large, hulls := fleet(50, fewFiles/7)
	if r := newRound(hulls, large, true); !r.has("F049") || !r.has("F000") {
		t.Error("not every book is looked at on demand")
	}
	seen := map[string]bool{}
	runs := 0
	for ; len(seen) < len(hulls) && runs < 20; runs++ {
		r := newRound(hulls, large, false)
		if len(r.turn) == 0 || len(r.turn) > 7 {
			t.Fatalf("%d books have their turn in one run", len(r.turn))
		}
		for number := range r.turn {
			seen[number] = true
		}
		large.next = r.next
	}
	if runs != 8 {
		t.Errorf("%d of %d books had their turn after %d runs, want all after 8", len(seen), len(hulls), runs)
	}
	huge, hulls := fleet(3, 2*fewFiles)
	if r := newRound(hulls, huge, false); len(r.turn) != 1 || r.next != "F001" {
		t.Errorf("of books larger than a round %d have their turn, the next is %q", len(r.turn), r.next)
	}
}

// Doors tell what is added, taken away or put in the place of another; a file that is written over in its place they do not
// see, and the footprint does.
func TestWhatDoorsSee(t *testing.T) {
	dir := t.TempDir()
	put := func(name, text string) {
		t.Helper()
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	if err := os.Mkdir(filepath.Join(dir, "seams"), 0o755); err != nil {
		t.Fatal(err)
	}
	for _, name := range []string{contentsName, sumsName, coverName, results.Name, "seams/a.html"} {
		put(name, "as written")
	}
	tree, folders, err := footprint(dir)
	was, ok := doors(dir, folders)
	if err != nil || !ok || len(folders) != 2 {
		t.Fatalf("folders %v, %v", folders, err)
	}
	put("seams/a.html", "as edited in its place")
	if now, _ := doors(dir, folders); now != was {
		t.Error("doors see a file that was written over in its place; say so where their limits are told")
	}
	if now, _, _ := footprint(dir); now == tree {
		t.Error("the footprint does not see a file that was written over")
	}
	steps := []struct {
		where string
		do    func()
	}{
		{"a list written over", func() { put(sumsName, "another list") }},
		{"a file added", func() { put("seams/b.html", "new") }},
		{"a file put in the place of another", func() {
			put("elsewhere", "other")
			os.Rename(filepath.Join(dir, "elsewhere"), filepath.Join(dir, "seams/a.html"))
		}},
		{"a file taken away", func() { os.Remove(filepath.Join(dir, "seams/b.html")) }},
	}
	for _, s := range steps {
		before, _ := doors(dir, folders)
		time.Sleep(20 * time.Millisecond) // folders bear the time of a clock that moves in small steps
		s.do()
		if now, ok := doors(dir, folders); !ok || now == before {
			t.Errorf("%s: doors see nothing", s.where)
		}
	}
	os.RemoveAll(filepath.Join(dir, "seams"))
	if _, ok := doors(dir, folders); ok {
		t.Error("doors see a folder that is gone")
	}
}
