package scantling

import (
	"math"
	"strconv"
	"strings"

	"hullfile/engine/unit"
)

// fittedText writes a plate thickness as it is ordered: one decimal, more only where the record has more.
func fittedText(t unit.MM) string {
	s := strconv.FormatFloat(float64(t), 'f', -1, 64)
	if _, decimals, _ := strings.Cut(s, "."); len(decimals) < 1 {
		return unit.Text(t, 1)
	}
	return s
}

// neededText writes a needed thickness rounded up to a hundredth, so that it never looks less than it is. Where a
// hundredth would hide which of needed and fitted is the greater, it takes as many decimals as show it.
func neededText(needed, fitted unit.MM) string {
	for decimals := 2; decimals < 9; decimals++ {
		up := roundUp(float64(needed), decimals)
		if (needed > fitted) == (unit.MM(up) > fitted) {
			return unit.Text(up, decimals)
		}
	}
	return unit.Text(needed, 9)
}

// roundUp rounds up at a decimal; what lies above it by less than a thousandth of a unit there is left alone.
func roundUp(v float64, decimals int) float64 {
	scale := math.Pow10(decimals)
	return math.Ceil(float64(v*scale)-1e-3) / scale
}

// marginText writes fitted over needed rounded down to a hundredth, so that a margin never looks more than it is, and
// one that is short never looks like 1.00.
func marginText(margin float64, met bool) string {
	down := math.Floor(float64(margin*100)+1e-6) / 100
	if !met {
		down = math.Min(down, 0.99)
	}
	return unit.Text(down, 2)
}
