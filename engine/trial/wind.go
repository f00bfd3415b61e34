package trial

import (
	"math"
	"regexp"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// force is one force of the Beaufort scale in whole knots at ten metres. Source: Beaufort scale as several weather services
// print it (read); the names are recalled.
type force struct {
	from, upto int
	name       string
}

var forces = [...]force{
	{0, 0, "calm"}, {1, 3, "light air"}, {4, 6, "light breeze"}, {7, 10, "gentle breeze"}, {11, 16, "moderate breeze"}, {17, 21, "fresh breeze"},
	{22, 27, "strong breeze"}, {28, 33, "near gale"}, {34, 40, "gale"}, {41, 47, "strong gale"}, {48, 55, "storm"}, {56, 63, "violent storm"}, {64, math.MaxInt32, "hurricane"},
}

// Beaufort gives the force of a wind in knots, which the scale counts whole.
func Beaufort(kn float64) (number int, name string) {
	whole := int(math.Round(min(max(kn, 0), 1e6)))
	for i, f := range forces {
		if whole <= f.upto {
			return i, f.name
		}
	}
	return len(forces) - 1, forces[len(forces)-1].name
}

var (
	forceNumber = regexp.MustCompile(`(?i)\b(?:force|beaufort|bft|f)\s*(\d{1,2})(?:\s*(?:-|–|to)\s*(\d{1,2}))?\b`)
	numberForce = regexp.MustCompile(`(?i)\b(\d{1,2})(?:\s*(?:-|–|to)\s*(\d{1,2}))?\s*(?:bft|beaufort)\b`)
)

// windSaid finds the forces that a text about the wind names, by number or by name.
func windSaid(text string) (from, to int, word string, ok bool) {
	for _, form := range []*regexp.Regexp{forceNumber, numberForce} {
		if m := form.FindStringSubmatch(text); m != nil {
			from, _ = strconv.Atoi(m[1])
			to = from
			if m[2] != "" {
				to, _ = strconv.Atoi(m[2])
			}
			return from, to, m[0], from <= to && to < len(forces)
		}
	}
	low := strings.ToLower(text)
	best := -1
	for i, f := range forces { // "near gale" and "strong gale" hold "gale": the longest name counts
		if holdsWord(low, f.name) && (best < 0 || len(f.name) > len(forces[best].name)) {
			best = i
		}
	}
	if best < 0 {
		return 0, 0, "", false
	}
	return best, best, forces[best].name, true
}

// windWordsAgree holds what the record says of the wind in words against its speed.
func (t *Trial) windWordsAgree() []finding.Finding {
	kn, ok := t.Record.Wind.Get()
	from, to, word, said := windSaid(t.Record.WindWords.V)
	whole := int(math.Round(float64(kn)))
	if !ok || !said || whole >= forces[from].from && whole <= forces[to].upto {
		return nil
	}
	number, name := Beaufort(float64(kn))
	all := t.say(finding.Contradiction, "wind-words", "see which of the two was meant", t.Record.WindWords.At,
		"the wind is called %q; %s kn is force %d, %s", word, unit.Text(kn, 0), number, name)
	all[0].Places = append(all[0].Places, t.Record.Wind.At)
	return all
}
