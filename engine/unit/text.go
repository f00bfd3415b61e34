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
	digits := appendRounded(room[:0], math.Min(math.Abs(x)*upFromHalf, math.MaxFloat64), decimals)
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

// appendRounded writes a number that is not below nought with so many decimals, as strconv does. Where the rounding is beyond
// doubt it is done in whole numbers, which takes a fifth of the time: pages hold tens of thousands of them.
func appendRounded(out []byte, x float64, decimals int) []byte {
	const (
		most  = 1e9  // of the whole number; up to it the product below is off by less than a ten-millionth
		doubt = 1e-5 // from a half
	)
	if decimals >= 0 && decimals < len(tens) {
		if scaled := x * tens[decimals]; scaled < most {
			whole := math.Floor(scaled)
			if rest := scaled - whole; math.Abs(rest-0.5) > doubt {
				return appendDecimals(out, uint64(whole+math.Floor(rest+0.5)), decimals)
			}
		}
	}
	return strconv.AppendFloat(out, x, 'f', decimals, 64)
}

var tens = [...]float64{1, 10, 100, 1000, 10000}

// appendDecimals writes a whole number with a point before its last digits.
func appendDecimals(out []byte, n uint64, decimals int) []byte {
	if decimals == 0 {
		return strconv.AppendUint(out, n, 10)
	}
	power := uint64(tens[decimals])
	out = append(strconv.AppendUint(out, n/power, 10), '.')
	for part := n % power; power > 1; part %= power {
		power /= 10
		out = append(out, '0'+byte(part/power))
	}
	return out
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
