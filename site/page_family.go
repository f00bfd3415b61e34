package site

import (
	"path"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// FamilyPage shows panels or members that are judged alike: the one with the least room worked in full, and for all of
// them every value that differs from one to the next.
type FamilyPage struct {
	Title    string
	Zone     string
	What     string // "panels" or "members"
	Says     FamilySays
	Picture  Drawing
	Section  Drawing // of the members' bar
	Rows     []FamilyRow
	Unit     string // of what is asked and there, where all rows have one
	Others   []RuleTag
	Worked   WorkedPiece
	Compare  Compare
	Reasons  RuleTable // the worked one as every rule sees it
	Together []TogetherRow
	Craft    Link
	Sheet    Link
	Work     string
	Findings []FindingRow
}

// FamilySays is the answer.
type FamilySays struct {
	Standing Standing
	Pieces   int // both sides counted
	Workings int // that differ
	Short    int
	NotShown int
	Least    PieceBrief
	Basis    Basis
}

// FamilyRow is one working with all that share it.
type FamilyRow struct {
	ID       string
	Name     string
	Where    string
	Remark   string
	Also     []Alike // those of which every value is the same
	Count    int
	Sides    string // of a panel; span and spacing of a member
	Pressure Figure
	Needed   Figure
	Fitted   Figure
	Unit     string
	Most     bool // what is asked may not be passed
	Governs  string
	Margin   Figure
	Standing Standing
	Why      string
	Others   []Beside
	Place    Link
}

// Alike is one of those that share a working.
type Alike struct {
	ID, Name string
	Count    int
}

// WorkedPiece is the one that is worked in full.
type WorkedPiece struct {
	Name    string
	Where   string
	Facts   []Fact
	Asks    []AskRow // of a panel
	Needs   []NeedRow
	Working Working
	Why     string
}

// NeedRow is one thing that the sheet asks of a member, bracket or fitting.
type NeedRow struct {
	What     string
	Name     string
	Step     Link
	Needed   Figure
	Fitted   Figure
	Unit     string
	Most     bool
	Margin   Figure
	Governs  bool
	State    string
	Why      string
	Standing Standing
}

// TogetherRow is what a model of a ring or a bottom says of a member beside the formula for one span.
type TogetherRow struct {
	Member  Link
	Model   Link
	Moment  string
	Alone   string // moment of one span
	Ratio   string
	Shear   string
	Moves   string
	Margin  string // of bending and shear in the model
	Formula string // of bending and shear alone
	Remark  string
}

func (p FamilyPage) heading() (heading, under string) { return p.Title, p.Zone }

func (l *leaf) familyPage(f *family) (FamilyPage, error) {
	if f.kind == "panel" {
		return l.panelFamily(f)
	}
	return l.memberFamily(f)
}

func (l *leaf) familyHead(f *family) FamilyPage {
	p := FamilyPage{Title: f.title, Zone: f.zone, What: f.kind + "s", Picture: l.familyPicture(f), Others: l.otherRules(), Craft: Link{Text: "values of the craft", Href: l.to(structurePath, "craft")}, Findings: l.findingsOn()}
	if s := l.dossier.Structure.Sheet; s != nil {
		p.Sheet, p.Work = l.sheetLink(s), workOf(s)
	}
	return p
}

func (l *leaf) panelFamily(f *family) (FamilyPage, error) {
	r := &l.dossier.Structure
	p := l.familyHead(f)
	var ws []compared
	at := map[string]int{}
	worst := f.worst(r)
	all := finding.Met
	softest := finding.Basis("")
	for _, i := range f.panels {
		q := &r.Panels[i]
		p.Says.count(q.Standing, q.Count)
		all, softest = finding.Worst(all, q.Standing), finding.Softer(softest, q.Basis)
		id := l.anchor("panel " + q.Record.ID)
		if row, known := at[q.Same]; known && q.Same != "" {
			p.Rows[row].Also = append(p.Rows[row].Also, Alike{id, q.Record.ID, q.Count})
			continue
		}
		at[q.Record.ID] = len(p.Rows)
		p.Rows = append(p.Rows, l.panelFamilyRow(q, id))
		ws = append(ws, compared{name: q.Record.ID, working: q.Working, governs: q.Governs})
	}
	q := &r.Panels[worst]
	p.Says.Standing, p.Says.Workings, p.Says.Basis = standing(all), len(p.Rows), basis(softest)
	if q.Margin > 0 {
		p.Says.Least = l.panelPiece(q)
		p.Says.Least.Link.Text = q.Record.ID
	}
	working, err := l.working(q.Working, "s-", q.Governs)
	if err != nil {
		return FamilyPage{}, err
	}
	p.Worked = WorkedPiece{Name: "panel " + q.Record.ID, Where: q.Record.Where.V, Facts: l.panelFacts(q), Working: working, Why: q.Why}
	for _, a := range q.Asks {
		p.Worked.Asks = append(p.Worked.Asks, askRow(a, q.Governs, working.at[a.Symbol]))
	}
	p.Compare = l.compare(ws, q.Working, working.at)
	p.Unit = unitOfAll(p.Rows)
	p.Reasons = RuleTable{Of: Link{Text: "panel " + q.Record.ID}, What: "panel", Rows: append([]RuleRow{l.panelRule(q, nil)}, l.opinionRules("panel "+q.Record.ID, q.Opinions, nil)...)}
	return p, nil
}

func (s *FamilySays) count(of finding.Standing, n int) {
	s.Pieces += n
	switch of {
	case finding.Short:
		s.Short += n
	case finding.NotShown:
		s.NotShown += n
	}
}

func (l *leaf) panelFamilyRow(q *scantling.Panel, id string) FamilyRow {
	row := l.panelRow(q)
	return FamilyRow{ID: id, Name: q.Record.ID, Where: row.Where, Remark: row.Remark, Count: row.Count, Sides: row.Sides, Pressure: row.Pressure, Needed: row.Needed, Fitted: Figure{Text: row.Fitted}, Unit: "mm",
		Governs: row.Governs, Margin: row.Margin, Standing: row.Standing, Why: row.Why, Others: row.Others, Place: lineOnly(row.Place)}
}

func (l *leaf) memberFamily(f *family) (FamilyPage, error) {
	r := &l.dossier.Structure
	p := l.familyHead(f)
	var ws []compared
	at := map[string]int{}
	worst := f.worst(r)
	all := finding.Met
	softest := finding.Basis("")
	for _, i := range f.members {
		m := &r.Members[i]
		p.Says.count(m.Standing, m.Count)
		all, softest = finding.Worst(all, m.Standing), finding.Softer(softest, m.Basis)
		id := l.anchor("member " + m.Record.ID)
		p.Together = append(p.Together, l.togetherRows(m)...)
		if row, known := at[m.Same]; known && m.Same != "" {
			p.Rows[row].Also = append(p.Rows[row].Also, Alike{id, m.Record.ID, m.Count})
			continue
		}
		at[m.Record.ID] = len(p.Rows)
		p.Rows = append(p.Rows, l.memberFamilyRow(m, id))
		ws = append(ws, compared{name: m.Record.ID, working: m.Working, governs: governingStep(m)})
	}
	m := &r.Members[worst]
	p.Says.Standing, p.Says.Workings, p.Says.Basis = standing(all), len(p.Rows), basis(softest)
	if m.Margin > 0 {
		p.Says.Least = l.memberPiece(m)
	}
	governs := governingStep(m)
	working, err := l.working(m.Working, "s-", governs)
	if err != nil {
		return FamilyPage{}, err
	}
	p.Section = l.sectionPicture(m)
	p.Worked = WorkedPiece{Name: "member " + m.Record.ID, Where: m.Record.Where.V, Facts: l.memberFacts(m), Needs: needRows(m.Needs, governs, working.at), Working: working, Why: m.Why}
	p.Compare = l.compare(ws, m.Working, working.at)
	p.Unit = unitOfAll(p.Rows)
	p.Reasons = RuleTable{Of: Link{Text: "member " + m.Record.ID}, What: "member", Rows: append([]RuleRow{l.memberRule(m, nil)}, l.opinionRules("member "+m.Record.ID, m.Opinions, nil)...)}
	return p, nil
}

// governingStep is the symbol of the step that decides about a member; empty where none does.
func governingStep(m *scantling.Member) string {
	n, _ := m.Need(m.Governs)
	return n.Symbol
}

func (l *leaf) memberFamilyRow(m *scantling.Member, id string) FamilyRow {
	row := l.memberRow(m)
	return FamilyRow{ID: id, Name: m.Record.ID, Where: row.Where, Remark: row.Remark, Count: row.Count, Sides: row.Span + " / " + row.Spacing, Pressure: row.Pressure, Needed: row.Needed, Fitted: row.Fitted, Unit: row.Unit, Most: row.Most,
		Governs: row.Governs, Margin: row.Margin, Standing: row.Standing, Why: row.Why, Others: row.Others, Place: lineOnly(l.place(m.Record.At))}
}

// lineOnly names a record line by its file alone, without the folder.
func lineOnly(p Link) Link {
	p.Text = path.Base(p.Text)
	return p
}

// memberFacts are the member's record.
func (l *leaf) memberFacts(m *scantling.Member) []Fact {
	return l.fieldsWritten(m.Record, "zone", "where", "count", "replaces")
}

// unitOfAll takes the unit out of rows that have one in common, for the head of the column; empty where they differ.
func unitOfAll(rows []FamilyRow) string {
	for i := range rows {
		if rows[i].Unit != rows[0].Unit {
			return ""
		}
	}
	if len(rows) == 0 {
		return ""
	}
	of := rows[0].Unit
	for i := range rows {
		rows[i].Unit = ""
	}
	return of
}

// needRows are what a sheet asks for, each with the way to its step.
func needRows(all []scantling.Need, governs string, steps map[string]string) []NeedRow {
	var out []NeedRow
	for _, n := range all {
		row := NeedRow{What: n.What, Name: n.Name, Unit: n.Unit, Most: n.Most, Governs: n.Symbol == governs && n.Symbol != "", Step: Link{Text: method.Written(n.Symbol)},
			Needed: has(n.Shown, sizeNumber(n, n.Needed), string(n.State)), Fitted: has(n.Shown, sizeNumber(n, n.Fitted), string(n.State)), Margin: has(n.Shown && n.Margin > 0, needTimes(n), string(n.State)), Standing: standing(needStanding(n))}
		if at := steps[n.Symbol]; at != "" {
			row.Step.Href = "#" + at
		}
		if n.State != method.Sound {
			row.State, row.Why = string(n.State), n.Why()
		}
		if n.State == method.NotSet {
			row.Standing, row.State = idle, ""
		}
		out = append(out, row)
	}
	return out
}

func needStanding(n scantling.Need) finding.Standing {
	switch {
	case !n.Shown:
		return finding.NotShown
	case n.Margin < 1:
		return finding.Short
	}
	return finding.Met
}

func needTimes(n scantling.Need) string { return roomText(needStanding(n), n.Margin) }

// togetherRows set what the models say beside the formula for one span.
func (l *leaf) togetherRows(m *scantling.Member) []TogetherRow {
	var out []TogetherRow
	for i := range m.Together {
		t := &m.Together[i]
		model := &l.dossier.Structure.Models[t.Model]
		row := TogetherRow{Member: l.subjectAs("member "+m.Record.ID, m.Record.ID), Model: l.subjectAs("model "+model.Name, model.Name), Moment: unit.Text(t.Moment, 2), Alone: unit.Text(m.Moment, 2), Ratio: unit.Text(t.Ratio, 2),
			Shear: unit.Text(t.Shear, 2), Moves: unit.Text(t.Moves, 1), Margin: times(t.Margin), Formula: times(t.Alone)}
		switch {
		case t.Decides:
			row.Remark = "decides, as the record says"
		case t.Alone < 1 && t.Margin >= 1:
			row.Remark = "held by its neighbours; the standing stays that of the rule"
		case t.Alone >= 1 && t.Margin < 1:
			row.Remark = "asks for more than the rule; the standing stays that of the rule"
		}
		out = append(out, row)
	}
	return out
}
