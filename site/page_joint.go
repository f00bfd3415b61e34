package site

import (
	"slices"
	"strings"

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
	Parts    []JointMetal
	Welds    []WeldRow
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

// WeldRow is one record of welding.
type WeldRow struct {
	ID        string
	Key       string
	Day       Figure
	Hours     string
	Procedure Link
	Welder    Link
	Filler    Link
	Position  Figure
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

func (l *leaf) jointsPage(all []*seam.Joint) JointsPage {
	p := JointsPage{Title: l.at.title}
	for _, j := range all {
		part := l.jointPart(j)
		if part.Alone = len(all) == 1; part.Alone {
			part.Findings = l.findingsOn()
		}
		p.Joints = append(p.Joints, part)
	}
	return p
}

func (l *leaf) jointPart(j *seam.Joint) JointPart {
	m, rec := l.dossier.Seams, j.Record
	anchor := l.anchor("joint " + rec.ID)
	p := JointPart{
		ID: anchor, Key: rec.ID, Where: rec.Where.V, What: seam.Short(rec), Metres: written(float64(rec.Length.V), "m"), Standing: standing(m.Standing(j)),
		Findings: l.findingsHere(anchor), Facts: onlyWritten(l.fields(rec, "part", "other_part", "where", "note")),
	}
	for i := range p.Facts {
		p.Facts[i].Place = Link{} // all of them stand in one row of the record, which the register names
		if p.Facts[i].Name == "procedure" {
			p.Facts[i].Link = l.subjectAs("procedure "+p.Facts[i].Value.Text, p.Facts[i].Value.Text)
		}
	}
	p.Facts = append(p.Facts, l.softened(rec)...)
	for _, lack := range m.Lacks(j) {
		p.Lacks = append(p.Lacks, LackRow{lack.Link, lack.Says, l.place(lack.At)})
	}
	for i, named := range []record.Val[string]{rec.Part, rec.Other} {
		p.Parts = append(p.Parts, l.jointMetal(named, j.Parts[i]))
	}
	for _, w := range j.Welds {
		p.Welds = append(p.Welds, l.weldRow(w))
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

// softened says how far the heat of the seam softens the plate beside it, and by whom.
func (l *leaf) softened(rec *record.Joint) []Fact {
	all := l.dossier.Welding.Seams
	at := slices.IndexFunc(all, func(s weld.Seam) bool { return s.Joint == rec })
	if at < 0 || !all[at].Softened.Known {
		return nil
	}
	s := all[at].Softened
	note := s.By.Name + ", " + s.By.String()
	for _, r := range s.Beside {
		note += "; " + r.Name + ", " + r.String() + ": " + unit.Plain(r.Reach(float64(all[at].Thinner))) + " mm"
	}
	return []Fact{{Name: "plate softened by heat, each way from the root", Value: Figure{Text: unit.Plain(s.MM)}, Unit: "mm", Note: note}}
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
		Position: word(w.Position), Runs: has(w.Runs.Set, unit.Text(float64(w.Runs.V), 0), "not recorded"), Volts: measured(w.Volts, "V"), Amperes: measured(w.Amperes, "A"), Speed: measured(w.Speed, "mm/min"), Throat: measured(w.Throat, "mm"), Place: l.place(w.At),
	}
	if p := m.Procedure(w.Procedure, w.Revision); p != nil {
		row.Procedure = l.subjectAs("procedure "+p.ID, strings.TrimSpace(w.Procedure.V+" "+w.Revision.V))
	}
	if who := m.Welder(w.Welder, w.Date); who != nil {
		row.Welder = l.subjectAs("welder "+who.ID, w.Welder.V)
	}
	if m.Consumables[w.Filler.V] != nil {
		row.Filler = l.subjectAs("consumable "+w.Filler.V, w.Filler.V)
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

// findingsOn gives the findings that belong on this page, at whatever place of it.
func (l *leaf) findingsOn() []FindingRow {
	var out []FindingRow
	for i, f := range l.findings {
		if t, ok := l.shownAt(f.Rule, f.Subject); ok && t.path == l.at.path {
			row := l.findingRow(f, i+1)
			row.ID, row.Working = "", Link{}
			out = append(out, row)
		}
	}
	return out
}
