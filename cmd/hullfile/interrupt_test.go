package main

import (
	"bytes"
	"errors"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
)

// interrupted starts a rendering of a fleet over an earlier output, breaks it off in the middle, and gives its status
// and what it said. The earlier output must be what it was.
func interrupted(t *testing.T, signal os.Signal) (out string, status int, said string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("left out: signals are not sent to a process on Windows")
	}
	yard := fleetYard(t, 60)
	out = filepath.Join(t.TempDir(), "files")
	if text, err := exec.Command("hullfile", "render", yard, "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, text)
	}
	before, err := treeOf(out)
	if err != nil {
		t.Fatal(err)
	}
	changeHull(t, yard)
	var errs bytes.Buffer
	cmd := exec.Command("hullfile", "render", yard, "-o", out)
	cmd.Stderr = &errs
	if err := cmd.Start(); err != nil {
		t.Fatal(err)
	}
	waitForPart(t, out)
	if err := cmd.Process.Signal(signal); err != nil {
		t.Fatal(err)
	}
	err = cmd.Wait()
	var ended *exec.ExitError
	if !errors.As(err, &ended) {
		t.Fatalf("the rendering was over before it could be interrupted: %v", err)
	}
	after, err := treeOf(out)
	if err != nil {
		t.Fatal(err)
	}
	for name := range after {
		if strings.HasPrefix(name, ".part-") {
			delete(after, name)
		}
	}
	if diff := differences(before, after); len(diff) > 0 {
		t.Errorf("the earlier output changed: %v", diff)
	}
	return out, ended.ExitCode(), errs.String()
}

// changeHull makes the next output differ from the last in every hull.
func changeHull(t *testing.T, yard string) {
	t.Helper()
	name := filepath.Join(yard, "yard.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(text, []byte("Skerry Lane")) {
		t.Fatal("the demo yard has another name")
	}
	if err := os.WriteFile(name, bytes.ReplaceAll(text, []byte("Skerry Lane"), []byte("Skerry Row")), 0o644); err != nil {
		t.Fatal(err)
	}
}

// waitForPart waits until the new output has begun beside the old.
func waitForPart(t *testing.T, out string) {
	t.Helper()
	for until := time.Now().Add(30 * time.Second); time.Now().Before(until); time.Sleep(time.Millisecond) {
		made, err := filepath.Glob(filepath.Join(out, ".part-*", "new", "*", "index.html"))
		if err == nil && len(made) > 0 {
			return
		}
	}
	t.Fatal("the new output never began")
}

func TestInterruptLeavesTheEarlierOutputWhole(t *testing.T) {
	out, status, said := interrupted(t, os.Interrupt)
	if status != statusFailed || !strings.Contains(said, "interrupted") {
		t.Errorf("status %d, said %q", status, said)
	}
	if left, err := filepath.Glob(filepath.Join(out, ".part-*")); err != nil || len(left) > 0 {
		t.Errorf("left behind: %v %v", left, err)
	}
}

func TestKillLeavesTheEarlierOutputWhole(t *testing.T) {
	out, _, _ := interrupted(t, os.Kill)
	yard := fleetYard(t, 60)
	if text, err := exec.Command("hullfile", "render", yard, "-o", out).CombinedOutput(); err != nil {
		t.Fatalf("the next run fails: %v: %s", err, text)
	}
	if left, err := filepath.Glob(filepath.Join(out, ".part-*")); err != nil || len(left) > 0 {
		t.Errorf("the next run does not clear what was left: %v %v", left, err)
	}
	if err := checkSums(filepath.Join(out, "F001")); err != nil {
		t.Error(err)
	}
}
