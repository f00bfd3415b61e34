package requirement

import (
	"slices"
	"strings"

	"hullfile/engine/method"
	"hullfile/engine/record"
)

// laws are the markets that a plate can name.
var laws = []string{"EU", "UK", "US", "Australia"}

// boat hands the facts of one hull to the conditions.
type boat struct {
	hull  *record.Hull
	yard  *record.Builder
	facts map[string]*record.Fact
}

// Lookup finds a fact. A key that is true or false gives yes or no; a day gives a number such as 20260314.
func (b boat) Lookup(from string) (method.Quantity, bool) {
	if law, ok := strings.CutPrefix(from, "law."); ok {
		v := b.hull.Plate.Law
		return method.Quantity{Word: yesNo(slices.Contains(v.V, law)), IsWord: true, Place: v.At}, v.Set
	}
	key, isDay := strings.CutPrefix(from, "day.")
	f, ok := value(b.hull, b.yard, key)
	if !ok || !f.Set {
		return method.Quantity{}, false
	}
	q := method.Quantity{Number: f.Number, Word: f.Word, IsWord: f.IsWord, Unit: f.Unit, Place: f.At}
	switch fact := b.facts[from]; {
	case isDay:
		q.Number, q.Word, q.IsWord = number(f.Word), "", false
	case fact != nil && slices.Contains(fact.Words.V, "yes"):
		q.Word = yesNo(f.Word == "true")
	}
	return q, true
}

// value finds a key of the hull, or of the yard behind "yard.".
func value(h *record.Hull, y *record.Builder, key string) (record.Field, bool) {
	if rest, ok := strings.CutPrefix(key, "yard."); ok {
		return record.Lookup(y, rest)
	}
	return h.Value(key)
}

func yesNo(is bool) string {
	if is {
		return "yes"
	}
	return "no"
}

// number turns 2026-03-14 into 20260314.
func number(day string) float64 {
	n := 0
	for _, r := range day {
		if r >= '0' && r <= '9' {
			n = 10*n + int(r-'0')
		}
	}
	return float64(n)
}
