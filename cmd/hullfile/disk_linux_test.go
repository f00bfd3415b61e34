package main

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"strings"
	"syscall"
	"testing"
)

// smallDisk mounts a disk of the given size, e.g. "size=2m", for the length of a test. Only root can.
func smallDisk(t *testing.T, options string) string {
	t.Helper()
	dir := t.TempDir()
	if err := syscall.Mount("tmpfs", dir, "tmpfs", 0, options); err != nil {
		t.Skipf("left out: a small disk cannot be mounted here: %v", err)
	}
	t.Cleanup(func() {
		if err := syscall.Unmount(dir, 0); err != nil {
			t.Errorf("unmounting: %v", err)
		}
	})
	return dir
}

// statusOf runs the command in a process of its own.
func statusOf(t *testing.T, cmd *exec.Cmd) (status int, said string) {
	t.Helper()
	var errs bytes.Buffer
	cmd.Stderr = &errs
	err := cmd.Run()
	var ended *exec.ExitError
	if err != nil && !errors.As(err, &ended) {
		t.Fatal(err)
	}
	return cmd.ProcessState.ExitCode(), errs.String()
}

func TestFullDiskLeavesTheEarlierOutputWhole(t *testing.T) {
	t.Parallel()
	disk := smallDisk(t, fmt.Sprintf("size=%dk", spaceOf(t, tinyYard(t, 1))*3/2)) // room for one hull, and not for two
	out := filepath.Join(disk, "files")
	if status, said := statusOf(t, exec.Command("hullfile", "render", tinyYard(t, 1), "-o", out)); status != statusSound {
		t.Fatalf("one hull does not fit: %s", said)
	}
	before, err := treeOf(disk)
	if err != nil {
		t.Fatal(err)
	}
	status, said := statusOf(t, exec.Command("hullfile", "render", tinyYard(t, 40), "-o", out))
	if status != statusFailed || !strings.Contains(said, "disk is full") {
		t.Errorf("status %d, said %q", status, said)
	}
	after, err := treeOf(disk)
	if err != nil {
		t.Fatal(err)
	}
	if diff := differences(before, after); len(diff) > 0 {
		t.Errorf("the earlier output changed: %v", diff)
	}
}

// spaceOf gives the kibibytes that the files of a yard take on a disk that is parted in pages of 4 KiB, folders included.
func spaceOf(t *testing.T, yard string) (kib int64) {
	t.Helper()
	out := filepath.Join(t.TempDir(), "files")
	if status, said := statusOf(t, exec.Command("hullfile", "render", yard, "-o", out)); status != statusSound {
		t.Fatal(said)
	}
	err := filepath.WalkDir(out, func(_ string, e fs.DirEntry, err error) error {
		if err != nil {
			return err
		}
		info, err := e.Info()
		if err == nil {
			kib += 4 * (info.Size()/4096 + 1)
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return kib
}

func TestResultThatCannotBeWrittenEndsWithTwo(t *testing.T) {
	t.Parallel()
	full, err := os.OpenFile("/dev/full", os.O_WRONLY, 0)
	if err != nil {
		t.Skipf("left out: %v", err)
	}
	defer full.Close()
	for _, args := range [][]string{{"check", tinyYard(t, 1)}, {"check", tinyYard(t, 1), "--json"}, {"proof"}, {"schema"}, {"--help"}} {
		cmd := exec.Command("hullfile", args...)
		cmd.Stdout = full
		if status, said := statusOf(t, cmd); status != statusFailed || !strings.Contains(said, "could not be written") {
			t.Errorf("%v: status %d, said %q", args, status, said)
		}
	}
}

// TestFolderThatMayNotBeWritten runs as somebody who may not write; root may write everywhere, so it becomes nobody.
func TestFolderThatMayNotBeWritten(t *testing.T) {
	t.Parallel()
	yard := tinyYard(t, 1)
	locked := t.TempDir()
	open(t, yard, locked)
	if err := os.Chmod(locked, 0o555); err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { os.Chmod(locked, 0o755) })
	for _, args := range [][]string{
		{"render", yard, "-o", filepath.Join(locked, "files")},
		{"render", yard, "-o", locked},
		{"demo", "-o", filepath.Join(locked, "demo")},
		{"start", filepath.Join(locked, "yard")},
		{"schema", "-o", filepath.Join(locked, "schema.json")},
	} {
		status, said := statusOf(t, asNobody(t, args))
		if status != statusFailed || !strings.Contains(said, "permission denied") {
			t.Errorf("%v: status %d, said %q", args, status, said)
		}
		if left, err := os.ReadDir(locked); err != nil || len(left) > 0 {
			t.Errorf("%v left %v %v", args, left, err)
		}
	}
}

// asNobody is the command, run without the rights of root.
func asNobody(t *testing.T, args []string) *exec.Cmd {
	t.Helper()
	if os.Geteuid() != 0 {
		return exec.Command("hullfile", args...)
	}
	found, err := exec.LookPath("hullfile")
	if err != nil {
		t.Fatal(err)
	}
	text, err := os.ReadFile(found)
	if err != nil {
		t.Fatal(err)
	}
	dir := t.TempDir()
	copied := filepath.Join(dir, "hullfile")
	if err := os.WriteFile(copied, text, 0o755); err != nil {
		t.Fatal(err)
	}
	open(t, dir)
	cmd := exec.Command(copied, args...)
	cmd.Dir = dir
	cmd.SysProcAttr = &syscall.SysProcAttr{Credential: &syscall.Credential{Uid: nobody, Gid: nobody}}
	return cmd
}

// open lets everybody read a temporary folder and walk down to it.
func open(t *testing.T, dirs ...string) {
	t.Helper()
	for _, dir := range dirs {
		for ; len(dir) > len(os.TempDir()); dir = filepath.Dir(dir) {
			if err := os.Chmod(dir, 0o755); err != nil {
				t.Fatal(err)
			}
		}
	}
}
