package proof

import (
	"os"
	"path/filepath"
	"reflect"
	"testing"
)

// What the quick way reads of a proof that comes with the program is what the decoder gives.
func TestTheQuickWayReadsWhatTheDecoderReads(t *testing.T) {
	names, err := filepath.Glob("../../content/proofs/*.toml")
	if err != nil || len(names) < 10 {
		t.Fatalf("%d proofs, %v", len(names), err)
	}
	for _, name := range names {
		text, err := os.ReadFile(name)
		if err != nil {
			t.Fatal(err)
		}
		var got set
		if !quick(string(text), &got) {
			t.Errorf("%s is not read the quick way", name)
		}
		want, faults := careful(name, string(text))
		if len(faults) > 0 || !reflect.DeepEqual(&got, want) {
			t.Errorf("%s: %v, other values", name, faults)
		}
	}
}

func TestTheQuickWayLeavesTheRest(t *testing.T) {
	for what, text := range map[string]string{
		"unknown key":         "colour = \"red\"",
		"unknown key of case": "[[case]]\ncolour = \"red\"",
		"a number for a text": "title = 1",
		"a text for a number": "[[case]]\ntolerance = \"1\"",
		"a text for a table":  "inputs = \"1\"",
		"a table for a text":  "[title]\nx = 1",
		"cases as a text":     "case = \"1\"",
		"a list":              "inputs = [1]",
		"numbers for words":   "[[case]]\nchecks = [1]",
		"a date":              "title = 2026-01-01",
		"no TOML":             "title = ",
	} {
		if s := (set{}); quick(text, &s) || !reflect.DeepEqual(s, set{}) {
			t.Errorf("%s was taken: %+v", what, s)
		}
	}
}
