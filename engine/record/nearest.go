package record

import (
	"strings"
	"unicode/utf8"
)

// nearest finds the known word that a written one was most likely meant to be: the one with the fewest letters to
// change, add, take out or swap, if these are few for its length. The first of equals is taken.
func nearest(written string, known []string) (string, bool) {
	if len(written) > longestShown*4 {
		return "", false
	}
	low := strings.ToLower(written)
	best, least := "", 1+max(1, utf8.RuneCountInString(written)/3)
	for _, k := range known {
		if d := distance(low, strings.ToLower(k), least); d < least {
			best, least = k, d
		}
	}
	return best, best != ""
}

// distance counts the letters to change, add, take out or swap with their neighbour to make b from a (optimal string
// alignment, V. I. Levenshtein 1966 with F. J. Damerau's swap of 1964). From limit upwards it may give any number not below it.
func distance(a, b string, limit int) int {
	s, t := []rune(a), []rune(b)
	if gap := len(s) - len(t); gap >= limit || -gap >= limit {
		return limit
	}
	older, old, row := make([]int, len(t)+1), make([]int, len(t)+1), make([]int, len(t)+1)
	for j := range old {
		old[j] = j
	}
	for i := 1; i <= len(s); i++ {
		row[0] = i
		for j := 1; j <= len(t); j++ {
			row[j] = min(old[j]+1, row[j-1]+1, old[j-1]+differs(s[i-1], t[j-1]))
			if i > 1 && j > 1 && s[i-1] == t[j-2] && s[i-2] == t[j-1] {
				row[j] = min(row[j], older[j-2]+1)
			}
		}
		older, old, row = old, row, older
	}
	return old[len(t)]
}

func differs(a, b rune) int {
	if a == b {
		return 0
	}
	return 1
}

// meant is the hint that names the nearest known word, and all of them where they are few.
func meant(written string, known []string) string {
	if k, ok := nearest(written, known); ok {
		return "did you mean " + shown(k) + "?"
	}
	if len(known) == 0 {
		return ""
	}
	return "known: " + someOf(known)
}

// someOf lists words up to a length that fits a hint.
func someOf(all []string) string {
	const most = 20
	var out []string
	for i, w := range all {
		if i == most {
			return strings.Join(out, ", ") + ", …"
		}
		out = append(out, shown(w))
	}
	return strings.Join(out, ", ")
}
