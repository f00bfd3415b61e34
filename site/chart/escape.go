package chart

import (
	"strings"
	"unicode/utf8"
)

// appendText writes a text from a record into markup, as content or as the value of an attribute. What XML cannot hold,
// and marks that turn the direction of the text that follows, become the replacement character.
func appendText(out []byte, text string) []byte {
	for i, r := range text {
		if r >= ' ' && r < 0x7F && r != '&' && r != '<' && r != '>' && r != '"' && r != '\'' {
			out = append(out, text[i]) // as most are
			continue
		}
		switch r = written(r); {
		case r == '&':
			out = append(out, "&amp;"...)
		case r == '<':
			out = append(out, "&lt;"...)
		case r == '>':
			out = append(out, "&gt;"...)
		case r == '"':
			out = append(out, "&#34;"...)
		case r == '\'':
			out = append(out, "&#39;"...)
		default:
			out = utf8.AppendRune(out, r)
		}
	}
	return out
}

// written gives the rune that is written for one of a record, and so the one that is measured.
func written(r rune) rune {
	switch {
	case r == '\t' || r == '\n' || r == '\r':
		return ' '
	case refused(r):
		return utf8.RuneError
	}
	return r
}

// refused reports whether a rune has no place in markup: controls, half characters, non-characters (XML 1.0, fifth
// edition, production 2) and the marks of Unicode that override direction.
func refused(r rune) bool {
	switch {
	case r < 0x20, r >= 0x7F && r <= 0x9F:
		return true
	case r >= 0x202A && r <= 0x202E, r >= 0x2066 && r <= 0x2069:
		return true
	case r >= 0xD800 && r <= 0xDFFF, r&0xFFFE == 0xFFFE:
		return true
	}
	return false
}

// slug turns a record key into a part of an identifier. Two different keys never give the same: what is neither letter
// nor digit is written as its number.
func slug(key string) string {
	const digits = "0123456789abcdef"
	var out strings.Builder
	for i := 0; i < len(key); i++ {
		c := key[i]
		if c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z' {
			out.WriteByte(c)
			continue
		}
		out.Write([]byte{'_', digits[c>>4], digits[c&15]})
	}
	return out.String()
}

// identifier gives an identifier of letters, digits, hyphens and underscores, whatever it is made from.
func identifier(id string) string {
	for _, r := range id {
		plain := r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_'
		if !plain {
			return "fig-" + slug(id)
		}
	}
	if id == "" {
		return "fig"
	}
	return id
}

// fit shortens a text with an ellipsis so that it is no wider than most, in drawing units.
func fit(text string, most float64) string {
	if advance(text) <= most {
		return text
	}
	room, used := most-advance("…"), 0.0
	for i, r := range text {
		used += advance(string(r))
		if used > room {
			return strings.TrimRight(text[:i], " ") + "…"
		}
	}
	return text
}

// wrap breaks a text at blanks into lines no wider than most; a word that is wider is shortened.
func wrap(text string, most float64) []string {
	var lines []string
	line := ""
	for _, word := range strings.Fields(text) {
		switch {
		case line == "":
			line = word
		case advance(line+" "+word) <= most:
			line += " " + word
		default:
			lines = append(lines, fit(line, most))
			line = word
		}
	}
	if line != "" {
		lines = append(lines, fit(line, most))
	}
	return lines
}
