package site

import (
	"bytes"
	"encoding/json"
	"strings"

	"hullfile/engine/handbook"
)

// entry is one line of the search index: title, section number, way, words, and what kind of thing it is. The script ranks
// by where a word is found, and puts pages before what stands on them.
type entry struct {
	Title string `json:"t"`
	No    string `json:"n,omitempty"`
	Way   string `json:"h"`
	Words string `json:"w,omitempty"`
	Kind  string `json:"k,omitempty"` // empty for a page
}

// search writes the index as a classic script, because a page opened from a folder may load nothing else.
func (b *book) search() error {
	text, err := json.Marshal(b.entries())
	if err != nil {
		return err
	}
	return b.folder.write("assets/search.js", append(append([]byte("window.HULLFILE_SEARCH="), text...), ";\n"...))
}

func (b *book) entries() []entry {
	x := &index{book: b}
	x.pages()
	x.structure()
	x.recorded()
	x.built()
	x.asked()
	return append(x.all, b.deeper()...)
}

// index gathers the entries of one book.
type index struct {
	*book
	all []entry
}

// at adds an entry for a subject that has a page; a subject without one is left out.
func (x *index) at(title, subject string, words ...string) {
	t, ok := x.find(subject)
	if !ok {
		return
	}
	way := escapePath(t.path)
	if t.anchor != "" {
		way += "#" + t.anchor
	}
	kind, _, _ := strings.Cut(subject, " ")
	x.all = append(x.all, entry{title, t.no, way, strings.Join(words, " "), strings.ReplaceAll(kind, "_", " ")})
}

// pages adds the pages that have no entries with words of their own.
func (x *index) pages() {
	for _, s := range x.order {
		if s.kind == "record" || s.kind == "panel" && s.above != nil || s.kind == "joint" && x.jointPage != nil {
			continue
		}
		words := pageWords[s.path]
		if s.path == boatPath {
			id := &x.hull.Identity
			words = strings.Join([]string{words, id.Name.V, id.HIN.V, id.Owner.V}, " ")
		}
		x.all = append(x.all, entry{Title: s.title, No: s.no, Way: escapePath(s.path), Words: words})
	}
}

// structure adds panels, members and fittings, and the items of weight.
func (x *index) structure() {
	d := x.dossier
	for _, p := range d.Structure.Panels {
		x.at("Panel "+p.Record.ID, "panel "+p.Record.ID, p.Record.Where.V, p.Record.Zone.V, p.Record.Alloy.V, p.Record.Lot.V)
	}
	for i := range d.Structure.Members {
		m := d.Structure.Members[i].Record
		x.at(capital(m.ID), "member "+m.ID, m.Where.V, m.Zone.V, m.Section.V)
	}
	for i := range d.Structure.Fittings {
		f := d.Structure.Fittings[i].Record
		x.at("Fitting "+f.ID, "fitting "+f.ID, f.Kind.V, f.Where.V)
	}
	for _, w := range d.Weight.Items {
		x.at(w.Record.Name.V, "weight "+w.Record.ID, w.Record.ID, w.Record.Group.V)
	}
}

// recorded adds what was done on the water, papers and people.
func (x *index) recorded() {
	d := x.dossier
	for _, t := range d.Trials.Trials {
		x.at("Trial "+t.Record.ID, "trial "+t.Record.ID, t.Record.Place.V, t.Record.Date.V.String())
	}
	for i := range d.Logs.Logs {
		log := &d.Logs.Logs[i]
		x.at(log.Record.File.V, log.Subject(), log.Record.Kind.V)
	}
	for _, r := range x.hull.Rides {
		x.at("Ride "+r.ID, "ride "+r.ID, r.Place.V, r.Date.V.String())
	}
	for _, k := range x.hull.Looks {
		words := append([]string{k.Method.V, k.Date.V.String()}, k.Places.V...)
		for _, found := range k.Indications {
			words = append(words, found.Is.V, found.Action.V)
		}
		x.at("Look "+k.ID, "look "+k.ID, words...)
	}
	for _, p := range d.Documents.Documents {
		x.at(p.Record.Title.V, "document "+p.Record.ID, p.Record.ID, p.Record.Kind.V, p.Record.Number.V, p.Record.By.V)
	}
	for _, p := range d.Builder.People {
		x.at(p.Name.V, "person "+p.ID, p.ID, p.Role.V)
	}
}

