package site

import (
	"html/template"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// InspectionsPage shows every look at a seam and what was found.
type InspectionsPage struct {
	Says     InspectionsSays
	Findings []FindingRow
	Limits   Link   // to the rows
	HeldBy   string // whose rows the limits are, and who held them
	Short    string
	Flaws    []FlawRow
	Looks    []LookRow
	Extents  []ExtentRow
	Notes    []Note
	Caution  template.HTML
}

// InspectionsSays is the answer about the inspections.
type InspectionsSays struct {
	Looks, Rejected, Flaws, Beyond, Open, Leaks int
	Seen                                        string // share of the length seen by eye
}

// LookRow is one inspection.
type LookRow struct {
	ID       string
	Key      string
	Joint    Link
	Day      Figure
	Method   string
	Stage    string
	By       Link
	Tool     Link
	Seen     string
	Level    Figure
	Result   Figure
	Standing Standing
	Note     string
	Place    Link
}

// FlawRow is one imperfection held against its limit.
type FlawRow struct {
	ID       string
	Key      string
	Look     Link
	Joint    Link
	Number   string
	Name     string
	Size     Figure
	Allowed  Figure
	Level    string
	Standing Standing
	Says     string
	Judged   Figure
	Basis    Basis
	Beside   string
	Place    Link
}

// ExtentRow is how much of which seams was to be seen.
type ExtentRow struct {
	Category, Method, Share, From string
	Place                         Link
}

func (l *leaf) inspectionsPage() (InspectionsPage, error) {
	d := l.dossier
	notes, err := l.notesFor("inspections")
	if err != nil {
		return InspectionsPage{}, err
	}
	p := InspectionsPage{Says: l.inspectionsSays(), Findings: l.findingsOn(), Notes: notes, Caution: l.press.notes["inspections"]}
	if lim := d.Inspections.Limits; lim != nil {
		p.Limits, p.HeldBy, p.Short = l.limitRowsAt(lim.Held.File, lim.Work+":"+lim.Edition), lim.Held.Says(), lim.ShortRun
	}
	for i := range d.Inspections.Judged {
		p.Flaws = append(p.Flaws, l.flawRow(&d.Inspections.Judged[i]))
	}
	for i := range d.Hull.Inspections {
		p.Looks = append(p.Looks, l.lookRow(&d.Hull.Inspections[i]))
	}
	for i := range d.Hull.Extents {
		e := &d.Hull.Extents[i]
		p.Extents = append(p.Extents, ExtentRow{e.Category.V, e.Method.V, unit.Plain(e.Share.V), e.From.V, l.place(e.At)})
	}
	return p, nil
}

func (l *leaf) inspectionsSays() InspectionsSays {
	d := l.dossier
	s := InspectionsSays{Looks: len(d.Hull.Inspections), Flaws: len(d.Inspections.Judged), Open: len(d.Coverage.Open), Leaks: len(d.Hull.LeakTests)}
	for i := range d.Hull.Inspections {
		if d.Hull.Inspections[i].Result.V == "rejected" {
			s.Rejected++
		}
	}
	for _, j := range d.Inspections.Judged {
		if j.Verdict.Standing == finding.Short {
			s.Beyond++
		}
	}
	seen := 0.0
	if d.Seams != nil {
		for _, j := range d.Seams.Joints {
			seen += d.Seams.SeenBy(j, "visual")
		}
	}
	if d.Coverage.Metres > 0 {
		s.Seen = unit.Text(100*seen/d.Coverage.Metres, 0)
	}
	return s
}

func (l *leaf) lookRow(look *record.Inspection) LookRow {
	m := l.dossier.Seams
	row := LookRow{
		ID: l.anchor("inspection " + look.ID), Key: look.ID, Joint: Link{Text: or(look.Joint.V, look.Weld.V)}, Day: dated(look.Date), Method: look.Method.V, Stage: look.Stage.V,
		By: Link{Text: or(look.By.V, "not recorded")}, Tool: Link{Text: look.Instrument.V}, Level: word(look.Level), Result: word(look.Result), Standing: standing(finding.NotShown), Note: look.Note.V, Place: l.place(look.At),
	}
	if row.ID != "" && l.at.path != inspectionsPath {
		row.ID = ""
	}
	if look.Result.Set {
		row.Standing = agreed(look.Result.V == "accepted")
	}
	if look.Instrument.Set {
		row.Tool = l.subjectAs("instrument "+look.Instrument.V, look.Instrument.V)
	}
	if in := m.Inspectors[look.By.V]; in != nil {
		row.By = l.subjectAs("inspector "+in.ID, l.nameOf("person", in.Person.V))
	}
	if j := m.JointOf(look); j != nil {
		row.Joint = l.subjectAs("joint "+j.Record.ID, j.Record.ID)
		row.Seen = unit.Text(m.Seen(j, look), 2)
	}
	return row
}

func (l *leaf) flawRow(j *inspection.Judged) FlawRow {
	f, v := j.Record, j.Verdict
	row := FlawRow{
		ID: l.anchor("imperfection " + f.ID), Key: f.ID, Look: l.subjectAs("inspection "+f.Inspection.V, f.Inspection.V), Number: f.Number.V, Size: measured(f.Size, "mm"),
		Allowed: Figure{Why: "none"}, Level: j.Level, Standing: standing(v.Standing), Says: capital(v.Says), Judged: word(f.Judged), Basis: basis(v.Basis), Place: l.place(f.At),
	}
	if f.Share.Set {
		row.Size = measured(f.Share, "%")
	}
	if j.Joint != nil {
		row.Joint = l.subjectAs("joint "+j.Joint.Record.ID, j.Joint.Record.ID)
	}
	if v.Row == nil {
		return row
	}
	row.Name = v.Row.Name
	if !math.IsNaN(v.Allowed) {
		row.Allowed = Figure{Text: unit.Text(v.Allowed, 2)}
	}
	if b := v.Row.Beside; b.Work != "" {
		row.Beside = strings.Join([]string{b.Work, b.Edition, b.Clause}, ", ") + ": " + unit.Plain(b.Times) + " t, at most " + unit.Plain(b.Most) + " mm"
	}
	return row
}
