package engine

import (
	"errors"
	"io/fs"
	"os"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// brokenContent is what comes with the program, with one word of one file changed.
func brokenContent(t *testing.T, name, from, to string) fs.FS {
	t.Helper()
	files := fstest.MapFS{}
	err := fs.WalkDir(os.DirFS(contentFolder), ".", func(path string, e fs.DirEntry, err error) error {
		switch {
		case err != nil:
			return err
		case path == "demo":
			return fs.SkipDir
		case e.IsDir():
			return nil
		}
		text, err := os.ReadFile(contentFolder + "/" + path)
		files[path] = &fstest.MapFile{Data: text}
		return err
	})
	if err != nil {
		t.Fatal(err)
	}
	text := string(files[name].Data)
	if !strings.Contains(text, from) {
		t.Fatalf("%s has no %q", name, from)
	}
	files[name] = &fstest.MapFile{Data: []byte(strings.Replace(text, from, to, 1))}
	return files
}

// A fault in what comes with the program is told with the file to mend, and not as one of the records.
func TestFaultsOfWhatComesWithTheProgram(t *testing.T) {
	for _, row := range []struct{ name, from, to string }{
		{"methods/crouch.toml", "formula = \"", "formula = \"unheard + "},
		{"methods/crowding-test.toml", "from = \"boat.length_hull_m\"", "from = \"boat.lenght_hull_m\""},
		{"alloys/5083.toml", "[", "unheard = 1\n["},
		{"requirements/eu-manual.toml", "needed", "neded"},
		{"proofs/beams.toml", "[", "unheard = 1\n["},
		{"details/iiw-aluminium.toml", "[", "unheard = 1\n["},
	} {
		t.Run(row.name, func(t *testing.T) {
			_, err := NewReference(brokenContent(t, row.name, row.from, row.to), nil)
			var faults finding.Faults
			if !errors.As(err, &faults) {
				t.Fatalf("%v", err)
			}
			for _, f := range faults {
				if !f.Shipped || f.Place.File != "content/"+row.name {
					t.Errorf("%+v", f)
				}
			}
			if !strings.HasSuffix(faults.Count(), "in what comes with the program, not in the records") {
				t.Error(faults.Count())
			}
		})
	}
}

// A sheet of the yard is the yard's, also beside a shipped one that is broken.
func TestFaultsOfTheYardsOwnSheet(t *testing.T) {
	own := method.Source{Name: "own.toml", Path: "methods/own.toml", Text: []byte("title = 3\n")}
	_, err := NewReference(brokenContent(t, "methods/crouch.toml", "formula = \"", "formula = \"unheard + "), []method.Source{own})
	var faults finding.Faults
	if !errors.As(err, &faults) {
		t.Fatal(err)
	}
	for _, f := range faults {
		if f.Shipped != strings.HasPrefix(f.Place.File, "content/methods/") || !f.Shipped && f.Place.File != "methods/own.toml" {
			t.Errorf("%+v", f)
		}
	}
	if !strings.Contains(faults.Count(), "in the records and ") {
		t.Error(faults.Count())
	}
}
