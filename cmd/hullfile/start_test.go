package main

import (
	"io/fs"
	"os"
	"path"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"hullfile/content"
	"hullfile/engine/finding"
	"hullfile/engine/next"
)

// filledIn takes the mark away from every line of a started record that is a value or opens a group, as a builder does.
func filledIn(text string) string {
	return regexp.MustCompile(`(?m)^# *(\[|[a-z0-9_]+ *= )`).ReplaceAllString(text, "$1")
}

// rowsShown gives, by its head, the rows that the comments of a record show for each table.
func rowsShown(text string) map[string]string {
	rows, head := map[string]string{}, ""
	for line := range strings.Lines(text) {
		row, shown := strings.CutPrefix(line, "#        ")
		switch {
		case !shown:
			head = ""
		case head == "":
			head = row
		default:
			rows[head] += row
		}
	}
	return rows
}

// started writes a yard of what start ships, the hull's record filled in with its own examples.
func started(t *testing.T) string {
	t.Helper()
	folder := t.TempDir()
	start, err := fs.Sub(content.Files, "start")
	if err != nil {
		t.Fatal(err)
	}
	hull, err := fs.ReadFile(start, "hulls/001/hull.toml")
	if err != nil {
		t.Fatal(err)
	}
	rows := rowsShown(string(hull))
	err = fs.WalkDir(start, ".", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		text, err := fs.ReadFile(start, name)
		if err != nil {
			return err
		}
		filled := filledIn(string(text))
		if path.Ext(name) == ".csv" {
			if rows[string(text)] == "" {
				t.Errorf("%s: the comments of hull.toml show no row under its head %q", name, text)
			}
			filled = string(text) + rows[string(text)]
		}
		to := filepath.Join(folder, filepath.FromSlash(name))
		if err := os.MkdirAll(filepath.Dir(to), 0o755); err != nil {
			return err
		}
		return os.WriteFile(to, []byte(filled), 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
	return folder
}

// Every line and row that the started records show can be taken as it stands, and fills the part that it is shown under.
// Together they are one boat: nothing in them is short or contradicts, so that whoever tries them is not told of faults.
func TestStartedRecordsCanBeFilledAsTheySay(t *testing.T) {
	t.Parallel()
	r, err := openYard(started(t))
	if err != nil {
		t.Fatal(err)
	}
	defer r.close()
	all := r.dossiers(r.yard.Hulls)
	if len(all) != 1 {
		t.Fatalf("%d hulls, want 1", len(all))
	}
	for _, p := range all[0].Parts() {
		if p.State != next.Done {
			t.Errorf("%s is %s; missing %v", p.Name, p.State, p.Missing)
		}
	}
	for _, f := range all[0].Findings {
		if f.Kind == finding.Contradiction || f.Kind == finding.Shortfall {
			t.Errorf("the examples give a %s: %s: %s", f.Kind, f.Subject, f.Says)
		}
	}
	y := r.yard
	if len(y.Stock.Lots) != 1 || len(y.Stock.Consumables) != 2 || len(y.Welding.Procedures) != 1 || len(y.Hulls[0].Joints) != 1 {
		t.Errorf("lots %d, consumables %d, procedures %d, joints %d", len(y.Stock.Lots), len(y.Stock.Consumables), len(y.Welding.Procedures), len(y.Hulls[0].Joints))
	}
}

func TestStartedRecordsFitATerminal(t *testing.T) {
	err := fs.WalkDir(content.Files, "start", func(name string, e fs.DirEntry, err error) error {
		if err != nil || e.IsDir() {
			return err
		}
		text, err := fs.ReadFile(content.Files, name)
		for line := range strings.Lines(string(text)) {
			if n := len([]rune(strings.TrimRight(line, "\n"))); n > 80 {
				t.Errorf("%s: %d characters wide: %s", name, n, line)
			}
		}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
}
