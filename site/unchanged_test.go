package site

import (
	"context"
	"hullfile/engine"
	"hullfile/engine/record"
	"os"
	"path/filepath"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"
)

// What did not change keeps its bytes and times, and is not reckoned; what changed is.
func TestUnchangedIsNeitherReckonedNorWritten(t *testing.T) {
	e := newEditor(t)
	count := func(want ...string) {
		t.Helper()
		job := e.job(e.out)
		var mu sync.Mutex
		var reckoned []string
		ready := job.Pieces.Ready
		job.Pieces.Ready = func(y *record.Yard) (Reckoner, error) {
			by, err := ready(y)
			assess := by.Assess
			by.Assess = func(y *record.Yard, h *record.Hull) *engine.Dossier {
				mu.Lock()
				defer mu.Unlock()
				reckoned = append(reckoned, h.Number)
				return assess(y, h)
			}
			return by, err
		}
		before := timesOf(t, e.out)
		report, err := Render(context.Background(), job)
		if err != nil {
			t.Fatal(err)
		}
		slices.Sort(reckoned)
		if !slices.Equal(reckoned, want) {
			t.Errorf("reckoned %v, want %v", reckoned, want)
		}
		for _, h := range report.Hulls {
			if h.Kept == slices.Contains(want, h.Number) || h.Pages == 0 || h.Root == "" || h.Bytes == 0 {
				t.Errorf("report %+v, want written only %v", h, want)
			}
		}
		for name, at := range timesOf(t, e.out) {
			hull, _, _ := strings.Cut(name, "/")
			if was, known := before[name]; known && !slices.Contains(want, hull) && len(want) == 0 && at != was {
				t.Errorf("%s was written again", name)
			}
		}
	}
	count("HL74-012", "HL74-013", "LT56-031")
	count()
	e.put(filepath.Join(e.yard, "hulls", "HL74-013", "documents", "new.txt"), []byte("new"))
	count("HL74-013")
	hull := filepath.Join(e.yard, "hulls", "LT56-031", "hull.toml")
	text, err := os.ReadFile(hull)
	if err != nil {
		t.Fatal(err)
	}
	e.put(hull, append(text, "\n# end\n"...))
	count("LT56-031")
	e.put(filepath.Join(e.out, "HL74-012", coverName), []byte("altered"))
	count("HL74-012")
	if err := os.CopyFS(e.out+"2", os.DirFS(e.out)); err != nil {
		t.Fatal(err)
	}
	e.out += "2"
	count()
	os.Remove(filepath.Join(e.out, stateName))
	count("HL74-012", "HL74-013", "LT56-031")
}

// timesOf gives the time of every file below a folder but the state.
func timesOf(t *testing.T, dir string) map[string]time.Time {
	t.Helper()
	out := map[string]time.Time{}
	for name := range tree(t, dir) {
		info, err := os.Stat(filepath.Join(dir, filepath.FromSlash(name)))
		if err != nil {
			t.Fatal(err)
		}
		out[name] = info.ModTime()
	}
	return out
}
