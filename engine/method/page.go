package method

import (
	"math"
	"strconv"
	"strings"
	"unicode"

	"hullfile/engine/finding"
)

// page is a sheet while it is being read: it collects every fault instead of stopping at the first.
type page struct {
	*places
	faults finding.Faults
}

// fault adds one fault. Its words hold parts of the sheet, so what a terminal would obey is taken out.
func (p *page) fault(at finding.Place, key, says, hint string) {
	p.faults = append(p.faults, finding.Fault{Place: at, Key: seen(key), Says: seen(says), Hint: seen(hint)})
}

// seen puts a dot for every character that cannot be seen.
func seen(s string) string {
	if clean(s) {
		return s
	}
	return strings.Map(func(r rune) rune {
		if unicode.IsPrint(r) || unicode.IsSpace(r) {
			return r
		}
		return '·'
	}, s)
}

// didYouMean is a hint that names the nearest known word, or lists them where none is near.
func didYouMean(word string, known []string) string {
	if near, ok := finding.Nearest(word, known); ok {
		return "did you mean " + near + "?"
	}
	if len(known) == 0 || len(known) > 12 {
		return ""
	}
	return "known here: " + strings.Join(known, ", ")
}

// clean keeps out what a terminal obeys or a page hides: control characters and invisible marks.
func clean(s string) bool {
	return strings.IndexFunc(s, func(r rune) bool { return !unicode.IsPrint(r) && !unicode.IsSpace(r) }) < 0
}

func toNumber(v any) (float64, bool) {
	switch x := v.(type) {
	case int64:
		return float64(x), true
	case float64:
		return x, !math.IsNaN(x) && !math.IsInf(x, 0)
	}
	return 0, false
}

func kindOf(v any) string {
	switch v := v.(type) {
	case string:
		return "text " + strconv.Quote(clip(v))
	case bool:
		return strconv.FormatBool(v)
	case int64:
		return "the number " + strconv.FormatInt(v, 10)
	case float64:
		return "the number " + strconv.FormatFloat(v, 'g', -1, 64)
	case []any, []map[string]any:
		return "a list"
	case map[string]any:
		return "a table"
	}
	return "a date or time"
}

// clip keeps a message short where a sheet holds a very long word.
func clip(s string) string {
	if r := []rune(s); len(r) > 60 {
		return string(r[:60]) + "…"
	}
	return s
}
