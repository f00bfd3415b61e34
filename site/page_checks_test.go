package site

import "testing"

// Own arithmetic: what several ask alike is said once above them, none is lost, and what each asks for itself stays in its row.
func TestChecksAreGroupedByWhatIsAsked(t *testing.T) {
	met, short := standing("met"), standing("short")
	rows := []CheckRow{{Asks: "a lot", Source: "practice", Standing: met}, {Asks: "a cast", Source: "practice", Standing: met}, {Asks: "a lot", Source: "practice", Standing: short}, {Asks: "a lot", Source: "EN 1", Standing: met}}
	got := grouped(rows)
	if len(got) != 4 || got[0].Head != (CheckHead{"a lot", "practice", "1 short, 1 met"}) || got[1].Head.Asks != "" || got[1].Standing.Word != short.Word || got[2].Head.Asks != "a cast" || got[3].Head.Source != "EN 1" {
		t.Errorf("%+v", got)
	}
	for i, r := range got {
		if r.Asks != "" {
			t.Errorf("row %d says again what stands above it: %s", i, r.Asks)
		}
	}
	apart := grouped([]CheckRow{{Asks: "a lot"}, {Asks: "a cast"}})
	if apart[0].Asks != "a lot" || apart[0].Head.Asks != "" || apart[1].Asks != "a cast" {
		t.Errorf("checks that ask for different things were changed: %+v", apart)
	}
}
