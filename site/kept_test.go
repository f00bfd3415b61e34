package site

import (
	"context"
	"crypto/sha256"
	"errors"
	"io/fs"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// Papers that several hulls ask for are remembered from run to run, also where a run asks for none of them anew.
func TestPapersOfTheYardAreRemembered(t *testing.T) {
	e := newEditor(t)
	name := filepath.Join(e.out, keptName, keptYard)
	remembered := func() string {
		t.Helper()
		if _, err := Render(context.Background(), e.job(e.out)); err != nil {
			t.Fatal(err)
		}
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		return string(text)
	}
	first := remembered()
	if !strings.Contains(first, "designs/HL74/documents/") {
		t.Fatalf("no paper of a design is remembered: %s", first)
	}
	hull := filepath.Join(e.yard, "hulls", "LT56-031", "hull.toml")
	text, err := os.ReadFile(hull)
	if err != nil {
		t.Fatal(err)
	}
	e.put(hull, append([]byte("# a remark\n"), text...))
	if second := remembered(); second != first {
		t.Errorf("after a change of one hull %s is remembered, before it was %s", second, first)
	}
}

// A paper in whose place another of the same size and time is put is read again, where the system tells that anything of it
// changed: programs that copy and unpack set times back.
func TestAPaperOfTheSameSizeAndTimeIsReadAgain(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, "documents", "look.jpg")
	old := time.Date(2026, 3, 14, 9, 0, 0, 0, time.UTC)
	put := func(name, text string) fs.FileInfo {
		t.Helper()
		if err := errors.Join(os.MkdirAll(filepath.Dir(name), 0o755), os.WriteFile(name, []byte(text), 0o644), os.Chtimes(name, old, old)); err != nil {
			t.Fatal(err)
		}
		info, err := os.Lstat(name)
		if err != nil {
			t.Fatal(err)
		}
		return info
	}
	info := put(name, "first")
	if number, _ := stamp(info); number == 0 {
		t.Skip("this system tells no more of a file than its size and time")
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	p := newPapers(root, time.Now().Add(time.Hour).UnixNano()) // all there is was there long before
	known := map[string]paper{}
	look := func() string {
		t.Helper()
		trail := paperTrail{known: known}
		if err := p.spell(sha256.New(), ".", &trail); err != nil || len(trail.seen) != 1 {
			t.Fatalf("%d papers, %v", len(trail.seen), err)
		}
		known[trail.seen[0].Path] = trail.seen[0]
		return trail.seen[0].Hash
	}
	first := look()
	known["documents/look.jpg"] = func(one paper) paper { one.Hash = "remembered"; return one }(known["documents/look.jpg"])
	if again := look(); again != "remembered" {
		t.Fatalf("a paper that nobody touched is read again: %s", again)
	}
	_, was := stamp(info)
	for changed := was; changed == was; { // the clock of a disk is coarse
		_, changed = stamp(put(name, "other"))
	}
	second := look()
	if second == "remembered" || second == first {
		t.Error("a paper that was written over is not read again")
	}
	put(name+".new", "third")
	if err := os.Rename(name+".new", name); err != nil {
		t.Fatal(err)
	}
	if third := look(); third == second {
		t.Error("a paper in whose place another was moved is not read again")
	}
}
