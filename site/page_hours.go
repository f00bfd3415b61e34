package site

import (
	"html/template"

	"hullfile/engine"
	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// HoursPage keeps the running hours and says what they prove.
type HoursPage struct {
	Says     HoursSays
	Picture  Drawing
	Promises []PromisePart
	Pool     []PoolRow
	Most     int // sister hulls that are counted
	Places   []PlaceRow
	Looks    []LookPart
	Ladder   []RungRow
	Equal    EqualPart
	Spots    SpotsPart
	Log      []HoursRow
	Checks   []CheckRow
	Assumed  []AssumptionRow
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// HoursSays is the answer about the hours; the cover says it too.
type HoursSays struct {
	Tally
	Rows  int
	Hours string
	Brief string // what is shown and what not, for the cover
	Claim string // what is shown
	But   string // what is not
	Risk  string // hours since the last look
	Why   string // why nothing is shown
}

// PoolRow is what one hull brings.
type PoolRow struct {
	Number  string
	Here    bool
	Hours   Figure
	Cracked bool
	AtRisk  string
	Why     string
}

// PlaceRow is one place with the last look at it.
type PlaceRow struct {
	Name     string
	Looks    string
	At       string
	Method   string
	Smallest Figure
	Cracks   int
}

// LookPart is one look.
type LookPart struct {
	ID          string
	Key         string
	Facts       []Fact
	Note        string
	At          string
	Date        string
	Indications []IndicationRow
	Findings    []FindingRow
}

// IndicationRow is one thing found.
type IndicationRow struct {
	Place  string
	Size   Figure
	Is     string
	Crack  bool
	Action string
	Record Link
}

// RungRow is one step of the ladder of looks.
type RungRow struct {
	Hours string
	Look  Link
	At    string
	Due   bool
}

// EqualPart is the hours turned into hours of service.
type EqualPart struct {
	Why     string
	G       string
	Counted string
	Left    string
	Hours   string
	Power   string
	Mean    string
	Outside bool
	Facts   []Fact
}

// HoursRow is one entry of the log.
type HoursRow struct {
	ID       string
	Date     string
	From, To string
	Hours    string
	Load     Figure
	Wave     Figure
	Speed    Figure
	G        Figure
	Note     string
	Place    Link
	Findings []FindingRow
}

func (l *leaf) hoursPage() (HoursPage, error) {
	r := &l.dossier.Hours
	notes, err := l.notesFor("hours")
	if err != nil {
		return HoursPage{}, err
	}
	p := HoursPage{
		Says: l.hoursSays(), Picture: l.hoursPicture(), Places: placeRows(r), Equal: l.equalPart(r), Spots: l.spotsPart(), Checks: grouped(l.checkRows(r.Checks)),
		Assumed: l.assumed(r.Assumptions), Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["hours"], Most: engine.MostSisters,
	}
	for i := range r.Promises {
		p.Promises = append(p.Promises, l.promisePart(r, &r.Promises[i]))
	}
	for i, e := range r.Pool {
		p.Pool = append(p.Pool, PoolRow{e.Number, i == 0, has(e.Why == "", unit.Text(e.Hours, 1), e.Why), e.Cracked, unit.Text(e.AtRisk, 1), e.Why})
	}
	for i := range r.Looks {
		p.Looks = append(p.Looks, l.lookPart(&r.Looks[i]))
	}
	for i := range r.Ladder {
		p.Ladder = append(p.Ladder, l.rungRow(&r.Ladder[i]))
	}
	for i := range r.Rows {
		p.Log = append(p.Log, l.hoursRow(&r.Rows[i]))
	}
	return p, nil
}

func (l *leaf) hoursSays() HoursSays {
	r := &l.dossier.Hours
	s := HoursSays{Tally: l.tallyAt(hoursPath, r.Checks), Rows: len(r.Rows), Hours: unit.Text(r.Logged, 0), Brief: closed(r.Claim.Short), Claim: closed(r.Claim.Says), But: closed(r.Claim.But), Risk: closed(r.Claim.Risk)}
	if !r.Claim.Has {
		s.Why = r.Claim.Why
	}
	return s
}

func placeRows(r *running.Result) []PlaceRow {
	var out []PlaceRow
	for _, p := range r.Places {
		if p.Last == nil {
			continue
		}
		rec := p.Last.Record
		out = append(out, PlaceRow{p.Name, wordsOfInt(p.Looks), unit.Text(rec.Meter.V, 1), rec.Method.V, has(rec.Smallest.Set, unit.Plain(rec.Smallest.V), "not recorded"), p.Cracks})
	}
	return out
}

func (l *leaf) lookPart(k *running.Look) LookPart {
	rec := k.Record
	subject := "look " + rec.ID
	p := LookPart{ID: l.anchor(subject), Key: rec.ID, At: unit.Text(rec.Meter.V, 1), Date: rec.Date.V.String(), Facts: l.fieldsWritten(rec, "note", "date", "at_h"), Note: rec.Note.V, Findings: l.findingsHere(l.anchor(subject))}
	l.linkFacts(p.Facts)
	for i := range rec.Indications {
		ind := &rec.Indications[i]
		p.Indications = append(p.Indications, IndicationRow{ind.Place.V, has(ind.Size.Set, unit.Plain(ind.Size.V), "not recorded"), ind.Is.V, ind.Is.V != "no crack", ind.Action.V, l.place(ind.At)})
	}
	return p
}

func (l *leaf) rungRow(s *running.Rung) RungRow {
	row := RungRow{Hours: unit.Text(s.Hours, 0), Due: s.Due}
	if s.Look != nil && s.Look.Record != nil {
		row.Look, row.At = l.subjectAs("look "+s.Look.Record.ID, s.Look.Record.ID), unit.Text(s.Look.Record.Meter.V, 1)
	}
	return row
}

func (l *leaf) equalPart(r *running.Result) EqualPart {
	e := &r.Equal
	p := EqualPart{Why: e.Why, Facts: l.fieldsWritten(&l.hull.Service)}
	if !e.Has {
		return p
	}
	p.G, p.Counted, p.Hours, p.Power, p.Mean, p.Outside = unit.Text(e.G, 2), unit.Text(e.Counted, 0), unit.Text(e.Hours, 0), unit.Plain(e.Power), running.Down(e.MeanTime), e.Outside
	if e.Left > 0.05 {
		p.Left = unit.Text(e.Left, 0)
	}
	return p
}

func (l *leaf) hoursRow(r *running.Row) HoursRow {
	rec := r.Record
	subject := "hours " + rec.ID
	return HoursRow{
		ID: l.anchor(subject), Date: rec.Date.V.ISO(), From: unit.Text(rec.From.V, 1), To: unit.Text(rec.To.V, 1), Hours: unit.Text(r.Hours, 1), Load: measured(rec.Load, "kg"),
		Wave: has(rec.Wave.Set, unit.Plain(rec.Wave.V), "not recorded"), Speed: has(rec.Speed.Set, unit.Plain(rec.Speed.V), "not recorded"), G: has(r.G > 0, unit.Text(r.G, 1), "not reckoned"),
		Note: rec.Note.V, Place: l.place(rec.At), Findings: l.findingsHere(l.anchor(subject)),
	}
}
