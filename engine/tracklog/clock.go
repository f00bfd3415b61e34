package tracklog

import (
	"bytes"
	"fmt"
	"math"
	"time"

	"hullfile/engine/record"
)

const (
	daySeconds  = 86400.0
	hourSeconds = 3600.0
)

// civil gives the days since 1970-01-01 of a day of the Gregorian calendar; ok is false for a day that does not exist.
// Source: own derivation; years are counted from March so that the odd day comes last.
func civil(year, month, day int) (days int, ok bool) {
	if month < 1 || month > 12 || day < 1 || day > daysIn(year, month) {
		return 0, false
	}
	if month <= 2 {
		year--
		month += 12
	}
	const before1970 = 719468 // days from 1 March of year 0 to 1 January 1970
	return 365*year + year/4 - year/100 + year/400 + (153*(month-3)+2)/5 + day - 1 - before1970, true
}

func daysIn(year, month int) int {
	switch month {
	case 4, 6, 9, 11:
		return 30
	case 2:
		if year%4 == 0 && (year%100 != 0 || year%400 == 0) {
			return 29
		}
		return 28
	}
	return 31
}

// moment reads 2026-03-03T09:14:00.25Z, with a blank for the T, with or without fractions and zone, and gives seconds since
// 1970-01-01; zoned is false where no zone is written, and the seconds are then those of the clock that wrote them.
func moment(b []byte) (at float64, zoned, ok bool) {
	if len(b) < 16 || b[4] != '-' || b[7] != '-' || b[10] != 'T' && b[10] != ' ' && b[10] != 't' {
		return 0, false, false
	}
	century, ok1 := twoDigits(b)
	year, ok2 := twoDigits(b[2:])
	month, ok3 := twoDigits(b[5:])
	day, ok4 := twoDigits(b[8:])
	days, ok5 := civil(century*100+year, month, day)
	if !(ok1 && ok2 && ok3 && ok4 && ok5) {
		return 0, false, false
	}
	seconds, rest, ok := clock(b[11:])
	if !ok {
		return 0, false, false
	}
	shift, zoned, ok := zone(rest)
	return float64(days)*daySeconds + seconds - shift, zoned, ok
}

// clock reads 09:14 or 09:14:00.25 and gives the seconds of the day and what follows.
func clock(b []byte) (seconds float64, rest []byte, ok bool) {
	if len(b) < 5 || b[2] != ':' {
		return 0, nil, false
	}
	hour, ok1 := twoDigits(b)
	minute, ok2 := twoDigits(b[3:])
	if !ok1 || !ok2 || hour > 23 || minute > 59 {
		return 0, nil, false
	}
	seconds, rest = float64(hour*3600+minute*60), b[5:]
	if len(rest) == 0 || rest[0] != ':' {
		return seconds, rest, true
	}
	end := 1
	for end < len(rest) && (rest[end] >= '0' && rest[end] <= '9' || rest[end] == '.' || rest[end] == ',') {
		end++
	}
	s, ok := number(rest[1:end], true)
	return seconds + s, rest[end:], ok && s < 61 // a leap second is written as 60
}

// zone reads what follows the time of day: nothing, Z, or how far the clock is ahead of UTC.
func zone(b []byte) (seconds float64, zoned, ok bool) {
	switch {
	case len(b) == 0:
		return 0, false, true
	case len(b) == 1 && (b[0] == 'Z' || b[0] == 'z'):
		return 0, true, true
	case len(b) < 3 || b[0] != '+' && b[0] != '-':
		return 0, false, false
	}
	hours, ok1 := twoDigits(b[1:])
	minutes, ok2 := 0, true
	if tail := bytes.TrimPrefix(b[3:], []byte(":")); len(tail) > 0 {
		minutes, ok2 = twoDigits(tail)
		ok2 = ok2 && len(tail) == 2
	}
	seconds = float64(hours*3600 + minutes*60)
	if b[0] == '-' {
		seconds = -seconds
	}
	return seconds, true, ok1 && ok2 && hours <= 14 && minutes < 60
}

// dayStart gives the first second of a day in UTC.
func dayStart(d record.Date) float64 {
	days, _ := civil(d.Year, int(d.Month), d.Day)
	return float64(days) * daySeconds
}

// at gives the moment that a record writes as a time of day or as a moment, in seconds since 1970-01-01 UTC.
func at(text string, day record.Date) (seconds float64, ok bool) {
	b := []byte(text)
	if seconds, _, ok = moment(b); ok {
		return seconds, true
	}
	seconds, rest, ok := clock(b)
	return dayStart(day) + seconds, ok && len(rest) == 0
}

// Clock gives the time of day of a moment as 09:14:05, UTC.
func Clock(t float64) string {
	if !known(t) || math.IsInf(t, 0) {
		return "–"
	}
	return stamp(t).Format("15:04:05")
}

// Spoken gives a moment as 3 March 2026, 09:14:05 UTC, for a sentence.
func Spoken(t float64) string {
	if !known(t) || math.IsInf(t, 0) {
		return "–"
	}
	return stamp(t).Format("2 January 2006, 15:04:05") + " UTC"
}

// Moment gives a moment as 2026-03-03 09:14:05 UTC, for data.
func Moment(t float64) string {
	if !known(t) || math.IsInf(t, 0) {
		return "–"
	}
	return stamp(t).Format("2006-01-02 15:04:05") + " UTC"
}

func stamp(t float64) time.Time { return time.Unix(int64(math.Floor(t+0.5)), 0).UTC() }

// span gives a length of time in words: 45 s, 12 min, 3.5 h.
func span(seconds float64) string {
	switch {
	case seconds < 120:
		return fmt.Sprintf("%.0f s", seconds)
	case seconds < 2*hourSeconds:
		return fmt.Sprintf("%.0f min", seconds/60)
	case seconds < 2*daySeconds:
		return fmt.Sprintf("%.1f h", seconds/hourSeconds)
	}
	return fmt.Sprintf("%.0f days", seconds/daySeconds)
}
