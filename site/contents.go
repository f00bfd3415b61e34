package site

import (
	"strconv"
	"strings"
)

// section is one page in the contents of a hull's book.
type section struct {
	no     string // "3.2"; empty on the cover
	title  string // as in the contents
	path   string // root-relative, with forward slashes
	kind   string // template
	body   func(*leaf) (any, error)
	above  *section
	kids   []*section
	head   string // of the group of the contents that begins with it
	others bool   // made after the pages that it tells of
	late   bool   // made when the contents list is closed, because it prints the hash of that list
}

// longRail is the number of pages below a section above which the rail does not list them; the section's own page does.
const longRail = 40

// contents lays out the pages of a book in reading order: zones and their panels below the structure, sheets below the methods, record
// files below the records. A new page is one line here, one struct, one template.
func (b *book) contents() {
	b.cover = &section{title: "Cover", path: coverName, kind: "cover", body: page((*leaf).coverPage), late: true}
	b.tops = append(b.tops, b.cover)
	b.top("Findings", findingsPath, "findings", page((*leaf).findingsPage))
	b.top("Boat", boatPath, "boat", page((*leaf).boatPage))
	b.group("The boat reckoned")
	b.structureContents(b.top("Structure", structurePath, "structure", page((*leaf).structurePage)))
	b.top("Weight", weightPath, "weight", page((*leaf).weightPage))
	b.top("Afloat", afloatPath, "afloat", page((*leaf).afloatPage))
	b.top("Loading and plates", loadingPath, "loading", page((*leaf).loadingPage))
	b.group("Under way")
	b.trackContents(b.top("Trials", trialsPath, "trials", page((*leaf).trialsPage)))
	b.underwayContents()
	b.group("Metal and seams")
	b.metalContents()
	b.seamContents()
	b.group("Asked and handed over")
	b.requirementContents()
	b.top("Survey sheet", surveyPath, "survey", page((*leaf).surveyPage))
	b.top("Owner's book", ownerPath, "owner", page((*leaf).ownerPage))
	b.top("Documents", documentsPath, "documents", page((*leaf).documentsPage))
	b.group("Sources and tools")
	methods := b.top("Methods", methodsPath, "methods", page((*leaf).methodsPage))
	b.methodSheets(methods)
	b.limitRows(methods)
	b.top("Proofs", proofsPath, "ready", page((*leaf).readyProofs))
	b.top("Where values came from", fromPath, "from", page((*leaf).fromPage)).others = true
	b.top("Words", glossaryPath, "glossary", page((*leaf).glossaryPage))
	b.recordFiles(b.top("Records", recordsPath, "records", page((*leaf).recordsPage)))
	b.top("Proving this file", provingPath, "proving", page((*leaf).provingPage))
	b.top("Tables for other programs", tablesPath, "tables", page((*leaf).tablesPage))
	b.benchContents()
}

// page fits a maker of one kind of body to the contents.
func page[T any](make func(*leaf) (T, error)) func(*leaf) (any, error) {
	return func(l *leaf) (any, error) { return make(l) }
}

func (b *book) methodSheets(above *section) {
	names := slugs{}
	for _, s := range b.sheets {
		below(above, s.Title, "methods/"+names.take(strings.TrimSuffix(s.Name, ".toml"))+".html", "ready",
			page(func(l *leaf) (ReadyPage, error) { return l.readySheet(s) }))
	}
}

func (b *book) recordFiles(above *section) {
	for _, f := range b.records {
		below(above, f.Path, recordPage(f.Path), "record",
			page(func(l *leaf) (RecordPage, error) { return l.recordPage(f) }))
		above.kids[len(above.kids)-1].others = true
	}
}

// group says under which words the sections that follow stand in the contents; a group without a section is not seen.
func (b *book) group(head string) { b.head = head }

func (b *book) top(title, path, kind string, body func(*leaf) (any, error)) *section {
	s := &section{no: strconv.Itoa(len(b.tops)), title: title, path: path, kind: kind, body: body, head: b.head}
	b.head = ""
	b.tops = append(b.tops, s)
	return s
}

func below(above *section, title, path, kind string, body func(*leaf) (any, error)) *section {
	no := above.no + "." + strconv.Itoa(len(above.kids)+1)
	s := &section{no: no, title: title, path: path, kind: kind, body: body, above: above}
	above.kids = append(above.kids, s)
	return s
}

// flat gives all sections in reading order.
func (b *book) flat() []*section {
	var out []*section
	var down func(all []*section)
	down = func(all []*section) {
		for _, s := range all {
			out = append(out, s)
			down(s.kids)
		}
	}
	down(b.tops)
	return out
}

// under reports whether a page is s or lies anywhere below it.
func (s *section) under(above *section) bool {
	for ; s != nil; s = s.above {
		if s == above {
			return true
		}
	}
	return false
}
