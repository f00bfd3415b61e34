package main

import (
	"io/fs"
	"os"
	"path/filepath"
	"regexp"
	"strings"
	"testing"

	"hullfile/content"
)

// example is a line of a record behind a comment mark: a heading, or a key with a value.
var example = regexp.MustCompile(`^#\s*(\[\[?[A-Za-z0-9_.-]+\]\]?\s*(#.*)?|[a-z0-9_]+\s*=\s*[^\s#].*)$`)

// empty is a key that waits for a number.
var empty = regexp.MustCompile(`^(#\s*[a-z0-9_]+\s*=)\s*(#.*)?$`)

// filled gives an empty key a number, so that it is read like the others.
func filled(line string) string {
	value := "5"
	if strings.Contains(line, "_side_mm") {
		value = "300"
	}
	return empty.ReplaceAllString(line, "${1} "+value+" ${2}")
}

// TestStartRecordsWithoutTheirMarks takes the comment marks away from every example in the records that a new yard gets. What
// is left must be read without a fault, or builders would learn keys that there are not.
func TestStartRecordsWithoutTheirMarks(t *testing.T) {
	start, err := fs.Sub(content.Files, "start")
	if err != nil {
		t.Fatal(err)
	}
	dir, lines := t.TempDir(), 0
	err = fs.WalkDir(start, ".", func(path string, d fs.DirEntry, err error) error {
		if err != nil || d.IsDir() {
			return err
		}
		text, err := fs.ReadFile(start, path)
		if err != nil {
			return err
		}
		var out []string
		open := false // a list that goes on in the next line
		for _, line := range strings.Split(string(text), "\n") {
			named := strings.Contains(line, `design = "NAME"`) // of a design that is not there yet
			line = filled(line)
			if (open || example.MatchString(line)) && !named {
				line, lines = strings.TrimPrefix(line, "#"), lines+1
				open = strings.HasSuffix(strings.TrimSpace(line), ",")
			}
			out = append(out, line)
		}
		file := filepath.Join(dir, filepath.FromSlash(path))
		if err := os.MkdirAll(filepath.Dir(file), 0o755); err != nil {
			return err
		}
		return os.WriteFile(file, []byte(strings.Join(out, "\n")), 0o644)
	})
	if err != nil {
		t.Fatal(err)
	}
	if lines < 150 {
		t.Errorf("only %d example lines were found", lines)
	}
	r, err := openYard(dir)
	if err != nil {
		t.Fatalf("the examples have faults:\n%v", err)
	}
	defer r.close()
	if len(r.yard.Stock.Lots) != 1 || len(r.yard.Stock.Consumables) != 2 || len(r.yard.Welding.Procedures) != 1 || len(r.yard.Hulls[0].Joints) != 1 {
		t.Errorf("lots %d, consumables %d, procedures %d, joints %d", len(r.yard.Stock.Lots), len(r.yard.Stock.Consumables), len(r.yard.Welding.Procedures), len(r.yard.Hulls[0].Joints))
	}
}
