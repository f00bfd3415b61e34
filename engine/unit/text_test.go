package unit

import (
	"math"
	"math/rand/v2"
	"strconv"
	"testing"
)

func TestText(t *testing.T) {
	rows := []struct {
		where    string
		v        float64
		decimals int
		want     string
	}{
		{"own arithmetic: no thousands", 34, 1, "34.0"},
		{"own arithmetic: four digits", 2660, 0, "2\u00a0660"},
		{"own arithmetic: six digits", 123456.7, 1, "123\u00a0456.7"},
		{"own arithmetic: seven digits", 1234567, 0, "1\u00a0234\u00a0567"},
		{"own arithmetic: below nought", -45.26, 1, "−45.3"},
		{"own arithmetic: nought after rounding has no sign", -0.004, 2, "0.00"},
		{"own arithmetic: carry over the thousand", 999.96, 1, "1\u00a0000.0"},
		{"own arithmetic: the last bit of a mean does not turn a half down", 26.349999999999998, 1, "26.4"},
		{"own arithmetic: a half goes up", 2.5, 0, "3"},
		{"own arithmetic: what is truly below a half does not", 26.34999999, 1, "26.3"},
		{"own arithmetic: not a number", math.NaN(), 1, "–"},
		{"own arithmetic: no end", math.Inf(-1), 1, "–"},
	}
	for _, r := range rows {
		if got := Text(r.v, r.decimals); got != r.want {
			t.Errorf("%s: Text(%v, %d) = %q, want %q", r.where, r.v, r.decimals, got, r.want)
		}
	}
}

func TestTextTakesQuantities(t *testing.T) {
	if got := Text(KG(1250), 0); got != "1\u00a0250" {
		t.Errorf("Text(KG) = %q", got)
	}
}

func TestDay(t *testing.T) {
	for in, want := range map[string]string{"2026-03-04": "4 March 2026", "2028-02-29": "29 February 2028", "": "", "2026-02-30": "2026-02-30", "soon": "soon"} {
		if got := Day(in); got != want {
			t.Errorf("%q is said as %q, want %q", in, got, want)
		}
	}
}

func TestCount(t *testing.T) {
	for n, want := range map[int]string{0: "0 lots", 1: "1 lot", 2: "2 lots"} {
		if got := Count(n, "lot", "lots"); got != want {
			t.Errorf("got %q, want %q", got, want)
		}
	}
}

func BenchmarkText(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		if Text(1234.567, 1) == Figures(0.01234, 3) {
			b.Fatal("two numbers look alike")
		}
	}
}

// TestRoundedAsTheLibraryDoes holds numbers near a half and at random against strconv, which rounds the exact value.
func TestRoundedAsTheLibraryDoes(t *testing.T) {
	numbers := rand.New(rand.NewPCG(7, 8))
	values := []float64{0, 0.5, 1.5, 2.5, 0.25, 0.125, 0.15, 1.005, 2.675, 0.045, 1e-300, 99999.5, 999999999.5, 1e9, 1e17, 26.349999999999998, math.MaxFloat64}
	for range 50_000 {
		half := math.Floor(1e6*numbers.Float64()) + 0.5
		values = append(values, half, half/10, half/1000, math.Nextafter(half/100, 0), math.Nextafter(half/100, 1e9), math.Exp(60*numbers.Float64()-20))
	}
	for _, v := range values {
		for decimals := range 7 {
			if got, want := string(appendRounded(nil, v, decimals)), strconv.FormatFloat(v, 'f', decimals, 64); got != want {
				t.Fatalf("%v with %d decimals is %s, want %s", v, decimals, got, want)
			}
		}
	}
}
