package crosscheck

import (
	"maps"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// otherHull finds papers in this file that name another hull of the yard, by number or identification number, and not this
// one.
func otherHull(b *build) []told {
	own := marksOf(b.Hull)
	names := record.Once(b.yard, namesOf)
	var all []told
	for i := range b.Hull.Documents {
		d := &b.Hull.Documents[i]
		text := titleOf(d)
		if mentions(text, own) {
			continue
		}
		if other, ok := names.first(text, own.Number); ok {
			all = append(all, tell("document "+d.ID, "put the paper of this boat here", []finding.Place{d.At, d.Title.At},
				"document %s, %q, names hull %s; this file is of hull %s", d.ID, strings.TrimSpace(d.Title.V+" "+d.Number.V), other.Number, own.Number))
		}
	}
	return all
}

// Papers gives what each paper of a hull says of itself, in their order.
func Papers(h *record.Hull) []string {
	var all []string
	for i := range h.Documents {
		all = append(all, titleOf(&h.Documents[i]))
	}
	return all
}

// titleOf is what a paper says of itself.
func titleOf(d *record.Document) string {
	return strings.Join([]string{d.Title.V, d.Number.V, d.File.V}, " ")
}

// Marks are what a paper may name a hull by.
type Marks struct{ Number, HIN string }

func marksOf(h *record.Hull) Marks { return Marks{h.Number, h.Identity.HIN.V} }

// Names finds hulls of a yard by the words of their number and identification number.
type Names struct {
	marks []Marks
	by    map[string][]int // places in marks
	odd   []int            // hulls with a number that is not found by its words
}

func namesOf(hulls []*record.Hull) *Names {
	marks := make([]Marks, len(hulls))
	for i, h := range hulls {
		marks[i] = marksOf(h)
	}
	return NewNames(marks)
}

// NewNames takes the hulls of a yard in their order.
func NewNames(marks []Marks) *Names {
	n := &Names{marks: marks, by: map[string][]int{}}
	for i, m := range marks {
		for _, number := range []string{m.Number, m.HIN} {
			words := strings.TrimFunc(number, func(r rune) bool { return r > 0x7f || !letter(byte(r)) })
			switch runs := runsOfWords(words); {
			case len(number) < shortest:
			case !slices.Contains(runs, words):
				n.odd = append(n.odd, i)
			default:
				n.by[words] = append(n.by[words], i)
			}
		}
	}
	return n
}

// Named gives the places of the hulls, but for one, that texts of papers may be taken to name, in the order of the yard.
func (n *Names) Named(papers []string, but string) []int {
	found := map[int]bool{}
	for _, text := range papers {
		n.each(text, func(at int) {
			if n.marks[at].Number != but {
				found[at] = true
			}
		})
	}
	return slices.Sorted(maps.Keys(found))
}

// first gives the first hull of the yard but one that a text names.
func (n *Names) first(text, but string) (Marks, bool) {
	found := len(n.marks)
	n.each(text, func(at int) {
		if n.marks[at].Number != but {
			found = min(found, at)
		}
	})
	if found == len(n.marks) {
		return Marks{}, false
	}
	return n.marks[found], true
}

// each calls do with the place of every hull that a text names.
func (n *Names) each(text string, do func(at int)) {
	try := func(all []int) {
		for _, at := range all {
			if mentions(text, n.marks[at]) {
				do(at)
			}
		}
	}
	try(n.odd)
	for _, words := range runsOfWords(text) {
		try(n.by[words])
	}
}

// mostWords is how many words a number of a hull may be written in.
const mostWords = 8

// runsOfWords gives every run of whole words of a text, with what stands between them. A number may be one word or, as
// HL74-012, several.
func runsOfWords(text string) []string {
	var starts, ends []int
	for i := range len(text) {
		if !letter(text[i]) {
			continue
		}
		if i == 0 || !letter(text[i-1]) {
			starts = append(starts, i)
		}
		if i+1 == len(text) || !letter(text[i+1]) {
			ends = append(ends, i+1)
		}
	}
	var all []string
	for i, from := range starts {
		for _, to := range ends[i:min(i+mostWords, len(ends))] {
			all = append(all, text[from:to])
		}
	}
	return all
}

// shortest is how long a number must be to be looked for: a shorter one stands in papers by chance.
const shortest = 4

// mentions reports whether a text names a hull, as whole words.
func mentions(text string, m Marks) bool {
	return hasWord(text, m.Number) || hasWord(text, m.HIN)
}

func hasWord(text, word string) bool {
	if len(word) < shortest {
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
