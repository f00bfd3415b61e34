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
	var out []entry
	for _, s := range b.order {
		if s.kind == "record" || s.kind == "panel" && s.above != nil || s.kind == "joint" && b.jointPage != nil {
			continue // they have entries with words of their own
		}
		out = append(out, entry{Title: s.title, No: s.no, Way: escapePath(s.path), Words: pageWords[s.path]})
	}
	at := func(title, subject string, words ...string) {
		t, ok := b.find(subject)
		if !ok {
			return
		}
		way := escapePath(t.path)
		if t.anchor != "" {
			way += "#" + t.anchor
		}
		kind, _, _ := strings.Cut(subject, " ")
		out = append(out, entry{title, t.no, way, strings.Join(words, " "), strings.ReplaceAll(kind, "_", " ")})
	}
	d := b.dossier
	for _, p := range d.Structure.Panels {
		at("Panel "+p.Record.ID, "panel "+p.Record.ID, p.Record.Where.V, p.Record.Zone.V, p.Record.Alloy.V, p.Record.Lot.V)
	}
	for i := range d.Structure.Members {
		m := d.Structure.Members[i].Record
		at(capital(m.ID), "member "+m.ID, m.Where.V, m.Zone.V, m.Section.V)
	}
	for i := range d.Structure.Fittings {
		f := d.Structure.Fittings[i].Record
		at("Fitting "+f.ID, "fitting "+f.ID, f.Kind.V, f.Where.V)
	}
	for _, w := range d.Weight.Items {
		at(w.Record.Name.V, "weight "+w.Record.ID, w.Record.ID, w.Record.Group.V)
	}
	for _, t := range d.Trials.Trials {
		at("Trial "+t.Record.ID, "trial "+t.Record.ID, t.Record.Place.V, t.Record.Date.V.Long())
	}
	for _, r := range b.hull.Rides {
		at("Ride "+r.ID, "ride "+r.ID, r.Place.V, r.Date.V.Long())
	}
	for _, k := range b.hull.Looks {
		at("Look "+k.ID, "look "+k.ID, append([]string{k.Method.V, k.Date.V.Long()}, k.Places.V...)...)
	}
	for _, p := range d.Documents.Documents {
		at(p.Record.Title.V, "document "+p.Record.ID, p.Record.ID, p.Record.Kind.V, p.Record.Number.V, p.Record.By.V)
	}
	for _, p := range d.Builder.People {
		at(p.Name.V, "person "+p.ID, p.ID, p.Role.V)
	}
	for _, lot := range d.Stock.Lots {
		at("Lot "+lot.Record.ID, "lot "+lot.Record.ID, lot.Record.Cast.V, lot.Record.Alloy.V, lot.Record.Certificate.V)
	}
	for _, p := range d.Stock.Parts {
		at("Part "+p.Record.ID, "part "+p.Record.ID, p.Record.Name.V, p.Record.Lot.V)
	}
	for _, p := range d.Welding.Procedures {
		at("Procedure "+p.Record.ID, "procedure "+p.Record.ID, p.Record.Title.V)
	}
	for _, w := range d.Welding.Welders {
		at("Welder, stamp "+w.Record.Stamp.V, "welder "+w.Record.ID, w.Record.Person.V)
	}
	for i := range d.Requirements.Lists {
		of := &d.Requirements.Lists[i]
		t, _ := b.find("list " + of.Record.Name)
		for j := range of.Items {
			it := &of.Items[j]
			out = append(out, entry{Title: it.Title(), No: t.no, Way: escapePath(t.path) + "#" + itemAnchor(it.Record.ID), Words: of.Record.Title.V + " " + it.Record.Asks.V, Kind: "requirement"})
		}
	}
	for i, f := range b.findings {
		out = append(out, entry{capital(string(f.Kind)) + ": " + f.Subject, b.sectionOf(findingsPath).no, findingsPath + "#f" + wordsOfInt(i+1), f.Says, "finding"})
	}
	return append(out, b.deeper()...)
}

// deeper are the entries for what has no page of its own: seams, items of the survey sheet, worked values, words, chapters
// of the owner's book, and the keys of the records.
func (b *book) deeper() []entry {
	var out []entry
	no := func(path string) string { return b.sectionOf(path).no }
	if m := b.dossier.Seams; m != nil {
		for _, j := range m.Joints {
			if t, ok := b.find("joint " + j.Record.ID); ok {
				out = append(out, entry{"Joint " + j.Record.ID, t.no, escapePath(t.path) + anchored(t.anchor), j.Record.Where.V + " " + j.Record.Category.V, "joint"})
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
		out = append(out, entry{c.Title, no(ownerPath), way, chapterWords(c), "owner's book"})
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
	text = text[:min(len(text), mostRecordWords)]
	return bytes.Map(func(r rune) rune {
		if strings.ContainsRune("<>=[],;\"#", r) {
			return ' '
		}
		return r
	}, text)
}

// chapterWords gives the words of a chapter, each once.
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
