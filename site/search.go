package site

import (
	"encoding/json"
	"strings"
)

// entry is one line of the search index: title, section number, way and words.
type entry struct {
	Title string `json:"t"`
	No    string `json:"n,omitempty"`
	Way   string `json:"h"`
	Words string `json:"w,omitempty"`
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
		out = append(out, entry{Title: s.title, No: s.no, Way: escapePath(s.path)})
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
		out = append(out, entry{title, t.no, way, strings.Join(words, " ")})
	}
	d := b.dossier
	for _, p := range d.Structure.Panels {
		at("Panel "+p.Record.ID, "panel "+p.Record.ID, p.Record.Where.V, p.Record.Zone.V, p.Record.Alloy.V, p.Record.Lot.V)
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
			out = append(out, entry{Title: it.Title(), No: t.no, Way: escapePath(t.path) + "#" + itemAnchor(it.Record.ID), Words: of.Record.Title.V + " " + it.Record.Asks.V})
		}
	}
	for i, f := range b.findings {
		out = append(out, entry{capital(string(f.Kind)) + ": " + f.Subject, b.sectionOf(findingsPath).no, findingsPath + "#f" + wordsOfInt(i+1), f.Says})
	}
	return out
}
