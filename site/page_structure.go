package site

import (
	"html/template"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// StructurePage judges the plating of the whole boat, zone by zone.
type StructurePage struct {
	Says     StructureSays
	Picture  Drawing
	Zones    []Zone
	Craft    Working
	Findings []FindingRow
	Notes    []Note
	Caution  template.HTML
}

// StructureSays is the answer about the structure; the cover says it too.
type StructureSays struct {
	Tally
	Panels      int
	Least       PanelBrief   // least room of the panels that are shown
	ShortPanels []PanelBrief // panels thinner than needed, worst first
	Sheet       Link
	Work        string
	Basis       Basis // softest basis under any panel
	Assumed     bool  // the record does not say which sheet governs
}

// PanelBrief is a panel in half a sentence.
type PanelBrief struct {
	Link   Link
	Where  string
	Fitted string
	Needed string
	Margin string
}

// Zone is the panels of one part of the boat.
type Zone struct {
	Name string
	Rows []PanelRow
}

// PanelRow is one panel in the table of its zone.
type PanelRow struct {
	Link     Link
	Where    string
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
		Says: l.structureSays(), Picture: l.marginsPicture(), Craft: craft,
		Findings: l.findingsHere(""), Notes: notes, Caution: l.press.notes["structure"],
	}
	for i := range r.Panels {
		panel := &r.Panels[i]
		zone := panel.Record.Zone.V
		at := -1
		for j := range p.Zones {
			if p.Zones[j].Name == zone {
				at = j
			}
		}
		if at < 0 {
			p.Zones = append(p.Zones, Zone{Name: zone})
			at = len(p.Zones) - 1
		}
		p.Zones[at].Rows = append(p.Zones[at].Rows, l.panelRow(panel))
	}
	return p, nil
}

func (l *leaf) panelRow(p *scantling.Panel) PanelRow {
	rec := p.Record
	shown := p.Standing != finding.NotShown
	return PanelRow{
		Link: l.subjectAs("panel "+rec.ID, rec.ID), Where: rec.Where.V, Count: p.Count,
		Sides: written(float64(rec.Short.V), "mm") + " × " + written(float64(rec.Long.V), "mm"), Alloy: rec.Alloy.V,
		Pressure: has(p.Pressure > 0, unit.Text(p.Pressure, 1), "not shown"),
		Needed:   has(shown, unit.Text(p.Needed, 2), "not shown"), Fitted: written(float64(p.Fitted), "mm"),
		Margin: has(p.Margin > 0, times(p.Margin), "not shown"), Governs: governing(p), Standing: standing(p.Standing), Why: p.Why, Place: l.place(rec.At),
	}
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
	s := StructureSays{Tally: tally(r.Checks), Panels: len(r.Panels), Assumed: r.Assumed}
	if r.Sheet != nil {
		s.Sheet, s.Work = l.sheetLink(r.Sheet), workOf(r.Sheet)
	}
	softest := finding.Basis("")
	least := -1
	for i := range r.Panels {
		p := &r.Panels[i]
		softest = finding.Softer(softest, p.Basis)
		if p.Margin <= 0 {
			continue
		}
		if least < 0 || p.Margin < r.Panels[least].Margin {
			least = i
		}
		if p.Standing == finding.Short {
			s.ShortPanels = append(s.ShortPanels, l.panelBrief(p))
		}
	}
	if least >= 0 {
		s.Least = l.panelBrief(&r.Panels[least])
	}
	s.Basis = basis(softest)
	return s
}

func (l *leaf) panelBrief(p *scantling.Panel) PanelBrief {
	return PanelBrief{
		Link: l.subjectAs("panel "+p.Record.ID, p.Record.ID), Where: p.Record.Where.V, Fitted: written(float64(p.Fitted), "mm"),
		Needed: unit.Text(p.Needed, 2), Margin: times(p.Margin),
	}
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
