package main

import (
	"bytes"
	"errors"
	"fmt"
	"math/rand/v2"
	"os"
	"os/exec"
	"os/signal"
	"path/filepath"
	"runtime"
	"strings"
	"syscall"
	"testing"
	"time"
)

// interruptedHulls are so many that a rendering is still on its way when its first file has begun to come out. How much
// stands on record of each is not what is tried.
const interruptedHulls = 60

// interrupted starts a rendering of a fleet over an earlier output, breaks it off in the middle, and gives its status
// and what it said. The earlier output must be what it was.
func interrupted(t *testing.T, by os.Signal) (out string, status int, said string) {
	t.Helper()
	if runtime.GOOS == "windows" {
		t.Skip("left out: signals are not sent to a process on Windows")
	}
	yard := tinyYard(t, interruptedHulls)
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
	if err := cmd.Process.Signal(by); err != nil {
		t.Fatal(err)
	}
	err = cmd.Wait()
	var ended *exec.ExitError
	if !errors.As(err, &ended) {
		t.Fatalf("the rendering was over before it could be interrupted: %v", err)
	}
	unchanged(t, out, before)
	return out, ended.ExitCode(), errs.String()
}

// unchanged holds an output against what it was, but for what a run that broke off left beside it.
func unchanged(t *testing.T, out string, before map[string]string) {
	t.Helper()
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
}

// changeHull makes the next output differ from the last in every hull.
func changeHull(t *testing.T, yard string) {
	t.Helper()
	name := filepath.Join(yard, "yard.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	if !bytes.Contains(text, []byte("of the test")) {
		t.Fatal("the yard has another name")
	}
	if err := os.WriteFile(name, bytes.ReplaceAll(text, []byte("of the test"), []byte("of another name")), 0o644); err != nil {
		t.Fatal(err)
	}
}

// waitForPart waits until the new output has begun beside the old.
func waitForPart(t *testing.T, out string) {
	t.Helper()
	for until := time.Now().Add(patience); time.Now().Before(until); time.Sleep(time.Millisecond) {
		made, err := filepath.Glob(filepath.Join(out, ".part-*", "new", "*", "index.html"))
		if err == nil && len(made) > 0 {
			return
		}
	}
	t.Fatal("the new output never began")
}

func TestInterruptLeavesTheEarlierOutputWhole(t *testing.T) {
	t.Parallel()
	by := []os.Signal{os.Interrupt, syscall.SIGTERM}
	if !signal.Ignored(syscall.SIGHUP) { // it is where the tests go on after their terminal has closed, and what they start inherits that
		by = append(by, syscall.SIGHUP)
	}
	for _, by := range by {
		out, status, said := interrupted(t, by)
		if status != statusFailed || !strings.Contains(said, "interrupted") {
			t.Errorf("%v: status %d, said %q", by, status, said)
		}
		if left, err := filepath.Glob(filepath.Join(out, ".part-*")); err != nil || len(left) > 0 {
			t.Errorf("%v: left behind: %v %v", by, left, err)
		}
	}
}

func TestKillLeavesTheEarlierOutputWhole(t *testing.T) {
	t.Parallel()
	out, _, _ := interrupted(t, os.Kill)
	yard := tinyYard(t, interruptedHulls)
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

// A run that is killed at any moment leaves files that verify; the next one gives what a fresh one gives, and the
// lock of one that was killed holds nobody up.
func TestKilledAtAnyMoment(t *testing.T) {
	t.Parallel()
	yard, out := tinyYard(t, 3), filepath.Join(t.TempDir(), "files")
	render := func(to string) time.Duration {
		t.Helper()
		begun := time.Now()
		if text, err := exec.Command("hullfile", "render", yard, "-o", to).CombinedOutput(); err != nil {
			t.Fatalf("%v: %s", err, text)
		}
		return time.Since(begun)
	}
	full := render(out)
	random := rand.New(rand.NewPCG(3, 4))
	for round := range 12 {
		name := filepath.Join(yard, "hulls", fmt.Sprintf("F%03d", 1+round%3), "hull.toml")
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		if err := put(name, append(text, fmt.Sprintf("\n# round %d\n", round)...)); err != nil {
			t.Fatal(err)
		}
		cmd := exec.Command("hullfile", "render", yard, "-o", out)
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		time.Sleep(time.Duration(random.Int64N(int64(full))))
		cmd.Process.Kill()
		cmd.Wait()
		for _, number := range []string{"F001", "F002", "F003"} {
			if err := checkSums(filepath.Join(out, number)); err != nil && runtime.GOOS == "linux" {
				t.Errorf("round %d: %v", round, err)
			}
		}
	}
	render(out)
	fresh := filepath.Join(t.TempDir(), "fresh")
	render(fresh)
	compareTrees(t, fresh, out)
}

// tinyYard writes a yard of hulls of which hardly anything is on record.
func tinyYard(t *testing.T, n int) string {
	t.Helper()
	dir := t.TempDir()
	if err := put(filepath.Join(dir, "yard.toml"), []byte("name = \"Yard of the test\"\n")); err != nil {
		t.Fatal(err)
	}
	for i := range n {
		number := fmt.Sprintf("F%03d", i+1)
		if err := put(filepath.Join(dir, "hulls", number, "hull.toml"), fmt.Appendf(nil, "title = \"boat %d\"\n\n[boat]\nlength_hull_m = %d.5\n", i, 4+i%5)); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

func compareTrees(t *testing.T, want, got string) {
	t.Helper()
	a, err := treeOf(want)
	if err != nil {
		t.Fatal(err)
	}
	b, err := treeOf(got)
	if err != nil {
		t.Fatal(err)
	}
	if diff := differences(a, b); len(a) == 0 || len(diff) > 0 {
		t.Errorf("%d files, %v differ", len(a), diff)
	}
}
