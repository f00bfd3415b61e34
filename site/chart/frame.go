package chart

import (
	"fmt"
	"strings"
	"sync"
)

// Figure is one drawing with what belongs under it. See the package comment.
type Figure struct {
	SVG   string
	Alt   string
	Note  string
	Table [][]string
	Empty bool
}

// plate is a figure about to be drawn: what names it, and how it is drawn on a sheet of a given width.
type plate struct {
	id    string // starts every identifier in the markup
	title string
	alt   string
	links bool // the drawing holds links, which an image may not
	paint func(*sheet)
}

// papers are sheets of paper that were drawn on and may be drawn on again: a book has hundreds of figures, and what a figure needs
// to be drawn is several times what is left of it.
var papers = sync.Pool{New: func() any { return new(sheet) }}

// paper takes an empty sheet out of papers.
func paper(w float64) *sheet {
	s := papers.Get().(*sheet)
	s.w, s.h, s.out, s.words = w, 0, s.out[:0], s.words[:0]
	return s
}

// svg draws the plate for a page and for a phone.
func (p plate) svg() string {
	page, phone := paper(wide), paper(narrow)
	defer papers.Put(page)
	defer papers.Put(phone)
	paintSafely(page, p.paint)
	paintSafely(phone, p.paint)
	first, second := p.head(page, "g-wide", p.id), p.head(phone, "g-narrow", p.id+"-n")
	const end = "</svg>"
	var out strings.Builder
	out.Grow(len(first) + len(page.out) + len(second) + len(phone.out) + 2*len(end))
	for _, part := range [][]byte{first, page.out, []byte(end), second, phone.out, []byte(end)} {
		out.Write(part)
	}
	return out.String()
}

// head begins the drawing of one painted sheet. It is written behind the drawing on the same paper, where there is room.
func (p plate) head(body *sheet, class, id string) []byte {
	s := &sheet{out: body.out[len(body.out):]}
	s.begin("svg", class)
	s.raw(` xmlns="http://www.w3.org/2000/svg" viewBox="0 0 `)
	s.num(body.w)
	s.raw(" ")
	s.num(body.h)
	s.raw(`" font-family="` + stack + `" font-size="`)
	s.num(textSize)
	s.raw(`" role="` + p.role() + `" aria-labelledby="` + id + "-t " + id + `-d"><title id="` + id + `-t">`)
	s.out = appendText(s.out, p.title)
	s.raw(`</title><desc id="` + id + `-d">`)
	s.out = appendText(s.out, p.alt)
	s.raw("</desc>")
	return s.out
}

// role tells a screen reader what the drawing is. An image hides what is in it, so a drawing with links is a group.
func (p plate) role() string {
	if p.links {
		return "group"
	}
	return "img"
}

// paintSafely keeps a fault of this package from taking the whole file with it: the drawing then says what happened.
func paintSafely(s *sheet, paint func(*sheet)) {
	defer func() {
		if fault := recover(); fault != nil {
			s.out, s.words = s.out[:0], nil
			sayOnly(s, fmt.Sprintf("This figure could not be drawn; its values stand in the table. Fault in the drawing: %v", fault))
		}
	}()
	paint(s)
}

// blank is the figure where there is nothing to draw; why says in words what is missing.
func blank(id, title, why string, table [][]string) Figure {
	p := plate{id: id, title: title, alt: why, paint: func(s *sheet) { sayOnly(s, why) }}
	return Figure{SVG: p.svg(), Alt: why, Table: table, Empty: true}
}

// sayOnly fills a sheet with words in a thin frame.
func sayOnly(s *sheet, words string) {
	lines := wrap(words, s.w-48)
	if len(lines) > 6 {
		lines = lines[:6]
	}
	s.h = 56 + line*float64(len(lines)-1)
	s.rect("g-blank", box{0.5, 0.5, s.w - 0.5, s.h - 0.5})
	for i, text := range lines {
		s.text("g-soft", s.w/2, 32+line*float64(i), middle, text)
	}
}

// finished makes the figure of a plate.
func (p plate) finished(note string, table [][]string) Figure {
	return Figure{SVG: p.svg(), Alt: p.alt, Note: note, Table: table}
}
