package site

import "testing"

func TestDecimalMarksStandUnderEachOther(t *testing.T) {
	column := []string{"583", "28.7", "−0.075", "1 020", "–", "C", ""}
	var at []*string
	for i := range column {
		at = append(at, &column[i])
	}
	align(at)
	want := []string{"583\u2008\u2007\u2007\u2007", "28.7\u2007\u2007", "−0.075", "1 020\u2008\u2007\u2007\u2007", "–", "C", ""}
	for i := range want {
		if column[i] != want[i] {
			t.Errorf("%q, want %q", column[i], want[i])
		}
	}
}

func TestWhatIsNoNumberHasNoDecimals(t *testing.T) {
	for _, text := range []string{"", "–", "C", "3.1.2", "12.", ".5", "210 × 500", "2026-03-04"} {
		if n, ok := decimalsOf(text); ok {
			t.Errorf("%q is taken for a number with %d decimals", text, n)
		}
	}
}