// built adds metal, procedures and welders.
func (x *index) built() {
	d := x.dossier
	for _, lot := range d.Stock.Lots {
		x.at("Lot "+lot.Record.ID, "lot "+lot.Record.ID, lot.Record.Cast.V, lot.Record.Alloy.V, lot.Record.Certificate.V)
	}
	for _, p := range d.Stock.Parts {
		x.at("Part "+p.Record.ID, "part "+p.Record.ID, p.Record.Name.V, p.Record.Lot.V)
	}
	for _, p := range d.Welding.Procedures {
		x.at("Procedure "+p.Record.ID, "procedure "+p.Record.ID, p.Record.Title.V)
	}
	for i := range x.yard.Stock.Consumables {
		c := &x.yard.Stock.Consumables[i]
		x.at(capital(c.Kind.V)+" "+c.ID, "consumable "+c.ID, c.Classification.V, c.Batch.V, c.Cast.V, c.Certificate.V)
	}
	for i := range x.hull.Nonconformities {
		n := &x.hull.Nonconformities[i]
		x.at("Nonconformity "+n.ID, "nonconformity "+n.ID, n.About.V, n.Joint.V)
	}
	for i := range x.hull.Repairs {
		r := &x.hull.Repairs[i]
		x.at("Repair "+r.ID, "repair "+r.ID, r.Joint.V, r.Nonconformity.V)
	}
	for _, w := range d.Welding.Welders {
		x.at("Welder, stamp "+w.Record.Stamp.V, "welder "+w.Record.ID, w.Record.Person.V)
	}
}

// asked adds the items of requirements and the findings.
func (x *index) asked() {
	d := x.dossier
	for i := range d.Requirements.Lists {
		of := &d.Requirements.Lists[i]
		t, _ := x.find("list " + of.Record.Name)
		for j := range of.Items {
			it := &of.Items[j]
			x.all = append(x.all, entry{Title: it.Title(), No: t.no, Way: escapePath(t.path) + "#" + itemAnchor(it.Record.ID), Words: of.Record.Title.V + " " + it.Record.Asks.V, Kind: "requirement"})
		}
	}
	for i, f := range x.findings {
		x.all = append(x.all, entry{capital(string(f.Kind)) + ": " + f.Name(), x.sectionOf(findingsPath).no, findingsPath + "#f" + wordsOfInt(i+1), f.Says, "finding"})
	}
}

