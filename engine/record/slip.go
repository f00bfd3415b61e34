package record

import (
	"strconv"
	"strings"
	"time"
	"unicode"
)

// What people write in place of what is asked for, and what they most likely meant. Nothing here is taken as read: it only
// makes the hint that goes with a fault.

// numberHint says what to do with a text that stands where a number is asked for.
func numberHint(text string, f *field) string {
	t := strings.TrimSpace(text)
	minus := strings.NewReplacer("\u2212", "-", "\u2013", "-").Replace(t)
	switch {
	case digits(t):
		return "write it without quotes: " + f.key + " = " + t
	case digits(strings.Replace(t, ",", ".", 1)):
		return "write decimals with a point: " + strings.Replace(t, ",", ".", 1)
	case digits(minus):
		return "write the minus sign as on the keyboard: " + minus
	case strings.HasPrefix(t, "#"):
		return "a spreadsheet writes this where it cannot reckon a cell: mend it there, or leave it out"
	case unknownWord(t):
		return "leave it out where nothing is known; what is not written is missing, never nought"
	case digits(strings.TrimPrefix(t, "'")):
		return "take the apostrophe out: " + t[1:]
	case grouped(t):
		return "write the number without marks between thousands"
	case t[0] >= '0' && t[0] <= '9':
		return "write the number alone, without its unit; " + f.expects()
	case strings.ContainsAny(t, "0123456789"):
		return "write the number alone; " + f.expects()
	}
	return f.expects()
}

// grouped reports a number with blanks, points, commas or apostrophes between thousands: 1 234, 1'234.5, 1.234,5.
func grouped(t string) bool {
	return strings.ContainsAny(t, " '\u2019\u00a0\u202f,") &&
		digits(strings.NewReplacer(" ", "", "'", "", "\u2019", "", "\u00a0", "", "\u202f", "", ",", "").Replace(t))
}

// unknownWord reports what people write where they know nothing.
func unknownWord(t string) bool {
	switch strings.ToLower(t) {
	case "", "-", "--", "\u2013", "\u2014", "?", "??", "???", "n/a", "n.a.", "na", "nil", "none", "null", "tbc", "tbd", "unknown", "not known", "xx", "xxx":
		return true
	}
	return false
}

// dayHint says how to write a day that was written otherwise. Where day and month cannot be told apart nothing is guessed.
func dayHint(text string) string {
	const form = "write the day as year-month-day: 2026-03-14"
	if iso, ok := likelyDay(text); ok {
		return "write the day as " + iso
	}
	if n, err := strconv.Atoi(strings.TrimSpace(text)); err == nil && n > 20000 && n < 80000 {
		return form + "; a spreadsheet counts days so: give the column the form of a date there, and save it again"
	}
	return form
}

// likelyDay reads a day that can be meant in one way alone: 31.01.2026, 1/31/2026, 2026/1/5, 31 Jan 2026, 2026-01-31 08:30.
func likelyDay(text string) (iso string, ok bool) {
	t := strings.TrimSpace(text)
	for _, form := range []string{"2 Jan 2006", "2 January 2006", "2-Jan-2006", "January 2, 2006", "Jan 2, 2006", "2. January 2006"} {
		if d, err := time.Parse(form, t); err == nil {
			return d.Format(time.DateOnly), true
		}
	}
	t, _, _ = strings.Cut(strings.Replace(t, "T", " ", 1), " ")
	parts := strings.FieldsFunc(t, func(r rune) bool { return strings.ContainsRune("./-", r) })
	if len(parts) != 3 || !allDigits(strings.Join(parts, "")) {
		return "", false
	}
	first, second := atMost(parts[0], 2), atMost(parts[1], 2)
	switch {
	case len(parts[0]) == 4:
		return isoDay(parts[0], second, atMost(parts[2], 2))
	case len(parts[2]) != 4 || first == 0 || second == 0:
		return "", false
	case first > 12 || first == second:
		return isoDay(parts[2], second, first)
	case second > 12:
		return isoDay(parts[2], first, second)
	}
	return "", false // 1/2/2026 is a day in January to some and in February to others
}

// atMost is a count of so many figures at most, nought for any other text.
func atMost(text string, figures int) int {
	n, err := strconv.Atoi(text)
	if err != nil || len(text) > figures {
		return 0
	}
	return n
}

func isoDay(year string, month, day int) (string, bool) {
	y, err := strconv.Atoi(year)
	d := time.Date(y, time.Month(month), day, 0, 0, 0, 0, time.UTC)
	if err != nil || month < 1 || day < 1 || d.Day() != day || d.Month() != time.Month(month) {
		return "", false
	}
	return d.Format(time.DateOnly), true
}

// lengthHint says what a length comes to that is too great in metres and possible in millimetres.
func lengthHint(f *field, v float64) string {
	if f.unit.Sign != "m" || !f.most.set || v <= f.most.v || v/1000 > f.most.v {
		return ""
	}
	return "this value is kept in m: " + figure(v) + " mm are " + figure(v/1000) + " m; "
}

// isSum reports the key of a row that adds up the rows above it.
func isSum(key string) bool {
	switch strings.ToLower(strings.Trim(key, " :.")) {
	case "total", "totals", "sum", "sums", "subtotal", "sub-total", "sub total", "grand total":
		return true
	}
	return false
}

// bareWord is the text that stands where a value is asked for, up to the end of its line or a comment.
func bareWord(text []byte, offset int) string {
	line := text[min(offset, len(text)):]
	for i, b := range line {
		if b == '\n' || b == '#' {
			line = line[:i]
			break
		}
	}
	return strings.TrimSpace(string(line))
}

// valueHint says how to write a bare word as a value, and what is wrong with it.
func valueHint(word, key string) (says, hint string) {
	first := []rune(word + " ")[0]
	switch low := strings.ToLower(word); {
	case strings.ContainsRune("\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019", first):
		return "these are not the quotes of the keyboard", `write straight quotes: ` + key + ` = "` + strings.Trim(word, "\u201c\u201d\u201e\u00ab\u00bb\u2018\u2019") + `"`
	case low == "yes":
		return quoted(word) + " is not a value", "write true for yes, false for no"
	case low == "no":
		return quoted(word) + " is not a value", "write false for no, true for yes"
	case unknownWord(word):
		return quoted(word) + " is not a value", "take the line out if it is not known; what is not written is missing, never nought"
	case strings.ContainsAny(word, "0123456789") && !unicode.IsLetter(first):
		return quoted(word) + " is not a value", "write the number alone, with a decimal point; put text in quotes"
	}
	return quoted(word) + " is not a value", `put text in quotes: ` + key + ` = "` + word + `"; write a number in figures; true and false are written small`
}

// restHint says what to do with what follows a value on its line.
func restHint(rest string) (says, hint string) {
	says = "a value ends here, but " + quoted(rest) + " follows"
	switch {
	case strings.HasPrefix(rest, ","):
		return "a value ends here, but a comma follows", "decimals are written with a point: 6.0; nothing stands between thousands"
	case strings.HasPrefix(rest, "/"):
		return says, "write a day as year-month-day: 2026-03-14; write a fraction with a point: 0.5"
	case rest == ";":
		return says, "take it out: nothing stands at the end of a line"
	case rest != "" && rest[0] >= '0' && rest[0] <= '9':
		return says, "write a number without blanks between its figures; one key = value on a line"
	}
	return says, "one key = value on a line; a number stands alone, its key says the unit; put text in quotes"
}
