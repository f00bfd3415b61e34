package site

import (
	"net/url"
	"path"
	"strconv"
	"strings"

	"hullfile/engine/finding"
)

// Where the pages lie, relative to the folder of the hull.
const (
	findingsPath  = "findings.html"
	boatPath      = "boat.html"
	structurePath = "structure.html"
	weightPath    = "weight.html"
	afloatPath    = "afloat.html"
	loadingPath   = "loading.html"
	trialsPath    = "trials.html"
	documentsPath = "documents.html"
	methodsPath   = "methods.html"
	proofsPath    = "proofs.html"
	recordsPath   = "records.html"
)

// target is where a subject of a check or a finding is shown.
type target struct {
	path   string // root-relative
	anchor string // empty for the page itself
	no     string // section number, for print
}

// spot is a page, or an anchor on it.
type spot struct{ path, anchor string }

// subjects maps every subject that the engine speaks of to the page that shows it. It is the only such map.
func (b *book) subjects() {
	no := map[string]string{}
	for _, s := range b.flat() {
		no[s.path] = s.no
	}
	add := func(subject, path, anchor string) { b.targets[subject] = target{path, anchor, no[path]} }
	for _, s := range b.flat() {
		add(strings.ToLower(s.title), s.path, "")
	}
	for _, word := range []string{"identity", "builder", "issue", "hull", "yard", "boat"} {
		add(word, boatPath, "")
	}
	add("weights", weightPath, "")
	add("lines", boatPath, "lines")
	add("plate", loadingPath, "")
	add("trial", trialsPath, "")
	add("craft", structurePath, "craft")
	d := b.dossier
	b.structureSubjects(add)
	for _, w := range d.Weight.Items {
		add("weight "+w.Record.ID, weightPath, b.anchors.take("weight-"+w.Record.ID))
	}
	for _, w := range d.Weight.Weighings {
		add("weighing "+w.Record.ID, weightPath, b.anchors.take("weighing-"+w.Record.ID))
	}
	b.afloatSubjects(add)
	b.trackSubjects(add)
	for _, t := range d.Trials.Trials {
		add("trial "+t.Record.ID, trialsPath, b.anchors.take("trial-"+t.Record.ID))
	}
	b.underwaySubjects(add)
	b.metalSubjects(add)
	b.seamSubjects(add)
	b.requirementSubjects(add)
	b.surveySubjects(add)
	for _, doc := range d.Documents.Documents {
		add("document "+doc.Record.ID, documentsPath, b.anchors.take("document-"+doc.Record.ID))
	}
	for _, p := range d.Builder.People {
		add("person "+p.ID, boatPath, b.anchors.take("person-"+p.ID))
	}
	for _, i := range d.Builder.Instruments {
		add("instrument "+i.ID, boatPath, b.anchors.take("instrument-"+i.ID))
	}
}

func (b *book) sectionOf(path string) *section {
	for _, s := range b.tops {
		if s.path == path {
			return s
		}
	}
	return b.cover
}

// find gives the target of a subject. A subject that says more than a key ("trial T1 setting 4000") leads to the
// longest beginning that is known; ok is false where nothing is.
func (b *book) find(subject string) (t target, ok bool) {
	for s := subject; s != ""; {
		if t, ok = b.targets[s]; ok {
			return t, true
		}
		cut := strings.LastIndexByte(s, ' ')
		if cut < 0 {
			return target{}, false
		}
		s = s[:cut]
	}
	return target{}, false
}

// disciplines says which page works out what a rule checks, for findings and checks whose subject is the boat as a whole.
func (b *book) disciplines() {
	d := b.dossier
	of := func(path string, checks []finding.Check, findings []finding.Finding) {
		for _, c := range checks {
			b.rulePage[c.Rule] = path
		}
		for _, f := range findings {
			b.rulePage[f.Rule] = path
		}
	}
	of(structurePath, d.Structure.Checks, d.Structure.Findings)
	of(structurePath, nil, d.Grid.Findings)
	of(weightPath, d.Weight.Checks, d.Weight.Findings)
	of(afloatPath, d.Loading.Checks, d.Loading.Findings)
	of(afloatPath, d.Stability.Checks, d.Stability.Findings)
	of(loadingPath, d.Capacity.Checks, d.Capacity.Findings)
	b.trackDisciplines(of)
	of(trialsPath, d.Trials.Checks, d.Trials.Findings)
	b.underwayDisciplines(of)
	b.metalDisciplines(of)
	b.seamDisciplines(of)
	b.requirementDisciplines(of)
	of(surveyPath, nil, d.Survey.Findings)
	of(documentsPath, d.Documents.Checks, d.Documents.Findings)
}

// shownAt gives the page that shows what a finding or a check is about: that of its subject, but where the subject is
// the boat as a whole, that of the discipline which found it. What no other page shows stands among the checks of the
// boat.
func (b *book) shownAt(rule, subject string) (t target, ok bool) {
	if path, ruled := b.rulePage[rule]; ruled && (subject == "boat" || subject == "") {
		s := b.sectionOf(path)
		return target{path: path, no: s.no}, true
	}
	if t, ok = b.find(subject); ok {
		return t, true
	}
	if path, ruled := b.rulePage[rule]; ruled && path == structurePath {
		return target{path: path, no: b.sectionOf(path).no}, true // a frame, a stringer: what the grid is laid from
	}
	s := b.sectionOf(boatPath)
	return target{path: s.path, no: s.no}, s.path == boatPath
}

