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
	"strconv"
	"strings"
	"testing"
	"time"
)

var fleets = flag.String("fleets", "2", "sizes of the fleets of which TestMeasured prints the time, the memory and the size")

var lightFleets = flag.String("light", "", "the same of hulls of which little is on record, so that the disk holds more of them")

// bench is the story: the program, where it writes, and what it wrote so far.
type bench struct {
	t       *testing.T
	program string
	dir     string
	old     []string // output and copies that are of no use any more
	notes   []string
}

// TestMeasured is the bench story: it prints a table of how long the program itself takes from its start to its end, the
// most memory that it held, what it wrote, and beside it how long this machine takes to copy and to hash the same output
// in the same run. -fleets 10,100,1000 -v measures fleets in earnest; without it two hulls show that it still works.
//
// What must not vary fails: a fleet in which nothing changed is left as it is, one change writes one hull anew, and every hull
// has as many files as in the smallest fleet of its kind. Times and memory are told and not judged: other work on the
// machine changes them.
//
// The records were written just before the first run, which therefore does not trust their times; the second reads them once
// more and is not shown. Copying goes file by file on one processor, from output that was just written, which the system then has in memory where
// that suffices (a warm copy), and nothing waits for the disk; hashing reads the same. The runs over what was written
// (none changed, one changed) come after both and find folders in memory where they fit. Where a fleet is larger than the memory, these
// rows tell of the disk. Nothing is removed before all is measured, where the disk has room: file systems such as ext4 do not hand out
// what was freed for minutes, and look past it for every new file, which then takes many times as long.
func TestMeasured(t *testing.T) {
	b := &bench{t: t, dir: t.TempDir(), program: filepath.Join(t.TempDir(), "hullfile")}
	if said, err := exec.Command("go", "build", "-trimpath", "-o", b.program, ".").CombinedOutput(); err != nil {
		t.Fatalf("%v: %s", err, said)
	}
	rows := []measured{b.firstByte(), b.wholeDemo()}
	for _, n := range sizes(t, *fleets) {
		rows = append(rows, b.fleet(" hulls", fleetYard(t, n), n, 20<<20)...)
	}
	for _, n := range sizes(t, *lightFleets) {
		rows = append(rows, b.fleet(" light hulls", tinyYard(t, n), n, 2<<20)...)
	}
	files := map[string]int{}
	for i := range rows {
		kind, r := strings.TrimLeft(rows[i].what, "0123456789"), &rows[i]
		if r.each > 0 && files[kind] == 0 {
			files[kind] = r.each
		}
		if r.each != files[kind] {
			t.Errorf("%s: a hull has %d files, in the smallest fleet %d", r.what, r.each, files[kind])
		}
	}
	t.Logf("%s\n%s%s", machine(t, b.dir), tableOf(rows), strings.Join(b.notes, "\n"))
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

// ran runs the program to its end.
func (b *bench) ran(what string, args ...string) measured {
	b.t.Helper()
	cmd := exec.Command(b.program, args...)
	var said bytes.Buffer
	cmd.Stdout, cmd.Stderr = &said, &said
	begun := time.Now()
	err := cmd.Start()
	if err != nil {
		b.t.Fatalf("%s: %v", what, err)
	}
	most := mostOf(cmd.Process)
	err = cmd.Wait()
	m := measured{what: what, took: time.Since(begun), peak: most()}
	if err != nil {
		b.t.Fatalf("%s: %v: %s", what, err, &said)
	}
	m.measuredAs(cmd.ProcessState)
	return m
}

// firstByte is the shortest of some starts up to the first byte that is printed.
func (b *bench) firstByte() measured {
	b.t.Helper()
	best := measured{what: "start to first byte", took: time.Hour}
	for range 10 {
		cmd := exec.Command(b.program, "--help")
		out, err := cmd.StdoutPipe()
		if err != nil {
			b.t.Fatal(err)
		}
		begun := time.Now()
		if err := cmd.Start(); err != nil {
			b.t.Fatal(err)
		}
		all := bufio.NewReader(out)
		if _, err := all.ReadByte(); err != nil {
			b.t.Fatal(err)
		}
		took := time.Since(begun)
		if _, err := all.WriteTo(&bytes.Buffer{}); err != nil {
			b.t.Fatal(err)
		}
		if err := cmd.Wait(); err != nil {
			b.t.Fatal(err)
		}
		if took < best.took {
			best.took = took
			best.measuredAs(cmd.ProcessState)
		}
	}
	return best
}

func (b *bench) wholeDemo() measured {
	b.t.Helper()
	out := filepath.Join(b.dir, "demo")
	m := b.ran("the demo yard", "demo", "-o", out)
	b.beside(&m, out)
	b.old = append(b.old, out)
	return m
}

// fleet measures a fleet when it is written for the first time, when nothing changed, and when one hull did. A hull needs some
// bytes at the most.
func (b *bench) fleet(what, yard string, n int, bytes int64) []measured {
	b.t.Helper()
	b.makeRoom(2 * int64(n) * bytes)
	what = strconv.Itoa(n) + what
	out := filepath.Join(b.dir, strings.ReplaceAll(what, " ", "-"))
	render := []string{"render", yard, "-o", out}
	fresh := b.ran(what+", fresh", render...)
	b.beside(&fresh, out)
	fresh.each = len(filesIn(b.t, filepath.Join(out, fleetNumber(n))))
	before := made(b.t, out)
	b.ran(what+", read again", render...)
	none := b.ran(what+", none changed", render...)
	if anew := anew(before, made(b.t, out)); anew != 0 {
		b.t.Errorf("%s: none changed, and %d were written anew", what, anew)
	}
	name := filepath.Join(yard, "hulls", fleetNumber(n), "hull.toml")
	text, err := os.ReadFile(name)
	if err != nil {
		b.t.Fatal(err)
	}
	if err := os.WriteFile(name, append(text, "\n# once more\n"...), 0o644); err != nil {
		b.t.Fatal(err)
	}
	one := b.ran(what+", one changed", render...)
	if anew := anew(before, made(b.t, out)); anew != 1 {
		b.t.Errorf("%s: one hull changed, and %d were written anew", what, anew)
	}
	b.old = append(b.old, out)
	fresh.n = n
	return []measured{fresh, none, one}
}

// makeRoom removes what was written before, if the disk has not the room that is needed, and tells of it.
func (b *bench) makeRoom(need int64) {
	b.t.Helper()
	if free(b.t, b.dir) > need || len(b.old) == 0 {
		return
	}
	for _, dir := range b.old {
		if err := os.RemoveAll(dir); err != nil {
			b.t.Fatal(err)
		}
	}
	b.notes = append(b.notes, fmt.Sprintf("for want of room %d folders were removed between fleets; the system's time of what comes after may be longer for it", len(b.old)))
	b.old = nil
}

// anew counts the hulls whose list of hashes is not as old as it was.
func anew(before, after map[string]time.Time) int {
	n := 0
	for list, was := range before {
		if !after[list].Equal(was) {
			n++
		}
	}
	return n
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
func (b *bench) beside(m *measured, out string) {
	b.t.Helper()
	for name, size := range filesIn(b.t, out) {
		m.files++
		m.bytes += size
		if filepath.Ext(name) == ".html" {
			m.pages++
		}
	}
	to := out + "-copy"
	begun := time.Now()
	if err := os.CopyFS(to, os.DirFS(out)); err != nil {
		b.t.Fatal(err)
	}
	m.copied = time.Since(begun)
	b.old = append(b.old, to)
	begun = time.Now()
	if _, err := treeOf(out); err != nil {
		b.t.Fatal(err)
	}
	m.hashed = time.Since(begun)
}

// filesIn gives the files below a folder with their sizes.
func filesIn(t *testing.T, dir string) map[string]int64 {
	t.Helper()
	all := map[string]int64{}
	err := filepath.WalkDir(dir, func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		info, err := e.Info()
		all[name] = info.Size()
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	return all
}
