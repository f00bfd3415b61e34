package site

import (
	"math"
	"strconv"
	"strings"

	"hullfile/engine/unit"
)

// This file is the one place where a number becomes text: the figures that a person would write on the drawing. The
// machine-readable results keep them all.

// mass gives whole kilograms from a hundred up, and tenths below.
func mass(v float64) string {
	if math.Abs(v) >= 99.95 {
		return unit.Text(v, 0)
	}
	return unit.Text(v, 1)
}

// written gives a number that somebody wrote in a record: as written, with at least the decimals that the unit asks for.
func written(v float64, sign string) string {
	least := 0
	switch sign {
	case "kn":
		least = 1
	case "m", "m²":
		if math.Abs(v) < 20 && v != 0 {
			least = 2
		}
	case "mm":
		if math.Abs(v) < 30 && v != 0 {
			least = 1
		}
	}
	return unit.Text(v, max(least, writtenDecimals(v)))
}

// writtenDecimals counts the decimals that a number was written with, six at most.
func writtenDecimals(v float64) int {
	text := strconv.FormatFloat(v, 'f', -1, 64)
	_, part, _ := strings.Cut(text, ".")
	return min(len(part), 6)
}

// times gives fitted over needed rounded down to a hundredth, so that a margin never looks more than it is.
func times(margin float64) string { return unit.Text(math.Floor(float64(margin*100)+1e-6)/100, 2) }

// has gives a figure with so many decimals, or the reason why it is not there.
func has(ok bool, text, why string) Figure {
	if ok {
		return Figure{Text: text}
	}
	return Figure{Why: why}
}

// signed gives a difference with its sign.
func signed(v float64, n int) string {
	text := unit.Text(v, n)
	if v > 0 && strings.Trim(text, "0.") != "" {
		return "+" + text
	}
	return text
}

// plural gives "1 panel" or "4 panels".
func plural(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}

// fileSize gives the size of a file in the unit a person would say.
func fileSize(n int64) string {
	switch {
	case n < 1000:
		return strconv.FormatInt(n, 10) + " B"
	case n < 1000_000:
		return unit.Text(float64(n)/1e3, 1) + " kB"
	}
	return unit.Text(float64(n)/1e6, 1) + " MB"
}
