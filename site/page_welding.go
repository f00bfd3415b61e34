package site

import (
	"html/template"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

// WeldingPage says by what procedures and by whom the boat was welded, and what its seams take.
type WeldingPage struct {
	Says       WeldingSays
	Findings   []FindingRow
	Procedures []ProcedurePart
	Welders    []WelderPart
	Codes      []CodeRow
	Inspectors []InspectorRow
	Terms      []TermRow
	Takes      []Fact
	Workings   []SheetWorking
	Stages     []StageRow
	Assumed    []string
	Tables     []LimitTableRow
	Checks     []CheckRow
	Notes      []Note
	Caution    template.HTML
}

// WeldingSays is the answer about procedures and people; the cover says it too.
type WeldingSays struct {
	Tally
	Procedures, Welders           int
	Metres, Metal, Labour, Booked string // empty where not known
}

// ProcedurePart is one procedure beside what its tests qualify.
type ProcedurePart struct {
	ID        string
	Key       string
	Title     string
	Standing  Standing
	Findings  []FindingRow
	Variables []VariableRow
	Tests     []TestRow
	Facts     []Fact
}

// VariableRow is one variable of a procedure.
type VariableRow struct {
	Name      string
	Written   string
	Means     string // what it is written with, in words
	Qualified Figure
	Standing  Standing
	Why       string
	Basis     Basis
	Place     Link
}

// TestRow is one test piece that a procedure rests on.
type TestRow struct {
	Key       string
	Standard  string
	Date      string
	Piece     string
	Result    string
	Thickness Figure
	Record    Figure
	Place     Link
}

// WelderPart is one welder with the certificates that the stamp stands for.
type WelderPart struct {
	ID       string
	Key      string
	Name     string
	Stamp    string
	Welds    string
	Findings []FindingRow
	Ranges   []RangeRow
}

// RangeRow is one certificate of a welder with what it qualifies.
type RangeRow struct {
	ID        string
	Key       string
	Printed   Figure
	Thickness Figure
	Positions string
	Groups    string
	Sides     string
	From      string
	Until     Figure
	Ends      string
	Source    string
	Basis     Basis
	Place     Link
}

// InspectorRow is one certificate of somebody who judged seams.
type InspectorRow struct {
	ID     string
	Name   string
	Method string
	Level  Figure
	From   Figure
	Until  Figure
	Vision Figure
	Place  Link
}

// LimitTableRow is one table of limits with who held it against its standard.
type LimitTableRow struct {
	Name    string
	Link    Link
	Rows    string // whose they are
	Mark    string // by which a confirmation names them
	By      Figure
	Edition Figure
	On      Figure
}

// StageRow is one stage of the build with its hours.
type StageRow struct {
	Name    string
	Kind    string
	Planned Figure
	Booked  Figure
	From    Figure
	To      Figure
	Place   Link
}

func (l *leaf) weldingPage() (WeldingPage, error) {
	r := &l.dossier.Welding
	notes, err := l.notesFor("procedures")
	if err != nil {
		return WeldingPage{}, err
	}
	p := WeldingPage{Says: l.weldingSays(), Findings: l.findingsHere(""), Takes: l.takes(r), Checks: grouped(l.checkRows(r.Checks)), Notes: notes, Caution: l.press.notes["welding"]}
	for i := range r.Procedures {
		p.Procedures = append(p.Procedures, l.procedurePart(&r.Procedures[i]))
	}
	for i := range r.Welders {
		p.Welders = append(p.Welders, l.welderPart(&r.Welders[i]))
	}
	p.Codes = codeRows(&p)
	p.Terms = l.termRows()
	for _, i := range r.Inspectors {
		p.Inspectors = append(p.Inspectors, l.inspectorRow(i))
	}
	for _, s := range r.Stages {
		p.Stages = append(p.Stages, StageRow{s.Name.V, s.Kind.V, hours(s.Planned), hours(s.Booked), dated(s.From), dated(s.To), l.place(s.At)})
	}
	if p.Workings, err = l.seamWorkings(r); err != nil {
		return p, err
	}
	for _, t := range l.dossier.Tables {
		p.Tables = append(p.Tables, l.limitTable(t))
	}
	for _, a := range r.Assumptions {
		p.Assumed = append(p.Assumed, capital(a.Says))
	}
	return p, nil
}

func (l *leaf) weldingSays() WeldingSays {
	r := &l.dossier.Welding
	s := WeldingSays{Tally: l.tallyAt(weldingPath, r.Checks), Procedures: len(r.Procedures), Welders: len(r.Welders)}
	if r.Sums.Joints > 0 {
		s.Metres = unit.Text(r.Sums.Metres, 1)
	}
	if r.Sums.Joints > r.Sums.Without {
		s.Metal, s.Labour = unit.Text(r.Sums.Metal, 1), unit.Text(r.Sums.Labour, 1)
	}
	if r.Sums.HasBooked {
		s.Booked = unit.Text(r.Sums.Booked, 1)
	}
	return s
}

// takes lists what the seams take together, with what the weight breakdown counts for it.
func (l *leaf) takes(r *weld.Result) []Fact {
	s := r.Sums
	if s.Joints == 0 {
		return nil
	}
	note := ""
	if s.Without > 0 {
		note = "without " + strconv.Itoa(s.Without) + " joints whose size is not on record"
	}
	known := s.Joints > s.Without
	fact := func(name string, v float64, n int, sign string) Fact {
		return Fact{Name: name, Value: has(known, unit.Text(v, n), "no size is on record"), Unit: sign, Note: note}
	}
	all := []Fact{
		{Name: "joints", Value: Figure{Text: unit.Text(s.Metres, 1)}, Unit: "m"},
		fact("weld metal", s.Metal, 2, "kg"), fact("wire", s.Wire, 2, "kg"), fact("gas", s.Gas, 2, "m³"),
		fact("time of the arc", s.Arc, 1, "h"), fact("working time", s.Labour, 1, "h"),
	}
	counted, items := l.weldInWeights()
	return append(all,
		Fact{Name: "weld metal in the weight breakdown", Value: has(items > 0, unit.Text(counted, 1), "no item is called weld metal"), Unit: "kg", Note: "items called weld metal; not added from the map, which gives no place for it and may leave out seams that the item counts"},
		Fact{Name: "hours planned for welding", Value: has(s.HasPlanned, unit.Text(s.Planned, 1), "not recorded"), Unit: "h"},
		Fact{Name: "hours booked for welding", Value: has(s.HasBooked, unit.Text(s.Booked, 1), "not recorded"), Unit: "h", Note: "for information: fitting, grinding and waiting are in them"})
}

// seamWorkings shows how the longest seam, the hottest weld and the fillet with the least room were reckoned.
func (l *leaf) seamWorkings(r *weld.Result) ([]SheetWorking, error) {
	var out []SheetWorking
	add := func(title, prefix string, w *method.Working) error {
		part, ok, err := l.sheetWorking(title, prefix, w)
		if ok {
			out = append(out, part)
		}
		return err
	}
	if r.Example != nil && r.ExampleOf != nil {
		if err := add("What joint "+r.ExampleOf.ID+" takes; all others are reckoned alike", "takes-", r.Example); err != nil {
			return nil, err
		}
	}
	if r.Hottest != nil && r.HottestOf != nil {
		if err := add("Heat of weld "+r.HottestOf.ID+", the hottest; all others are reckoned alike", "heat-", r.Hottest); err != nil {
			return nil, err
		}
	}
	if s := leastThroat(r.Seams); s != nil {
		if err := add("Least throat of joint "+s.Joint.ID+", which has the least room; the others stand on the pages of their joints", "throat-", s.Factor); err != nil {
			return nil, err
		}
	}
	return out, nil
}

// leastThroat finds the fillet whose throat is nearest to what its weld factor asks; nil where none was asked.
func leastThroat(all []weld.Seam) *weld.Seam {
	var least *weld.Seam
	room := 0.0
	for i := range all {
		s := &all[i]
		if s.Factor == nil || !s.Joint.Throat.Set {
			continue
		}
		if needed, ok := s.Factor.Value("a_r"); ok && (least == nil || float64(s.Joint.Throat.V)/needed < room) {
			least, room = s, float64(s.Joint.Throat.V)/needed
		}
	}
	return least
}

// weldInWeights adds up the items of the weight breakdown that are called weld metal.
func (l *leaf) weldInWeights() (kg float64, items int) {
	for i := range l.dossier.Weight.Items {
		it := &l.dossier.Weight.Items[i]
		if strings.Contains(strings.ToLower(it.Record.Name.V), "weld metal") && it.HasMass {
			kg, items = kg+float64(it.Mass), items+1
		}
	}
	return kg, items
}

func hours(v record.Val[unit.Hour]) Figure { return has(v.Set, asWritten(v), "not recorded") }

// dated gives a recorded date as a column of a table holds it.
func dated(v record.Val[record.Date]) Figure { return has(v.Set, v.V.ISO(), "not recorded") }

func (l *leaf) procedurePart(p *weld.Procedure) ProcedurePart {
	rec := p.Record
	subject := "procedure " + rec.ID
	out := ProcedurePart{ID: l.anchor(subject), Key: rec.ID, Title: rec.Title.V, Findings: l.findingsHere(l.anchor(subject)),
		Facts: l.fieldsWritten(rec, "title", "note")}
	l.linkFacts(out.Facts)
	out.Standing, _ = standingOf(l.dossier.Welding.Checks, subject)
	for _, v := range p.Variables {
		out.Variables = append(out.Variables, VariableRow{v.Name, v.Written, means(v.Name, v.Written), has(v.Qualified != "", v.Qualified, "not shown"), standing(v.Standing), v.Why, basis(v.Basis), l.place(v.Place)})
	}
	for i := range p.Tests {
		out.Tests = append(out.Tests, l.testRow(&p.Tests[i]))
	}
	return out
}

func (l *leaf) testRow(t *weld.TestRange) TestRow {
	rec := t.Test
	piece := []string{rec.Weld.V, asWritten(rec.Thickness) + " mm"}
	for _, one := range []string{rec.Position.V, rec.Group.V, rec.Sides.V} {
		if one != "" {
			piece = append(piece, one)
		}
	}
	return TestRow{
		Key: rec.ID, Standard: strings.TrimSpace(rec.Standard.V + " " + rec.Edition.V), Date: rec.Date.V.ISO(), Piece: strings.Join(piece, ", "), Result: rec.Result.V,
		Thickness: has(t.HasThick, t.Thickness.String(), t.Why), Record: has(rec.Record.Set, rec.Record.V, "not recorded"), Place: l.place(rec.At),
	}
}

func (l *leaf) welderPart(w *weld.Welder) WelderPart {
	subject := "welder " + w.Record.ID
	out := WelderPart{ID: l.anchor(subject), Key: w.Record.ID, Stamp: w.Record.Stamp.V, Name: l.nameOf("person", w.Record.Person.V)}
	out.Welds = strconv.Itoa(w.Welds) + " welds"
	if w.Welds == 1 {
		out.Welds = "1 weld"
	}
	if w.First.Year != 0 {
		out.Welds += ", " + w.First.String() + " to " + w.Last.String()
	}
	at := []string{out.ID}
	for i := range w.Ranges {
		row := l.rangeRow(&w.Ranges[i])
		at = append(at, row.ID)
		out.Ranges = append(out.Ranges, row)
	}
	out.Findings = l.findingsAmong(at)
	return out
}

func (l *leaf) rangeRow(r *weld.WelderRange) RangeRow {
	q := r.Record
	row := RangeRow{ID: l.anchor("qualification " + q.ID), Key: q.ID, Printed: has(q.Designation.Set, q.Designation.V, "not recorded"), From: q.Tested.V.ISO(), Place: l.place(q.At)}
	if r.Scheme == nil {
		row.Thickness, row.Until, row.Source = Figure{Why: "not shown"}, Figure{Why: "not shown"}, r.Why
		return row
	}
	row.Thickness, row.Until, row.Ends = Figure{Text: r.Thickness.String()}, Figure{Text: r.Life.Until.ISO()}, r.Life.Ends
	row.Groups, row.Sides, row.Source, row.Basis = strings.Join(r.Groups, ", "), strings.Join(r.Sides, ", "), r.Scheme.Work, basis(finding.Softer(r.Basis, r.Scheme.LifeBasis))
	var at []string
	if len(r.Butt) > 0 {
		at = append(at, "butt "+strings.Join(r.Butt, " "))
	}
	if len(r.Fillet) > 0 {
		fillet := "fillet " + strings.Join(r.Fillet, " ")
		if r.Secondary {
			fillet += " where fillets are not the main work"
		}
		at = append(at, fillet)
	}
	row.Positions = strings.Join(at, "; ")
	return row
}

func (l *leaf) inspectorRow(i *record.Inspector) InspectorRow {
	return InspectorRow{
		ID: l.anchor("inspector " + i.ID), Name: l.nameOf("person", i.Person.V), Method: i.Method.V, Level: has(i.Level.Set, strconv.Itoa(i.Level.V), "not recorded"),
		From: dated(i.From), Until: dated(i.Until), Vision: dated(i.Vision), Place: l.place(i.At),
	}
}
