package unit

import (
	"math"
	"strconv"
	"strings"
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
	digits := strconv.FormatFloat(math.Min(math.Abs(x)*upFromHalf, math.MaxFloat64), 'f', decimals, 64)
	whole, part, _ := strings.Cut(digits, ".")
	text := grouped(whole)
	if part != "" {
		text += "." + part
	}
	if x < 0 && strings.Trim(digits, "0.") != "" {
		return "−" + text
	}
	return text
}

// grouped parts a run of digits in threes from the right.
func grouped(digits string) string {
	if len(digits) <= 3 {
		return digits
	}
	head := len(digits) % 3
	parts := make([]string, 0, len(digits)/3+1)
	if head > 0 {
		parts = append(parts, digits[:head])
	}
	for i := head; i < len(digits); i += 3 {
		parts = append(parts, digits[i:i+3])
	}
	return strings.Join(parts, thin)
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
