package record

import (
	"strings"
	"time"
	"unicode/utf8"
)

// longestText is the greatest number of characters of one text; the wall keeps out files that only look like records.
const longestText = 20000

// word checks one text: its characters, its length, the words allowed, its form, and what it names.
func (c *checker) word(f *field, n *node, way *trail) {
	s, is := n.value.(string)
	if !is {
		c.mistyped(f, n, way)
		return
	}
	if f.lines {
		s = strings.ReplaceAll(s, "\r\n", "\n")
		n.value = s
	}
	if says, hint := badText(s, f.lines); says != "" {
		c.spoil(n, n.at, way, hint, "%s", says)
		return
	}
	if !f.takesWord(s) {
		c.spoil(n, n.at, way, wordHint(s, f.oneof), "%s is not a word that is known here", quoted(s))
		return
	}
	if says, hint := badForm(f.form, s); says != "" {
		c.spoil(n, n.at, way, hint, "%s", says)
		return
	}
	c.refers(f, s, n, way)
}

// badText says what is wrong with the characters of a text.
func badText(s string, lines bool) (says, hint string) {
	switch r, found := firstUnwanted(s, lines); {
	case strings.TrimSpace(s) == "":
		return "the text is empty", "write it, or take the line out if it is not known"
	case found && r == '\n':
		return "the text runs over several lines", "write it on one line"
	case found:
		return "the text holds the character " + runeName(r) + ", which cannot be seen", "take it out; it is most likely left over from copying"
	case utf8.RuneCountInString(s) > longestText:
		return "the text is longer than " + ordinal(longestText) + " characters", "put it into a document and name that"
	}
	return "", ""
}

func wordHint(s string, allowed []string) string {
	hint := "allowed: " + strings.Join(allowed, ", ")
	if w, ok := nearest(s, allowed); ok {
		return "did you mean " + w + "? " + hint
	}
	return hint
}

// badForm says what is wrong with a text that must have a form of its own.
func badForm(form, s string) (says, hint string) {
	switch form {
	case "hash":
		return badHash(s)
	case "file":
		return badPath(s)
	case "moment", "clock":
		return badClock(form, s)
	}
	return "", ""
}

func badHash(s string) (says, hint string) {
	hex := strings.Trim(strings.ToLower(s), "0123456789abcdef") == ""
	if !hex || len(s) != 64 {
		return quoted(s) + " is not a SHA-256 hash", "it has 64 hexadecimal digits; take it out if you have none"
	}
	return "", ""
}

// badClock says what is wrong with a moment in UTC, or with a time of day where that is enough.
func badClock(form, s string) (says, hint string) {
	layouts := []string{"2006-01-02T15:04:05", "2006-01-02T15:04:05Z"}
	hint = "write it in UTC as 2026-03-03T09:14:00"
	if form == "clock" {
		layouts = append(layouts, "15:04:05")
		hint = "write it in UTC as 09:14:00, or with the day as 2026-03-03T09:14:00"
	}
	for _, layout := range layouts {
		if _, err := time.Parse(layout, s); err == nil {
			return "", ""
		}
	}
	return quoted(s) + " is not a time of day that can be read", hint
}

// badPath keeps a document inside the documents folder of its record.
func badPath(s string) (says, hint string) {
	const inside = "name a file inside the documents folder beside the record, e.g. plate-certificate.pdf"
	switch {
	case strings.Contains(s, `\`):
		return quoted(s) + " has a backslash", "write folders with a forward slash: photographs/stem.jpg"
	case strings.HasPrefix(s, "/") || len(s) > 1 && s[1] == ':':
		return quoted(s) + " leads out of the documents folder", inside
	}
	for _, part := range strings.Split(s, "/") {
		switch {
		case part == "..":
			return quoted(s) + " leads out of the documents folder", inside
		case part == "" || part == ".":
			return quoted(s) + " is not a file name", inside
		case device(part) || strings.HasSuffix(part, ".") || strings.HasSuffix(part, " "):
			return quoted(s) + " is not a file name on every system", "give the file another name"
		}
	}
	return "", ""
}
