package site

import (
	"slices"
	"strings"

	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

// JointsPage shows one joint, or several where there are many.
type JointsPage struct {
	Title  string
	Joints []JointPart
}

// JointPart is one joint with all that is on record of it.
type JointPart struct {
	ID       string
	Key      string
	Where    string
	What     string
	Metres   string
	Alone    bool
	Standing Standing
	Lacks    []LackRow
	Findings []FindingRow
	Facts    []Fact
	Softened string
	Workings []SheetWorking
	Parts    []JointMetal
	Welds    []WeldRow
	Readings []ReadingRow
	Looks    []LookRow
	Others   []Link
}

// LackRow is one link that is missing from the chain.
type LackRow struct {
	Link  string
	Says  string
	Place Link
}

// JointMetal is one side of a joint: part, lot and certificate.
type JointMetal struct {
	Part        Link
	Name        string
	Thickness   Figure
	Lot         Link
	Alloy       string
	Cast        Figure
	Certificate Link
	Place       Link
}

// ReadingRow is what was read at the machine and in the shop for one weld, and the heat that follows.
type ReadingRow struct {
	Key     string
	Energy  Figure
	Input   Figure
	Feed    Figure
	Before  Figure
	Between Figure
	Shop    Figure
	Humid   Figure
	Gas     Link
	Photo   Link
	Note    string
}

// WeldRow is one record of welding.
type WeldRow struct {
	ID        string
	Key       string
	Day       Figure
	Hours     string
	Procedure Link
	Welder    Link
	Papers    []Link // certificates that the welder held on the day
	Bare      bool   // a welder who held none on the day
	Filler    Link
	Position  Figure
	Held      string // the position in words
	Runs      Figure
	Volts     Figure
	Amperes   Figure
	Speed     Figure
	Throat    Figure
	Place     Link
}

func (p JointsPage) heading() (heading, under string) {
	if len(p.Joints) == 1 {
		return "Joint " + p.Joints[0].Key, p.Joints[0].Where
	}
	return p.Title, ""
}

func (l *leaf) jointsPage(all []*seam.Joint) (JointsPage, error) {
	p := JointsPage{Title: l.at.title}
	for _, j := range all {
		part := l.jointPart(j)
		if part.Alone = len(all) == 1; part.Alone {
			part.Findings = l.findingsOn()
		}
		var err error
		if part.Workings, err = l.jointWorkings(j.Record, len(all) > 1); err != nil {
			return p, err
		}
		p.Joints = append(p.Joints, part)
	}
	return p, nil
}

// seamOf finds what was reckoned of a joint; nil where nothing was.
func (l *leaf) seamOf(rec *record.Joint) *weld.Seam {
	all := l.dossier.Welding.Seams
	at := slices.IndexFunc(all, func(s weld.Seam) bool { return s.Joint == rec })
	if at < 0 {
		return nil
	}
	return &all[at]
}

// jointWorkings shows what is asked of the throat, and the forces where some are on record. several tells of other joints on
// the same page.
func (l *leaf) jointWorkings(rec *record.Joint, several bool) ([]SheetWorking, error) {
	s := l.seamOf(rec)
	if s == nil {
		return nil, nil
	}
	prefix := ""
	if several {
		prefix = l.anchor("joint "+rec.ID) + "-"
	}
	var out []SheetWorking
	for _, one := range []struct {
		title, prefix string
		of            *method.Working
	}{{"Least throat", prefix + "throat-", s.Factor}, {"Forces on the seam", prefix + "forces-", s.Strength}} {
		part, ok, err := l.sheetWorking(one.title, one.prefix, one.of)
		if err != nil {
			return nil, err
		}
		if ok {
			out = append(out, part)
		}
	}
	return out, nil
}

func (l *leaf) jointPart(j *seam.Joint) JointPart {
	m, rec := l.dossier.Seams, j.Record
	anchor := l.anchor("joint " + rec.ID)
	p := JointPart{
		ID: anchor, Key: rec.ID, Where: rec.Where.V, What: seam.Short(rec), Metres: written(float64(rec.Length.V), "m"), Standing: standing(m.Standing(j)),
		Findings: l.findingsHere(anchor), Softened: l.softened(rec), Facts: l.fieldsWritten(rec, "part", "other_part", "where", "note"),
	}
	for i := range p.Facts {
		p.Facts[i].Place = Link{} // all of them stand in one row of the record, which the register names
		if p.Facts[i].Name == "procedure" {
			p.Facts[i].Link = l.subjectAs("procedure "+p.Facts[i].Value.Text, p.Facts[i].Value.Text)
		}
	}
	p.Facts = append(p.Facts, l.jointTakes(rec)...)
	for _, lack := range m.Lacks(j) {
		p.Lacks = append(p.Lacks, LackRow{lack.Link, lack.Says, l.place(lack.At)})
	}
	for i, named := range []record.Val[string]{rec.Part, rec.Other} {
		p.Parts = append(p.Parts, l.jointMetal(named, j.Parts[i]))
	}
	for _, w := range j.Welds {
		p.Welds = append(p.Welds, l.weldRow(w))
		p.Readings = append(p.Readings, l.readingRow(w))
	}
	for _, look := range j.Looks {
		p.Looks = append(p.Looks, l.lookRow(look))
	}
	for _, n := range j.Nonconformities {
		p.Others = append(p.Others, l.subject("nonconformity "+n.ID))
	}
	for _, r := range j.Repairs {
		p.Others = append(p.Others, l.subject("repair "+r.ID))
	}
	for _, t := range j.LeakTests {
		p.Others = append(p.Others, l.subject("leak test "+t.ID))
	}
	for _, h := range j.Holds {
		p.Others = append(p.Others, l.subject("hold point "+h.ID))
	}
	return p
}

// jointTakes is what a seam takes of weld metal and of time under the arc, with the way to the formulas; empty where its size is not
// written.
func (l *leaf) jointTakes(rec *record.Joint) []Fact {
	s := l.seamOf(rec)
	if s == nil || !s.Takes.Known {
		return nil
	}
	var by Link
	if w := l.dossier.Welding.Example; w != nil {
		by = l.sheetLink(w.Sheet)
	}
	by.Text = unit.Figures(s.Takes.Metal, 3)
	return []Fact{
		{Name: "weld metal that it takes", Value: Figure{Text: by.Text}, Unit: "kg", Link: by},
		{Name: "time under the arc", Value: Figure{Text: unit.Figures(s.Takes.Arc, 2)}, Unit: "h"},
	}
}

// softened says how far the heat of the seam softens the plate beside it, and by whom; empty where no rule fits.
func (l *leaf) softened(rec *record.Joint) string {
	reckoned := l.seamOf(rec)
	if reckoned == nil || !reckoned.Softened.Known {
		return ""
	}
	s, t := reckoned.Softened, float64(reckoned.Thinner)
	says := "Plate within " + unit.Plain(s.MM) + " mm of the root is taken as softened by heat: " + heatRow(s.By, t)
	for i, r := range s.Beside {
		says += []string{". Beside it: ", "; "}[min(i, 1)] + heatRow(r, t)
	}
	return says + "."
}

func heatRow(r *weld.HeatRow, t float64) string {
	return r.Name + ", " + unit.Plain(r.Reach(t)) + " mm (" + r.String() + "; " + string(r.Basis) + ")"
}

func (l *leaf) jointMetal(named record.Val[string], part *record.Part) JointMetal {
	if part == nil {
		return JointMetal{Part: Link{Text: or(named.V, "not named")}, Thickness: Figure{Why: "not recorded"}, Cast: Figure{Why: "not recorded"}}
	}
	m := l.dossier.Seams
	out := JointMetal{Part: l.subjectAs("part "+part.ID, part.ID), Name: part.Name.V, Thickness: measured(part.Drawn, "mm"), Lot: Link{Text: or(part.Lot.V, "not named")},
		Alloy: m.Metal(part).V, Cast: Figure{Why: "not recorded"}, Place: l.place(part.At)}
	lot := m.Lots[part.Lot.V]
	if lot == nil {
		return out
	}
	out.Lot, out.Cast = l.subjectAs("lot "+lot.ID, lot.ID), word(lot.Cast)
	out.Certificate = Link{Text: lot.Certificate.V}
	if paper := m.Papers[lot.Certificate.V]; paper != nil {
		out.Certificate = l.subjectAs("document "+paper.ID, lot.Certificate.V)
	}
	return out
}

func or(text, otherwise string) string {
	if text == "" {
		return otherwise
	}
	return text
}

func (l *leaf) weldRow(w *record.Weld) WeldRow {
	m := l.dossier.Seams
	row := WeldRow{
		ID: l.anchor("weld " + w.ID), Key: w.ID, Day: dated(w.Date), Hours: strings.Trim(shortHour(w.Begin)+" to "+shortHour(w.End), " to"),
		Procedure: Link{Text: or(w.Procedure.V, "not recorded")}, Welder: Link{Text: or(w.Welder.V, "not recorded")}, Filler: Link{Text: or(w.Filler.V, "not recorded")},
		Position: word(w.Position), Held: means("positions", w.Position.V), Runs: has(w.Runs.Set, unit.Text(float64(w.Runs.V), 0), "not recorded"), Volts: measured(w.Volts, "V"), Amperes: measured(w.Amperes, "A"), Speed: measured(w.Speed, "mm/min"), Throat: measured(w.Throat, "mm"), Place: l.place(w.At),
	}
	if p := m.Procedure(w.Procedure, w.Revision); p != nil {
		row.Procedure = l.subjectAs("procedure "+p.ID, strings.TrimSpace(w.Procedure.V+" "+w.Revision.V))
	}
	if who := m.Welder(w.Welder, w.Date); who != nil {
		row.Welder = l.subjectAs("welder "+who.ID, w.Welder.V)
		if w.Date.Set {
			held, _ := m.Held(who, w.Date.V)
			for _, q := range held {
				row.Papers = append(row.Papers, l.subjectAs("qualification "+q.ID, q.ID))
			}
			row.Bare = len(held) == 0
		}
	}
	if m.Consumables[w.Filler.V] != nil {
		row.Filler = l.subjectAs("consumable "+w.Filler.V, w.Filler.V)
	}
	return row
}

func (l *leaf) readingRow(w *record.Weld) ReadingRow {
	row := ReadingRow{Key: w.ID, Energy: Figure{Why: "not known"}, Input: Figure{Why: "not known"}, Feed: measured(w.Feed, "m/min"), Before: measured(w.Preheat, "°C"),
		Between: measured(w.Interpass, "°C"), Shop: measured(w.Ambient, "°C"), Humid: measured(w.Humidity, "%"), Note: w.Note.V}
	if i := slices.IndexFunc(l.dossier.Welding.Heats, func(h weld.WeldHeat) bool { return h.Weld == w }); i >= 0 {
		h := &l.dossier.Welding.Heats[i]
		if h.Known {
			row.Energy = Figure{Text: unit.Text(h.Energy, 2)}
		}
		if h.Shaped {
			row.Energy.Why, row.Input.Why = "shaped current", "shaped current"
		}
		if h.Known && h.Input > 0 {
			row.Input = Figure{Text: unit.Text(h.Input, 2)}
		}
	}
	if w.Gas.Set {
		row.Gas = Link{Text: w.Gas.V}
		if l.dossier.Seams.Consumables[w.Gas.V] != nil {
			row.Gas = l.subjectAs("consumable "+w.Gas.V, w.Gas.V)
		}
	}
	if w.Photo.Set {
		row.Photo = l.subjectAs("document "+w.Photo.V, w.Photo.V)
	}
	return row
}

// shortHour gives 09:14 of 09:14:00 or of a whole moment.
func shortHour(v record.Val[string]) string {
	text := v.V
	if _, after, found := strings.Cut(text, "T"); found {
		text = after
	}
	if len(text) > 5 {
		text = text[:5]
	}
	return text
}
