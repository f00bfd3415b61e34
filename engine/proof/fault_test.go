package proof_test

import (
	"errors"
	"strings"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/proof"
)

const plateHead = `title = "T"
source = "S"
basis = "read"
method = "own"
scope = "panel"
[inputs]
"boat.loaded_mass_kg" = 100
`

const ownSheet = `title = "Own"
work = "W"
standing = "own"
[[craft.input]]
symbol = "m"
name = "mass"
unit = "kg"
from = "boat.loaded_mass_kg"
[[craft.step]]
symbol = "h"
name = "half the mass"
unit = "kg"
formula = "m / 2"
clause = "1"
basis = "read"
[panel]
above = "craft"
[[panel.input]]
symbol = "b"
name = "short side"
unit = "mm"
from = "panel.short_side_mm"
[[panel.input]]
symbol = "zone"
name = "zone"
from = "panel.zone"
words = ["bottom", "side"]
[[panel.step]]
symbol = "t"
name = "thickness"
unit = "mm"
when = 'zone == "bottom"'
formula = "h / b"
clause = "2"
basis = "read"
[[panel.step]]
symbol = "t"
when = 'zone == "side"'
formula = "h / b / 2"
clause = "3"
basis = "read"
`

// run runs one proof file against a small sheet of its own.
func run(t *testing.T, text string) (proof.Sheet, error) {
	t.Helper()
	lib, err := method.ReadShipped(fstest.MapFS{"own.toml": {Data: []byte(ownSheet)}}).Library(nil)
	if err != nil {
		t.Fatal(err)
	}
	_, _, table := shipped(t)
	return ranIn(fstest.MapFS{"proofs/x.toml": {Data: []byte(text)}}, lib, table)
}

const plateCase = "[[case]]\nname = \"n\"\nsymbol = \"t\"\ninputs = {\"panel.short_side_mm\" = 20, \"panel.zone\" = \"bottom\"}\nprinted = \"2.50\"\n"

// own arithmetic: 100 / 2 / 20 = 2.50
func TestRightNumberPasses(t *testing.T) {
	sheet, err := run(t, plateHead+plateCase)
	if err != nil {
		t.Fatal(err)
	}
	c := sheet.Cases[0]
	if !c.Pass || c.Got != 2.5 || c.Unit != "mm" || c.Tolerance != 0.005 || c.Inputs != "m 100 kg, b 20 mm, zone bottom" {
		t.Errorf("%+v", c)
	}
}

func TestWrongNumberFails(t *testing.T) {
	rows := []struct{ name, text string }{
		{"another printed value", strings.Replace(plateCase, "2.50", "2.51", 1)},
		{"another alloy value", "[[case]]\nname = \"n\"\nalloy = \"5083-H116\"\nvalue = \"parent.yield\"\nprinted = \"216\"\n"},
		{"another factor t", "[[case]]\nname = \"n\"\nfunction = \"student t\"\ninputs = {degrees_of_freedom = 2}\nprinted = \"4.31\"\n"},
	}
	for _, r := range rows {
		sheet, err := run(t, "values = \"EN 485-2\"\n"+plateHead+r.text)
		if err != nil {
			t.Fatal(err)
		}
		if c := sheet.Cases[0]; c.Pass || c.Fails != "" || len(sheet.Failed()) != 1 {
			t.Errorf("%s: passes or does not run: %+v", r.name, c)
		}
	}
}

