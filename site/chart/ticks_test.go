package chart

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// round reports whether a step is 1, 2, 2.5 or 5 times a power of ten.
func round(step float64) bool {
	m := step / math.Pow(10, math.Floor(math.Log10(step)+1e-9))
	for _, want := range []float64{1, 2, 2.5, 5} {
		if math.Abs(m-want) < 1e-9 {
			return true
		}
	}
	return false
}

func TestTicksCoverAndAreRound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-limit, limit).Draw(t, "lo")
		hi := lo + rapid.Float64Range(0, limit).Draw(t, "span")
		most := rapid.IntRange(3, 8).Draw(t, "most")
		s := newScale(lo, hi, most)
		ticks := s.ticks()
		if len(ticks) < 2 || len(ticks) > most {
			t.Fatalf("%v to %v: %d ticks, at most %d", lo, hi, len(ticks), most)
		}
		if !round(s.step()) {
			t.Fatalf("%v to %v: step %v is not round", lo, hi, s.step())
		}
		if air := s.step() * 1e-6; s.lo() > lo+air || s.hi() < hi-air {
			t.Fatalf("%v to %v: ticks go from %v to %v only", lo, hi, s.lo(), s.hi())
		}
		for i := 1; i < len(ticks); i++ {
			if ticks[i] <= ticks[i-1] {
				t.Fatalf("ticks do not rise: %v", ticks)
			}
		}
	})
}

func TestTicksWasteLittle(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1000, 1000).Draw(t, "lo")
		hi := lo + rapid.Float64Range(1, 1000).Draw(t, "span")
		s := newScale(lo, hi, 8)
		if empty := (s.hi() - s.lo()) - (hi - lo); empty >= 2*s.step() {
			t.Fatalf("%v to %v: %v is empty with steps of %v", lo, hi, empty, s.step())
		}
		if s.intervals() < 2 {
			t.Fatalf("%v to %v: only %d intervals", lo, hi, s.intervals())
		}
	})
}

func TestSecondScaleSharesTheGrid(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		lo := rapid.Float64Range(-1e6, 1e6).Draw(t, "lo")
		hi := lo + rapid.Float64Range(0, 1e6).Draw(t, "span")
		n := rapid.Int64Range(2, 8).Draw(t, "intervals")
		s := newScaleOf(lo, hi, n)
		if s.intervals() != n || !round(s.step()) {
			t.Fatalf("%v to %v: %d intervals of %v, want %d round ones", lo, hi, s.intervals(), s.step(), n)
		}
		if air := s.step() * 1e-6; s.lo() > lo+air || s.hi() < hi-air {
			t.Fatalf("%v to %v: covers %v to %v only", lo, hi, s.lo(), s.hi())
		}
	})
}

// TestTicks holds some scales in full; the values are own arithmetic.
func TestTicks(t *testing.T) {
	rows := []struct {
		lo, hi float64
		most   int
		want   []string
	}{
		{0, 34.4, 8, []string{"0", "5", "10", "15", "20", "25", "30", "35"}},
		{0, 0.9, 8, []string{"0.0", "0.2", "0.4", "0.6", "0.8", "1.0"}},
		{0.1, 0.3, 6, []string{"0.10", "0.15", "0.20", "0.25", "0.30"}},
		{-1, 1, 6, []string{"−1.0", "−0.5", "0.0", "0.5", "1.0"}},
		{900, 5900, 8, []string{"0", "1\u00a0000", "2\u00a0000", "3\u00a0000", "4\u00a0000", "5\u00a0000", "6\u00a0000"}},
		{0, 16, 8, []string{"0.0", "2.5", "5.0", "7.5", "10.0", "12.5", "15.0", "17.5"}},
	}
	for _, row := range rows {
		s := newScale(row.lo, row.hi, row.most)
		var got []string
		for _, v := range s.ticks() {
			got = append(got, s.label(v))
		}
		if len(got) != len(row.want) {
			t.Errorf("%v to %v: %q, want %q", row.lo, row.hi, got, row.want)
			continue
		}
		for i := range got {
			if got[i] != row.want[i] {
				t.Errorf("%v to %v: %q, want %q", row.lo, row.hi, got, row.want)
				break
			}
		}
	}
}

func TestShortTicksLieBetween(t *testing.T) {
	s := newScale(0, 40, 8)
	minor := s.minor()
	if len(minor) == 0 {
		t.Fatal("no short ticks")
	}
	for _, v := range minor {
		if r := math.Mod(v/s.step(), 1); r < 0.1 || r > 0.9 {
			t.Errorf("short tick at %v stands on a long one; step %v", v, s.step())
		}
	}
}

// TestWidthsAreTheFonts holds some widths against the advance widths of Liberation Sans Regular (hmtx table, 2048 to the em):
// figure 1139, blank 569, W 1933.
func TestWidthsAreTheFonts(t *testing.T) {
	for text, want := range map[string]float64{"0": 1139, "00": 2278, " ": 569, "W": 1933, "": 0} {
		if got := theFace().advance(text, perEm); got != want {
			t.Errorf("%q is %v wide, want %v", text, got, want)
		}
	}
}

func TestFitIsNoWiderThanAsked(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.String().Draw(t, "text")
		room := rapid.Float64Range(20, 300).Draw(t, "room")
		if got := fit(text, room); advance(got) > room {
			t.Fatalf("%q is %v wide, more than %v", got, advance(got), room)
		}
	})
}
