package record

import (
	"strconv"
	"strings"
	"unicode"
	"unicode/utf8"
)

// longestShown is the number of characters of a foreign text that a message repeats.
const longestShown = 60

// shown gives a foreign text short enough for a message and without characters that would move a terminal's cursor
// or turn the order of reading.
func shown(s string) string {
	q := quoted(s)
	return strings.ReplaceAll(q[1:len(q)-1], `\"`, `"`)
}

// quoted is shown in quotes.
func quoted(s string) string {
	if utf8.RuneCountInString(s) > longestShown {
		s = string([]rune(s)[:longestShown]) + "…"
	}
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range s {
		switch {
		case r == '"' || r == '\\':
			b.WriteByte('\\')
			b.WriteRune(r)
		case Unwanted(r) || !unicode.IsPrint(r):
			b.WriteString(strings.Trim(strconv.QuoteRuneToASCII(r), "'"))
		default:
			b.WriteRune(r)
		}
	}
	b.WriteByte('"')
	return b.String()
}

// Unwanted reports a character that has no place in a record: control characters, marks that turn the order of
// reading (a reader would see another text than the one that is stored), line separators, a byte order mark inside.
func Unwanted(r rune) bool {
	switch {
	case unicode.IsControl(r), unicode.Is(unicode.Bidi_Control, r):
		return true
	case r == '\u2028' || r == '\u2029' || r == '\uFEFF' || r == utf8.RuneError:
		return true
	}
	return false
}

// firstUnwanted finds the first unwanted character; in text of several lines newline and tab are wanted.
func firstUnwanted(s string, lines bool) (r rune, found bool) {
	for _, r := range s {
		if lines && (r == '\n' || r == '\t') {
			continue
		}
		if Unwanted(r) {
			return r, true
		}
	}
	return 0, false
}

// runeName gives a character as U+202E.
func runeName(r rune) string {
	s := strings.ToUpper(strconv.FormatInt(int64(r), 16))
	return "U+" + strings.Repeat("0", max(0, 4-len(s))) + s
}

// figure gives a number as one would write it.
func figure(v float64) string {
	if v != 0 && (v >= 1e15 || v <= -1e15 || (v < 1e-6 && v > -1e-6)) {
		return strconv.FormatFloat(v, 'g', -1, 64)
	}
	return strconv.FormatFloat(v, 'f', -1, 64)
}

// said joins words as one says them: a, b and c.
func said(all []string, last string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	return strings.Join(all[:len(all)-1], ", ") + " " + last + " " + all[len(all)-1]
}
