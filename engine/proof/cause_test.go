package proof_test

import (
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/method"
	"hullfile/engine/proof"
)

const causeSheet = `title = "C"
work = "W"
standing = "own"
[craft]
[[craft.input]]
symbol = "a"
name = "a"
unit = ""
from = "boat.persons"
[[craft.input]]
symbol = "b"
name = "b"
unit = ""
from = "boat.engines"
`

// causeOf gives the cause of one formula of a sheet of its own.
func causeOf(t *testing.T, formula, basis string, yards bool) proof.Cause {
	t.Helper()
	text := causeSheet + "[[craft.step]]\nsymbol = \"c\"\nname = \"c\"\nunit = \"\"\nformula = '" + formula + "'\nclause = \"1\"\nbasis = \"" + basis + "\"\n"
	files, own := fstest.MapFS{"own.toml": {Data: []byte(text)}}, []method.Source(nil)
	if yards {
		files, own = fstest.MapFS{}, []method.Source{{Name: "own.toml", Text: []byte(text)}}
	}
	lib, err := method.ReadShipped(files).Library(own)
	if err != nil {
		t.Fatal(err)
	}
	_, _, table := shipped(t)
	sheet, err := ranIn(fstest.MapFS{}, lib, table)
	if err != nil || len(sheet.Without) != 1 {
		t.Fatalf("%v, %d without", err, len(sheet.Without))
	}
	return sheet.Without[0].Cause
}

func TestCauses(t *testing.T) {
	rows := []struct {
		formula, basis string
		yards          bool
		want           proof.Cause
	}{
		{"0.5 * a", "recalled", false, proof.Unread},
		{"max(a, b)", "recalled", false, proof.Unread},
		{"max(a, b)", "practice", false, proof.Custom},
		{"max(a, b)", "read", false, proof.Plain},
		{"1000 * a / (b - 1) + 0.001 * b", "derived", false, proof.Plain},
		{"2 * a", "read", false, proof.Figures},
		{"a ** 2", "derived", false, proof.Theory},
		{"sqrt(a)", "derived", false, proof.Theory},
		{"-2 * a", "derived", false, proof.Theory},
		{"a", "yard", false, proof.Yards},
		{"2 * a", "read", true, proof.Yards},
	}
	for _, r := range rows {
		if got := causeOf(t, r.formula, r.basis, r.yards); got != r.want {
			t.Errorf("%s, %s, yard's sheet %v: %q, want %q", r.formula, r.basis, r.yards, got, r.want)
		}
	}
}

// Every sheet with formulas that have no outside check says why, and none that has no such formula is named.
func TestReasonsOfEverySheet(t *testing.T) {
	sheet, err := ranIn(shipped(t))
	if err != nil {
		t.Fatal(err)
	}
	named := map[string]bool{}
	for _, lack := range sheet.BySheet() {
		named[strings.TrimSuffix(lack.Method, ".toml")] = true
		if lack.Reason.Says == "" || lack.Reason.Closes == "" {
			t.Errorf("%s has %d formulas without an outside check, and no reason in proofs/none/sheets.toml", lack.Method, len(lack.All))
		}
	}
	for _, r := range sheet.Reasons {
		if !named[r.Method] {
			t.Errorf("proofs/none/sheets.toml names %q, which has no formula without an outside check", r.Method)
		}
	}
}

func TestReasonFaults(t *testing.T) {
	rows := []struct{ name, text, says string }{
		{"unknown key", "[[sheet]]\nmethod = \"own\"\nsays = \"S\"\ncloses = \"C\"\nbecause = \"x\"\n", "unknown key"},
		{"no reason", "[[sheet]]\nmethod = \"own\"\ncloses = \"C\"\n", "needs method, says and closes"},
		{"twice", "[[sheet]]\nmethod = \"own\"\nsays = \"S\"\ncloses = \"C\"\n[[sheet]]\nmethod = \"own\"\nsays = \"S\"\ncloses = \"C\"\n", "twice"},
		{"broken file", "[[sheet", "expected"},
	}
	_, lib, table := shipped(t)
	for _, r := range rows {
		_, err := ranIn(fstest.MapFS{"proofs/none/sheets.toml": {Data: []byte(r.text)}}, lib, table)
		if err == nil || !strings.Contains(err.Error(), r.says) {
			t.Errorf("%s: %v, want a fault with %q", r.name, err, r.says)
		}
	}
}

// The counts by cause and by sheet and the kinds are the same list, told otherwise.
func TestTheListIsWhole(t *testing.T) {
	sheet, err := ranIn(shipped(t))
	if err != nil {
		t.Fatal(err)
	}
	causes, sheets, kinds := 0, 0, 0
	for _, c := range proof.TallyOf(sheet.Without) {
		causes += c.N
	}
	for _, lack := range sheet.BySheet() {
		sheets += len(lack.All)
	}
	for _, k := range proof.Kinds(sheet.Without) {
		kinds += len(k.Scopes)
	}
	if n := len(sheet.Without); n == 0 || causes != n || sheets != n || kinds != n {
		t.Errorf("%d formulas: %d by cause, %d by sheet, %d by kind", n, causes, sheets, kinds)
	}
}
