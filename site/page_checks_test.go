package site

import (
	"strings"
	"testing"
)

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

// A hash is told by its beginning; what only looks long stays.
func TestHashesAreShort(t *testing.T) {
	hash := strings.Repeat("0f", 32)
	for text, want := range map[string]string{hash: "0f0f0f0f0f0f…", hash[1:]: hash[1:], strings.Repeat("no", 32): strings.Repeat("no", 32), "6.00 mm": "6.00 mm"} {
		if got := shortHash(text); got != want {
			t.Errorf("%q became %q, want %q", text, got, want)
		}
	}
}

// Own arithmetic: columns are parted in blocks that fit, none is lost, and none stands alone beside full ones.
func TestColumnsArePartedEvenly(t *testing.T) {
	for n := 1; n < 40; n++ {
		columns := make([]compareColumn, n)
		for i := range columns {
			columns[i] = compareColumn{at: i, wide: 45 + float64(i%4)*6}
		}
		next, least, most := 0, n, 0
		for _, part := range parted(columns) {
			wide := 0.0
			for _, c := range part {
				if c.at != next {
					t.Fatalf("%d columns: column %d comes where %d should", n, c.at, next)
				}
				next++
				wide += c.wide
			}
			if wide > pageWide*1.1 {
				t.Errorf("%d columns: a block is %.0f wide", n, wide)
			}
			least, most = min(least, len(part)), max(most, len(part))
		}
		if next != n || most-least > 2 {
			t.Errorf("%d columns: %d came out, in blocks of %d to %d", n, next, least, most)
		}
	}
}
