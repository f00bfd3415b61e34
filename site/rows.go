package site

import (
	"bytes"
	"html/template"
	"strconv"
	"unicode/utf8"
)

// Besides the templates, this file is the only place where markup is made of text from a record: the lines of a record
// file, of which there can be thousands. Everything goes through escaped.

// recordLines gives a record file as list items, one a line, each with the anchor that findings lead to.
func recordLines(text []byte) template.HTML {
	text = bytes.TrimPrefix(text, []byte("\xef\xbb\xbf"))
	out := make([]byte, 0, len(text)*2)
	for n := 1; len(text) > 0; n++ {
		row, rest, _ := bytes.Cut(text, []byte("\n"))
		out = append(out, `<li id="L`...)
		out = strconv.AppendInt(out, int64(n), 10)
		out = append(out, `"><code>`...)
		out = escaped(out, bytes.TrimSuffix(row, []byte("\r")))
		out = append(out, "</code></li>\n"...)
		text = rest
	}
	return template.HTML(out) //nolint:gosec // escaped above
}

// escaped appends text in which nothing is markup. Bytes that are no character, and characters that a page may not
// hold or that turn the order of reading, become the replacement character, so that they can be seen.
func escaped(out, text []byte) []byte {
	for len(text) > 0 {
		r, size := utf8.DecodeRune(text)
		switch {
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
		case hidden(r):
			out = append(out, "�"...)
		default:
			out = utf8.AppendRune(out, r)
		}
		text = text[size:]
	}
	return out
}

func hidden(r rune) bool {
	switch {
	case r < ' ' && r != '\t', r >= 0x7f && r < 0xa0, r == utf8.RuneError:
		return true
	case r >= 0x202a && r <= 0x202e, r >= 0x2066 && r <= 0x2069, r == 0x2028, r == 0x2029:
		return true
	}
	return false
}
