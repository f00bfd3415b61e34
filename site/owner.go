package site

import (
	"fmt"
	"html"
	"html/template"
	"strings"

	"hullfile/engine/handbook"
)

// The owner's book is a book of its own in the folder owner of a hull's technical file. It is whole in itself: no link
// leads out of it, and nothing goes into it but what the closed set of engine/handbook names.

// ownerDir is that folder; ownerPath the page of the technical file that speaks of it.
const (
	ownerDir  = "owner/"
	ownerPath = "owner.html"
)

// ChapterPage is one chapter.
type ChapterPage struct {
	Parts []OwnerPart
	Own   string // the yard's own file that it comes from; empty for a shipped one
}

// OwnerPage says in the technical file what the owner's book holds and what it lacks.
type OwnerPage struct {
	Book, Print Link
	Chapters    []OwnerChapter
	Lacks       int
	Papers      int
	Own         int
	Names       []NameRow
	Caution     template.HTML
}

// OwnerChapter is one chapter with what it could not show.
type OwnerChapter struct {
	Link  Link
	File  string
	Own   string
	Lacks []string
}

// NameRow is one name that a chapter may use.
type NameRow struct{ Key, Is, Record, Value string }

// chapterPage fills a chapter with the values of the boat.
func (l *leaf) chapterPage(c *handbook.Chapter) (ChapterPage, error) {
	p := ChapterPage{Own: c.Path}
	values := l.ownerValues()
	for i := range c.Parts {
		part := &c.Parts[i]
		if part.Block != "" {
			p.Parts = append(p.Parts, l.ownerBlock(part.Block))
			continue
		}
		text, err := filled(part, values)
		if err != nil {
			return p, fmt.Errorf("chapter %s: %w", c.Name, err)
		}
		p.Parts = append(p.Parts, OwnerPart{Text: text})
	}
	return p, nil
}

// valueMarkup is a value in a sentence, or that it is not shown.
func valueMarkup(f Figure) string {
	if f.Text != "" {
		return "<b>" + html.EscapeString(cleaned(f.Text)) + "</b>"
	}
	return `<b class="none">not shown</b>`
}

// cleaned takes out what would turn the direction of the text that follows.
func cleaned(s string) string {
	return strings.Map(func(r rune) rune {
		if r >= 0x202A && r <= 0x202E || r >= 0x2066 && r <= 0x2069 || r < 0x20 && r != '\n' || r == 0 {
			return '\ufffd'
		}
		return r
	}, s)
}

// ownerPage is made after the chapters are known, so that it can say what they lack.
func (l *leaf) ownerPage() (OwnerPage, error) {
	p := OwnerPage{Book: Link{Text: "Owner's book", Href: l.to(ownerDir+coverName, "")}, Print: Link{Text: "all of it on one page, for paper", Href: l.to(ownerDir+printName, "")}, Caution: l.press.notes["owner"]}
	o := l.ownerBook()
	if o.cover == nil {
		return p, nil
	}
	inner := o.leaf(o.cover)
	values := inner.ownerValues()
	for i := range l.handbook().Chapters {
		c := &l.handbook().Chapters[i]
		row := OwnerChapter{Link: Link{Text: c.Title, Href: l.to(ownerDir+o.order[i].path, "")}, File: c.Name + ".md", Own: c.Path}
		for _, n := range inner.chapterLacks(c, values) {
			row.Lacks = append(row.Lacks, n.Is+" ("+n.Record+")")
		}
		if c.Path != "" {
			p.Own++
		}
		p.Lacks += len(row.Lacks)
		p.Chapters = append(p.Chapters, row)
	}
	for _, n := range handbook.Names() {
		p.Names = append(p.Names, NameRow{"{" + n.Key + "}", n.Is, n.Record, values[n.Key].Text})
	}
	p.Papers = len(l.forOwner())
	return p, nil
}

// chapterLacks gives what a chapter asks for and the records do not have.
func (l *leaf) chapterLacks(c *handbook.Chapter, values map[string]Figure) []handbook.Name {
	var out []handbook.Name
	for _, name := range c.Names() {
		n, _ := handbook.Find(name)
		switch {
		case name == "list unknown", name == "list short":
		case n.Block && l.ownerBlock(name).None != "", !n.Block && values[name].Text == "":
			out = append(out, n)
		}
	}
	return out
}

// ownerUnknown tells chapter by chapter what the book does not know; what stands in an earlier one is not told again.
func (l *leaf) ownerUnknown() []OwnerUnknown {
	var out []OwnerUnknown
	values := l.ownerValues()
	told := map[string]bool{}
	for i := range l.handbook().Chapters {
		c := &l.handbook().Chapters[i]
		var lacks []string
		for _, n := range l.chapterLacks(c, values) {
			if !told[n.Key] {
				told[n.Key] = true
				lacks = append(lacks, n.Is)
			}
		}
		if len(lacks) > 0 {
			way := l.section(l.order[i])
			way.Text = c.Title
			out = append(out, OwnerUnknown{way, strings.Join(lacks, "; ")})
		}
	}
	return out
}
