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
	own := b.Hull
	names := record.Once(b.yard, namesOf)
	var all []told
	for i := range own.Documents {
		d := &own.Documents[i]
		text := titleOf(d)
		if mentions(text, own) {
			continue
		}
		if h := names.first(text, own); h != nil {
			all = append(all, tell("document "+d.ID, "put the paper of this boat here", []finding.Place{d.At, d.Title.At},
				"document %s, %q, names hull %s; this file is of hull %s", d.ID, strings.TrimSpace(d.Title.V+" "+d.Number.V), h.Number, own.Number))
		}
	}
	return all
}

// Named gives the other hulls of a yard that papers of a hull may be taken to name, in the order of the yard.
func Named(y *record.Yard, h *record.Hull) []*record.Hull {
	yard := record.Once(y, namesOf)
	found := map[int]bool{}
	for i := range h.Documents {
		yard.each(titleOf(&h.Documents[i]), func(at int) {
			if yard.hulls[at] != h {
				found[at] = true
			}
		})
	}
	var all []*record.Hull
	for _, at := range slices.Sorted(maps.Keys(found)) {
		all = append(all, yard.hulls[at])
	}
	return all
}

// titleOf is what a paper says of itself.
func titleOf(d *record.Document) string {
	return strings.Join([]string{d.Title.V, d.Number.V, d.File.V}, " ")
}

// names are the hulls of a yard by the words of their number and identification number.
type names struct {
	hulls []*record.Hull
	by    map[string][]int // places in hulls
	odd   []int            // hulls with a number that is not found by its words
}

func namesOf(hulls []*record.Hull) *names {
	n := &names{hulls: hulls, by: map[string][]int{}}
	for i, h := range hulls {
		for _, number := range []string{h.Number, h.Identity.HIN.V} {
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

// first gives the first hull of the yard but one that a text names, or nil.
func (n *names) first(text string, but *record.Hull) *record.Hull {
	found := len(n.hulls)
	n.each(text, func(at int) {
		if n.hulls[at] != but {
			found = min(found, at)
		}
	})
	if found == len(n.hulls) {
		return nil
	}
	return n.hulls[found]
}

// each calls do with the place of every hull that a text names.
func (n *names) each(text string, do func(at int)) {
	try := func(all []int) {
		for _, at := range all {
			if mentions(text, n.hulls[at]) {
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
func mentions(text string, h *record.Hull) bool {
	return hasWord(text, h.Number) || hasWord(text, h.Identity.HIN.V)
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
