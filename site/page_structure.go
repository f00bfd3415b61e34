package site

import (
	"html/template"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// StructurePage judges the whole structure: the answer, what has the least room, the boat unrolled, each zone by each
// rule, and what would change it.
type StructurePage struct {
	Says      StructureSays
	Worst     []WorstRow
	Pictures  []Drawing
	ZoneRows  []ZoneSays
	Zones     []Zone // the tables themselves, where no zone has a page
	Others    []RuleTag
	Rules     []RuleHead
	Matrix    []MatrixRow
	Headrooms []HeadroomRow
	WhatIf    Link
	Frames    Link
	Local     Link
	Renewal   Link
	Wear      WearSays
	Craft     Working
	Findings  []FindingRow
	Notes     []Note
	Caution   template.HTML
}

// StructureSays is the answer about the structure; the cover says it too.
type StructureSays struct {
	Tally
	Panels   int
	Members  int
	Locals   int      // brackets and fittings
	Pieces   int      // all of them
	Shorts   int      // of the pieces
	Opens    int      // not shown
	Critical WorstRow // with the least room of all that is shown
	Sheet    Link
	Work     string
	Basis    Basis // softest basis under any of them
	Assumed  bool  // the record does not say which sheet governs
}

// WorstRow is one of those with the least room, in words.
type WorstRow struct {
	Link     Link
	Where    string
	Says     Prose
	Equal    int // how many more share its working
	Standing Standing
	Basis    Basis
}

// Zone is the panels of one part of the boat.
type Zone struct {
	Name string
	Rows []PanelRow
}

// PanelRow is one panel in the table of its zone.
type PanelRow struct {
	Link     Link
	Where    string // of a derived one what its name does not say
	Remark   string
	Count    int
	Sides    string
	Alloy    string
	Pressure Figure
	Needed   Figure
	Fitted   string
	Margin   Figure
	Governs  string
	Standing Standing
	Why      string
	Place    Link
	Others   []Beside
}

// RuleHead is one rule by which the hull is judged.
type RuleHead struct {
	Letter   string
	Rule     Link
	Governs  bool
	Refuses  string
	Recalled int
	Formulas int
}

// MatrixRow is one zone as every rule sees it.
type MatrixRow struct {
	Zone  Link
	Cells []MatrixCell
}

// MatrixCell is the least room of a zone by one rule.
type MatrixCell struct {
	Standing Standing
	Ratio    Figure
	Words    string
}

func (l *leaf) structurePage() (StructurePage, error) {
	r := &l.dossier.Structure
	notes, err := l.notesFor("structure")
	if err != nil {
		return StructurePage{}, err
	}
	craft, err := l.working(r.Craft, "craft-", "")
	if err != nil {
		return StructurePage{}, err
	}
	p := StructurePage{
		Says: l.structureSays(), Worst: l.worstRows(), Pictures: l.wholePictures(), Others: l.otherRules(), Rules: l.ruleHeads(), Matrix: l.matrix(), Headrooms: l.headroomRows(), Wear: l.wearSays(),
		Craft: craft, Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["structure"],
	}
	p.WhatIf, p.Frames, p.Local, p.Renewal = l.below(whatIfPath), l.below(framePath), l.below(localPath), l.below(renewalPath)
	if len(p.Pictures) == 0 {
		p.Pictures = []Drawing{l.marginsPicture()}
	}
	for _, name := range l.zoneNames() {
		p.ZoneRows = append(p.ZoneRows, l.zoneSays(l.zone(name)))
	}
	if !l.zoned() {
		p.ZoneRows, p.Zones = nil, l.zoneTables()
	}
	return p, nil
}

// below gives the way to a page right under the structure, empty where there is none.
func (l *leaf) below(path string) Link {
	for _, s := range l.sectionOf(structurePath).kids {
		if s.path == path {
			return l.section(s)
		}
	}
	return Link{}
}

// zoneTables are the panels zone by zone, in the order of the record.
func (l *leaf) zoneTables() []Zone {
	r := &l.dossier.Structure
	var out []Zone
	at := map[string]int{}
	for i := range r.Panels {
		zone := r.Panels[i].Record.Zone.V
		k, known := at[zone]
		if !known {
			k = len(out)
			at[zone] = k
			out = append(out, Zone{Name: zone})
		}
		out[k].Rows = append(out[k].Rows, l.panelRow(&r.Panels[i]))
	}
	return out
}

// length gives a length of the structure: as somebody wrote it, or in whole millimetres where the grid gave it, as on a drawing.
// The working has it in full.
func length(v unit.MM, derived bool) string {
	if derived {
		return unit.Text(v, 0)
	}
	return written(float64(v), "mm")
}

func (l *leaf) panelRow(p *scantling.Panel) PanelRow {
	rec := p.Record
	shown := p.Standing != finding.NotShown
	row := PanelRow{
		Link: l.subjectAs("panel "+rec.ID, rec.ID), Where: rec.Where.V, Count: p.Count,
		Sides: length(rec.Short.V, p.Derived) + " × " + length(rec.Long.V, p.Derived), Alloy: rec.Alloy.V,
		Pressure: has(p.Pressure > 0, unit.Text(p.Pressure, 1), "not shown"),
		Needed:   has(shown, unit.Up(p.Needed, 2), "not shown"), Fitted: written(float64(p.Fitted), "mm"),
		Margin: has(p.Margin > 0, times(p.Margin), "not shown"), Governs: governing(p), Standing: standing(p.Standing), Why: p.Why, Place: l.place(rec.At), Others: besides(p.Opinions),
	}
	if p.Derived {
		row.Where, row.Remark = whereBeside(rec.ID, rec.Where.V)
	}
	return row
}

// governing gives the plain name of the step that asks for the most.
func governing(p *scantling.Panel) string {
	for _, a := range p.Asks {
		if a.Symbol == p.Governs {
			return a.Name
		}
	}
	return ""
}

func (l *leaf) structureSays() StructureSays {
	r := &l.dossier.Structure
	s := StructureSays{Tally: l.tallyAt(structurePath, r.Checks), Panels: len(r.Panels), Members: len(r.Members), Locals: len(r.Brackets) + len(r.Fittings), Assumed: r.Assumed}
	if r.Sheet != nil {
		s.Sheet, s.Work = l.sheetLink(r.Sheet), workOf(r.Sheet)
	}
	softest := finding.Basis("")
	take := func(of finding.Standing, b finding.Basis) {
		softest = finding.Softer(softest, b)
		s.Pieces++
		switch of {
		case finding.Short:
			s.Shorts++
		case finding.NotShown:
			s.Opens++
		}
	}
	for i := range r.Panels {
		take(r.Panels[i].Standing, r.Panels[i].Basis)
	}
	for i := range r.Members {
		take(r.Members[i].Standing, r.Members[i].Basis)
	}
	for i := range r.Brackets {
		take(r.Brackets[i].Standing, r.Brackets[i].Basis)
	}
	for i := range r.Fittings {
		take(r.Fittings[i].Standing, r.Fittings[i].Basis)
	}
	if len(r.Worst) > 0 {
		s.Critical = l.worstRow(&r.Worst[0])
	}
	s.Basis = basis(softest)
	return s
}

func (l *leaf) worstRows() []WorstRow {
	var out []WorstRow
	for i := range l.dossier.Structure.Worst {
		out = append(out, l.worstRow(&l.dossier.Structure.Worst[i]))
	}
	return out
}

func (l *leaf) worstRow(c *scantling.Critical) WorstRow {
	row := WorstRow{Link: l.subject(c.Subject), Says: Prose(closed(capital(c.Says))), Equal: c.Equal, Standing: standing(c.Standing), Basis: basis(c.Basis)}
	if name, is := strings.CutPrefix(c.Subject, "member "); is {
		row.Link.Text = name
	}
	_, id, _ := strings.Cut(c.Subject, " ")
	row.Where, _ = whereBeside(id, c.Where)
	return row
}

func (l *leaf) ruleHeads() []RuleHead {
	var out []RuleHead
	for i := range l.dossier.Structure.Rules {
		r := &l.dossier.Structure.Rules[i]
		out = append(out, RuleHead{ruleLetter(i), l.ruleLink(r), r.Governs, r.Refuses, r.Recalled, r.Formulas})
	}
	return out
}

// matrix sets the zones against the rules.
func (l *leaf) matrix() []MatrixRow {
	r := &l.dossier.Structure
	if len(r.Rules) < 2 {
		return nil
	}
	var out []MatrixRow
	for _, name := range l.zoneNames() {
		z := l.zone(name)
		row := MatrixRow{Zone: l.zoneSays(z).Link}
		for k := range z.ByRule {
			v := &z.ByRule[k]
			least := 0.0
			if v.Panel >= 0 {
				least = marginBy(k, r.Panels[v.Panel].Margin, r.Panels[v.Panel].Opinions)
			}
			if v.Member >= 0 {
				if m := marginBy(k, r.Members[v.Member].Margin, r.Members[v.Member].Opinions); least == 0 || m < least {
					least = m
				}
			}
			of := finding.Met
			if v.Short > 0 {
				of = finding.Short
			}
			row.Cells = append(row.Cells, MatrixCell{standing(v.Standing), has(least > 0, roomText(of, least), "none shown"), zoneWords(v, z)})
		}
		out = append(out, row)
	}
	return out
}

func marginBy(rule int, governing float64, others []scantling.Opinion) float64 {
	if rule == 0 {
		return governing
	}
	if rule-1 < len(others) {
		return others[rule-1].Margin
	}
	return 0
}

// workOf names the work that a sheet's formulas come from, with its edition.
func workOf(s *method.Sheet) string {
	if s.Edition == "" {
		return s.Work
	}
	return s.Work + ":" + s.Edition
}

// sheetLink leads to the page of a method sheet.
func (l *leaf) sheetLink(s *method.Sheet) Link {
	for i, known := range l.sheets {
		if known == s {
			return l.section(l.sectionOf(methodsPath).kids[i])
		}
	}
	return Link{Text: s.Title}
}
