package site

import (
	"bytes"
	"html"
	"net/url"
	"slices"
	"strconv"
	"strings"
)

// What is read here was written by our own templates and renderer a moment ago: every attribute has double quotes, and
// whatever came from a record is escaped, so a tag ends at its first angle bracket outside quotes.

// eachTag hands over a text tag by tag: what stands before each, the tag, and what comes after. The last call has no tag.
func eachTag(text []byte, take func(before, tag, rest []byte)) {
	for {
		at := bytes.IndexByte(text, '<')
		if at < 0 {
			take(text, nil, nil)
			return
		}
		end := tagEnd(text[at:])
		take(text[:at], text[at:at+end], text[at+end:])
		text = text[at+end:]
	}
}

// tagEnd gives the length of the tag that a text begins with.
func tagEnd(text []byte) int {
	quoted := false
	for i, c := range text {
		switch {
		case c == '"':
			quoted = !quoted
		case c == '>' && !quoted:
			return i + 1
		}
	}
	return len(text)
}

// tagName gives the name of a tag, with the stroke of a closing one.
func tagName(tag []byte) string { return string(nameOf(tag)) }

// nameOf is tagName for those who only look: it points into the tag.
func nameOf(tag []byte) []byte {
	for i := 1; i < len(tag); i++ {
		switch tag[i] {
		case ' ', '\t', '\n', '>':
			return bytes.TrimSuffix(tag[1:i], stroke)
		}
	}
	return nil
}

var stroke = []byte("/")

// rewritten are what a tag holds of which something becomes otherwise in an edition: headings, identifiers and links.
var rewritten = [][]byte{[]byte("<h"), []byte("</h"), []byte(` id="`), []byte(` href="`), []byte(` for="`), []byte(` headers="`), []byte(` aria-`), []byte(` data-to="`), []byte(`url(#`)}

// keepsAsItIs reports a tag that is copied, as most tags of drawings and formulas are.
func keepsAsItIs(tag []byte) bool {
	return !slices.ContainsFunc(rewritten, func(part []byte) bool { return bytes.Contains(tag, part) })
}

// headingLevel gives 1 to 6 for a heading, opening or closing, else 0.
func headingLevel(tag []byte) int {
	name := strings.TrimPrefix(tagName(tag), "/")
	if len(name) == 2 && name[0] == 'h' && name[1] >= '1' && name[1] <= '6' {
		return int(name[1] - '0')
	}
	return 0
}

// attribute gives the value of an attribute, unescaped; empty where it is not there.
func attribute(tag []byte, name string) string {
	key := []byte(" " + name + `="`)
	at := bytes.Index(tag, key)
	if at < 0 {
		return ""
	}
	value, _, _ := bytes.Cut(tag[at+len(key):], []byte(`"`))
	return html.UnescapeString(string(value))
}

// writeHeading writes a heading of another level; one of the first keeps how it looks by a class.
func writeHeading(out *bytes.Buffer, tag []byte, level, to int, prefix string) {
	if tag[1] == '/' {
		out.WriteString("</h" + strconv.Itoa(to) + ">")
		return
	}
	rest := tag[3 : len(tag)-1]
	out.WriteString("<h" + strconv.Itoa(to))
	if !bytes.Contains(rest, []byte(" class=")) {
		out.WriteString(` class="was` + strconv.Itoa(level) + `"`)
	}
	writeAttributes(out, rest, prefix, "", nil)
	out.WriteByte('>')
}

func writeTag(out *bytes.Buffer, tag []byte, prefix, to string, labels map[string]string) {
	end := len(tag) - 1
	space := bytes.IndexByte(tag, ' ')
	if space < 0 || tag[1] == '/' || tag[1] == '!' {
		out.Write(tag)
		return
	}
	out.Write(tag[:space])
	writeAttributes(out, tag[space:end], prefix, to, labels)
	out.WriteByte('>')
}

// named are the attributes that hold identifiers of the same page, parted by blanks.
var named = map[string]bool{"id": true, "for": true, "headers": true, "aria-labelledby": true, "aria-describedby": true, "aria-controls": true}

// writeAttributes copies attributes, with the prefix before identifiers, the new way in a link, and the number of the
// table that it leads to.
func writeAttributes(out *bytes.Buffer, rest []byte, prefix, to string, labels map[string]string) {
	for len(rest) > 0 {
		at := bytes.Index(rest, []byte(`="`))
		if at < 0 {
			out.Write(rest)
			return
		}
		close := bytes.IndexByte(rest[at+2:], '"')
		if close < 0 {
			out.Write(rest)
			return
		}
		key := string(bytes.TrimSpace(lastWord(rest[:at])))
		value := rest[at+2 : at+2+close]
		out.Write(rest[:at+2])
		switch {
		case named[key]:
			for i, id := range bytes.Fields(value) {
				if i > 0 {
					out.WriteByte(' ')
				}
				out.WriteString(prefix)
				out.Write(id)
			}
		case key == "href" && to != "":
			out.WriteString(html.EscapeString(to))
		case key == "href" && bytes.HasPrefix(value, []byte("#")):
			out.WriteString("#" + prefix)
			out.Write(value[1:])
		case key == "data-to" && labels[strings.TrimPrefix(to, "#")] != "":
			out.WriteString(labels[strings.TrimPrefix(to, "#")])
		case !bytes.Contains(value, []byte("url(#")):
			out.Write(value)
		default:
			out.Write(bytes.ReplaceAll(value, []byte("url(#"), []byte("url(#"+prefix)))
		}
		out.WriteByte('"')
		rest = rest[at+2+close+1:]
	}
}

func lastWord(b []byte) []byte {
	if at := bytes.LastIndexByte(b, ' '); at >= 0 {
		return b[at:]
	}
	return b
}

// captionBefore gives the words up to the end of a caption.
func captionBefore(rest []byte, end string) string {
	text, _, _ := bytes.Cut(rest, []byte(end))
	return words(text)
}

// firstSentence gives what stands before the first full stop with a blank behind it.
func firstSentence(s string) string {
	first, _, _ := strings.Cut(s, ". ")
	return strings.TrimSuffix(first, ".")
}

// words gives the text of a piece of markup without its tags.
func words(markup []byte) string { return strings.Join(strings.Fields(wordsIn(markup)), " ") }

// wordsIn is words with the blanks and lines as they stand.
func wordsIn(markup []byte) string {
	var b strings.Builder
	b.Grow(len(markup) / 2)
	eachTag(markup, func(before, _, _ []byte) { b.Write(before) })
	return html.UnescapeString(b.String())
}

func unescapePath(p string) string {
	if plain, err := url.PathUnescape(p); err == nil {
		return plain
	}
	return p
}

// wordsWithin gives the words of a page for the index, each once.
func wordsWithin(markup []byte) string {
	seen := map[string]bool{}
	var out strings.Builder
	for w := range strings.FieldsSeq(strings.ToLower(wordsIn(markup))) {
		w = strings.Trim(w, ".,;:()[]{}\"'!?")
		if len(w) <= 2 || seen[w] {
			continue
		}
		seen[w] = true
		if out.Len() > 0 {
			out.WriteByte(' ')
		}
		out.WriteString(w)
	}
	return out.String()
}
