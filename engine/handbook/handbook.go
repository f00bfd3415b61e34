// Package handbook reads the chapters of the owner's book: texts in Markdown with names in braces where values of the boat
// go in. The names are a closed set (names.go). They stay data: a value never becomes Markdown or markup.
//
//	{plate.persons}        a value, anywhere in a sentence
//	{picture arrangement}  a picture, table or list, alone on its line
//	[[Sound: {trial.noise}]]  words that are left out where a value in them is not on record; within one line
//	\{                     a brace that means itself
//
// A name that is not in the set is a fault with file, line and column. A value that is not on record prints as not shown, where the
// words around it are not left out; {list unknown} tells once what the book does not know.
//
//   - Question: what does the owner read?
//   - In: the shipped chapters and those of the yard.
//   - Out: chapters in order, parted into text and names; faults with their place.
//   - Source: what a manual must hold is asked by the lists in content/requirements.
package handbook

import (
	"fmt"
	"io/fs"
	"path"
	"slices"
	"strings"

	"hullfile/engine/finding"
)

// folder is where the shipped chapters lie in the content.
const folder = "owner"

// Source is the text of a chapter of the yard's own.
type Source struct {
	Name string // file name, e.g. 04-loading.md
	Path string // relative to the yard folder
	Text []byte
}

// Book is the chapters in order of their file names. It is read once and never changed.
type Book struct{ Chapters []Chapter }

// Chapter is one chapter in parts.
type Chapter struct {
	Name  string // file name without .md
	Title string
	Path  string // of the yard's own file; empty for a shipped one
	Parts []Part
}

// Part is a run of Markdown, or one picture, table or list.
type Part struct {
	Markdown string   // with a rune of the private range of Unicode, from First on, where each of Names goes in
	Names    []string // of values, in their order
	Block    string   // name of a picture, table or list; then the rest is empty
}

// First is the rune that stands for the first name of a part. Opens and Closes stand around words that may be left out.
const (
	First  = '\ue000'
	Opens  = '\uf8fe'
	Closes = '\uf8ff'
)

// Known gives the text of a part without the words around values that are not known; a line of which nothing is left but the mark of a
// list goes too.
func (p *Part) Known(known func(name string) bool) string {
	var out []string
	for line := range strings.SplitSeq(p.Markdown, "\n") {
		kept, cut := p.keep(line, known)
		if cut && strings.Trim(kept, " -*+0123456789.") == "" {
			continue
		}
		out = append(out, kept)
	}
	return strings.Join(out, "\n")
}

// keep is Known for one line; cut tells that something was left out.
func (p *Part) keep(line string, known func(name string) bool) (kept string, cut bool) {
	var all, span strings.Builder
	inside, lacks := false, false
	for _, c := range line {
		switch {
		case c == Opens:
			inside, lacks = true, false
			span.Reset()
		case c == Closes:
			if inside = false; lacks {
				cut = true
			} else {
				all.WriteString(span.String())
			}
		case inside:
			span.WriteRune(c)
			lacks = lacks || c >= First && c < First+rune(len(p.Names)) && !known(p.Names[c-First])
		default:
			all.WriteRune(c)
		}
	}
	return all.String(), cut
}

// Load reads the shipped chapters.
// The error is finding.Faults of the chapters, or one of reading.
func Load(content fs.FS) (*Book, error) {
	names, err := fs.Glob(content, folder+"/*.md")
	if err != nil {
		return nil, err
	}
	var shipped []Source
	for _, name := range names {
		text, err := fs.ReadFile(content, name)
		if err != nil {
			return nil, err
		}
		shipped = append(shipped, Source{Name: path.Base(name), Path: name, Text: text})
	}
	b, faults := (&Book{}).with(shipped, false)
	if len(faults) > 0 {
		return nil, faults
	}
	return b, nil
}

// With lays the yard's own chapters over the book: a file of the same name takes the place of a chapter, another is a
// further chapter. The faults are those of all files.
func (b *Book) With(own []Source) (*Book, finding.Faults) { return b.with(own, true) }

func (b *Book) with(sources []Source, own bool) (*Book, finding.Faults) {
	var faults finding.Faults
	out := &Book{Chapters: slices.Clone(b.Chapters)}
	for _, s := range sources {
		c, wrong := read(s)
		faults = append(faults, wrong...)
		if own {
			c.Path = s.Path
		}
		at := slices.IndexFunc(out.Chapters, func(o Chapter) bool { return o.Name == c.Name })
		if at < 0 {
			out.Chapters = append(out.Chapters, c)
			continue
		}
		out.Chapters[at] = c
	}
	slices.SortStableFunc(out.Chapters, func(a, b Chapter) int { return strings.Compare(a.Name, b.Name) })
	faults.Sort()
	return out, faults
}

// Names lists every name that a chapter uses, each once, in order.
func (c *Chapter) Names() []string {
	var out []string
	add := func(name string) {
		if name != "" && !slices.Contains(out, name) {
			out = append(out, name)
		}
	}
	for _, p := range c.Parts {
		add(p.Block)
		for _, name := range p.Names {
			add(name)
		}
	}
	return out
}

// fault says what is wrong at a line and column.
func fault(s Source, line, col int, hint, format string, args ...any) finding.Fault {
	return finding.Fault{Place: finding.Place{File: s.Path, Line: line, Col: col}, Says: fmt.Sprintf(format, args...), Hint: hint}
}
