package tracklog

import (
	"math"
	"strconv"
)

// powers are the powers of ten by which a whole number below 2⁵³ can be divided with one rounding only.
var powers = [...]float64{1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15}

// exactDigits is how many decimal digits always fit into 53 bits.
const exactDigits = 15

// number reads a plain decimal number, with a comma for the point where that is allowed. ok is false for anything else,
// for words such as NaN and for what is not finite. It gives the same value as strconv and is several times as fast.
func number(b []byte, comma bool) (v float64, ok bool) {
	whole, digits, decimals := uint64(0), 0, -1
	for i, c := range b {
		switch {
		case c >= '0' && c <= '9':
			whole = whole*10 + uint64(c-'0')
			digits++
			if decimals >= 0 {
				decimals++
			}
		case (c == '.' || comma && c == ',') && decimals < 0:
			decimals = 0
		case i == 0 && (c == '-' || c == '+'):
		default:
			return slowNumber(b, comma)
		}
	}
	if digits == 0 {
		return 0, false
	}
	if digits > exactDigits {
		return slowNumber(b, comma)
	}
	v = float64(whole) / powers[max(decimals, 0)]
	if b[0] == '-' {
		v = -v
	}
	return v, true
}

// slowNumber reads long numbers and such with an exponent.
func slowNumber(b []byte, comma bool) (float64, bool) {
	if len(b) > 64 {
		return 0, false
	}
	text := make([]byte, len(b))
	for i, c := range b {
		switch {
		case c == ',' && comma:
			c = '.'
		case c >= '0' && c <= '9', c == '.', c == '-', c == '+', c == 'e', c == 'E':
		default:
			return 0, false
		}
		text[i] = c
	}
	v, err := strconv.ParseFloat(string(text), 64)
	return v, err == nil && !math.IsInf(v, 0)
}

// twoDigits reads two digits.
func twoDigits(b []byte) (int, bool) {
	if len(b) < 2 || b[0] < '0' || b[0] > '9' || b[1] < '0' || b[1] > '9' {
		return 0, false
	}
	return int(b[0]-'0')*10 + int(b[1]-'0'), true
}
