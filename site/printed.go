package site

import (
	"bytes"
	"html/template"
	"path"
	"slices"
	"strconv"
	"strings"
)

// A print edition is all pages of a book but the bench sheets on one page, set for paper: title page, contents with the number of each page, and
// sections that begin on a new sheet and are counted for themselves, so that the number of a page follows from the
// section and need not be measured. Figures and tables are numbered by section; a link to one prints its number.

// printName is the print edition of a book; printStyle the style sheet that numbers its pages.
const (
	printName  = "print.html"
	printStyle = "assets/print.css"
)

// joinedPage is a page of a book as it was written.
type joinedPage struct {
	section *section
	html    []byte
}

// PrintedPage is a print edition.
type PrintedPage struct {
	Kind     string // "Technical file", "Owner's book"
	Number   string
	Name     string
	Title    string
	Block    Block
	Facts    []Fact
	Root     string
	Contents []PrintedLine
	Figures  []PrintedLine
	Tables   []PrintedLine
	OnlyTops bool // figures and tables of pages further down are not listed
	Sections []PrintedSection
	Volume   string // "Volume 2 of 6: The boat reckoned"; empty where the edition is one page
	Volumes  []Link // the volumes, on the page of all of it and in each
	Version  string
	Caution  template.HTML
}

// PrintedLine is one line of the contents.
type PrintedLine struct {
	No, Title, Href, Page string
	Below                 bool
	section               *section
}

// PrintedSection is one page of the book inside the print edition.
type PrintedSection struct {
	ID, Class string
	Below     bool
	Text      template.HTML
}

// joiner puts pages together. Every identifier gets the prefix of its page, every link to another page becomes one
// inside the edition, or inside the volume in which that page stands.
type joiner struct {
	pages   []joinedPage
	texts   [][]byte // of the pages, with numbers in their captions
	byPath  map[string]*section
	labels  map[string]string // identifier in the edition -> "Table 3.1-2"
	figures []PrintedLine
	tables  []PrintedLine

	volumes map[*section]int // from 1; nil where the edition is one page
	volume  int              // that is being written
}

func newJoiner(pages []joinedPage) *joiner {
	j := &joiner{pages: pages, byPath: map[string]*section{}, labels: map[string]string{}}
	for _, p := range pages {
		j.byPath[p.section.path] = p.section
	}
	return j
}

// printedID is the identifier of a section in the edition: s3-1 for section 3.1.
func printedID(s *section) string {
	if s.no == "" {
		return "s0"
	}
	return "s" + strings.ReplaceAll(s.no, ".", "-")
}

// pageNumber is the number of the first page of a section: 3.1-1.
func pageNumber(s *section) string {
	if s.no == "" {
		return "0-1"
	}
	return s.no + "-1"
}

// sections gives the pages ready to stand one after the other. It goes over them twice: first to number figures and
// tables, then to write links with the numbers.
func (j *joiner) sections() []PrintedSection {
	if j.texts == nil {
		j.texts = make([][]byte, len(j.pages))
		for i, p := range j.pages {
			j.texts[i] = j.numbered(p.section, mainOf(p.html))
		}
	}
	var out []PrintedSection
	for i, p := range j.pages {
		if j.here(p.section) {
			out = append(out, PrintedSection{ID: printedID(p.section), Class: "sheet-" + printedID(p.section), Below: p.section.above != nil, Text: template.HTML(j.linked(p.section, j.texts[i]))}) //nolint:gosec // made by our own templates
		}
	}
	return out
}

// mainOf cuts out of a written page what stands between its heading and its way on.
func mainOf(page []byte) []byte {
	_, page, _ = bytes.Cut(page, []byte(`<main id="main" tabindex="-1">`))
	if at := bytes.LastIndex(page, []byte("</main>")); at >= 0 {
		page = page[:at]
	}
	if at := bytes.Index(page, []byte("<h1")); at > 0 {
		page = page[at:]
	}
	if at := bytes.LastIndex(page, []byte(`<nav class="turn"`)); at >= 0 {
		page = page[:at]
	}
	return page
}

