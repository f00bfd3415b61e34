package record

import (
	"errors"
	"os"
	"path/filepath"
	"reflect"
	"testing"

	"hullfile/engine/finding"
)

// inPieces reads a yard hull by hull, twice.
func inPieces(t *testing.T, root *os.Root, known Known) (*Yard, error) {
	t.Helper()
	p, err := Begin(root, known)
	if err != nil {
		return nil, err
	}
	var read []*One
	for _, number := range p.Numbers() {
		p.Read(number)
		read = append(read, p.Read(number))
	}
	if all := p.Faults(read...); all != nil {
		return nil, all
	}
	y := p.Yard()
	y.Files = append([]File(nil), y.Files...)
	for _, one := range read {
		y.Hulls = append(y.Hulls, one.Hull)
		y.Doubts = append(y.Doubts, one.Doubts...)
		y.Files = append(y.Files, one.Files...)
	}
	return y, nil
}

// A yard read in pieces has the hulls, the doubts and the files of one that is read whole.
func TestPiecesMakeTheWhole(t *testing.T) {
	root, err := os.OpenRoot(filepath.Join("..", "..", "content", "demo"))
	if err != nil {
		t.Fatal(err)
	}
	defer root.Close()
	known := Known{Alloys: knownForTests.Alloys} // those of the demo are among them
	whole, err := Read(root, known)
	if err != nil {
		t.Fatal(err)
	}
	pieces, err := inPieces(t, root, known)
	if err != nil {
		t.Fatal(err)
	}
	if len(whole.Hulls) < 3 || !reflect.DeepEqual(whole.Hulls, pieces.Hulls) {
		t.Errorf("%d hulls whole, %d in pieces, or they differ", len(whole.Hulls), len(pieces.Hulls))
	}
	if !reflect.DeepEqual(whole.Stock, pieces.Stock) || !reflect.DeepEqual(whole.Builder, pieces.Builder) || !reflect.DeepEqual(whole.Designs, pieces.Designs) {
		t.Error("what belongs to no hull differs")
	}
	count := func(y *Yard) map[string]int {
		n := map[string]int{"files": len(y.Files)}
		for _, d := range y.Doubts {
			n[d.Hull+" "+d.Finding.Says]++
		}
		return n
	}
	if want, got := count(whole), count(pieces); !reflect.DeepEqual(got, want) {
		t.Errorf("doubts and files %v, want %v", got, want)
	}
}

// A yard with faults tells the same ones, whichever way it is read.
func TestPiecesTellTheSameFaults(t *testing.T) {
	dirs, err := filepath.Glob("../../testdata/broken/*")
	if err != nil || len(dirs) < brokenCases {
		t.Fatalf("%d broken yards, %v", len(dirs), err)
	}
	faulty := 0
	for _, dir := range dirs {
		root, err := os.OpenRoot(dir)
		if err != nil {
			continue // a file of messages
		}
		_, whole := Read(root, knownForTests)
		_, pieces := inPieces(t, root, knownForTests)
		root.Close()
		var want, got finding.Faults
		errors.As(whole, &want)
		errors.As(pieces, &got)
		if !reflect.DeepEqual(got, want) {
			t.Errorf("%s: in pieces %v, whole %v", dir, pieces, whole)
		}
		if len(want) > 0 {
			faulty++
		}
	}
	if faulty < 20 {
		t.Errorf("only %d yards have faults; the test shows nothing", faulty)
	}
}

// The context changes with a name that a hull may use, and not with a value.
func TestContext(t *testing.T) {
	context := func(yard string) any {
		t.Helper()
		dir := t.TempDir()
		if err := os.WriteFile(filepath.Join(dir, "yard.toml"), []byte(yard), 0o644); err != nil {
			t.Fatal(err)
		}
		root, err := os.OpenRoot(dir)
		if err != nil {
			t.Fatal(err)
		}
		defer root.Close()
		p, err := Begin(root, Known{})
		if err != nil || p.Faults() != nil {
			t.Fatal(err, p.Faults())
		}
		return p.Context()
	}
	one := context("name = \"A\"\n[person.ann]\nname = \"Ann\"\nrole = \"welder\"\n")
	if context("name = \"B\"\n[person.ann]\nname = \"Anna\"\nrole = \"welder\"\n") != one {
		t.Error("a value changes the context")
	}
	if context("name = \"A\"\n[person.ben]\nname = \"Ann\"\nrole = \"welder\"\n") == one {
		t.Error("another person does not change the context")
	}
}
