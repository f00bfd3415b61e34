package site

import (
	"html/template"

	"hullfile/engine/record"
)

// BoatPage says what the boat is: principal data, identity, issue, builder, people and instruments.
type BoatPage struct {
	Number      string
	Title       string
	Use         string
	Says        BoatSays
	Lines       LinesPart
	Principal   []Fact
	Identity    []Fact
	HINParts    []NumberRow // the hull identification number, part by part
	Issue       []Fact
	Rules       []Fact
	Builder     []Fact
	People      []PersonRow
	Instruments []InstrumentRow
	Absent      []AbsentRow
	Replaced    []ReplacedRow
	Findings    []FindingRow
	Checks      []CheckRow
	Notes       []Note
	Caution     template.HTML
}

// BoatSays is the answer about the record of the boat itself; the cover says it too.
type BoatSays struct {
	Values  int // principal data
	Missing int // of them not written
	HIN     string
}

// NumberRow is one part of the hull identification number.
type NumberRow struct {
	Name   string
	Text   string
	Means  string
	Faults []string
	Source string
	Basis  Basis
}

// PersonRow is somebody who did something that the file relies on.
type PersonRow struct {
	ID    string
	Key   string
	Name  string
	Role  string
	Since Figure
	Until Figure
	Place Link
}

// InstrumentRow is something that measures.
type InstrumentRow struct {
	ID          string
	Key         string
	Name        string
	Serial      Figure
	Calibrated  Figure
	Due         Figure
	Certificate Figure
	Place       Link
}

// ReplacedRow is a value of the design that this hull has otherwise.
type ReplacedRow struct {
	Key      string
	Old, New string
	At       Link
	Was      Link
}

// AbsentRow is an entry of the design that this hull does not have.
type AbsentRow struct {
	Subject string
	At      Link
	Was     Link
}

func (l *leaf) boatPage() (BoatPage, error) {
	h, builder := l.hull, l.dossier.Builder
	notes, err := l.notesFor("boat")
	if err != nil {
		return BoatPage{}, err
	}
	p := BoatPage{
		Number: h.Number, Title: h.Title.V, Use: h.Boat.Use.V, Says: l.boatSays(), Lines: l.linesPart(), Principal: l.fields(&h.Boat, "use"), Identity: l.fields(&h.Identity),
		Issue: l.fields(&h.Issue), Rules: l.fields(&h.Rules), Builder: l.fields(builder, "invented"),
		Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["boat"],
		Checks: grouped(l.checkRows(l.otherChecks())),
	}
	alignRows(p.Principal, func(f *Fact) []*string { return []*string{&f.Value.Text} })
	p.Identity = append([]Fact{{Name: "hull number", Value: Figure{Text: h.Number}, Note: "the yard's own number"}, l.designFact()}, p.Identity...)
	for _, part := range l.dossier.Identity.Parts {
		p.HINParts = append(p.HINParts, NumberRow{part.Name, part.Text, part.Means, part.Faults, part.Source, basis(part.Basis)})
	}
	for i := range builder.People {
		p.People = append(p.People, l.personRow(&builder.People[i]))
	}
	for i := range builder.Instruments {
		p.Instruments = append(p.Instruments, l.instrumentRow(&builder.Instruments[i]))
	}
	for _, a := range h.Absent {
		p.Absent = append(p.Absent, AbsentRow{a.Subject, l.place(a.At), l.place(a.Was)})
	}
	for _, r := range h.Replaced {
		p.Replaced = append(p.Replaced, ReplacedRow{r.Key, r.Old, r.New, l.place(r.At), l.place(r.Was)})
	}
	return p, nil
}

func (l *leaf) boatSays() BoatSays {
	all := l.fields(&l.hull.Boat, "use")
	return BoatSays{Values: len(all), Missing: len(all) - len(onlyWritten(all)), HIN: l.hull.Identity.HIN.V}
}

func (l *leaf) designFact() Fact {
	return Fact{Name: "design", Value: word(l.hull.Design), Note: "the design that this hull is laid over", Place: l.place(l.hull.Design.At)}
}

func (l *leaf) personRow(p *record.Person) PersonRow {
	return PersonRow{l.anchor("person " + p.ID), p.ID, p.Name.V, p.Role.V, dated(p.Since), dated(p.Until), l.place(p.At)}
}

func (l *leaf) instrumentRow(i *record.Instrument) InstrumentRow {
	return InstrumentRow{
		ID: l.anchor("instrument " + i.ID), Key: i.ID, Name: i.Name.V, Serial: word(i.Serial), Calibrated: dated(i.Calibrated), Due: dated(i.Due),
		Certificate: word(i.Document), Place: l.place(i.At),
	}
}
