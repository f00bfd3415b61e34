package record

import (
	"strconv"
	"strings"
	"time"
)

// cell reads one cell of a CSV table for its field. comma says that decimals are written with a comma, as a spreadsheet
// does that separates columns with semicolons. Nothing is guessed: a cell is read in one way or refused.
func cell(f *field, text string, comma bool) (v any, says, hint string) {
	switch f.kind {
	case number, whole:
		return cellNumber(f, text, comma)
	case yesNo:
		switch strings.ToLower(text) {
		case "true", "yes":
			return true, "", ""
		case "false", "no":
			return false, "", ""
		}
		return nil, quoted(text) + " is not true or false", "write true or false, or yes or no"
	case day:
		return cellDay(text)
	}
	return text, "", ""
}

func cellNumber(f *field, text string, comma bool) (v any, says, hint string) {
	plain := text
	if comma {
		plain = strings.Replace(text, ",", ".", 1)
	}
	if digits(plain) && (!comma || !strings.Contains(text, ".")) {
		if n, err := strconv.ParseFloat(plain, 64); err == nil {
			return n, "", ""
		}
		return nil, quoted(text) + " is too large a number", "check the digits"
	}
	if comma && digits(text) {
		return nil, quoted(text) + " has a decimal point in a table separated by semicolons",
			"write decimals with a comma: " + strings.Replace(text, ".", ",", 1) + "; or separate the columns with commas"
	}
	return nil, quoted(text) + " is not a number", numberHint(text, f)
}

// numeral is the text of a number with a point between its decimals, for a value that keeps them.
func numeral(text string, comma bool) string {
	if comma {
		text = strings.Replace(text, ",", ".", 1)
	}
	return text
}

// digits reports a plain decimal number: sign, digits, point, digits, exponent. Words such as nan and forms such as 0x10
// are not numbers here.
func digits(s string) bool {
	s = strings.TrimLeft(s[:min(1, len(s))], "+-") + s[min(1, len(s)):]
	mantissa, exponent, has := strings.Cut(strings.ToLower(s), "e")
	before, after, point := strings.Cut(mantissa, ".")
	if !allDigits(before) || point && !allDigits(after) {
		return false
	}
	return !has || allDigits(strings.TrimLeft(exponent[:min(1, len(exponent))], "+-")+exponent[min(1, len(exponent)):])
}

func allDigits(s string) bool {
	for i := range len(s) {
		if s[i] < '0' || s[i] > '9' {
			return false
		}
	}
	return s != ""
}

func cellDay(text string) (v any, says, hint string) {
	t, err := time.Parse(time.DateOnly, text)
	if err != nil {
		return nil, quoted(text) + " is not a date of the form year-month-day", dayHint(text)
	}
	return Date{Year: t.Year(), Month: t.Month(), Day: t.Day()}, "", ""
}
