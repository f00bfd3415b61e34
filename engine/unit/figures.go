package unit

import (
	"bytes"
	"math"
	"strconv"
	"strings"
)

// Figures gives a reckoned number for people with at least n significant figures; whole digits are never rounded away
// (2753.4 with three figures is 2 753). Very great and very small numbers get a power of ten. Signs and spaces are
// those of Text.
func Figures[T ~float64](v T, n int) string {
	x := float64(v)
	if x == 0 || math.IsNaN(x) || math.IsInf(x, 0) {
		return Text(x, 0)
	}
	var room [64]byte // a number with more figures goes elsewhere
	mantissa, power, _ := bytes.Cut(strconv.AppendFloat(room[:0], x, 'e', n-1, 64), []byte("e"))
	exponent := 0
	for _, digit := range power[1:] {
		exponent = 10*exponent + int(digit-'0')
	}
	if power[0] == '-' {
		exponent = -exponent
	}
	if exponent >= 9 || exponent < -4 {
		return strings.Replace(string(mantissa), "-", "−", 1) + "×" + TenTo(exponent)
	}
	return Text(x, max(0, n-1-exponent))
}

// Plain gives a number as a person wrote it, 34 and not 34.0, with no more than six significant figures after which
// only whole digits follow.
func Plain[T ~float64](v T) string {
	text := Figures(v, 6)
	number, power, _ := strings.Cut(text, "×")
	if strings.Contains(number, ".") {
		number = strings.TrimRight(strings.TrimRight(number, "0"), ".")
	}
	if power == "" {
		return number
	}
	return number + "×" + power
}

// TenTo gives a power of ten with its exponent raised: 10⁻⁵.
func TenTo(exponent int) string { return "10" + Raised(strconv.Itoa(exponent)) }

var raised = strings.NewReplacer("-", "⁻", "0", "⁰", "1", "¹", "2", "²", "3", "³", "4", "⁴", "5", "⁵", "6", "⁶", "7", "⁷", "8", "⁸", "9", "⁹")

// Raised gives a whole number in raised digits, for an exponent in plain text.
func Raised(digits string) string {
	return raised.Replace(digits)
}
