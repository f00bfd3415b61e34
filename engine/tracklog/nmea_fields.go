package tracklog

import "math"

func is(field []byte, c byte) bool { return len(field) == 1 && field[0] == c }

// optional reads a number that may be left empty.
func optional(b []byte) (float64, bool) {
	if len(b) == 0 {
		return math.NaN(), true
	}
	return number(b, false)
}

// timeOfDay reads hhmmss.ss.
func timeOfDay(b []byte) (float64, bool) {
	if len(b) < 6 {
		return 0, false
	}
	hour, ok1 := twoDigits(b)
	minute, ok2 := twoDigits(b[2:])
	second, ok3 := number(b[4:], false)
	ok := ok1 && ok2 && ok3 && hour < 24 && minute < 60 && second >= 0 && second < 61
	return float64(hour*3600+minute*60) + second, ok
}

// position reads ddmm.mmmm and dddmm.mmmm with their hemispheres; all four may be empty together.
func position(lat, ns, lon, ew []byte) (float64, float64, bool) {
	if len(lat) == 0 && len(lon) == 0 {
		return math.NaN(), math.NaN(), true
	}
	y, ok1 := degrees(lat, 2)
	x, ok2 := degrees(lon, 3)
	south, ok3 := hemisphere(ns, 'N', 'S')
	west, ok4 := hemisphere(ew, 'E', 'W')
	return y * south, x * west, ok1 && ok2 && ok3 && ok4
}

func hemisphere(b []byte, plus, minus byte) (float64, bool) {
	switch {
	case is(b, plus):
		return 1, true
	case is(b, minus):
		return -1, true
	}
	return 0, false
}

// degrees reads whole degrees of so many digits with minutes behind them.
func degrees(b []byte, digits int) (float64, bool) {
	if len(b) < digits+2 || b[0] == '-' || b[0] == '+' {
		return 0, false
	}
	whole, ok1 := number(b[:digits], false)
	minutes, ok2 := number(b[digits:], false)
	return whole + minutes/60, ok1 && ok2 && minutes >= 0 && minutes < 60
}
