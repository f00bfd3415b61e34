package site

import (
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// RuleTable is one panel or member as every rule sees it.
type RuleTable struct {
	Of    Link   // "panel bottom frames 6-7 strake 5"
	What  string // "panel" or "member"
	Where string
	Rows  []RuleRow
}

// RuleRow is one rule.
type RuleRow struct {
	Letter   string
	Rule     Link
	Governs  bool
	Pressure Figure
	Stress   Figure
	Asked    string // what of it governs, and by which clause
	Needed   Figure
	Fitted   Figure
	Unit     string
	Margin   Figure
	Standing Standing
	Basis    Basis
	Outside  bool
	Differs  string // why it asks for another size than the governing rule
	Zone     string // what it says of the whole zone
	Working  Link   // of a rule that does not govern
}

// ruleTables set the rules side by side on the panel and on the member of a zone that have the least room by the
// governing one.
func (l *leaf) ruleTables(z *scantling.Zone) []RuleTable {
	r := &l.dossier.Structure
	var out []RuleTable
	if i := z.ByRule[0].Panel; i >= 0 {
		p := &r.Panels[i]
		t := RuleTable{Of: l.subject("panel " + p.Record.ID), What: "panel", Where: p.Record.Where.V}
		t.Rows = append(t.Rows, l.panelRule(p, z))
		t.Rows = append(t.Rows, l.opinionRules("panel "+p.Record.ID, p.Opinions, z)...)
		out = append(out, t)
	}
	if i := z.ByRule[0].Member; i >= 0 {
		m := &r.Members[i]
		t := RuleTable{Of: l.subject("member " + m.Record.ID), What: "member", Where: m.Record.Where.V}
		t.Rows = append(t.Rows, l.memberRule(m, z))
		t.Rows = append(t.Rows, l.opinionRules("member "+m.Record.ID, m.Opinions, z)...)
		out = append(out, t)
	}
	return out
}

func (l *leaf) governingRow(z *scantling.Zone) RuleRow {
	row := RuleRow{Governs: true, Letter: "A"}
	if rules := l.dossier.Structure.Rules; len(rules) > 0 {
		row.Rule = l.ruleLink(&rules[0])
	}
	if z != nil {
		row.Zone = zoneWords(&z.ByRule[0], z)
	}
	return row
}

func (l *leaf) panelRule(p *scantling.Panel, z *scantling.Zone) RuleRow {
	row := l.governingRow(z)
	shown := p.Standing != finding.NotShown
	row.Pressure, row.Stress = has(p.Pressure > 0, unit.Text(p.Pressure, 1), "a minimum"), Figure{Why: "in the working"}
	row.Asked, row.Unit = governing(p), "mm"
	row.Needed, row.Fitted = has(shown, unit.Up(p.Needed, 2), "not shown"), Figure{Text: written(float64(p.Fitted), "mm")}
	row.Margin, row.Standing, row.Basis = has(p.Margin > 0, roomText(p.Standing, p.Margin), "not shown"), standing(p.Standing), basis(p.Basis)
	return row
}

func (l *leaf) memberRule(m *scantling.Member, z *scantling.Zone) RuleRow {
	row := l.governingRow(z)
	row.Pressure, row.Stress = has(m.Pressure > 0, unit.Text(m.Pressure, 1), "not shown"), Figure{Why: "in the working"}
	row.Asked = m.Governs
	row.Needed, row.Fitted = Figure{Why: "not shown"}, Figure{Why: "not shown"}
	if n, ok := m.Need(m.Governs); ok {
		row.Needed, row.Fitted, row.Unit = Figure{Text: sizeNumber(n, n.Needed)}, Figure{Text: sizeNumber(n, n.Fitted)}, n.Unit
	}
	row.Margin, row.Standing, row.Basis = has(m.Margin > 0, roomText(m.Standing, m.Margin), "not shown"), standing(m.Standing), basis(m.Basis)
	return row
}

// opinionRules are the rows of the rules that do not govern, each with the way to its working of a panel or member.
func (l *leaf) opinionRules(of string, all []scantling.Opinion, z *scantling.Zone) []RuleRow {
	var out []RuleRow
	for i := range all {
		o := &all[i]
		row := RuleRow{Letter: ruleLetter(o.Rule), Rule: l.ruleLink(&l.dossier.Structure.Rules[o.Rule]), Asked: o.What, Unit: o.Unit, Standing: standing(o.Standing), Basis: basis(o.Basis), Outside: o.Outside, Differs: closed(capital(o.Differs.Says))}
		if o.Asked != "" {
			row.Asked = o.Asked
		}
		if o.Clause != "" {
			row.Asked += ", " + o.Clause
		}
		shown := o.Standing != finding.NotShown
		row.Pressure, row.Stress = has(o.Pressure > 0, unit.Text(o.Pressure, 1), pressureWhy(o)), has(o.Stress > 0, unit.Text(o.Stress, 0), "not named")
		needed, fitted := opinionSizes(o)
		row.Needed, row.Fitted = has(shown, needed, notShownWhy(o.Why)), has(shown, fitted, "not shown")
		row.Margin = has(shown && o.Margin > 0, roomText(o.Standing, o.Margin), "not shown")
		if !shown && row.Differs == "" {
			row.Differs = closed(capital(o.Why))
		}
		row.Working = l.secondWay(o.Rule, of)
		if z != nil && o.Rule < len(z.ByRule) {
			row.Zone = zoneWords(&z.ByRule[o.Rule], z)
		}
		out = append(out, row)
	}
	return out
}

func pressureWhy(o *scantling.Opinion) string {
	if o.Minimum {
		return "a minimum"
	}
	return "not shown"
}

// zoneWords says how many of a zone a rule meets.
func zoneWords(v *scantling.ZoneView, z *scantling.Zone) string {
	all := z.Panels + z.Members
	switch {
	case v.NotShown == all:
		return "none shown"
	case v.Short == 0 && v.NotShown == 0:
		return "all " + strconv.Itoa(all) + " met"
	}
	words := strconv.Itoa(all-v.Short-v.NotShown) + " of " + strconv.Itoa(all) + " met"
	if v.Short > 0 {
		words += ", " + strconv.Itoa(v.Short) + " short"
	}
	if v.NotShown > 0 {
		words += ", " + strconv.Itoa(v.NotShown) + " not shown"
	}
	return words
}

// opinionSizes writes what is needed and what is there as the governing rule does: a thickness needed is rounded up.
func opinionSizes(o *scantling.Opinion) (needed, fitted string) {
	switch o.Unit {
	case "mm":
		return unit.Up(o.Needed, 2), written(o.Fitted, "mm")
	case "":
		return unit.Text(o.Needed, 2), unit.Text(o.Fitted, 2)
	}
	return unit.Figures(o.Needed, 3), unit.Figures(o.Fitted, 3)
}
