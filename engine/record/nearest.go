package record

import (
	"strings"
	"unicode/utf8"

	"hullfile/engine/finding"
)

// nearest finds the known word that a written one was most likely meant to be. In words of one or two letters every
// other word of that length would be near, so only a wrong letter case counts there.
func nearest(written string, known []string) (string, bool) {
	if utf8.RuneCountInString(written) > 2 {
		return finding.Nearest(written, known)
	}
	for _, k := range known {
		if strings.EqualFold(k, written) {
			return k, true
		}
	}
	return "", false
}

// meant is the hint that names the nearest known word, or else the known words.
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
