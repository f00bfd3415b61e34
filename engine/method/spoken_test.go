package method

import (
	"os"
	"path/filepath"
	"strings"
	"testing"
)

// TestReasonsInWords holds sentences for steps that do not apply; the sheet and its values are our own.
func TestReasonsInWords(t *testing.T) {
	const sheet = head + `
[[c.input]]
symbol = "h"
name = "centre above the waterline"
unit = "m"
from = "panel.z_m"
[[c.input]]
symbol = "c"
name = "crown"
unit = "mm"
from = "panel.c_mm"
[[c.input]]
symbol = "b"
name = "shorter side"
unit = "mm"
from = "panel.b_mm"
[[c.input]]
symbol = "zone"
name = "part of the boat"
words = ["bottom", "side", "deck"]
from = "panel.zone"
[[c.input]]
symbol = "walked"
name = "people walk on it"
words = ["true", "false"]
from = "panel.walked"
`
	given := GivenMap{"panel.z_m": *num(0.3, "m"), "panel.c_mm": *num(10, "mm"), "panel.b_mm": *num(250, "mm"), "panel.zone": *say("deck"), "panel.walked": *say("true")}
	for _, c := range []struct {
		whens []string
		says  string
	}{
		{[]string{"h < 0"}, "applies where centre above the waterline is below 0 m; here it is 0.3 m"},
		{[]string{"h < 0 && b > 100"}, "applies where centre above the waterline is below 0 m; here it is 0.3 m"},
		{[]string{"h >= 1 and b <= 200"}, "applies where centre above the waterline is at least 1 m and shorter side is at most 200 mm; here centre above the waterline is 0.3 m and shorter side is 250 mm"},
		{[]string{"h < 0 || b < c"}, "applies where centre above the waterline is below 0 m or shorter side is below crown; here centre above the waterline is 0.3 m, shorter side is 250 mm and crown is 10 mm"},
		{[]string{"c / b > 0.18"}, "applies where c/b is above 0.18; here crown c is 10 mm and shorter side b is 250 mm"},
		{[]string{`zone == "side"`}, "applies where part of the boat is side; here it is deck"},
		{[]string{`zone == "side"`, `zone == "bottom" and h < 0`}, "applies where part of the boat is side, or where part of the boat is bottom and centre above the waterline is below 0 m; here part of the boat is deck and centre above the waterline is 0.3 m"},
		{[]string{`zone == "side" and h > 0`, `zone == "side" and h <= 0`}, "applies where part of the boat is side, or where part of the boat is side and centre above the waterline is at most 0 m; here part of the boat is deck and centre above the waterline is 0.3 m"},
		{[]string{`zone == "side"`, `zone in ["bottom", "side"]`}, "applies where part of the boat is side or bottom; here it is deck"},
		{[]string{`zone not in ["deck", "side"]`}, "applies where part of the boat is neither deck nor side; here it is deck"},
		{[]string{`zone != "deck"`}, "applies where part of the boat is not deck; here it is deck"},
		{[]string{`walked == "false"`}, "applies where people walk on it: no; here it is yes"},
		{[]string{`walked == "false" and h < 0`}, "applies where people walk on it: no and centre above the waterline is below 0 m; here people walk on it: yes and centre above the waterline is 0.3 m"},
		{[]string{`not (h > 0 && c > 5)`}, "applies where not (centre above the waterline is above 0 m and crown is above 5 mm); here centre above the waterline is 0.3 m and crown is 10 mm"},
		{[]string{`h < 0 and (zone == "side" or c > 50)`}, "applies where centre above the waterline is below 0 m and (part of the boat is side or crown is above 50 mm); here centre above the waterline is 0.3 m, part of the boat is deck and crown is 10 mm"},
	} {
		text := sheet
		for _, w := range c.whens {
			text += "[[c.step]]\nsymbol = \"y\"\nname = \"result\"\nunit = \"\"\nwhen = '" + w + "'\nformula = \"1\"\nclause = \"1\"\nbasis = \"read\"\n"
		}
		s, err := Load("f.toml", []byte(text))
		if err != nil {
			t.Errorf("%v: %v", c.whens, err)
			continue
		}
		w, err := s.Evaluate("c", given, nil)
		if err != nil {
			t.Fatal(err)
		}
		if y, _ := w.Get("y"); spaced(y.Why()) != c.says {
			t.Errorf("%v:\n says %q,\n want %q", c.whens, spaced(y.Why()), c.says)
		}
	}
}

// TestShippedSheetsGiveReasonsInWords turns every shipped sheet with values that leave steps out, and looks for signs of
// comparison and bare letters in the reasons.
func TestShippedSheetsGiveReasonsInWords(t *testing.T) {
	files, err := filepath.Glob("../../content/methods/*.toml")
	if err != nil || len(files) < 5 {
		t.Fatal(files, err)
	}
	reasons, sheets := 0, 0
	for _, file := range files {
		text, err := os.ReadFile(file)
		if err != nil {
			t.Fatal(err)
		}
		s, err := Load(filepath.Base(file), text)
		if err != nil {
			t.Fatal(err)
		}
		before := reasons
		for _, sc := range s.Scopes {
			reasons += wordedReasons(t, s, sc)
		}
		if reasons > before {
			sheets++
		}
	}
	if sheets < 5 || reasons < 200 {
		t.Errorf("%d reasons of %d sheets were looked at", reasons, sheets)
	}
}

func wordedReasons(t *testing.T, s *Sheet, sc *Scope) (n int) {
	t.Helper()
	for turn, number := range []float64{0.5, 7, 60} {
		above := (*Working)(nil)
		if sc.above != nil {
			a, err := s.Evaluate(sc.above.Name, filled(sc.above, number, turn), nil)
			if err != nil {
				return n // a scope below a scope below another
			}
			above = a
		}
		w, err := s.Evaluate(sc.Name, filled(sc, number, turn), above)
		if err != nil {
			t.Fatal(err)
		}
		for _, step := range w.Steps {
			if step.State != NotSet {
				continue
			}
			n++
			where, here, _ := strings.Cut(step.Why(), "; here ")
			if strings.ContainsAny(where, "=<>≤≥≠&|") || strings.Contains(here, " = ") || !strings.HasPrefix(where, "applies where ") || where == "applies where " {
				t.Errorf("%s, %s, %s: %q", s.Name, sc.Name, step.Symbol, step.Why())
			}
		}
	}
	return n
}

// filled gives every input of a scope a value; turn chooses among words.
func filled(sc *Scope, number float64, turn int) GivenMap {
	g := GivenMap{}
	for _, in := range sc.Inputs {
		if in.Words != nil {
			g[in.From] = Quantity{Word: in.Words[turn%len(in.Words)], IsWord: true}
			continue
		}
		g[in.From] = Quantity{Number: number, Unit: in.Unit}
	}
	return g
}
