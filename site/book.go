package site

import (
	"errors"
	"html/template"
	"slices"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// book is the technical file of one hull in the making. It belongs to one goroutine; its printer has others.
type book struct {
	press   *press
	dossier *engine.Dossier
	hull    *record.Hull
	yard    *record.Yard
	near    []engine.Neighbour // what is taken from other hulls
	folder  *folder
	printer *printer

	cover      *section
	tops       []*section // the contents
	head       string     // of the group that the next of them begins
	order      []*section // all pages in reading order
	open       map[*section]int
	leaves     map[*section][]finding.Standing // what the findings of a page and of those below it leave of its standing
	railLines  map[railKey]template.HTML
	rails      map[string][]RailItem // the contents without a page of its own, by the way up to the folder
	targets    map[string]target
	rulePage   map[string]string // page of the discipline that a rule belongs to
	findings   []finding.Finding // in the order in which they are told
	toldOn     map[string][]int  // the findings that a page shows, by their place in that order
	toldAt     map[spot][]int    // the same at one anchor of it, or at none
	anchors    slugs
	panelSlugs slugs
	jointSlugs slugs
	zones      map[string]*section // pages of the zones of the structure
	panelAt    map[string]*section // pages of panels listed by hand
	kin        []*family
	judged     *judgements
	modelAt    map[int]*section  // pages of rings and grillages
	seconds    map[int]*section  // pages of the rules that do not govern, by their place among the rules
	secondAt   map[string]string // anchor of a panel or member on those pages
	brackets   []*bracketKind
	fittingAt  map[string]*section
	jointPage  map[string]string // page of a joint by its key
	sheets     []*method.Sheet
	records    []record.File
	isRecord   map[string]bool
	named      map[string]lineName // by the path of a record file
	cited      uses                // lines of records by the pages that cite them
	origins    []origin            // worked values, in the order of the pages
	limitsAt   map[string]string   // pages of tables of limits by their file
	tracks     map[string]string   // pages of logs, runs and manoeuvres by their subject

	owner  *book                // of the owner's chapters, once it was asked for
	values map[string]Figure    // of an owner's book, that chapters may name
	blocks map[string]OwnerPart // of an owner's book, by the names in chapters

	inputs []InputRow // of the working that is being made
	steps  []StepRow
	pages  int
	copied map[string]string // papers in the book, by their path in it, with their hash
	root   string            // hash of the contents list
	csv    []*csvTable       // the tables for other programs
}

func newBook(p *press, o *opened, f *folder) *book {
	if o.dossier == nil {
		o.dossier = o.reckon()
	}
	d := o.dossier
	b := &book{
		press: p, dossier: d, hull: o.hull, yard: o.yard, near: o.near, records: enclosed(o.files, d.Asked), folder: f, printer: p.printer(f),
		open: map[*section]int{}, toldOn: map[string][]int{}, toldAt: map[spot][]int{}, leaves: map[*section][]finding.Standing{}, cited: uses{}, railLines: map[railKey]template.HTML{}, rails: map[string][]RailItem{}, targets: map[string]target{}, rulePage: map[string]string{}, anchors: slugs{}, panelSlugs: slugs{}, jointSlugs: slugs{}, zones: map[string]*section{}, panelAt: map[string]*section{}, modelAt: map[int]*section{}, seconds: map[int]*section{}, secondAt: map[string]string{}, fittingAt: map[string]*section{}, jointPage: map[string]string{}, tracks: map[string]string{}, limitsAt: map[string]string{}, isRecord: map[string]bool{}, copied: map[string]string{}, named: map[string]lineName{},
	}
	for _, s := range slices.Concat(structureSheets(&d.Structure), d.Stability.Sheets, d.Capacity.Sheets, b.underwaySheets(), d.Welding.Sheets) {
		if !slices.Contains(b.sheets, s) {
			b.sheets = append(b.sheets, s)
		}
	}
	for _, file := range b.records {
		b.isRecord[file.Path] = true
	}
	b.contents()
	b.order = b.flat()
	b.subjects()
	b.disciplines()
	b.findings = told(d.Findings)
	b.countOpen()
	return b
}

// write makes all files of the book. The pages that print the hash of the contents list come last but one.
func (b *book) write() error {
	for _, step := range []func() error{b.assets, b.documents, b.logs, b.rawRecords, b.writeTables, b.surveyBlanks, b.machineCopies, b.ownerFiles, b.innerPages, b.search, b.latePages, b.printFile} {
		if err := step(); err != nil {
			return err
		}
	}
	return nil
}

func (b *book) assets() error {
	left, right := b.runningWords()
	return b.press.assets(b.folder, left, right)
}

// runningWords are what stands at the head of every page of paper.
func (b *book) runningWords() (left, right string) {
	issue := "issue not recorded"
	if b.hull.Issue.Number.Set {
		issue = "issue " + wordsOfInt(b.hull.Issue.Number.V)
	}
	if b.hull.Issue.Date.Set {
		issue += ", " + b.hull.Issue.Date.V.String()
	}
	right = b.dossier.Builder.Name.V
	if b.dossier.Builder.Invented.V {
		right += ", invented for demonstration"
	}
	return b.hull.Number + ", " + issue, right
}

// machineCopies has what is read by programs written while the pages are made: it tells of the dossier, which nobody changes
// any more.
func (b *book) machineCopies() error {
	return errors.Join(b.printer.also(b.results), b.printer.also(b.rebuild))
}

func (b *book) innerPages() error {
	for _, s := range slices.Concat(b.pagesOf(false), b.pagesOf(true)) {
		page, err := b.page(s)
		if err != nil {
			return err
		}
		if err := b.printer.take(s, page); err != nil {
			return err
		}
	}
	return nil
}

// pagesOf gives the pages that tell of others, or all other ones; those that are made late are among neither.
func (b *book) pagesOf(others bool) []*section {
	var out []*section
	for _, s := range b.order {
		if !s.late && s.others == others {
			out = append(out, s)
		}
	}
	return out
}

// page makes the page of a section.
func (b *book) page(s *section) (Page, error) {
	l := b.leaf(s)
	body, err := s.body(l)
	if err != nil {
		return Page{}, err
	}
	frame, err := l.frame(body)
	b.pages++
	return Page{frame, body}, err
}

// latePages waits for the other pages, closes the contents list and prints the pages that carry its hash, b.root: the cover, and what else is marked
// late. They are in SHA256SUMS and not in the contents list.
func (b *book) latePages() error {
	text := b.press.rooms.take(usualPage)
	defer func() { b.press.rooms.back(text) }()
	if err := b.printer.close(); err != nil {
		return err
	}
	root, err := b.folder.closeContents()
	if err != nil {
		return err
	}
	b.root = root
	for _, s := range b.order {
		if !s.late {
			continue
		}
		page, err := b.page(s)
		if err != nil {
			return err
		}
		if text, err = b.press.print(text, s.kind, page); err != nil {
			return err
		}
		if err := b.folder.writePage(s.path, text); err != nil {
			return err
		}
	}
	return nil
}

// rawRecords copies the record files as they were read.
func (b *book) rawRecords() error {
	for _, f := range b.records {
		if err := b.folder.write("records/"+f.Path, f.Text); err != nil {
			return err
		}
	}
	return nil
}

// told gives the findings by kind; within a kind they keep their order.
func told(all []finding.Finding) []finding.Finding {
	var out []finding.Finding
	for _, k := range finding.Kinds() {
		for _, f := range all {
			if f.Kind == k {
				out = append(out, f)
			}
		}
	}
	return out
}
