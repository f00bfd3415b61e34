package trial

import (
	"fmt"
	"math"
	"regexp"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// seaDegree is one degree of the state of the sea: significant wave heights above from and up to upto, in metres. The upper
// bound belongs to the lower degree. Source: WMO code table 3700 (read).
type seaDegree struct {
	code       int
	name       string
	from, upto float64
}

var seaDegrees = [...]seaDegree{
	{0, "calm, glassy", 0, 0},
	{1, "calm, rippled", 0, 0.1},
	{2, "smooth, wavelets", 0.1, 0.5},
	{3, "slight", 0.5, 1.25},
	{4, "moderate", 1.25, 2.5},
	{5, "rough", 2.5, 4},
	{6, "very rough", 4, 6},
	{7, "high", 6, 9},
	{8, "very high", 9, 14},
	{9, "phenomenal", 14, math.Inf(1)},
}

// seaWords are the words of the table, the longer before those they hold.
var seaWords = [...]struct {
	word     string
	from, to int
}{
	{"very rough", 6, 6}, {"very high", 8, 8}, {"phenomenal", 9, 9}, {"glassy", 0, 0}, {"rippled", 1, 1}, {"calm", 0, 1},
	{"smooth", 2, 2}, {"slight", 3, 3}, {"moderate", 4, 4}, {"rough", 5, 5}, {"high", 7, 7},
}

// SeaState gives the degree of the sea for a significant wave height in metres.
func SeaState(height float64) (code int, name string) {
	for _, d := range seaDegrees {
		if height <= d.upto {
			return d.code, d.name
		}
	}
	return 0, ""
}

var seaCode = regexp.MustCompile(`(?i)\b(?:sea state|sea|code|degree)\s+(\d)\b`)

// seaSaid finds the degrees that a text about the sea names. What it says of the swell is another table and passed over.
func seaSaid(text string) (from, to int, word string, ok bool) {
	for _, clause := range strings.FieldsFunc(strings.ToLower(text), func(r rune) bool { return strings.ContainsRune(",;.", r) }) {
		if strings.Contains(clause, "swell") {
			continue
		}
		if m := seaCode.FindStringSubmatch(clause); m != nil {
			code, _ := strconv.Atoi(m[1])
			return code, code, strings.TrimSpace(m[0]), true
		}
		for _, w := range seaWords {
			if holdsWord(clause, w.word) {
				return w.from, w.to, w.word, true
			}
		}
	}
	return 0, 0, "", false
}

// holdsWord reports whether a text holds a word or words as a whole.
func holdsWord(text, word string) bool {
	fields := strings.FieldsFunc(text, func(r rune) bool { return (r < 'a' || r > 'z') && (r < '0' || r > '9') })
	return strings.Contains(" "+strings.Join(fields, " ")+" ", " "+word+" ")
}

// seaWordsAgree holds what the record says of the sea in words against the height of its waves. A height on the bound
// between two degrees is taken for either: it was rounded.
func (t *Trial) seaWordsAgree() []finding.Finding {
	height, ok := t.Record.Wave.Get()
	from, to, word, said := seaSaid(t.Record.Sea.V)
	if !ok || !said || float64(height) >= seaDegrees[from].from && float64(height) <= seaDegrees[to].upto {
		return nil
	}
	code, name := SeaState(float64(height))
	all := t.say(finding.Contradiction, "sea-words", "see which of the two was meant", t.Record.Sea.At,
		"the sea is called %q, which is %s; waves of %s m are degree %d, %s (WMO code table 3700)", word, heights(from, to), unit.Text(height, 2), code, name)
	all[0].Places = append(all[0].Places, t.Record.Wave.At)
	return all
}

// heights gives the range of degrees in words.
func heights(from, to int) string {
	low, high := seaDegrees[from].from, seaDegrees[to].upto
	switch {
	case math.IsInf(high, 1):
		return "more than " + unit.Text(low, 0) + " m"
	case high == 0:
		return "without any waves"
	}
	return fmt.Sprintf("%s to %s m", unit.Plain(low), unit.Plain(high))
}
