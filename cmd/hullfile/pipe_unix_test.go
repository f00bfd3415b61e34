//go:build unix

package main

import (
	"bytes"
	"context"
	"os"
	"path/filepath"
	"testing"
	"time"

	"golang.org/x/sys/unix"
)

// A pipe in the place of any file of a technical file is told and not opened: whoever opens one waits for ever.
func TestPipeInATechnicalFileIsNotOpened(t *testing.T) {
	t.Parallel()
	from := filepath.Join(demoFiles(t), "HL74-012")
	key := filepath.Join(t.TempDir(), "key") // it is never read: the file is refused before
	for _, name := range []string{"SHA256SUMS", "contents.sha256", "results.json", "index.html", "rebuild.json", "tables/values.csv", ".hullfile-state"} {
		part := t.TempDir()
		file := filepath.Join(part, "HL74-012")
		for _, needed := range []string{"SHA256SUMS", "contents.sha256", "results.json", "rebuild.json", "index.html", "tables/values.csv"} {
			text, err := os.ReadFile(filepath.Join(from, needed))
			if err != nil {
				t.Fatal(err)
			}
			for _, dir := range []string{part, file} {
				if err := os.MkdirAll(filepath.Dir(filepath.Join(dir, needed)), 0o755); err != nil {
					t.Fatal(err)
				}
				if dir == part && needed == "results.json" {
					continue // a part is no file of a hull
				}
				if err := os.WriteFile(filepath.Join(dir, needed), text, 0o644); err != nil {
					t.Fatal(err)
				}
			}
		}
		pipe := filepath.Join(file, name)
		if name == ".hullfile-state" {
			pipe = filepath.Join(part, name)
		}
		os.Remove(pipe)
		if err := unix.Mkfifo(pipe, 0o600); err != nil {
			t.Skipf("no pipe here: %v", err)
		}
		for _, args := range [][]string{
			{"verify", file}, {"verify", "--rebuild", file}, {"compare", file, from}, {"register", part, "-o", filepath.Join(t.TempDir(), "out")},
			{"seal", file, "--key", key, "--role", "builder", "--name", "A", "--date", "2026-08-08", "--statement", "x"},
		} {
			ended := make(chan int, 1)
			go func() {
				var out, errs bytes.Buffer
				ended <- run(context.Background(), args, &out, &errs)
			}()
			select {
			case status := <-ended:
				if status == statusSound && args[0] != "compare" && args[0] != "register" { // which read what they need, and leave out what is no file of ours
					t.Errorf("%s with a pipe for %s ends well", args[0], name)
				}
			case <-time.After(patience):
				t.Fatalf("%s waits for a pipe in the place of %s", args[0], name)
			}
		}
	}
}
