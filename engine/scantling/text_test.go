package scantling

import (
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/unit"
)

func TestNeededText(t *testing.T) {
	rows := []struct {
		where          string
		needed, fitted unit.MM
		want           string
	}{
		{"own arithmetic: rounded up", 3.3214, 6, "3.33"},
		{"own arithmetic: short by four thousandths", 3.004, 3, "3.01"},
		{"own arithmetic: short by less than a hundredth of the printing", 3.0000004, 3, "3.0001"},
		{"own arithmetic: met exactly", 3, 3, "3.00"},
		{"own arithmetic: met by less than a hundredth", 2.996, 3, "3.00"},
		{"own arithmetic: met, and a hundredth up would look short", 3.0005, 3.001, "3.001"},
		{"own arithmetic: round number stays", 3.2, 6, "3.20"},
	}
	for _, r := range rows {
		if got := neededText(r.needed, r.fitted); got != r.want {
			t.Errorf("%s: %v of %v prints %q, want %q", r.where, r.fitted, r.needed, got, r.want)
		}
	}
}

// A short panel never prints a need that its fitted thickness reaches, a met one never one that it does not.
func TestPrintedFiguresAgreeWithTheStanding(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		fitted := float64(rapid.IntRange(100, 2000).Draw(t, "fitted")) / 100
		needed := settled(fitted + rapid.Float64Range(-0.02, 0.02).Draw(t, "less"))
		printed, err := strconv.ParseFloat(neededText(unit.MM(needed), unit.MM(fitted)), 64)
		if err != nil {
			t.Fatal(err)
		}
		shown, err := strconv.ParseFloat(fittedText(unit.MM(fitted)), 64)
		if err != nil {
			t.Fatal(err)
		}
		if (needed > fitted) != (printed > shown) {
			t.Fatalf("needed %v, fitted %v print as %v and %v", needed, fitted, printed, shown)
		}
		margin := marginText(fitted/needed, needed <= fitted)
		if strings.HasPrefix(margin, "0.") != (needed > fitted) {
			t.Fatalf("needed %v, fitted %v have margin %s", needed, fitted, margin)
		}
	})
}

func TestFittedText(t *testing.T) {
	for v, want := range map[unit.MM]string{6: "6.0", 4.5: "4.5", 3.25: "3.25", 12: "12.0"} {
		if got := fittedText(v); got != want {
			t.Errorf("%v prints %q, want %q", float64(v), got, want)
		}
	}
}
