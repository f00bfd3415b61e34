package proof_test

import (
	"bytes"
	"io/fs"
	"os"
	"reflect"
	"testing"

	"hullfile/engine/method"
	"hullfile/engine/proof"
	"hullfile/engine/requirement"
)

// What comes of a library that differs in one sheet is the same whether all proofs are run through it or only those that use the
// sheet, and the proofs of the first library stay as they are.
func TestThroughALibraryThatDiffersInOneSheet(t *testing.T) {
	content, _, alloys := shipped(t)
	methods, err := fs.Sub(content, "methods")
	if err != nil {
		t.Fatal(err)
	}
	text, err := fs.ReadFile(methods, "savitsky-1964.toml")
	if err != nil {
		t.Fatal(err)
	}
	other := bytes.Replace(text, []byte("0.0120"), []byte("0.0240"), 1)
	if bytes.Equal(text, other) {
		t.Fatal("the sheet was not changed")
	}
	lib, err := method.ReadShipped(methods).Library([]method.Source{{Name: "savitsky-1964.toml", Path: "methods/savitsky-1964.toml", Text: other}})
	if err != nil {
		t.Fatal(err)
	}
	sets, err := proof.Read(content)
	if err != nil {
		t.Fatal(err)
	}
	read, err := requirement.Read(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	lists, err := read.With(nil)
	if err != nil {
		t.Fatal(err)
	}
	first := lib.With(nil)
	runs := sets.Runs(first, alloys, lists)
	own := runs.Through(lib)
	if len(own.Failed()) == 0 {
		t.Error("a sheet with another factor passes")
	}
	for _, r := range []struct {
		what string
		got  proof.Sheet
		lib  *method.Library
	}{{"with a sheet of the yard's own", own, lib}, {"with the shipped ones", runs.Through(first), first}} {
		if want := sets.Run(r.lib, alloys, lists); !reflect.DeepEqual(r.got, want) {
			t.Errorf("%s: %d cases and %d without a check, want %d and %d, or others", r.what, len(r.got.Cases), len(r.got.Without), len(want.Cases), len(want.Without))
		}
	}
}
