package main

import (
	"bytes"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"testing"
	"time"
)

// A run whose rights are taken away in the middle ends with the reason; the earlier files stay whole, and once the rights
// are back the next run is as good as any.
func TestRightsLostHalfWay(t *testing.T) {
	t.Parallel()
	if os.Geteuid() != 0 {
		t.Skip("left out: only root can take rights from somebody else")
	}
	yard, home := tinyYard(t, interruptedHulls), t.TempDir()
	out := filepath.Join(home, "files")
	open(t, yard, home)
	if err := os.Chown(home, nobody, nobody); err != nil {
		t.Fatal(err)
	}
	render := []string{"render", yard, "-o", out}
	if status, said := statusOf(t, asNobody(t, render)); status != statusSound {
		t.Fatalf("the first run: status %d, said %q", status, said)
	}
	before, err := treeOf(out)
	if err != nil {
		t.Fatal(err)
	}
	changeHull(t, yard)
	cmd := asNobody(t, render)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	waitForPart(t, out)
	ended := make(chan error, 1)
	go func() { ended <- cmd.Wait() }()
	for running := true; running; {
		rights(t, out, 0o555)
		select {
		case <-ended:
			running = false
		case <-time.After(2 * time.Millisecond):
		}
	}
	if status := cmd.ProcessState.ExitCode(); status != statusFailed || !strings.Contains(errs.String(), "may not be written to") || !strings.Contains(errs.String(), "permission denied") {
		t.Errorf("status %d, said %q", status, errs.String())
	}
	rights(t, out, 0o755)
	unchanged(t, out, before)
	verified(t, out)
	if status, said := statusOf(t, asNobody(t, render)); status != statusSound {
		t.Fatalf("the run after it: status %d, said %q", status, said)
	}
	verified(t, out)
	if left, err := filepath.Glob(filepath.Join(out, ".part-*")); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

// nobody is the user without rights.
const nobody = 65534

// rights sets the rights of a folder of output and of every folder in the making inside it.
func rights(t *testing.T, out string, mode os.FileMode) {
	t.Helper()
	if err := os.Chmod(out, mode); err != nil {
		t.Fatal(err)
	}
	parts, err := filepath.Glob(filepath.Join(out, ".part-*"))
	if err != nil {
		t.Fatal(err)
	}
	for _, part := range parts {
		filepath.WalkDir(part, func(name string, e fs.DirEntry, err error) error {
			if err == nil && e.IsDir() {
				os.Chmod(name, mode) // it may be gone by now
			}
			return nil
		})
	}
}

// verified checks every technical file in a folder of output as a stranger would.
func verified(t *testing.T, out string) {
	t.Helper()
	lists, err := filepath.Glob(filepath.Join(out, "*", "SHA256SUMS"))
	if err != nil || len(lists) == 0 {
		t.Fatalf("no technical file in %s (%v)", out, err)
	}
	for _, list := range lists {
		if err := checkSums(filepath.Dir(list)); err != nil {
			t.Error(err)
		}
	}
}

// An entry of the output that turns into a link while a run is on is replaced; what the link leads to stays.
func TestLinkInThePlaceOfAnEarlierFile(t *testing.T) {
	t.Parallel()
	yard, out, elsewhere := tinyYard(t, interruptedHulls), filepath.Join(t.TempDir(), "files"), t.TempDir()
	if status, said := statusOf(t, exec.Command("hullfile", "render", yard, "-o", out)); status != statusSound {
		t.Fatal(said)
	}
	kept := filepath.Join(elsewhere, "kept.txt")
	if err := os.WriteFile(kept, []byte("kept"), 0o644); err != nil {
		t.Fatal(err)
	}
	changeHull(t, yard)
	cmd := exec.Command("hullfile", "render", yard, "-o", out)
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	waitForPart(t, out)
	hull := filepath.Join(out, fleetNumber(3))
	if err := os.Rename(hull, filepath.Join(elsewhere, "hull")); err != nil {
		t.Fatal(err)
	}
	if err := os.Symlink(elsewhere, hull); err != nil {
		t.Fatal(err)
	}
	if err := cmd.Wait(); err != nil {
		t.Fatal(err)
	}
	if info, err := os.Lstat(hull); err != nil || !info.IsDir() {
		t.Errorf("%s is %v (%v), want a folder", hull, info, err)
	}
	if text, err := os.ReadFile(kept); err != nil || string(text) != "kept" {
		t.Errorf("what the link led to: %q %v", text, err)
	}
	if all, err := os.ReadDir(elsewhere); err != nil || len(all) != 2 {
		t.Errorf("where the link led there is %v (%v), want what was there", all, err)
	}
	verified(t, out)
}

// A yard that vanishes while its files are being made leaves the earlier files as they were.
func TestYardThatVanishes(t *testing.T) {
	t.Parallel()
	yard, out := tinyYard(t, interruptedHulls), filepath.Join(t.TempDir(), "files")
	if status, said := statusOf(t, exec.Command("hullfile", "render", yard, "-o", out)); status != statusSound {
		t.Fatal(said)
	}
	before, err := treeOf(out)
	if err != nil {
		t.Fatal(err)
	}
	changeHull(t, yard)
	cmd := exec.Command("hullfile", "render", yard, "-o", out)
	var errs bytes.Buffer
	cmd.Stderr = &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	waitForPart(t, out)
	if err := os.RemoveAll(yard); err != nil {
		t.Fatal(err)
	}
	cmd.Wait()
	if status := cmd.ProcessState.ExitCode(); status != statusFailed || errs.Len() == 0 {
		t.Errorf("status %d, said %q", status, errs.String())
	}
	after, err := treeOf(out)
	if err != nil {
		t.Fatal(err)
	}
	if diff := differences(before, after); len(diff) > 0 {
		t.Errorf("the earlier output changed: %v", diff)
	}
	verified(t, out)
}
