package record

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
)

// windows writes a yard again as an editor or a spreadsheet of Windows saves it: lines end with two characters, and a
// mark may stand at the beginning.
func windows(t *testing.T, dir string, mark string) string {
	t.Helper()
	to := t.TempDir()
	if err := os.CopyFS(to, os.DirFS(dir)); err != nil {
		t.Fatal(err)
	}
	changed := 0
	err := filepath.WalkDir(to, func(name string, e os.DirEntry, err error) error {
		if err != nil || !e.Type().IsRegular() || !strings.HasSuffix(name, ".toml") && !strings.HasSuffix(name, ".csv") {
			return err
		}
		text, err := os.ReadFile(name)
		if err != nil {
			return err
		}
		changed++
		text = bytes.TrimPrefix(text, []byte(mark))
		text = bytes.ReplaceAll(bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n")), []byte("\n"), []byte("\r\n"))
		return os.WriteFile(name, append([]byte(mark), text...), 0o644)
	})
	if err != nil || changed == 0 {
		t.Fatalf("%d files changed: %v", changed, err)
	}
	return to
}

// TestLineEndingsMeanNothing: values and their places are the same however the lines end.
func TestLineEndingsMeanNothing(t *testing.T) {
	for _, dir := range []string{"../../testdata/yards/lone", "../../testdata/yards/layers", "../../testdata/yards/build", "../../testdata/yards/spreadsheet"} {
		plain := readYard(t, dir)
		for _, mark := range []string{"", "\xef\xbb\xbf"} {
			y := readYard(t, windows(t, dir, mark))
			if len(plain.Hulls) == 0 || !reflect.DeepEqual(plain.Hulls, y.Hulls) {
				t.Errorf("%s: the hulls differ with mark %q", dir, mark)
			}
			if !reflect.DeepEqual(plain.Builder, y.Builder) {
				t.Errorf("%s: the builder differs with mark %q", dir, mark)
			}
		}
	}
}

// TestLineEndingsMakeNoFault: what is wrong in a record is told in the same words, at the same place.
func TestLineEndingsMakeNoFault(t *testing.T) {
	all, err := filepath.Glob("../../testdata/broken/*")
	if err != nil || len(all) < 40 {
		t.Fatalf("%d broken yards: %v", len(all), err)
	}
	for _, dir := range all {
		switch filepath.Base(dir) {
		case "utf-16", "no-yard", "empty-folder", "csv-empty":
			continue // no lines to end, or none that could be ended so
		}
		if got, want := faultsOf(t, windows(t, dir, "")), faultsOf(t, dir); got != want {
			t.Errorf("%s: with the line ends of Windows\n%s\nwithout\n%s", dir, got, want)
		}
	}
}