// numbered puts numbers into captions, and keeps which identifiers stand in which table.
func (j *joiner) numbered(s *section, text []byte) []byte {
	var out bytes.Buffer
	out.Grow(len(text) + len(text)/16)
	tables, figures, inside := 0, 0, ""
	no := s.no
	if no == "" {
		no = "0"
	}
	eachTag(text, func(before, tag, rest []byte) {
		out.Write(before)
		name := tagName(tag)
		switch {
		case name == "/table":
			inside = ""
		case name == "caption" && !bytes.Contains(tag, []byte("aside")):
			tables++
			inside = "Table " + no + "-" + strconv.Itoa(tables)
			j.tables = append(j.tables, PrintedLine{No: inside, section: s, Href: "#" + printedID(s), Page: pageNumber(s), Below: s.above != nil, Title: captionBefore(rest, "</caption>")})
		case name == "figcaption":
			figures++
			j.figures = append(j.figures, PrintedLine{No: "Figure " + no + "-" + strconv.Itoa(figures), section: s, Href: "#" + printedID(s), Page: pageNumber(s), Below: s.above != nil, Title: firstSentence(captionBefore(rest, "</figcaption>"))})
		}
		if inside != "" {
			if id := attribute(tag, "id"); id != "" {
				j.labels[printedID(s)+"-"+id] = inside
			}
		}
		out.Write(tag)
		switch name {
		case "caption":
			if inside != "" {
				out.WriteString(`<span class="capno">` + inside + "</span> ")
			}
		case "figcaption":
			out.WriteString(`<span class="capno">Figure ` + no + "-" + strconv.Itoa(figures) + "</span> ")
		}
	})
	return out.Bytes()
}

// linked writes identifiers and links for the edition, and headings by their depth in it.
func (j *joiner) linked(s *section, text []byte) string {
	var out bytes.Buffer
	out.Grow(len(text) + len(text)/8)
	deeper := 1
	if s.above != nil {
		deeper = 2
	}
	prefix := printedID(s) + "-"
	eachTag(text, func(before, tag, _ []byte) {
		out.Write(before)
		if len(tag) == 0 {
			return
		}
		if keepsAsItIs(tag) {
			out.Write(tag)
			return
		}
		if level := headingLevel(tag); level > 0 {
			writeHeading(&out, tag, level, min(level+deeper, 6), prefix)
			return
		}
		to := ""
		if href := attribute(tag, "href"); href != "" && tagName(tag) != "use" {
			to = j.way(s, href)
		}
		writeTag(&out, tag, prefix, to, j.labels)
	})
	return out.String()
}

// way gives a link inside the edition. What is not a page of the book is a file beside it.
func (j *joiner) way(s *section, href string) string {
	if href == "#main" {
		return "#" + printedID(s)
	}
	if strings.HasPrefix(href, "#") {
		return "#" + printedID(s) + "-" + href[1:]
	}
	if webAddress(href) {
		return href
	}
	file, anchor, _ := strings.Cut(href, "#")
	at := path.Join(path.Dir(s.path), file)
	to := j.byPath[unescapePath(at)]
	switch {
	case to == nil:
		return at
	case anchor != "":
		return j.file(to) + "#" + printedID(to) + "-" + anchor
	}
	return j.file(to) + "#" + printedID(to)
}

// lists gives the lists of figures and tables; of a long book those of its main sections only.
func (j *joiner) lists() (figures, tables []PrintedLine, onlyTops bool) {
	figures, tables = j.listed(j.figures), j.listed(j.tables)
	if len(figures)+len(tables) <= longList {
		return figures, tables, false
	}
	below := func(l PrintedLine) bool { return l.Below }
	return slices.DeleteFunc(figures, below), slices.DeleteFunc(tables, below), true
}

// longList is the number of figures and tables that a list at the front still tells all of.
const longList = 100

// contents lists the sections with their pages.
func (j *joiner) contents() []PrintedLine {
	var out []PrintedLine
	for _, p := range j.pages {
		if s := p.section; j.here(s) {
			out = append(out, PrintedLine{No: s.no, Title: s.title, Href: "#" + printedID(s), Page: pageNumber(s), Below: s.above != nil})
		}
	}
	return out
}

// pageRules are the style rules that give every section pages of its own, counted for themselves, with its name at the head.
func (j *joiner) pageRules(left string) string {
	var b strings.Builder
	for _, p := range j.pages {
		id, no := printedID(p.section), strings.TrimSuffix(pageNumber(p.section), "1")
		head := strings.TrimSpace(p.section.no + " " + p.section.title)
		b.WriteString("@page " + id + "{counter-increment:n" + id + ";@top-left{content:" + cssString(left) + "}@top-right{content:" + cssString(head) + "}@bottom-center{content:" + cssString(no) + " counter(n" + id + ")}@bottom-right{content:counter(page) \" / \" counter(pages);font:8pt \"Liberation Sans\",Arial,sans-serif;color:#565b61}}\n")
		b.WriteString(".sheet-" + id + "{page:" + id + "}\n")
	}
	return b.String()
}
