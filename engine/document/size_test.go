package document

import (
	"fmt"
	"os"
	"path/filepath"
	"runtime"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// yardOf makes a yard folder of one hull with documents by name and length; the files are sparse.
func yardOf(t *testing.T, lengths map[string]int64) (*os.Root, *record.Hull) {
	t.Helper()
	dir := t.TempDir()
	folder := filepath.Join(dir, "hulls", "H1", "documents")
	if err := os.MkdirAll(folder, 0o755); err != nil {
		t.Fatal(err)
	}
	h := &record.Hull{Number: "H1", Folder: "hulls/H1", Over: []string{"hulls/H1/hull.toml"}}
	at := finding.Place{File: "hulls/H1/hull.toml", Line: 1}
	for name, length := range lengths {
		f, err := os.Create(filepath.Join(folder, name))
		if err != nil {
			t.Fatal(err)
		}
		if err := f.Truncate(length); err != nil {
			t.Skip("no sparse files here:", err)
		}
		f.Close()
		h.Documents = append(h.Documents, record.Document{Entry: record.Entry{ID: name, At: at}, File: record.Written(name, at), Kind: record.Written("other", at), Title: record.Written(name, at)})
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	return root, h
}

func TestTenThousandDocuments(t *testing.T) {
	if testing.Short() {
		t.Skip("makes ten thousand files")
	}
	lengths := map[string]int64{}
	for i := range 10_000 {
		lengths[fmt.Sprintf("paper %05d.txt", i)] = 1
	}
	root, h := yardOf(t, lengths)
	r := Assess(root, h)
	out := map[string]bool{}
	for i := range r.Documents {
		if d := &r.Documents[i]; d.Present {
			out[d.Out] = true
		}
	}
	if len(out) != 10_000 || len(r.Strays) != 0 {
		t.Errorf("%d documents with a place of their own, %d strays", len(out), len(r.Strays))
	}
}

// A document of two gigabytes is read as it comes: what is allocated does not grow with it.
func TestLongDocumentIsStreamed(t *testing.T) {
	if testing.Short() {
		t.Skip("takes some seconds")
	}
	const long = 2 << 30
	root, h := yardOf(t, map[string]int64{"film.mov": long})
	var before, after runtime.MemStats
	runtime.ReadMemStats(&before)
	r := Assess(root, h)
	runtime.ReadMemStats(&after)
	if got := after.TotalAlloc - before.TotalAlloc; got > 8<<20 {
		t.Errorf("%d MB allocated for one document of 2 GB", got>>20)
	}
	if d := &r.Documents[0]; !d.Present || d.Bytes != long {
		t.Errorf("present %v, %d bytes", d.Present, d.Bytes)
	}
}
