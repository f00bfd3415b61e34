package finding

import "strings"

// Nearest gives the known word that a mistyped one most likely stands for; ok is false when none is close. A word is
// close when no more than a third of its letters, at least one and at most three, must be put in, taken out, changed or
// swapped; a single letter is close only to its capital. Of several equally close the first in the list is taken.
func Nearest(word string, known []string) (nearest string, ok bool) {
	typed := []rune(strings.ToLower(word))
	if len(typed) > 64 {
		return "", false
	}
	least := min(3, max(1, len(typed)/3)) + 1
	if len(typed) < 2 {
		least = 1
	}
	for _, k := range known {
		if d := distance(typed, []rune(strings.ToLower(k))); d < least {
			nearest, least = k, d
		}
	}
	return nearest, nearest != ""
}

// distance counts the letters that must be put in, taken out, changed, or swapped with their neighbour.
func distance(a, b []rune) int {
	if len(b) > 64 {
		return len(b)
	}
	before, row, next := make([]int, len(b)+1), make([]int, len(b)+1), make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := 1; i <= len(a); i++ {
		next[0] = i
		for j := 1; j <= len(b); j++ {
			change := row[j-1]
			if a[i-1] != b[j-1] {
				change++
			}
			next[j] = min(change, row[j]+1, next[j-1]+1)
			if i > 1 && j > 1 && a[i-1] == b[j-2] && a[i-2] == b[j-1] {
				next[j] = min(next[j], before[j-2]+1)
			}
		}
		before, row, next = row, next, before
	}
	return row[len(b)]
}
