package site

import (
	"bytes"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// someState holds everything that a state can.
func someState() *state {
	s := newState()
	s.began, s.program, s.next = 1<<60, "hullfile", "H2"
	s.yard = yardMemo{Look: mark{1}, Common: [32]byte{2}, Context: [32]byte{3}, Stock: [32]byte{14}, Stocked: mark{16}, Own: []ownFile{{"methods/own.toml", [32]byte{20}}}, Block: Block{Builder: "Yard", Invented: true}, Designs: []record.DesignName{{Name: "A"}, {Name: "B", BasedOn: "A"}}}
	s.folders.add("H1", []string{".", "records/hulls/H1/logs", "seams"})
	s.register = registered{mark{17}, mark{18}}
	s.folders.add("H2", []string{"."})
	s.hulls = []hullMemo{
		{Title: "launch", State: "finished", Look: mark{4}, Records: mark{5}, Own: [32]byte{6}, Stock: [32]byte{15}, Brief: mark{7}, Named: []string{"H2"}, Taken: [32]byte{8},
			Token: engine.Token{Number: "H1", Design: "A", HIN: "XX-1", Cracked: true, Marked: engine.Mark{9}, Boat: engine.Mark{10}, Life: engine.Mark{11}, Shares: []engine.Share{{Group: 1 << 63, What: engine.Mark{12}}}}},
		{Token: engine.Token{Number: "H2"}},
	}
	s.books["H1"] = volume{Key: "k", Tree: "t", Doors: mark{13}, Folders: 0, Asked: []string{"methods/own.toml", "methods/renewal.toml"}, Own: mark{19}, Line: line{Number: "H1", Title: "launch", Design: "A", State: "finished", Issue: "2", Builder: "Yard", Invented: true, Standing: finding.Short,
		Counts: map[finding.Kind]int{finding.Gap: 3}, Weighed: &weighed{"W1", 2100.5, 2000}, Least: &least{"B3", -0.25}, Sums: "s", Root: "r", Pages: 4, Files: 5, Bytes: 6}}
	s.books["H2"] = volume{Folders: 1, Line: line{Number: "H2", Counts: map[finding.Kind]int{}}}
	return s
}

// A state comes back as it was written. Cut anywhere, or with any bit turned, it remembers nothing.
func TestStateIsWholeOrNothing(t *testing.T) {
	dir := t.TempDir()
	name := filepath.Join(dir, stateName)
	if err := someState().write(name); err != nil {
		t.Fatal(err)
	}
	if got := readState(dir); !reflect.DeepEqual(got, someState()) {
		t.Errorf("read %+v\nwrote %+v", got, someState())
	}
	text, err := os.ReadFile(name)
	if err != nil {
		t.Fatal(err)
	}
	for i := range text {
		turned := bytes.Clone(text)
		turned[i] ^= 1 << (i % 8)
		for what, bad := range map[string][]byte{"cut": text[:i], "turned": turned} {
			if err := os.WriteFile(name, bad, 0o644); err != nil {
				t.Fatal(err)
			}
			if got := readState(dir); !reflect.DeepEqual(got, newState()) {
				t.Fatalf("%s at %d of %d: remembers %+v", what, i, len(text), got)
			}
		}
	}
}

// Whatever stands in a state whose hash is true, reading it ends.
func FuzzState(f *testing.F) {
	var whole bytes.Buffer
	w := newMemoWriter(&whole)
	w.state(someState())
	if err := w.to.Flush(); err != nil {
		f.Fatal(err)
	}
	f.Add(whole.Bytes())
	f.Fuzz(func(t *testing.T, text []byte) {
		name := filepath.Join(t.TempDir(), "state")
		to, err := os.Create(name)
		if err != nil {
			t.Fatal(err)
		}
		defer to.Close()
		w := newMemoWriter(to)
		w.put(text)
		if err := w.end(to); err != nil {
			t.Fatal(err)
		}
		if _, err := to.Seek(0, 0); err != nil {
			t.Fatal(err)
		}
		r, err := openMemo(to)
		if err != nil {
			t.Fatal(err)
		}
		if s := r.state(); r.err == nil && len(s.hulls)+len(s.books) > len(text) {
			t.Errorf("%d hulls and books out of %d bytes", len(s.hulls)+len(s.books), len(text))
		}
	})
}
