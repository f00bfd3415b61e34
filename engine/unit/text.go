package unit

import (
	"bytes"
	"math"
	"strconv"
	"time"
)

// thin parts thousands: a no-break space, so that a number is never cut at the end of a line.
const thin = "\u00a0"

// upFromHalf takes up the last bits of reckoning: a mean of 26.35 that came out as 26.349999999999998 is printed as 26.4,
// like the 26.35 that a reader reckons from the same page.
const upFromHalf = 1 + 4e-15

// Text gives a number for people: so many decimals, thousands parted by a no-break space, a true minus sign, and no
// minus before a nought. A number that is not finite is a dash. It is for sentences and working; machines get the number.
func Text[T ~float64](v T, decimals int) string {
	x := float64(v)
	if math.IsNaN(x) || math.IsInf(x, 0) {
		return "–"
	}
	var room [64]byte // a longer number goes elsewhere
	digits := strconv.AppendFloat(room[:0], math.Min(math.Abs(x)*upFromHalf, math.MaxFloat64), 'f', decimals, 64)
	whole := len(digits)
	if decimals > 0 {
		whole -= decimals + 1
	}
	below := x < 0 && len(bytes.Trim(digits, "0.")) > 0
	if whole <= 3 && !below {
		return string(digits)
	}
	var place [96]byte
	text := place[:0]
	if below {
		text = append(text, "−"...)
	}
	return string(append(appendGrouped(text, digits[:whole]), digits[whole:]...))
}

// appendGrouped writes a run of digits in threes from the right.
func appendGrouped(text, digits []byte) []byte {
	for i, d := range digits {
		if i > 0 && (len(digits)-i)%3 == 0 {
			text = append(text, thin...)
		}
		text = append(text, d)
	}
	return text
}

// Day gives a day of data, 2026-03-14, as a sentence says it, 14 March 2026. What is no day comes back as it is.
func Day(data string) string {
	d, err := time.Parse(time.DateOnly, data)
	if err != nil {
		return data
	}
	return d.Format("2 January 2006")
}

// Count gives how many of a thing there are, in words: Count(1, "lot", "lots") is "1 lot".
func Count(n int, one, many string) string {
	if n == 1 {
		return "1 " + one
	}
	return strconv.Itoa(n) + " " + many
}
