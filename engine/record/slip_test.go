package record

import (
	"os"
	"path/filepath"
	"testing"
)

// A column of the yard's own, with # before its head, is not read; what stands in it may be anything.
func TestColumnOfTheYardsOwn(t *testing.T) {
	dir := t.TempDir()
	for name, text := range map[string]string{
		"hull.toml":   loneBoat,
		"weights.csv": "id,#who said so,name,group,basis,mass_kg,# mass_kg\nhull,Tom,bare hull,plating,estimated,620,~600?\n",
	} {
		if err := os.WriteFile(filepath.Join(dir, name), []byte(text), 0o644); err != nil {
			t.Fatal(err)
		}
	}
	y := readYard(t, dir)
	if got := y.Hulls[0].Weights; len(got) != 1 || got[0].Mass.V != 620 || got[0].Name.V != "bare hull" {
		t.Errorf("%+v", got)
	}
}

// Days that can be meant in one way alone are told as they are to be written; no other is guessed.
func TestLikelyDay(t *testing.T) {
	for text, want := range map[string]string{
		"31.01.2026": "2026-01-31", "1/31/2026": "2026-01-31", "2026/1/5": "2026-01-05", "2026-01-31 00:00:00": "2026-01-31", "2026-01-31T08:30": "2026-01-31",
		"31 Jan 2026": "2026-01-31", "5.5.2026": "2026-05-05",
		"1/2/2026": "", "31.02.2026": "", "26-01-31": "", "2026": "", "": "", "a.b.c": "", "32/13/2026": "", "99999999999999999999/1/2026": "",
	} {
		if got, ok := likelyDay(text); got != want || ok != (want != "") {
			t.Errorf("%q is taken for %q, want %q", text, got, want)
		}
	}
}

// Each slip of a cell that stands for a number, and the beginning of what is said to write.
func TestNumberHints(t *testing.T) {
	f := &field{key: "mass_kg", doc: "mass of one"}
	for text, want := range map[string]string{
		"850,5": "write decimals with a point: 850.5", "1.234,5": "write the number without marks", "1 234": "write the number without marks", "'5800": "take the apostrophe out: 5800",
		"\u22120.05": "write the minus sign as on the keyboard: -0.05", "#DIV/0!": "a spreadsheet writes this", "n/a": "leave it out", "–": "leave it out",
		"850 kg": "write the number alone, without its unit", "ca. 2": "write the number alone; expected", "heavy": "expected: mass of one", "": "leave it out",
	} {
		if got := numberHint(text, f); len(got) < len(want) || got[:len(want)] != want {
			t.Errorf("%q: %q, want %q", text, got, want)
		}
	}
}
