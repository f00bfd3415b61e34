package main

import (
	"bufio"
	"bytes"
	"flag"
	"fmt"
	"io/fs"
	"os"
	"os/exec"
	"path/filepath"
	"runtime"
	"strconv"
	"strings"
	"syscall"
	"testing"
	"text/tabwriter"
	"time"
)

var fleets = flag.String("fleets", "2", "sizes of the fleets of which TestMeasured prints the time, the memory and the size")

var lightFleets = flag.String("light", "", "the same of hulls of which little is on record, so that the disk holds more of them")

// measured is one run of the program as the system saw it, with what it wrote.
type measured struct {
	what         string
	took         time.Duration
	worked       time.Duration // on all processors together, which other work on the machine changes less
	peak         int64         // most memory at once, bytes
	pages, files int
	bytes        int64
	copied       time.Duration // to copy all of the output, file by file
	hashed       time.Duration // to read and hash it
}

// TestMeasured is the bench story: it prints a table of how long the program itself takes from its start to its end, the
// most memory that it held, what it wrote, and beside it how long this machine takes to copy and to hash the same output
// in the same run. -fleets 10,100,1000 -v measures fleets in earnest; without it two hulls show that it still works.
func TestMeasured(t *testing.T) {
	program := filepath.Join(t.TempDir(), "hullfile")
	if said, err := exec.Command("go", "build", "-trimpath", "-o", program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	rows := []measured{firstByte(t, program), wholeDemo(t, program)}
	for _, n := range sizes(t, *fleets) {
		rows = append(rows, fleetMeasured(t, program, strconv.Itoa(n)+" hulls", fleetYard(t, n), n)...)
	}
	for _, n := range sizes(t, *lightFleets) {
		rows = append(rows, fleetMeasured(t, program, strconv.Itoa(n)+" light hulls", tinyYard(t, n), n)...)
	}
	var table strings.Builder
	w := tabwriter.NewWriter(&table, 0, 0, 2, ' ', tabwriter.AlignRight)
	fmt.Fprintln(w, "what\ttime\tprocessor time\tmost memory\tpages\tfiles\tsize\tcopying\thashing\ttimes copying\t")
	for _, r := range rows {
		fmt.Fprintln(w, r.line())
	}
	w.Flush()
	t.Logf("%s, %d processors, %s/%s, %s\n%s", processor(), runtime.NumCPU(), runtime.GOOS, runtime.GOARCH, runtime.Version(), &table)
}

// sizes reads the sizes of fleets, "10,100"; none is none.
func sizes(t *testing.T, list string) []int {
	t.Helper()
	var all []int
	for size := range strings.SplitSeq(list, ",") {
		if size == "" {
			continue
		}
		n, err := strconv.Atoi(size)
		if err != nil {
			t.Fatal(err)
		}
		all = append(all, n)
	}
	return all
}

func (r *measured) line() string {
	ms := func(d time.Duration) string {
		if d == 0 {
			return "–"
		}
		return fmt.Sprintf("%.0f ms", float64(d)/1e6)
	}
	mb := func(n int64) string { return fmt.Sprintf("%.1f MB", float64(n)/1e6) }
	if r.files == 0 {
		return fmt.Sprintf("%s\t%s\t%s\t%s\t\t\t\t\t\t\t", r.what, ms(r.took), ms(r.worked), mb(r.peak))
	}
	return fmt.Sprintf("%s\t%s\t%s\t%s\t%d\t%d\t%s\t%s\t%s\t%.1f\t", r.what, ms(r.took), ms(r.worked), mb(r.peak), r.pages, r.files, mb(r.bytes), ms(r.copied), ms(r.hashed), float64(r.took)/float64(r.copied))
}

// ran runs the program to its end.
func ran(t *testing.T, what, program string, args ...string) measured {
	t.Helper()
	cmd := exec.Command(program, args...)
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	begun := time.Now()
	err := cmd.Run()
	took := time.Since(begun)
	if err != nil {
		t.Fatalf("%s: %v: %s", what, err, &said)
	}
	ended := cmd.ProcessState
	return measured{what: what, took: took, worked: ended.UserTime() + ended.SystemTime(), peak: ended.SysUsage().(*syscall.Rusage).Maxrss << 10}
}

// firstByte is the shortest of some starts up to the first byte that is printed.
func firstByte(t *testing.T, program string) measured {
	t.Helper()
	best := measured{what: "start to first byte", took: time.Hour}
	for range 10 {
		cmd := exec.Command(program, "--help")
		out, err := cmd.StdoutPipe()
		if err != nil {
			t.Fatal(err)
		}
		begun := time.Now()
		if err := cmd.Start(); err != nil {
			t.Fatal(err)
		}
		all := bufio.NewReader(out)
		if _, err := all.ReadByte(); err != nil {
			t.Fatal(err)
		}
		took := time.Since(begun)
		if _, err := all.WriteTo(&bytes.Buffer{}); err != nil {
			t.Fatal(err)
		}
		if err := cmd.Wait(); err != nil {
			t.Fatal(err)
		}
		if took < best.took {
			best.took, best.worked, best.peak = took, cmd.ProcessState.UserTime()+cmd.ProcessState.SystemTime(), cmd.ProcessState.SysUsage().(*syscall.Rusage).Maxrss<<10
		}
	}
	return best
}

func wholeDemo(t *testing.T, program string) measured {
	t.Helper()
	out := filepath.Join(t.TempDir(), "demo")
	return beside(t, ran(t, "the demo yard", program, "demo", "-o", out), out)
}

// fleetMeasured measures a fleet when it is written for the first time, when nothing changed, and when one hull did.
func fleetMeasured(t *testing.T, program, what, dir string, n int) []measured {
	t.Helper()
	out := filepath.Join(t.TempDir(), "files")
	rows := []measured{beside(t, ran(t, what+", fresh", program, "render", dir, "-o", out), out)}
	rows = append(rows, ran(t, what+", none changed", program, "render", dir, "-o", out))
	name := filepath.Join(dir, "hulls", fleetNumber(n), "hull.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	before := made(t, out)
	if err := os.WriteFile(name, append(text, "\n# once more\n"...), 0o644); err != nil {
		t.Fatal(err)
	}
	rows = append(rows, ran(t, what+", one changed", program, "render", dir, "-o", out))
	anew, after := 0, made(t, out)
	for list, was := range before {
		if now := after[list]; !now.Equal(was) {
			anew++
		}
	}
	if anew != 1 {
		t.Errorf("one hull of %d changed, and %d were written anew", n, anew)
	}
	if err := os.RemoveAll(out); err != nil { // before the next fleet needs the room
		t.Fatal(err)
	}
	return rows
}

// made gives when the list of hashes of every hull was written.
func made(t *testing.T, out string) map[string]time.Time {
	t.Helper()
	lists, err := filepath.Glob(filepath.Join(out, "*", "SHA256SUMS"))
	if err != nil || len(lists) == 0 {
		t.Fatalf("no hull in %s: %v", out, err)
	}
	all := map[string]time.Time{}
	for _, list := range lists {
		info, err := os.Stat(list)
		if err != nil {
			t.Fatal(err)
		}
		all[list] = info.ModTime()
	}
	return all
}

// beside counts what was written and measures copying and hashing it.
func beside(t *testing.T, m measured, out string) measured {
	t.Helper()
	err := filepath.WalkDir(out, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		info, err := e.Info()
		m.files++
		m.bytes += info.Size()
		if filepath.Ext(name) == ".html" {
			m.pages++
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	to := filepath.Join(t.TempDir(), "copy")
	begun := time.Now()
	if err := os.CopyFS(to, os.DirFS(out)); err != nil {
		t.Fatal(err)
	}
	m.copied = time.Since(begun)
	if err := os.RemoveAll(to); err != nil {
		t.Fatal(err)
	}
	begun = time.Now()
	if _, err := treeOf(out); err != nil {
		t.Fatal(err)
	}
	m.hashed = time.Since(begun)
	return m
}

// processor names the machine.
func processor() string {
	text, err := os.ReadFile("/proc/cpuinfo")
	if err != nil {
		return "unknown processor"
	}
	for line := range strings.Lines(string(text)) {
		if key, value, _ := strings.Cut(line, ":"); strings.TrimSpace(key) == "model name" {
			return strings.TrimSpace(value)
		}
	}
	return "unknown processor"
}
