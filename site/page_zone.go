package site

import (
	"html/template"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// ZonePage is one part of the boat: what is met and what is short there, its picture, its panels and members, and what
// each rule asks of it.
type ZonePage struct {
	Zone     string
	Says     ZoneSays
	Picture  Drawing
	Others   []RuleTag // rules that stand beside the governing one, in the order of the columns
	Panels   []PanelRow
	Members  []MemberRow
	Families []Link
	Rules    []RuleTable
	WhatIf   Link
	Findings []FindingRow
	Caution  template.HTML
}

// ZoneSays is the answer about a zone; the overview says it too.
type ZoneSays struct {
	Name     string
	Link     Link
	Standing Standing
	Panels   int // both sides counted
	Members  int
	Short    int
	NotShown int
	Panel    PieceBrief // with the least room by the governing rule; empty where none is shown
	Member   PieceBrief
}

// PieceBrief is a panel or member in half a sentence.
type PieceBrief struct {
	Link   Link
	Says   string // "6.0 mm fitted, 4.48 mm needed"
	Margin string
}

// Beside is what a rule that does not govern says of one panel or member: its ratio and standing.
type Beside struct {
	Ratio    Figure
	Standing Standing
}

// MemberRow is one member in the table of its zone.
type MemberRow struct {
	Link     Link
	Where    string // what the name does not say
	Remark   string
	Count    int
	Section  string
	Span     string
	Spacing  string
	Pressure Figure
	Governs  string
	Needed   Figure
	Fitted   Figure
	Unit     string
	Most     bool // fitted may not be more than needed
	Margin   Figure
	Standing Standing
	Why      string
	Others   []Beside
}

func (l *leaf) zonePage(name string) (ZonePage, error) {
	r := &l.dossier.Structure
	z := l.zone(name)
	p := ZonePage{Zone: name, Says: l.zoneSays(z), Picture: l.zonePicture(name), Others: l.otherRules(), Rules: l.ruleTables(z), Findings: l.findingsHere("")}
	for i := range r.Panels {
		if r.Panels[i].Record.Zone.V == name {
			p.Panels = append(p.Panels, l.panelRow(&r.Panels[i]))
		}
	}
	for i := range r.Members {
		if r.Members[i].Record.Zone.V == name {
			p.Members = append(p.Members, l.memberRow(&r.Members[i]))
		}
	}
	for _, f := range l.kin {
		if f.zone == name {
			p.Families = append(p.Families, l.section(f.page))
		}
	}
	for i := range r.WhatIfs {
		if r.WhatIfs[i].Zone == name {
			p.WhatIf = Link{Text: "what another spacing, plate or bar would do here", Href: l.to(whatIfPath, slug(name))}
		}
	}
	return p, nil
}

func (p ZonePage) heading() (heading, under string) { return capital(p.Zone), "panels and members" }

func (l *leaf) zoneSays(z *scantling.Zone) ZoneSays {
	r := &l.dossier.Structure
	v := &z.ByRule[0]
	s := ZoneSays{Name: z.Name, Standing: standing(v.Standing), Panels: z.Panels, Members: z.Members, Short: v.Short, NotShown: v.NotShown}
	if at := l.zones[z.Name]; at != nil {
		s.Link = l.section(at)
	} else {
		s.Link = Link{Text: capital(z.Name)}
	}
	if v.Panel >= 0 {
		s.Panel = l.panelPiece(&r.Panels[v.Panel])
	}
	if v.Member >= 0 {
		s.Member = l.memberPiece(&r.Members[v.Member])
	}
	return s
}

func (l *leaf) panelPiece(p *scantling.Panel) PieceBrief {
	return PieceBrief{Link: l.subjectAs("panel "+p.Record.ID, "panel "+p.Record.ID), Margin: roomText(p.Standing, p.Margin),
		Says: written(float64(p.Fitted), "mm") + " mm fitted, " + unit.Up(p.Needed, 2) + " mm needed"}
}

func (l *leaf) memberPiece(m *scantling.Member) PieceBrief {
	b := PieceBrief{Link: l.subjectAs("member "+m.Record.ID, m.Record.ID), Margin: roomText(m.Standing, m.Margin), Says: m.Governs}
	if n, ok := m.Need(m.Governs); ok {
		b.Says = needWords(n)
	}
	return b
}

// needWords says one need in half a sentence.
func needWords(n scantling.Need) string {
	if n.Most {
		return n.What + " " + needSizes(n)
	}
	return n.What + ": " + needSizes(n)
}

// needSizes says what is there and what is needed, or at most allowed.
func needSizes(n scantling.Need) string {
	if n.Most {
		return sizeText(n, n.Fitted) + ", at most " + sizeText(n, n.Needed)
	}
	return sizeText(n, n.Fitted) + " fitted, " + sizeText(n, n.Needed) + " needed"
}

// sizeText writes a size with its unit, a bare ratio with two decimals.
func sizeText(n scantling.Need, v float64) string {
	if n.Unit == "" {
		return unit.Text(v, 2)
	}
	return unit.Figures(v, 3) + " " + n.Unit
}

// sizeNumber is sizeText without the unit.
func sizeNumber(n scantling.Need, v float64) string {
	if n.Unit == "" {
		return unit.Text(v, 2)
	}
	return unit.Figures(v, 3)
}

// roomText is times where what is short never reads as enough.
func roomText(s finding.Standing, margin float64) string {
	if s == finding.Short {
		margin = min(margin, 0.99)
	}
	return times(margin)
}

func (l *leaf) memberRow(m *scantling.Member) MemberRow {
	rec := m.Record
	row := MemberRow{
		Link: l.subjectAs("member "+rec.ID, rec.ID), Count: m.Count, Section: rec.Section.V, Span: length(rec.Span.V, m.Derived), Spacing: length(rec.Spacing.V, m.Derived),
		Pressure: has(m.Pressure > 0, unit.Text(m.Pressure, 1), "not shown"), Governs: m.Governs, Margin: has(m.Margin > 0, roomText(m.Standing, m.Margin), "not shown"),
		Needed: Figure{Why: "not shown"}, Fitted: Figure{Why: "not shown"}, Standing: standing(m.Standing), Why: m.Why, Others: besides(m.Opinions),
	}
	row.Where, row.Remark = rec.Where.V, ""
	if m.Derived {
		row.Where, row.Remark = whereBeside(rec.ID, rec.Where.V)
	}
	if n, ok := m.Need(m.Governs); ok {
		row.Needed, row.Fitted, row.Unit, row.Most = Figure{Text: sizeNumber(n, n.Needed)}, Figure{Text: sizeNumber(n, n.Fitted)}, n.Unit, n.Most
	}
	return row
}

// besides are the ratios of the rules that do not govern.
func besides(all []scantling.Opinion) []Beside {
	var out []Beside
	for i := range all {
		o := &all[i]
		out = append(out, Beside{has(o.Standing != finding.NotShown && o.Margin > 0, roomText(o.Standing, o.Margin), "not shown"), standing(o.Standing)})
	}
	return out
}

func notShownWhy(why string) string {
	if why == "" {
		return "not shown"
	}
	return why
}

// RuleTag is a rule with the letter by which the heads of tables name it; the governing one is A.
type RuleTag struct {
	Letter  string
	Rule    Link
	Working Link
}

// otherRules are the rules beside the governing one.
func (l *leaf) otherRules() []RuleTag {
	var out []RuleTag
	for i := range l.dossier.Structure.Rules {
		if r := &l.dossier.Structure.Rules[i]; !r.Governs {
			out = append(out, RuleTag{ruleLetter(i), l.ruleLink(r), l.secondWay(i, "")})
		}
	}
	return out
}

// ruleLetter is the letter of a rule: A to Z, then numbers.
func ruleLetter(i int) string {
	if i < 26 {
		return string(rune('A' + i))
	}
	return strconv.Itoa(i + 1)
}

// whereBeside shortens where a derived panel or member lies to what its name does not say already. What comes after a
// semicolon is a remark.
func whereBeside(id, where string) (short, remark string) {
	short, remark, _ = strings.Cut(where, "; ")
	head, tail, both := strings.Cut(short, ", ")
	switch {
	case short == id || (!both && strings.HasPrefix(id, short)):
		return "", remark
	case both && strings.HasPrefix(id, head):
		return tail, remark
	case both && strings.HasSuffix(id, tail):
		return head, remark
	}
	return short, remark
}

// ruleLink names a rule by the work that it comes from, and leads to its sheet.
func (l *leaf) ruleLink(r *scantling.Rule) Link {
	if r.Sheet == nil {
		return Link{Text: r.Name}
	}
	link := l.sheetLink(r.Sheet)
	link.Text = r.Cite
	return link
}
