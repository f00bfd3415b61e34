package site

import (
	"html/template"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Page is what every template is executed with: the frame that all pages have, and the body of one kind of page.
type Page struct {
	Frame
	Body any
}

// Frame is what stands around the body of a page.
type Frame struct {
	Title   string // as in the contents and the window
	Heading string // as at the head of the page
	Under   string // what stands behind the heading, smaller
	No      string // section number, empty on the cover and the register
	Up      string // "../" as often as the page lies below its folder
	Block   Block
	Rail    []RailItem // the contents; empty on the register
	Crumbs  []Link
	Prev    Link
	Next    Link
	Version string
}

// Block is the title block at the head of a page, as on a drawing.
type Block struct {
	Hull     string // empty on the register
	Home     string // way to the cover
	Design   string
	Issue    string
	Date     string
	State    string
	Builder  string
	Invented bool
}

// RailItem is one line of the contents, made by its template, with the lines of the pages below it.
type RailItem struct {
	Head string // of the group that begins with it
	Line template.HTML
	Kids []RailItem
}

// RailLine is what a line of the contents is made of.
type RailLine struct {
	No   string
	Link Link
	Here bool // this page
	Open int  // findings other than doubts that are shown on it
}

// headed is a body that says more at its head than the contents do.
type headed interface {
	heading() (heading, under string)
}

// frame makes the frame of a page.
func (l *leaf) frame(body any) (Frame, error) {
	rail, err := l.rail()
	if err != nil {
		return Frame{}, err
	}
	f := Frame{Title: l.at.title, Heading: l.at.title, No: l.at.no, Up: l.up, Block: l.block(), Rail: rail, Version: l.press.job.Version}
	if h, ok := body.(headed); ok {
		f.Heading, f.Under = h.heading()
	}
	for s := l.at.above; s != nil; s = s.above {
		f.Crumbs = append([]Link{l.section(s)}, f.Crumbs...)
	}
	order := l.order
	for i, s := range order {
		if s != l.at {
			continue
		}
		if i > 0 {
			f.Prev = l.section(order[i-1])
		}
		if i+1 < len(order) {
			f.Next = l.section(order[i+1])
		}
	}
	return f, nil
}

func (l *leaf) block() Block {
	h := l.hull
	b := blockOf(&l.yard.Builder)
	b.Hull, b.Home, b.Design, b.State = h.Number, l.to(coverName, ""), h.Design.V, h.Identity.State.V
	if h.Issue.Number.Set {
		b.Issue = strconv.Itoa(h.Issue.Number.V)
	}
	if h.Issue.Date.Set {
		b.Date = h.Issue.Date.V.String()
	}
	return b
}

func blockOf(builder *record.Builder) Block {
	return Block{Builder: builder.Name.V, Invented: builder.Invented.V}
}

// rail gives the contents as a page shows them. The lines to other main pages are the same on all pages of one depth.
func (l *leaf) rail() ([]RailItem, error) {
	others, err := l.railOthers()
	if err != nil {
		return nil, err
	}
	out := slices.Clone(others)
	for i, s := range l.tops {
		if !l.at.under(s) {
			continue
		}
		if out[i].Line, err = l.railLine(s); err != nil {
			return nil, err
		}
		if out[i].Kids, err = l.railKids(s); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// railOthers gives the contents as a page shows them that is none of them.
func (l *leaf) railOthers() ([]RailItem, error) {
	if out := l.rails[l.up]; out != nil {
		return out, nil
	}
	elsewhere := *l
	elsewhere.at = nil
	out := make([]RailItem, 0, len(l.tops))
	for _, s := range l.tops {
		line, err := elsewhere.railLine(s)
		if err != nil {
			return nil, err
		}
		out = append(out, RailItem{s.head, line, nil})
	}
	l.rails[l.up] = out
	return out, nil
}

// railKids gives the lines of the pages below a section while the reader is there, each with those below it in turn.
func (l *leaf) railKids(s *section) ([]RailItem, error) {
	if !l.at.under(s) || len(s.kids) > longRail {
		return nil, nil
	}
	out := make([]RailItem, 0, len(s.kids))
	for _, kid := range s.kids {
		line, err := l.railLine(kid)
		if err != nil {
			return nil, err
		}
		below, err := l.railKids(kid)
		if err != nil {
			return nil, err
		}
		out = append(out, RailItem{"", line, below})
	}
	return out, nil
}

// railKey is a line of the contents as pages of one depth show it when they are not the page it leads to.
type railKey struct {
	section *section
	up      string
}

// railLine gives a line of the contents. Most pages of a book show the same lines, so they are made once.
func (l *leaf) railLine(s *section) (template.HTML, error) {
	key := railKey{s, l.up}
	if line, made := l.railLines[key]; made && s != l.at {
		return line, nil
	}
	line, err := l.press.part("railline", RailLine{No: s.no, Link: l.section(s), Here: s == l.at, Open: l.open[s]})
	if err == nil && s != l.at {
		l.railLines[key] = line
	}
	return line, err
}

// countOpen notes where each finding is shown, and counts, for each page and the pages above it, the findings that call for something: all but doubts.
// The findings page counts all of them.
func (b *book) countOpen() {
	at := map[string]*section{}
	for _, s := range b.order {
		at[s.path] = s
	}
	all := at[findingsPath]
	for i, f := range b.findings {
		t, ok := b.shownAt(f.Rule, f.Subject)
		if ok {
			b.toldOn[t.path] = append(b.toldOn[t.path], i)
			b.toldAt[spot{t.path, t.anchor}] = append(b.toldAt[spot{t.path, t.anchor}], i)
		}
		if f.Kind == finding.Doubt {
			continue
		}
		b.open[all]++
		if !ok || at[t.path] == all {
			continue
		}
		for s := at[t.path]; s != nil; s = s.above {
			b.open[s]++
			b.leaves[s] = append(b.leaves[s], f.Kind.Standing())
		}
	}
}

// closed ends a sentence with a full stop, where it has no end yet.
func closed(s string) string {
	if s == "" || strings.HasSuffix(s, ".") || strings.HasSuffix(s, "?") || strings.HasSuffix(s, ":") {
		return s
	}
	return s + "."
}

// capital gives a sentence a capital first letter.
func capital(s string) string {
	if s == "" || s[0] < utf8.RuneSelf && (s[0] < 'a' || s[0] > 'z') {
		return s // as most are
	}
	for _, r := range s {
		return strings.ToUpper(string(r)) + s[len(string(r)):]
	}
	return s
}