// leaf is one page in the making: it knows how to write a way from itself to another place.
type leaf struct {
	*book
	at *section
	up string // "../" as often as the page lies below the folder of the hull
}

func (b *book) leaf(at *section) *leaf {
	return &leaf{b, at, strings.Repeat("../", strings.Count(at.path, "/"))}
}

// to gives the way to a root-relative path and an anchor there.
func (l *leaf) to(path, anchor string) string {
	if anchor == "" {
		return l.up + escapePath(path)
	}
	return l.up + escapePath(path) + "#" + anchor
}

// subject gives a link to where a subject is shown, or the words alone.
func (l *leaf) subject(subject string) Link { return l.subjectAs(subject, subject) }

func (l *leaf) subjectAs(subject, text string) Link {
	t, ok := l.find(subject)
	return l.way(t, ok, text)
}

// about gives a link to where a finding or a check of a rule is shown, under the name of its subject.
func (l *leaf) about(rule, subject, name string) Link {
	t, ok := l.shownAt(rule, subject)
	if ok && subjectWords(subject) == "" {
		return l.way(t, ok, strings.ToLower(l.sectionOf(t.path).title))
	}
	return l.way(t, ok, spoken(name))
}

func (l *leaf) way(t target, ok bool, text string) Link {
	if !ok {
		return Link{Text: text}
	}
	if t.path == l.at.path && t.anchor == "" {
		return Link{Text: text, Href: "#main"}
	}
	if t.path == l.at.path {
		return Link{Text: text, Href: "#" + t.anchor}
	}
	return Link{Text: text, Href: l.to(t.path, t.anchor), To: t.no}
}

// anchor gives the anchor under which a subject is shown on its page.
func (b *book) anchor(subject string) string { return b.targets[subject].anchor }

// section gives a link to a page of the contents by its title.
func (l *leaf) section(s *section) Link {
	if s == nil {
		return Link{}
	}
	return Link{Text: s.title, Href: l.to(s.path, ""), To: s.no}
}

// place gives a link to a line of a record file inside the technical file, or the words alone where the file is not
// part of it. The text is the end of the path; the record's page shows all of it.
func (l *leaf) place(p finding.Place) Link {
	if !p.Known() {
		return Link{}
	}
	names := l.lineNames(p.File)
	line := ""
	if p.Line > 0 {
		line = ":" + strconv.Itoa(p.Line)
	}
	if !l.isRecord[p.File] {
		return Link{Text: names.text + line}
	}
	l.cited.cite(p, l.at)
	if line == "" {
		return Link{Text: names.text, Href: l.up + names.page}
	}
	return Link{Text: names.text + line, Href: l.up + names.page + "#L" + line[1:]}
}

// lineName is what links to lines of one record file have in common: the end of its path, and its page.
type lineName struct{ text, page string }

func (b *book) lineNames(file string) lineName {
	names, made := b.named[file]
	if !made {
		names = lineName{shortPath(file), escapePath(recordPage(file))}
		b.named[file] = names
	}
	return names
}

// places gives links to several lines, each once. After the first of a file its further lines are named by their number.
func (l *leaf) places(all []finding.Place) []Link {
	if len(all) == 0 {
		return nil
	}
	out, seen := make([]Link, 0, len(all)), make(map[Link]bool, len(all))
	last := ""
	for _, p := range all {
		link := l.place(p)
		if link.Text == "" || seen[link] {
			continue
		}
		seen[link] = true
		if p.File == last && p.Line > 0 {
			link.Text = strconv.Itoa(p.Line)
		}
		last = p.File
		out = append(out, link)
	}
	return out
}

// shortPath gives the last two parts of a path: enough to tell a design's file from a hull's.
func shortPath(p string) string {
	dir, file := path.Split(p)
	if dir == "" {
		return file
	}
	return path.Base(dir) + "/" + file
}

// recordFolder and recordLine part the name of a record line: "HL74/" and "parts.csv:5". Without a folder the first is empty.
func recordFolder(text string) string { return text[:strings.LastIndexByte(text, '/')+1] }
func recordLine(text string) string   { return text[len(recordFolder(text)):] }

// recordPage is where the text of a record file is shown.
func recordPage(file string) string { return "records/" + file + ".html" }

// needsEscape reports whether a sign may not stand in a path as it is, or may not everywhere.
func needsEscape(r rune) bool {
	return (r < 'a' || r > 'z') && (r < 'A' || r > 'Z') && (r < '0' || r > '9') && r != '/' && r != '-' && r != '_' && r != '.'
}

// escapePath escapes each part of a path for use in a link.
func escapePath(p string) string {
	if !strings.ContainsFunc(p, needsEscape) {
		return p // as nearly all are
	}
	parts := strings.Split(p, "/")
	for i, part := range parts {
		parts[i] = url.PathEscape(part)
	}
	return strings.Join(parts, "/")
}
