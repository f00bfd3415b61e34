package site

import (
	"bytes"
	"fmt"
	"html/template"
	"io/fs"
	"path"
	"strings"
	"sync"

	"github.com/yuin/goldmark"
	"github.com/yuin/goldmark/ast"
	"github.com/yuin/goldmark/extension"
	east "github.com/yuin/goldmark/extension/ast"
	"github.com/yuin/goldmark/text"

	"hullfile/engine/handbook"
)

// Note is a text of the yard's own, or of ours, on a page.
type Note struct {
	Title string
	Text  template.HTML
	Place Link
}

// shippedNotes renders content/notes/*.md.
func shippedNotes(files fs.FS) (map[string]template.HTML, error) {
	names, err := fs.Glob(files, "notes/*.md")
	if err != nil {
		return nil, err
	}
	out := map[string]template.HTML{}
	for _, name := range names {
		raw, err := fs.ReadFile(files, name)
		if err != nil {
			return nil, err
		}
		if out[strings.TrimSuffix(path.Base(name), ".md")], err = prose(withoutTitle(string(raw)), 3, nil); err != nil {
			return nil, fmt.Errorf("%s: %w", name, err)
		}
	}
	return out, nil
}

// withoutTitle takes away the title of a note of ours; the page has a heading of its own for it.
func withoutTitle(markdown string) string {
	if first, rest, found := strings.Cut(markdown, "\n"); found && strings.HasPrefix(first, "# ") {
		return rest
	}
	return markdown
}

// prose renders Markdown. Headings begin at the given level and skip none. Raw HTML is left out. A link may lead to a
// web or mail address, or name a subject of the file ("panel B3"), which way turns into a link; any other link, and
// every image, is left as its words.
func prose(markdown string, level int, way func(subject string) string) (template.HTML, error) {
	source := []byte(shallow(markdown))
	from := text.NewReader(source)
	doc := noteReader().Parser().Parse(from)
	tamer{level, way}.tame(doc, from)
	var out bytes.Buffer
	if err := noteReader().Renderer().Render(&out, source, doc); err != nil {
		return "", err
	}
	return template.HTML(out.String()), nil //nolint:gosec // goldmark's own output, raw HTML off
}

// noteReader reads Markdown and writes it. It keeps nothing of what it read, and is made once: to make it takes longer than a
// note does.
var noteReader = sync.OnceValue(func() goldmark.Markdown {
	return goldmark.New(goldmark.WithExtensions(extension.NewTable(extension.WithTableCellAlignMethod(extension.TableCellAlignNone)), extension.Strikethrough, extension.DefinitionList))
})

// tamer fits a note's tree into a page.
type tamer struct {
	level int
	way   func(subject string) string
}

// tame sets the heading levels and takes out links and images that may not stand.
func (t tamer) tame(doc ast.Node, reader text.Reader) {
	last := t.level - 1
	var loose []ast.Node
	//nolint:errcheck // the walker never returns an error
	ast.Walk(doc, func(n ast.Node, entering bool) (ast.WalkStatus, error) {
		if !entering {
			return ast.WalkContinue, nil
		}
		switch n := n.(type) {
		case *ast.Heading:
			n.Level = min(last+1, t.level+n.Level-1, 6)
			last = n.Level
		case *ast.Link:
			if !t.leads(n) {
				loose = append(loose, n)
			}
		case *ast.Image:
			loose = append(loose, n)
		case *ast.AutoLink:
			if !webAddress(string(n.URL(reader.Source()))) {
				loose = append(loose, n)
			}
		case *east.Table:
			n.SetAttributeString("class", []byte("plain"))
		case *east.TableCell:
			if _, head := n.Parent().(*east.TableHeader); head {
				n.SetAttributeString("scope", []byte("col"))
			}
		}
		return ast.WalkContinue, nil
	})
	for _, n := range loose {
		freeWords(n, reader.Source())
	}
}

// leads reports whether a link may stand, and gives a subject of the file its way.
func (t tamer) leads(n *ast.Link) bool {
	to := string(n.Destination)
	if webAddress(to) {
		return true
	}
	if t.way == nil {
		return false
	}
	href := t.way(strings.ReplaceAll(to, "%20", " "))
	n.Destination = []byte(href)
	return href != ""
}

func webAddress(to string) bool {
	low := strings.ToLower(to)
	for _, start := range []string{"https://", "http://", "mailto:", "tel:"} {
		if strings.HasPrefix(low, start) && len(low) > len(start) {
			return true
		}
	}
	return false
}

// freeWords puts a link's words, or an image's description, in its place.
func freeWords(n ast.Node, source []byte) {
	parent := n.Parent()
	if auto, ok := n.(*ast.AutoLink); ok {
		parent.ReplaceChild(parent, n, ast.NewString(auto.Label(source)))
		return
	}
	for child := n.FirstChild(); child != nil; {
		next := child.NextSibling()
		parent.InsertBefore(parent, n, child)
		child = next
	}
	parent.RemoveChild(parent, n)
}

// notesFor gives the yard's notes that belong on a page, in the order of the record.
func (l *leaf) notesFor(page string) ([]Note, error) {
	var out []Note
	for _, n := range l.hull.Notes {
		at := n.Page.V
		if at == "" {
			at = "boat"
		}
		if at != page {
			continue
		}
		text, err := prose(n.Text.V, 3, func(subject string) string { return l.subject(subject).Href })
		if err != nil {
			return nil, fmt.Errorf("note %s: %w", n.ID, err)
		}
		out = append(out, Note{Title: n.Title.V, Text: text, Place: l.place(n.At)})
	}
	return out, nil
}

// filled renders Markdown and puts values where their runes stand. Values are escaped here and never read as Markdown.
func filled(part *handbook.Part, values map[string]Figure) (template.HTML, error) {
	text, err := prose(part.Known(func(name string) bool { return values[name].Text != "" }), 2, nil)
	if err != nil {
		return "", err
	}
	var swap []string
	for i, name := range part.Names {
		swap = append(swap, string(handbook.First+rune(i)), valueMarkup(values[name]))
	}
	return template.HTML(strings.NewReplacer(swap...).Replace(string(text))), nil //nolint:gosec // goldmark's output and escaped values
}
