package record

import (
	"bytes"
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"runtime"
	"strings"
	"testing"
	"time"
	"unicode/utf8"

	"hullfile/engine/finding"
)

// yardDir writes a yard folder of its own for one test.
func yardDir(t *testing.T, files map[string]string) string {
	t.Helper()
	dir := t.TempDir()
	for name, text := range files {
		at := filepath.Join(dir, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(at), 0o755); err != nil {
			t.Fatal(err)
		}
		if err := os.WriteFile(at, []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	return dir
}

// faultsOf reads a yard that must have faults.
func faultsOf(t *testing.T, dir string) string {
	t.Helper()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	_, err = Read(root, knownForTests)
	if all := (finding.Faults)(nil); !errors.As(err, &all) {
		t.Fatalf("expected faults, got %v", err)
	}
	return err.Error()
}

func link(t *testing.T, dir, to, name string) {
	t.Helper()
	if err := os.Symlink(to, filepath.Join(dir, filepath.FromSlash(name))); err != nil {
		t.Skipf("links cannot be made here: %v", err)
	}
}

// TestLinks: a link is refused wherever a record or a document is expected, inside the folder or out of it.
func TestLinks(t *testing.T) {
	outside := yardDir(t, map[string]string{"secret.toml": "name = \"x\"\n", "hulls/T9/hull.toml": ""})
	for _, c := range []struct{ to, name, want string }{
		{filepath.Join(outside, "secret.toml"), "yard.toml", "yard.toml: this is a link"},
		{outside, "designs", "designs: this is a link"},
		{filepath.Join(outside, "hulls", "T9"), "hulls/T9", "hulls/T9: this is a link"},
		{"../T1", "hulls/T2", "hulls/T2: this is a link"},
		{filepath.Join(outside, "secret.toml"), "hulls/T1/panels.csv", "hulls/T1/panels.csv: this is a link"},
		{outside, "hulls/T1/documents", "hulls/T1/documents: this is a link"},
		{filepath.Join(outside, "secret.toml"), "methods/own.toml", "methods/own.toml: this is a link"},
	} {
		files := map[string]string{"hulls/T1/hull.toml": "", "methods/a.toml": "x = 1\n"}
		if c.name != "yard.toml" {
			files["yard.toml"] = "name = \"Test Yard\"\n"
		}
		dir := yardDir(t, files)
		link(t, dir, c.to, c.name)
		if got := faultsOf(t, dir); !strings.Contains(got, c.want) {
			t.Errorf("link at %s: %s", c.name, got)
		}
	}
}

func TestLinkedDocument(t *testing.T) {
	record := "number = \"T1\"\n[document.c1]\nfile = \"scans/c1.pdf\"\nkind = \"drawing\"\ntitle = \"x\"\n"
	for _, c := range []struct{ to, name string }{{"other.pdf", "documents/scans/c1.pdf"}, {"..", "documents/scans"}} {
		dir := yardDir(t, map[string]string{"hull.toml": record, "documents/a/b.pdf": "x"})
		if err := os.MkdirAll(filepath.Join(dir, filepath.Dir(filepath.FromSlash(c.name))), 0o755); err != nil {
			t.Fatal(err)
		}
		link(t, dir, c.to, c.name)
		if got, want := faultsOf(t, dir), `hull.toml:3:8: document.c1.file: "scans/c1.pdf" is a link`; !strings.Contains(got, want) {
			t.Errorf("link at %s: %s", c.name, got)
		}
	}
}

// TestNotAFile: a folder where a record is expected.
func TestNotAFile(t *testing.T) {
	dir := yardDir(t, map[string]string{"yard.toml": "name = \"Test Yard\"\n", "hulls/T1/hull.toml/x": ""})
	if got, want := faultsOf(t, dir), "hulls/T1/hull.toml: this is not a file that can be read"; !strings.Contains(got, want) {
		t.Error(got)
	}
}

// TestTooLarge: the wall against files that only look like records.
func TestTooLarge(t *testing.T) {
	dir := yardDir(t, map[string]string{"hull.toml": "number = \"T1\"\n" + strings.Repeat("# remark\n", mostTOML/9)})
	if got, want := faultsOf(t, dir), "hull.toml: the file is larger than 4 MiB"; !strings.Contains(got, want) {
		t.Errorf("%.300s", got)
	}
}

// TestTooMany: the wall against tables that would fill the memory, and the time that it takes to reach it (own bounds).
func TestTooMany(t *testing.T) {
	if testing.Short() {
		t.Skip("it measures time and memory, which the race detector stretches")
	}
	for _, row := range []struct{ name, text, want string }{
		{"weights.csv", "id,mass_kg\n" + counting(mostRows+2, "W%d,1\n"), "weights.csv:100002:1: weight: the table has more than 100000 rows"},
		{"weights.csv", "id\n" + strings.Repeat("\n", 2_000_000) + "W1,\n", "weights.csv"},
		{"weights.csv", "id\n" + strings.Repeat("1,", mostCSV/2), "weights.csv: the file is larger than 16 MiB"},
		{"weights.csv", strings.Repeat(";", mostCSV-100) + "\n", "weights.csv:1:1: the line has more than 10000 cells"},
		{"weights.csv", "id,mass_kg\nW1,2\n" + strings.Repeat(",", mostCSV-100) + "\n", "weights.csv:3:1: the line has more than 10000 cells"},
		{"hull.toml", counting(260_000, "[panel.%d]\n"), "hull.toml"},
		{"hull.toml", "x = [\n" + strings.Repeat("1,\n", mostTOML/3-10) + "]\n", "hull.toml"},
		{"hull.toml", "x = " + strings.Repeat("[", 100_000), "values are nested deeper than a record needs"},
	} {
		files := map[string]string{"hull.toml": "number = \"T1\"\n"}
		files[row.name] = row.text
		dir := yardDir(t, files)
		var before, after runtime.MemStats
		runtime.ReadMemStats(&before)
		begun := time.Now()
		got := faultsOf(t, dir)
		took := time.Since(begun)
		runtime.ReadMemStats(&after)
		if !strings.Contains(got, row.want) || len(got) > 200_000 {
			t.Errorf("%s %.20q: %d bytes, %.300s", row.name, row.text, len(got), got)
		}
		if took > 20*time.Second || after.Sys > before.Sys+1<<30 {
			t.Errorf("%s %.20q took %v and %d MiB", row.name, row.text, took, (after.Sys-before.Sys)>>20)
		}
	}
}

// counting writes a line so many times, each with its number.
func counting(n int, line string) string {
	var b strings.Builder
	for i := range n {
		fmt.Fprintf(&b, line, i)
	}
	return b.String()
}

// TestHostileNames: no name of a file or folder reaches a terminal with characters that move its cursor, and no
// backslash of another system becomes a way through folders.
// TestTooManyOfAKind: of what is laid against each other no boat has more than the wall; all of it may be there, one more is
// told where it stands, also where it stands in another file than the rest.
func TestTooManyOfAKind(t *testing.T) {
	most := int(hullTable.byKey["frame"].entries.v)
	rows := "id,x_m\n"
	for i := range most {
		rows += fmt.Sprintf("%d,%.2f\n", i, float64(i)*0.02)
	}
	yard := map[string]string{"yard.toml": "name = \"Yard of the test\"\n", "designs/D/design.toml": "title = \"boat\"\n", "designs/D/frames.csv": rows, "hulls/1/hull.toml": "design = \"D\"\n"}
	if y := readYard(t, yardDir(t, yard)); most < 100 || len(y.Hulls[0].Frames) != most {
		t.Errorf("%d frames of %d", len(y.Hulls[0].Frames), most)
	}
	yard["hulls/1/hull.toml"] += "\n[frame.more]\nx_m = 7.1\n"
	want := fmt.Sprintf("hulls/1/hull.toml:3:8: frame: there are %d entries, and one boat has at most %d", most+1, most)
	if said := faultsOf(t, yardDir(t, yard)); !strings.HasPrefix(said, want) {
		t.Errorf("one more: %s\nwant %s", said, want)
	}
}

func TestHostileNames(t *testing.T) {
	for _, name := range []string{"hulls/T\x1b[31m1", `hulls/T1\..\..\T2`, `hulls/C:\T1`, "hulls/T1/weights\x1b.csv", "hulls/T1/\u202etxt.csv", "hulls/\xff1"} {
		dir := yardDir(t, map[string]string{"yard.toml": "name = \"Test Yard\"\n", "hulls/T1/hull.toml": ""})
		if err := os.MkdirAll(filepath.Join(dir, name), 0o755); err != nil {
			t.Skipf("this system has no such names: %v", err)
		}
		got := faultsOf(t, dir)
		if strings.ContainsAny(got, "\x1b\u202e") || !utf8.ValidString(got) || !strings.Contains(got, "hulls") {
			t.Errorf("%q: %q", name, got)
		}
	}
}

// TestPlacesHaveForwardSlashes by construction: a place is made by joining names with path, whatever the system.
func TestPlacesHaveForwardSlashes(t *testing.T) {
	for _, f := range yardOf(t, "layers").Files {
		if strings.Contains(f.Path, `\`) || !fs.ValidPath(f.Path) {
			t.Errorf("%q", f.Path)
		}
	}
}

// TestManyFaultsAreCounted: a hostile file cannot fill the memory with messages, and says how many there are.
func TestManyFaultsAreCounted(t *testing.T) {
	var b bytes.Buffer
	b.WriteString("number = \"T1\"\n[boat]\n")
	for i := range mostFaults + 500 {
		b.WriteString("key" + ordinal(i) + " = 1\n")
	}
	got := faultsOf(t, yardDir(t, map[string]string{"hull.toml": b.String()}))
	if n := strings.Count(got, "unknown key"); n != mostFaults {
		t.Errorf("%d faults are told", n)
	}
	if want := "\nhull.toml: 500 more faults in this file"; !strings.HasSuffix(got, want) {
		t.Errorf("the rest is not counted: %q", got[len(got)-100:])
	}
}

func TestFolderGone(t *testing.T) {
	dir := t.TempDir()
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	if err := root.Close(); err != nil {
		t.Fatal(err)
	}
	if _, err := Read(root, knownForTests); err == nil || strings.Contains(err.Error(), dir) {
		t.Errorf("error %v", err)
	}
}
