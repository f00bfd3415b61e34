package site

import (
	"html/template"

	"hullfile/engine/capacity"
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// LoadingPage says how much and how many the boat may carry, by which check, and what its plates must say.
type LoadingPage struct {
	Says     LoadingSays
	Limits   []LimitRow
	Loads    []LeftRow
	Tanks    []ContentsRow
	Labels   []LabelPart
	Foam     []LeftRow
	Checks   []CheckRow
	Findings []FindingRow
	Workings []LoadingWorking
	Apart    []RuleApart
	Notes    []Note
	Caution  template.HTML
}

// LoadingSays is the answer about load and plates; the cover says it too.
type LoadingSays struct {
	Tally
	Plate       bool   // the plate is on record
	PlateLoad   string // kg, empty where not written
	PlatePeople string // "6 persons", empty where not written
	Load        string // kg that the checks leave, empty where none says
	LoadBy      string
	People      string
	PeopleBy    string
}

// LimitRow is what one check leaves.
type LimitRow struct {
	Name    string
	Way     Link // where it is worked out, for another trade's
	Load    Figure
	Persons Figure
	Governs string // "load", "persons", "load and persons"
	Info    bool
	Why     string
	Basis   Basis
	Source  string
	Places  []Link
}

// LeftRow is one mass or volume of the reckoning.
type LeftRow struct {
	Name   string
	Value  Figure
	Unit   string
	Remark string
}

// ContentsRow is one tank with what it holds.
type ContentsRow struct {
	Name  string
	Mass  string
	Fixed bool
	Place Link
}

// LabelPart is one plate: its picture and its fields.
type LabelPart struct {
	ID      string
	Law     string // key of the label
	Title   string
	Under   string
	OnBoat  bool
	Why     string
	Picture Drawing
	Fields  []LabelRow
}

// LabelRow is one field of a plate.
type LabelRow struct {
	Name     string
	Note     string
	Stated   Figure
	Reckoned Figure
	Source   string
	Basis    Basis
	Missing  *Lack // record key that would give it; nil where nothing is missing
}

func (l *leaf) loadingPage() (LoadingPage, error) {
	r := &l.dossier.Capacity
	notes, err := l.notesFor("loading")
	if err != nil {
		return LoadingPage{}, err
	}
	p := LoadingPage{
		Says: l.loadingSays(), Loads: loadRows(r), Foam: foamRows(r), Checks: grouped(l.checkRows(r.Checks)), Findings: l.findingsHere(""),
		Notes: notes, Caution: l.press.notes["loading"],
	}
	for i := range r.Limits {
		p.Limits = append(p.Limits, l.limitRow(r, i))
	}
	for _, t := range r.Fixed.Parts {
		p.Tanks = append(p.Tanks, ContentsRow{t.Name, mass(float64(t.KG)), t.Fixed, l.place(t.Place)})
	}
	for i := range r.Labels {
		p.Labels = append(p.Labels, l.labelPart(r.Labels[i], i+1))
	}
	if p.Workings, err = l.loadingWorkings(r); err != nil {
		return LoadingPage{}, err
	}
	if r.American.Beyond {
		p.setApart("Capacity, horsepower and foam, United States", capital(r.American.Why), capacity.LabelUnited)
	}
	return p, nil
}

func (l *leaf) limitRow(r *capacity.Result, i int) LimitRow {
	limit := &r.Limits[i]
	row := LimitRow{
		Name: limit.Name, Load: has(limit.HasLoad, wholeKG(limit.Load), "none"), Persons: has(limit.HasPersons, wordsOfInt(limit.Persons), "none"),
		Info: limit.Info, Why: limit.Why, Basis: basis(limit.Basis), Source: limit.Source, Places: l.places(limit.Places),
	}
	if limit.Subject != "" {
		row.Way = l.subjectAs(limit.Subject, limit.Name)
	}
	load, persons := i == r.Load && limit.HasLoad && !limit.Info, i == r.Persons && limit.HasPersons && !limit.Info
	switch {
	case load && persons:
		row.Governs = "load and persons"
	case load:
		row.Governs = "load"
	case persons:
		row.Governs = "persons"
	}
	return row
}

// wholeKG gives what is left in whole kilograms, so that the page and the plate say the same.
func wholeKG(v unit.KG) string { return unit.Text(v, 0) }

// loadRows is the load with and without the contents of fixed tanks.
func loadRows(r *capacity.Result) []LeftRow {
	var out []LeftRow
	if r.Figures == nil {
		return nil
	}
	for _, symbol := range []string{"m_MTL", "m_F", "m_ML", "m_C", "m_G", "m_AU"} {
		s, ok := r.Figures.Get(symbol)
		if !ok {
			continue
		}
		v, there := r.Figures.Value(symbol)
		row := LeftRow{Name: s.Name, Value: has(there, unit.Text(v, 0), "not shown"), Unit: "kg"}
		if s.State != method.Sound {
			row.Remark = s.Why()
		}
		out = append(out, row)
	}
	return out
}

// foamRows is the foam that the handbook reckons, and what is fitted.
func foamRows(r *capacity.Result) []LeftRow {
	v, ok := r.Flotation.Value("V")
	if !ok {
		return nil
	}
	why := r.American.Why
	return []LeftRow{
		{Name: "reckoned by the Coast Guard's handbook", Value: Figure{Text: unit.Text(v, 0)}, Unit: "l", Remark: why},
		{Name: "foam on record", Value: has(r.Foam.Pieces > 0, unit.Text(r.Foam.Litres, 0), "not recorded"), Unit: "l"},
		{Name: "closed chambers on record, the two largest left out", Value: has(r.Foam.Pieces > 0, unit.Text(r.Foam.Chambers, 0), "not recorded"), Unit: "l", Remark: "not counted for level flotation"},
	}
}

// labelPart shows the plate that stands at a place of the page, counted from one.
func (l *leaf) labelPart(label capacity.Label, at int) LabelPart {
	law := label.Key
	label.Key = wordsOfInt(at)
	p := LabelPart{ID: "label-" + label.Key, Law: law, Title: label.Title, Under: label.Under, OnBoat: label.OnBoat, Why: label.Why, Picture: l.labelPicture(&label)}
	p.Picture.Head, p.Picture.Rows = nil, nil // the fields stand in a table of their own
	for i := range label.Fields {
		f := &label.Fields[i]
		row := LabelRow{
			Name: f.Name, Note: f.Note, Stated: has(f.Stated != "", f.Stated, "not recorded"), Reckoned: has(f.Reckoned != "", f.Reckoned, "none"),
			Source: f.Source, Basis: basis(f.Basis),
		}
		if f.Text() == "" {
			row.Missing = lackOf(f.Missing)
		}
		p.Fields = append(p.Fields, row)
	}
	return p
}

func (l *leaf) loadingSays() LoadingSays {
	r, plate := &l.dossier.Capacity, &l.hull.Plate
	s := LoadingSays{Tally: l.tallyAt(loadingPath, r.Checks), Plate: r.Stated}
	if plate.MaxLoad.Set {
		s.PlateLoad = unit.Text(plate.MaxLoad.V, 0)
	}
	if plate.Persons.Set {
		s.PlatePeople = plural(plate.Persons.V, "person", "persons")
	}
	if limit, ok := r.Governing(r.Load); ok && limit.HasLoad {
		s.Load, s.LoadBy = wholeKG(limit.Load), limit.Name
	}
	if limit, ok := r.Governing(r.Persons); ok && limit.HasPersons {
		s.People, s.PeopleBy = plural(limit.Persons, "person", "persons"), limit.Name
	}
	if len(r.Checks) == 0 {
		s.Tally.Standing = standing(finding.NotShown)
	}
	return s
}
