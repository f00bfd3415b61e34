package record

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// longestKey is the greatest number of characters of the key of an entry: it becomes a heading and a file name.
const longestKey = 80

// badKey says what is wrong with the key of an entry, and what to do about it; empty if nothing is.
func badKey(key string) (says, hint string) {
	switch r, found := firstUnwanted(key, false); {
	case key == "":
		return "the key is empty", "give the entry a short key, e.g. B3"
	case found:
		return "the key holds the character " + runeName(r), "use letters, digits and - in keys"
	case strings.TrimSpace(key) != key:
		return "the key begins or ends with a space", "take the space out"
	case utf8.RuneCountInString(key) > longestKey:
		return "the key is longer than " + strconv.Itoa(longestKey) + " characters", "use a short key and put the words into the record"
	}
	return "", ""
}

// ordinal is the key of the entry that stands at this place of its list, from one.
func ordinal(i int) string { return strconv.Itoa(i) }

// badName says what is wrong with the name of a hull or design folder. The name becomes a folder of the technical file and
// part of links, on any system: letters, digits, - _ and . only.
func badName(name string) string {
	switch {
	case name == "":
		return "is empty"
	case len(name) > longestKey:
		return "is longer than " + strconv.Itoa(longestKey) + " characters"
	case strings.HasPrefix(name, ".") || strings.HasSuffix(name, "."):
		return "begins or ends with a point"
	case device(name):
		return "is a name that Windows keeps for a device"
	}
	for _, r := range name {
		if !asciiWord(r) && r != '-' && r != '.' {
			return "holds the character " + quoted(string(r))
		}
	}
	return ""
}

// keptName says what is wrong with a number of a hull whose folder would lie where the technical files keep one of their own.
func keptName(number string) string {
	for _, own := range []string{"assets", "register"} {
		if strings.EqualFold(number, own) {
			return "cannot be the number of a hull: the technical files keep the name " + own + " for themselves"
		}
	}
	return ""
}

// device reports a name that cannot be a folder on Windows.
func device(name string) bool {
	base, _, _ := strings.Cut(strings.ToUpper(name), ".")
	switch base {
	case "CON", "PRN", "AUX", "NUL":
		return true
	}
	return len(base) == 4 && (strings.HasPrefix(base, "COM") || strings.HasPrefix(base, "LPT")) && base[3] >= '0' && base[3] <= '9'
}
