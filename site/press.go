package site

import (
	"bytes"
	"context"
	"fmt"
	"html/template"
	"io/fs"
	"slices"
	"strings"
	"sync"

	"hullfile/content"
	"hullfile/site/typeset"
	"hullfile/templates"
)

// press is what all books of a run share. It may be used from many goroutines; only its caches grow.
type press struct {
	job     Job
	hands   int                          // how many print the pages of one book
	pages   func() (*typeset.Set, error) // the frame, the parts, and "base KIND" and "main KIND" for every page kind
	soon    func()                       // begins to make them, because a book or the register will be printed
	cache   cache
	lasting *cache // that of the templates: what later runs can use too
	rooms   rooms
	style   []byte
	script  []byte
	printed []byte                   // style of a print edition
	find    []byte                   // the script of a long register
	notes   map[string]template.HTML // content/notes by name without .md
	schema  []byte                   // of results.json
}

// pageKinds are the templates that a page can be made of: NAME.html defines "main".
var pageKinds = []string{
	"cover", "findings", "boat", "structure", "zone", "family", "frames", "model", "local", "bracket", "whatif", "renewal", "opinion", "panel", "weight", "afloat", "loading", "trials", "track", "run", "moves", "prediction", "ride", "limits", "hours", "materials", "welding", "seams", "joint", "inspections", "repairs", "holds", "leaks", "trace", "requirements", "requirementlist", "draft", "bench", "benchsheet", "survey", "owner", "chapter", "printed", "glossary", "from", "documents", "methods", "sheet", "limitrows", "proofs", "records", "record", "proving", "tables", "compare", "register", "design", "ready",
}

func newPress(job Job) (*press, error) {
	if job.Templates.set == nil {
		job.Templates = NewTemplates()
	}
	p := &press{job: job, hands: 1, pages: job.Templates.set, lasting: job.Templates.made}
	p.soon = sync.OnceFunc(func() { go p.pages() })
	var err error
	if p.style, err = joined(templates.Files, "book.css", "chart.css", "helm.css", "print.css", "bench.css", "survey.css", "owner.css", "requirements.css", "structure.css"); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	if p.printed, err = fs.ReadFile(templates.Files, "printed.css"); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	if p.script, err = fs.ReadFile(templates.Files, "book.js"); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	if p.find, err = fs.ReadFile(templates.Files, "register.js"); err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	if p.notes, err = shippedNotes(content.Files); err != nil {
		return nil, fmt.Errorf("notes: %w", err)
	}
	if p.schema, err = fs.ReadFile(content.Files, "schema/results.json"); err != nil {
		return nil, fmt.Errorf("schema: %w", err)
	}
	return p, nil
}

// Templates are the page templates of this program, with the markup of method sheets, proofs and limits. Whoever renders again and
// again makes them once and gives them to every job; they are read when the first page is printed.
type Templates struct {
	set  func() (*typeset.Set, error)
	made *cache
}

// NewTemplates gives them unread.
func NewTemplates() Templates { return Templates{sync.OnceValues(pageSet), &cache{}} }

// Anew gives the same templates without that markup, for sheets that were read anew: that of the old ones is of no use any more.
func (t Templates) Anew() Templates { return Templates{t.set, &cache{}} }

// pageSet is the templates, ready to be printed.
func pageSet() (*typeset.Set, error) {
	pages, err := parsePages(templates.Files)
	if err != nil {
		return nil, fmt.Errorf("templates: %w", err)
	}
	return typeset.New(pages, pageFuncs()), nil
}

// parsePages parses every template once, all into one set: what stands before and after the main part of a page, and the
// parts, are copied and looked through once and not for every page kind. The main part of a kind goes by a name of its own.
func parsePages(files fs.FS) (*template.Template, error) {
	all, err := template.New("all").Option("missingkey=error").Funcs(pageFuncs()).ParseFS(files, "base.html", "parts*.html")
	if err != nil {
		return nil, err
	}
	for _, kind := range pageKinds {
		text, err := fs.ReadFile(files, kind+".html")
		if err != nil {
			return nil, err
		}
		own := strings.NewReplacer(`{{define "main"}}`, `{{define "main `+kind+`"}}`, `{{template "main" `, `{{template "main `+kind+`" `).Replace(string(text))
		frame := `{{define "base ` + kind + `"}}{{template "before" .}}{{template "main ` + kind + `" .Body}}
{{template "after" .}}{{end}}`
		if _, err := all.New(kind + ".html").Parse(own + frame); err != nil {
			return nil, err
		}
	}
	return all, nil
}

// pageFuncs are the functions that templates may call beside the built-in ones.
func pageFuncs() template.FuncMap {
	return template.FuncMap{"capital": capital, "cells": cells, "recordFolder": recordFolder, "recordLine": recordLine}
}

// joined puts style sheets one after the other. One that is not there is left out: not every part of the site has its own.
func joined(files fs.FS, names ...string) ([]byte, error) {
	var out bytes.Buffer
	for _, name := range names {
		text, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		out.Write(text)
		out.WriteByte('\n')
	}
	return out.Bytes(), nil
}

// set prints a template after what is in out already.
func (p *press) set(out []byte, name string, data any) ([]byte, error) {
	pages, err := p.pages()
	if err != nil {
		return out, err
	}
	return pages.Append(out, name, data)
}

// print prints a page over what the slice held before.
func (p *press) print(over []byte, kind string, page Page) ([]byte, error) {
	out, err := p.set(over[:0], "base "+kind, page)
	if err != nil {
		return out, fmt.Errorf("page %s: %w", kind, err)
	}
	return out, nil
}

// assets writes the style sheet and the script, with what more a page needs of it. The running head of a printed page
// is part of the style sheet, because only there can a page's margin hold words.
func (p *press) assets(f *folder, left, right string, more ...[]byte) error {
	style := append([]byte(nil), p.style...)
	style = append(style, runningHead(left, right)...)
	if err := f.write("assets/book.css", style); err != nil {
		return err
	}
	return f.write("assets/book.js", slices.Concat(append([][]byte{p.script}, more...)...))
}

// runningHead gives the style rules that print words at the head of every page of paper.
func runningHead(left, right string) string {
	return "@page{@top-left{content:" + cssString(left) + "}@top-right{content:" + cssString(right) + "}}\n"
}

// cssString gives a text as a string of a style sheet. Everything but letters, digits, spaces and a few signs that mean
// nothing there is written as an escape, so that nothing in a record can end the string.
func cssString(text string) string {
	var b strings.Builder
	b.WriteByte('"')
	for _, r := range text {
		if plainRune(r) || r == ' ' || r == ',' {
			b.WriteRune(r)
			continue
		}
		if r == 0 {
			continue
		}
		fmt.Fprintf(&b, "\\%06x", r)
	}
	b.WriteByte('"')
	return b.String()
}

// book makes the folder of one hull and says what became of it.
func (p *press) book(ctx context.Context, o *opened, stage *stage) (line, error) {
	f, err := newFolder(ctx, stage.fresh(o.hull.Number))
	if err != nil {
		return line{}, err
	}
	defer f.close()
	b := newBook(p, o, f)
	defer b.printer.close()
	if err := b.write(); err != nil {
		return line{}, err
	}
	sums, err := f.closeSums()
	return b.line(sums), err
}