// deeper are the entries for what has no page of its own: seams, items of the survey sheet, worked values, words, chapters
// of the owner's book, and the keys of the records.
func (b *book) deeper() []entry {
	var out []entry
	no := func(path string) string { return b.sectionOf(path).no }
	if m := b.dossier.Seams; m != nil {
		for _, j := range m.Joints {
			if t, ok := b.find("joint " + j.Record.ID); ok {
				words := []string{j.Record.Where.V, j.Record.Category.V}
				for _, w := range j.Welds {
					words = append(words, w.ID)
				}
				for _, look := range j.Looks {
					words = append(words, look.ID)
				}
				out = append(out, entry{"Joint " + j.Record.ID, t.no, escapePath(t.path) + anchored(t.anchor), strings.Join(words, " "), "joint"})
			}
		}
	}
	for i := range b.dossier.Survey.Items {
		item := &b.dossier.Survey.Items[i]
		out = append(out, entry{capital(item.Subject), no(surveyPath), surveyPath + anchored(b.anchor("survey "+item.Key)), item.Key + " " + item.Where, "to look at"})
	}
	for i := range b.origins {
		o := &b.origins[i]
		out = append(out, entry{capital(o.name), o.at.no, escapePath(o.at.path) + anchored(o.anchor), o.at.title + " " + o.value.Text + " " + o.unit, "value"})
	}
	if b.press.job.Words != nil {
		for _, t := range b.press.job.Words.Terms {
			out = append(out, entry{capital(t.Word), no(glossaryPath), glossaryPath + anchored(wordID(t.Word)), strings.Join(t.Also, " ") + " " + t.Means, "word"})
		}
	}
	for i := range b.handbook().Chapters {
		c := &b.handbook().Chapters[i]
		way := ownerDir + c.Name + ".html"
		if i == 0 {
			way = ownerDir + coverName
		}
		out = append(out, entry{c.Title, no(ownerPath), way, b.press.chapterWords(c), "owner's book"})
	}
	for _, f := range b.records {
		out = append(out, entry{f.Path, no(recordsPath), escapePath(recordPage(f.Path)), wordsWithin(keysOf(f.Text)), "record"})
	}
	return out
}

func anchored(anchor string) string {
	if anchor == "" {
		return ""
	}
	return "#" + anchor
}

// mostRecordWords is how much of a record the index takes: its first lines hold the keys and names, and a log of thousands
// of rows would be most of the index.
const mostRecordWords = 6000

// keysOf gives the beginning of a record as words.
func keysOf(text []byte) []byte {
	text = bytes.Clone(text[:min(len(text), mostRecordWords)])
	for i, c := range text {
		if strings.IndexByte("<>=[],;\"#", c) >= 0 {
			text[i] = ' '
		}
	}
	return text
}

// chapterWords gives the words of a chapter, each once. Most chapters are the same in all books.
func (p *press) chapterWords(c *handbook.Chapter) string {
	words, _ := get(&p.cache, c, func() (string, error) { return chapterWords(c), nil })
	return words
}

func chapterWords(c *handbook.Chapter) string {
	var all strings.Builder
	for i := range c.Parts {
		all.WriteString(c.Parts[i].Markdown + " " + c.Parts[i].Block + " ")
	}
	return wordsWithin(keysOf([]byte(all.String())))
}

// pageWords are words by which somebody looks for a page and that do not stand in its title.
var pageWords = map[string]string{
	findingsPath:    "contradictions shortfalls gaps doubts assumptions what is wrong missing",
	boatPath:        "principal data identity length beam draught hin lines body plan people instruments",
	structurePath:   "plating scantlings thickness panels stiffeners frames strength pressure margin",
	weightPath:      "mass centre of gravity weighing breakdown light craft displacement",
	afloatPath:      "stability freeboard righting lever gz heel metacentric height downflooding flotation inclining",
	loadingPath:     "persons maximum load capacity builder's plate label tanks",
	trialsPath:      "speed fuel consumption range slip rpm noise",
	predictionPath:  "resistance power planing porpoising drag",
	ridePath:        "acceleration impacts g slamming",
	limitsPath:      "operating limits wave height how fast sea state helm card",
	hoursPath:       "endurance inspections cracks looks warranty fatigue reliability",
	materialsPath:   "metal plate lots casts certificates alloy",
	weldingPath:     "wps procedures qualification welders certificates",
	seamsPath:       "weld map joints seams chain",
	inspectionsPath: "imperfections repairs leak tests hold points",
	tracePath:       "cast lot stamp trace",
	surveyPath:      "surveyor on board look measure",
	ownerPath:       "handover owner manual handbook",
	documentsPath:   "papers certificates hashes sha256 verify",
	methodsPath:     "formulas standards sheets sources",
	proofsPath:      "published values examples check",
	fromPath:        "origin trace back source of a number",
	glossaryPath:    "glossary terms meaning",
	recordsPath:     "toml csv files source lines",
	benchPath:       "forms to print blank sheets shop",
}
