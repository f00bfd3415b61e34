package site

import (
	"slices"

	"hullfile/engine/method"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// PanelPage shows one panel: what is asked, what is fitted, and every step between the record and the answer.
type PanelPage struct {
	Key      string
	Zone     string
	Where    string
	Count    int
	Standing Standing
	Fitted   string
	Needed   string // empty where not shown
	Margin   string
	Governs  string
	Why      string
	Basis    Basis
	Sheet    Link
	Work     string
	Picture  Drawing
	Facts    []Fact
	Asks     []AskRow
	Working  Working
	Craft    Link
	Rules    RuleTable // as every rule sees it
	Findings []FindingRow
}

// AskRow is one thickness that the sheet asks for.
type AskRow struct {
	Name    string
	Step    Link
	Value   Figure
	Governs bool
	State   string
	Why     string
}

func (l *leaf) panelPage(p *scantling.Panel) (PanelPage, error) {
	rec := p.Record
	working, err := l.working(p.Working, "s-", p.Governs)
	if err != nil {
		return PanelPage{}, err
	}
	page := PanelPage{
		Key: rec.ID, Zone: rec.Zone.V, Where: rec.Where.V, Count: p.Count, Standing: standing(p.Standing), Fitted: written(float64(p.Fitted), "mm"),
		Governs: governing(p), Why: p.Why, Basis: basis(p.Basis), Picture: l.panelPicture(p), Facts: l.panelFacts(p),
		Working: working, Craft: Link{Text: "values of the craft", Href: l.to(structurePath, "craft")},
		Findings: l.findingsHere(""),
	}
	if p.Margin > 0 {
		page.Needed, page.Margin = unit.Up(p.Needed, 2), times(p.Margin)
	}
	if s := l.dossier.Structure.Sheet; s != nil {
		page.Sheet, page.Work = l.sheetLink(s), workOf(s)
	}
	if len(p.Opinions) > 0 {
		page.Rules = RuleTable{Of: Link{Text: "panel " + rec.ID}, What: "panel", Rows: append([]RuleRow{l.panelRule(p, nil)}, l.opinionRules("panel "+p.Record.ID, p.Opinions, nil)...)}
	}
	for _, a := range p.Asks {
		page.Asks = append(page.Asks, askRow(a, p.Governs, page.Working.at[a.Symbol]))
	}
	return page, nil
}

func askRow(a scantling.Ask, governs, step string) AskRow {
	row := AskRow{
		Name: a.Name, Step: Link{Text: method.Written(a.Symbol)}, Value: has(a.Shown, unit.Up(a.Value, 2), string(a.State)),
		Governs: a.Symbol == governs,
	}
	if step != "" {
		row.Step.Href = "#" + step
	}
	if a.State != method.Sound {
		row.State, row.Why = string(a.State), a.Why()
	}
	return row
}

// panelFacts are the panel's record, with ways to its document.
func (l *leaf) panelFacts(p *scantling.Panel) []Fact {
	all := l.fields(p.Record, "zone", "where", "count")
	var out []Fact
	for _, f := range all {
		if f.Value.Text == "" && !slices.Contains([]string{"edges", "alloy"}, f.Key) {
			continue
		}
		if f.Key == "document" || f.Key == "lot" {
			f.Link = l.subjectAs(f.Key+" "+f.Value.Text, f.Value.Text)
		}
		out = append(out, f)
	}
	return out
}

func (p PanelPage) heading() (heading, under string) {
	if p.Where == "" {
		return "Panel " + p.Key, p.Zone
	}
	return "Panel " + p.Key, p.Zone + ", " + p.Where
}
