package record

import (
	"os"
	"path/filepath"
	"reflect"
	"strings"
	"testing"
	"unicode/utf8"

	"hullfile/engine/finding"
)

// FuzzTOML: no text makes the reader panic; a text without a fault fills the structs; messages can be shown.
func FuzzTOML(f *testing.F) {
	seedWith(f, "*.toml")
	f.Add([]byte(positionText))
	f.Fuzz(func(t *testing.T, text []byte) {
		r := newReading(nil, knownForTests)
		c := &checker{fs: &r.faults, what: "hull", names: r.names}
		root, ok := readTOML("hull.toml", text, &r.faults)
		if ok {
			c.table(hullTable, root, nil)
			r.lay("T1", "", &level{root: root, whole: true})
		}
		fillsOrTells(t, r)
	})
}

// FuzzCSV does the same for the tables beside a record.
func FuzzCSV(f *testing.F) {
	seedWith(f, "*.csv")
	f.Add([]byte("trial;setting;speed_kn\r\nT1;\"a;\nb\";1,5\r\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		for _, s := range sources(hullTable) {
			r := newReading(nil, knownForTests)
			c := &checker{fs: &r.faults, what: "hull", names: r.names}
			if root, ok := c.readCSV(s.file, text, s); ok {
				c.table(hullTable, root, nil)
				r.lay("T1", "", &level{root: root, whole: true})
			}
			fillsOrTells(t, r)
		}
	})
}

// FuzzList does the same for lists of requirements.
func FuzzList(f *testing.F) {
	seedWith(f, "*.toml")
	f.Add([]byte("title = \"t\"\nwork = \"w\"\nkind = \"law\"\nbasis = \"read\"\n[item.\"3.1\"]\nneeded = [\"plating\"]\n"))
	f.Fuzz(func(t *testing.T, text []byte) {
		var wrong faults
		n, ok := looked("requirements/own.toml", text, listTable, &wrong, map[string][]string{"evidence": {"plating"}})
		told := wrong.told()
		if ok != (len(told) == 0) {
			t.Fatalf("read: %v, faults: %v", ok, told)
		}
		if ok {
			var l RequirementList
			fill(listTable, n, reflect.ValueOf(&l).Elem())
		}
		showable(t, told)
	})
}

func fillsOrTells(t *testing.T, r *reading) {
	told := r.faults.told()
	if len(told) == 0 {
		if r.hulls[0].fill(); r.hulls[0].hull == nil {
			t.Fatal("no fault, and no hull")
		}
		return
	}
	showable(t, told)
}

// showable: every message has a place and can be shown.
func showable(t *testing.T, told finding.Faults) {
	for _, one := range told {
		s := one.String() + one.Hint
		if _, bad := firstUnwanted(s, false); bad || !utf8.ValidString(s) {
			t.Errorf("a message that cannot be shown: %q", s)
		}
		if one.Place.File == "" || one.Says == "" || one.Place.Line < 0 || one.Place.Col < 0 {
			t.Errorf("a fault without place or words: %+v", one)
		}
	}
}

// seedWith takes the yards of testdata as seeds.
func seedWith(f *testing.F, pattern string) {
	n := 0
	err := filepath.WalkDir("../../testdata", func(name string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(name, pattern[1:]) {
			return err
		}
		text, err := os.ReadFile(name)
		f.Add(text)
		n++
		return err
	})
	if err != nil || n == 0 {
		f.Fatalf("%d seeds: %v", n, err)
	}
}
