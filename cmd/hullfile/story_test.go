package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"os"
	"os/exec"
	"path/filepath"
	"strconv"
	"strings"
	"testing"

	"github.com/rogpeppe/go-internal/testscript"
)

func TestMain(m *testing.M) {
	testscript.Main(tidied{m}, map[string]func(){"hullfile": main})
}

// tidied are the tests of this folder, with the demo that they share removed after them.
type tidied struct{ *testing.M }

func (m tidied) Run() int {
	status := m.M.Run()
	if err := demoOfAll.end(); err != nil {
		fmt.Fprintln(os.Stderr, err)
		return 1
	}
	return status
}

// TestStories runs the command as a person would, one script a story. HULLFILE_UPDATE=1 writes what came out over the
// texts that the scripts compare with; read the difference before keeping it.
func TestStories(t *testing.T) {
	t.Parallel()
	testscript.Run(t, testscript.Params{
		Dir:           filepath.Join(moduleRoot(t), "testdata", "script"),
		UpdateScripts: os.Getenv("HULLFILE_UPDATE") != "",
		Cmds: map[string]func(ts *testscript.TestScript, neg bool, args []string){
			"status":  storyStatus,
			"same":    storySame,
			"sums":    storySums,
			"rewrite": storyRewrite,
			"width":   storyWidth,
		},
	})
}

// storyStatus runs a command and holds its status: status 2 hullfile check nowhere.
func storyStatus(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) < 2 {
		ts.Fatalf("usage: status N command [argument...]")
	}
	want, err := strconv.Atoi(args[0])
	ts.Check(err)
	got := 0
	var ended *exec.ExitError
	if err := ts.Exec(args[1], args[2:]...); errors.As(err, &ended) {
		got = ended.ExitCode()
	} else if err != nil {
		ts.Fatalf("%s: %v", args[1], err)
	}
	if got != want {
		ts.Fatalf("%s ended with %d, want %d\n%s%s", strings.Join(args[1:], " "), got, want, ts.ReadFile("stdout"), ts.ReadFile("stderr"))
	}
}

// storySame holds two folders against each other, byte for byte: same A B. ! same A B asks for a difference.
func storySame(ts *testscript.TestScript, neg bool, args []string) {
	if len(args) != 2 {
		ts.Fatalf("usage: [!] same A B")
	}
	a, err := treeOf(ts.MkAbs(args[0]))
	ts.Check(err)
	b, err := treeOf(ts.MkAbs(args[1]))
	ts.Check(err)
	if len(a) == 0 {
		ts.Fatalf("%s holds no file", args[0])
	}
	diff := differences(a, b)
	switch {
	case neg && len(diff) == 0:
		ts.Fatalf("%s and %s are the same", args[0], args[1])
	case !neg && len(diff) > 0:
		ts.Fatalf("%s and %s differ in %s", args[0], args[1], strings.Join(diff, ", "))
	}
}

// storySums holds every file of a folder against the folder's SHA256SUMS: sums DIR.
func storySums(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: sums DIR")
	}
	ts.Check(checkSums(ts.MkAbs(args[0])))
}

// storyRewrite replaces a text in a file, which must be there: rewrite FILE OLD NEW.
func storyRewrite(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 3 {
		ts.Fatalf("usage: rewrite FILE OLD NEW")
	}
	text := ts.ReadFile(args[0])
	if !strings.Contains(text, args[1]) {
		ts.Fatalf("%s does not hold %q", args[0], args[1])
	}
	ts.Check(os.WriteFile(ts.MkAbs(args[0]), []byte(strings.ReplaceAll(text, args[1], args[2])), 0o644))
}

// storyWidth holds the last standard output to a width in characters: width 80. A single long word may pass it.
func storyWidth(ts *testscript.TestScript, neg bool, args []string) {
	if neg || len(args) != 1 {
		ts.Fatalf("usage: width N")
	}
	most, err := strconv.Atoi(args[0])
	ts.Check(err)
	text := ts.ReadFile("stdout")
	if text == "" {
		ts.Fatalf("there is no output to measure")
	}
	for line := range strings.Lines(text) {
		line = strings.TrimRight(line, "\n")
		if len([]rune(line)) > most && len(strings.Fields(line)) > 2 {
			ts.Fatalf("wider than %d: %q", most, line)
		}
	}
}

func TestFaultOfOurOwnIsToldAndEndsWithTwo(t *testing.T) {
	var out, errs bytes.Buffer
	status := run(panicContext{context.Background()}, []string{"demo", "-o", t.TempDir()}, &out, &errs)
	if status != statusFailed || !strings.Contains(errs.String(), "a fault of its own, not of your records") {
		t.Errorf("status %d, said %q", status, errs.String())
	}
}

// panicContext is a context that breaks as soon as it is asked.
type panicContext struct{ context.Context }

func (panicContext) Value(any) any         { panic("broken on purpose") }
func (panicContext) Done() <-chan struct{} { panic("broken on purpose") }
func (panicContext) Err() error            { panic("broken on purpose") }
