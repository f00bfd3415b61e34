package site

import (
	"fmt"
	"strings"
	"unicode"
)

// slugs hands out names that are safe as file names and anchors on every system, each only once whatever its case.
type slugs map[string]bool

// take gives a name for a record key: letters, digits, - _ and . stay, everything else becomes a hyphen. A name that is
// taken gets a number; the caller asks in the order of the record, so that the same records give the same names.
func (s slugs) take(key string) string {
	base := slug(key)
	name, low := base, strings.ToLower(base)
	for n := 2; s[low]; n++ {
		name = fmt.Sprintf("%s-%d", base, n)
		low = strings.ToLower(name)
	}
	s[low] = true
	return name
}

// mostSlug is the length of a name at which the rest of a key is left out, bytes.
const mostSlug = 60

func slug(key string) string {
	if isSlug(key) {
		return key // as most are
	}
	var b strings.Builder
	for _, r := range key {
		if plainRune(r) && (r != '.' || b.Len() > 0) {
			b.WriteRune(r)
		} else if !strings.HasSuffix(b.String(), "-") {
			b.WriteByte('-')
		}
		if b.Len() >= mostSlug {
			break
		}
	}
	name := strings.Trim(b.String(), "-.")
	if name == "" || reserved(name) {
		return "x-" + name
	}
	return name
}

// isSlug reports whether a key stays as it is.
func isSlug(key string) bool {
	return key != "" && len(key) <= mostSlug && strings.IndexFunc(key, func(r rune) bool { return !plainRune(r) }) < 0 && strings.Trim(key, "-.") == key && !reserved(key)
}

// plainName reports whether a word can be a folder as it stands: letters of any script, digits, - _ . and single
// spaces inside.
func plainName(name string) bool {
	if name == "" || len(name) > 80 || strings.Trim(name, ". ") != name || reserved(name) {
		return false
	}
	for _, r := range name {
		if !plainRune(r) && !unicode.IsLetter(r) && !unicode.IsDigit(r) && r != ' ' {
			return false
		}
	}
	return ownName(name) == ""
}

// ownName gives the name that the output uses beside the folders of hulls and that a word would be the same as, or none.
func ownName(name string) string {
	for _, kept := range []string{"assets", registerDir, coverName, contentsName, sumsName} {
		if strings.EqualFold(name, kept) {
			return kept
		}
	}
	return ""
}

func plainRune(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' || r == '.'
}

// reserved reports the names that Windows keeps for devices, with or without an ending.
func reserved(name string) bool {
	stem, _, _ := strings.Cut(strings.ToLower(name), ".")
	switch stem {
	case "con", "prn", "aux", "nul":
		return true
	}
	return len(stem) == 4 && (strings.HasPrefix(stem, "com") || strings.HasPrefix(stem, "lpt")) && stem[3] >= '0' && stem[3] <= '9'
}
