package site

import (
	"bytes"
	"html/template"
	"slices"
	"strings"
)

// glossaryPath is the page of words.
const glossaryPath = "glossary.html"

// GlossaryPage explains the words that the pages use.
type GlossaryPage struct {
	Letters []LetterPart
	Words   int
}

// LetterPart is the words that begin with one letter.
type LetterPart struct {
	Letter string
	Words  []WordRow
}

// WordRow is one word.
type WordRow struct {
	ID, Word, Means, Source string
	Also                    []string
}

// wordID is the anchor of a word on the page of words.
func wordID(word string) string { return "w-" + slug(word) }

func (l *leaf) glossaryPage() (GlossaryPage, error) {
	var p GlossaryPage
	if l.press.job.Words == nil {
		return p, nil
	}
	for _, t := range l.press.job.Words.Terms {
		letter := strings.ToUpper(t.Word[:1])
		if n := len(p.Letters); n == 0 || p.Letters[n-1].Letter != letter {
			p.Letters = append(p.Letters, LetterPart{Letter: letter})
		}
		at := &p.Letters[len(p.Letters)-1]
		at.Words = append(at.Words, WordRow{ID: wordID(t.Word), Word: t.Word, Means: t.Means, Source: t.Source, Also: t.Also})
		p.Words++
	}
	return p, nil
}

// termsOn gives links to the words that stand on a page, as a part to be put at its end. Pages further down are left out:
// they use the words of the page above them.
func (p *press) termsOn(s *section, page []byte) (template.HTML, error) {
	if p.job.Words == nil || s.above != nil || unexplained[s.kind] {
		return "", nil
	}
	var links []Link
	up := strings.Repeat("../", strings.Count(s.path, "/"))
	for _, t := range p.job.Words.Within(spokenOn(page)) {
		links = append(links, Link{Text: t.Word, Href: up + glossaryPath + "#" + wordID(t.Word)})
	}
	if len(links) == 0 {
		return "", nil
	}
	return p.part("termson", links)
}

// unexplained are the kinds of pages that have no list of their words: those that are lists themselves, and the cover.
var unexplained = map[string]bool{"glossary": true, "records": true, "methods": true, "documents": true, "bench": true, "owner": true, "from": true}

// spokenOn gives what a page says in sentences and heads: its paragraphs, headings, captions and heads of columns. Cells
// repeat the same words row by row.
func spokenOn(page []byte) string {
	var b strings.Builder
	b.Grow(len(page) / 16)
	for text := mainOf(page); ; {
		at := bytes.IndexByte(text, '<')
		if at < 0 {
			return b.String()
		}
		text = text[at:]
		if bytes.HasPrefix(text, drawn) {
			_, text, _ = bytes.Cut(text, drawnEnd) // the greater part of most pages
			continue
		}
		name := spokenTag(text)
		if name == "" {
			text = text[1:]
			continue
		}
		said, rest, _ := bytes.Cut(text[tagEnd(text):], []byte("</"+name+">"))
		eachTag(said, func(before, _, _ []byte) { b.Write(before) })
		b.WriteByte('\n')
		text = rest
	}
}

var drawn, drawnEnd = []byte("<svg"), []byte("</svg>")

// spokenTag gives the name of the tag that a text begins with, empty where what stands in it is not spoken.
func spokenTag(text []byte) string {
	for _, name := range spokenIn {
		if after := 1 + len(name); len(text) > after && text[1] == name[0] && string(text[1:after]) == name && strings.IndexByte(" \t\n>", text[after]) >= 0 {
			return name
		}
	}
	return ""
}

var spokenIn = []string{"p", "h2", "h3", "caption", "figcaption", "thead", "dt"}

// wayOn is what a page ends with; the list of its words stands before it.
var wayOn = []byte(`<nav class="turn"`)

// explain puts the list of the words of a page before its end.
func (p *press) explain(page []byte, s *section) ([]byte, error) {
	list, err := p.termsOn(s, page)
	if err != nil || list == "" {
		return page, err
	}
	at := bytes.LastIndex(page, wayOn)
	if at < 0 {
		return page, nil
	}
	return slices.Insert(page, at, []byte(list)...), nil
}