// A case that cannot be run does not pass, and says why.
func TestCaseThatCannotRun(t *testing.T) {
	rows := []struct{ name, text, says string }{
		{"no such symbol", strings.Replace(plateCase, `symbol = "t"`, `symbol = "u"`, 1), `"u"`},
		{"an input left out", strings.Replace(plateCase, `"panel.short_side_mm" = 20, `, "", 1), "short_side_mm"},
		{"an input nobody asks for", strings.Replace(plateCase, "short_side_mm", "short_side", 1), `no scope asks for "panel.short_side"`},
		{"a word for a number", strings.Replace(plateCase, "= 20", `= "20"`, 1), "wrong kind"},
		{"no such scope", strings.Replace(plateCase, "symbol", "scope = \"frame\"\nsymbol", 1), `no scope "frame"`},
		{"checks what the result does not rest on", strings.Replace(plateCase, "printed", "checks = [\"b\"]\nprinted", 1), "does not rest"},
		{"no such alloy", "[[case]]\nname = \"n\"\nalloy = \"7075\"\nvalue = \"parent.yield\"\nprinted = \"1\"\n", "7075"},
		{"no such figure", "[[case]]\nname = \"n\"\nalloy = \"5083-H116\"\nvalue = \"parent.colour\"\nprinted = \"1\"\n", "colour"},
		{"no such function", "[[case]]\nname = \"n\"\nfunction = \"luck\"\nprinted = \"1\"\n", "luck"},
		{"input of a function mistyped", "[[case]]\nname = \"n\"\nfunction = \"student t\"\ninputs = {nu = 2}\nprinted = \"4.30\"\n", `"nu"`},
		{"input of a function left out", "[[case]]\nname = \"n\"\nfunction = \"slip\"\ninputs = {engine_rpm = 2}\nprinted = \"4.30\"\n", "missing"},
		{"no finite result", "[[case]]\nname = \"n\"\nfunction = \"student t\"\ninputs = {degrees_of_freedom = 0}\nprinted = \"4.30\"\n", "finite"},
	}
	for _, r := range rows {
		sheet, err := run(t, "values = \"EN 485-2\"\n"+plateHead+r.text)
		if err != nil {
			t.Errorf("%s: %v", r.name, err)
			continue
		}
		if c := sheet.Cases[0]; c.Pass || !strings.Contains(c.Fails, r.says) {
			t.Errorf("%s: pass %v, fails %q, want %q", r.name, c.Pass, c.Fails, r.says)
		}
	}
}

func TestFileFaults(t *testing.T) {
	rows := []struct{ name, old, new, says string }{
		{"unknown key", "printed", "prints", "unknown key"},
		{"no source", `source = "S"`, "", "title and a source"},
		{"unknown basis", `"read"`, `"sure"`, `basis "sure"`},
		{"tolerance without a reason", "printed", "tolerance = 1\nprinted", "needs a why"},
		{"want without a reason", "printed", "want = 1\nprinted", "needs a why"},
		{"printed text is no number", "2.50", "about 2", "no number"},
		{"checks without a sheet", "symbol = \"t\"\ninputs = {\"panel.short_side_mm\" = 20, \"panel.zone\" = \"bottom\"}", "function = \"student t\"\nchecks = [\"t\"]", "checks names symbols"},
		{"two targets", "symbol", "function = \"slip\"\nsymbol", "one of symbol, alloy, function"},
		{"no case", plateCase, "", "no case"},
		{"broken file", "[inputs]", "[inputs", "expected"},
	}
	for _, r := range rows {
		_, err := run(t, strings.Replace(plateHead+plateCase, r.old, r.new, 1))
		var faults finding.Faults
		if !errors.As(err, &faults) || !strings.Contains(err.Error(), r.says) || faults[0].Place.File != "proofs/x.toml" {
			t.Errorf("%s: %v, want faults with %q", r.name, err, r.says)
		}
	}
}

// Only a published value that was read, and only in a case that passes, is an outside check; and it checks the step that
// was taken, not its neighbours.
func TestWhatIsAnOutsideCheck(t *testing.T) {
	rows := []struct {
		name, text string
		want       []string // clauses without an outside check
		softly     int
	}{
		{"read and passed", plateHead + plateCase, []string{"3"}, 0},
		{"read and failed", plateHead + strings.Replace(plateCase, "2.50", "9.99", 1), []string{"1", "2", "3"}, 0},
		{"read, and speaks for the result alone", plateHead + strings.Replace(plateCase, "printed", "checks = [\"t\"]\nprinted", 1), []string{"1", "3"}, 0},
		{"practice", strings.Replace(plateHead, `"read"`, `"practice"`, 1) + plateCase, []string{"1", "2", "3"}, 2},
		{"own arithmetic", strings.Replace(plateHead, `"read"`, `"derived"`, 1) + plateCase, []string{"1", "2", "3"}, 2},
		{"recalled", strings.Replace(plateHead, `"read"`, `"recalled"`, 1) + plateCase, []string{"1", "2", "3"}, 2},
	}
	for _, r := range rows {
		sheet, err := run(t, r.text)
		if err != nil {
			t.Fatal(err)
		}
		var got []string
		softly := 0
		for _, u := range sheet.Without {
			got = append(got, u.Clause)
			softly += len(u.Softly)
		}
		if strings.Join(got, " ") != strings.Join(r.want, " ") || softly != r.softly {
			t.Errorf("%s: without an outside check are clauses %v (%d softly), want %v (%d)", r.name, got, softly, r.want, r.softly)
		}
	}
}
