package crosscheck

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// otherHull finds papers in this file that name another hull of the yard, by number or identification number, and not this
// one.
func otherHull(b *build) []told {
	own := b.Hull
	var all []told
	for i := range own.Documents {
		d := &own.Documents[i]
		text := strings.Join([]string{d.Title.V, d.Number.V, d.File.V}, " ")
		if mentions(text, own) {
			continue
		}
		for _, h := range b.yard.Hulls {
			if h != own && mentions(text, h) {
				all = append(all, tell("document "+d.ID, "put the paper of this boat here", []finding.Place{d.At, d.Title.At},
					"document %s, %q, names hull %s; this file is of hull %s", d.ID, strings.TrimSpace(d.Title.V+" "+d.Number.V), h.Number, own.Number))
				break
			}
		}
	}
	return all
}

// mentions reports whether a text names a hull, as whole words.
func mentions(text string, h *record.Hull) bool {
	return hasWord(text, h.Number) || hasWord(text, h.Identity.HIN.V)
}

func hasWord(text, word string) bool {
	if len(word) < 4 {
		return false
	}
	at := strings.Index(text, word)
	for at >= 0 {
		end := at + len(word)
		if (at == 0 || !letter(text[at-1])) && (end == len(text) || !letter(text[end])) {
			return true
		}
		next := strings.Index(text[at+1:], word)
		if next < 0 {
			return false
		}
		at += 1 + next
	}
	return false
}

func letter(c byte) bool {
	return c >= '0' && c <= '9' || c >= 'a' && c <= 'z' || c >= 'A' && c <= 'Z'
}
