package scantling

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// Rules of the checks of members: what carries plate alone, and what carries other members.
const (
	ruleStiffener = "stiffener-strength"
	ruleFrame     = "frame-strength"
)

// check turns the judgement of a member into a check.
func (m *held) check() finding.Check {
	c := finding.Check{
		Rule: ruleStiffener, Subject: "member " + m.Record.ID, Asks: "the member carries what the method asks",
		Standing: m.Standing, Basis: m.Basis, Missing: m.missing, Places: m.places(),
	}
	if m.Scope == "primary" {
		c.Rule = ruleFrame
	}
	if m.rule.sheet != nil {
		c.Source = m.rule.sheet.Cite(m.clause)
	}
	if m.Standing == finding.NotShown {
		c.Says = "what the member needs is not shown: " + m.Why
		c.Settle = settleBy(m.missing)
		return c
	}
	n := m.governs
	c.Needed, c.Has = n.sizes()
	c.Says = m.sentence()
	if m.Standing == finding.Met {
		return c
	}
	if m.Why != "" {
		c.Says += "; more may be needed: " + m.Why
	}
	c.Settle = m.settle()
	return c
}

// sentence says what governs and by how much.
func (m *held) sentence() string {
	n := m.governs
	needed, has := n.sizes()
	says := fmt.Sprintf("%s: %s fitted, %s needed (%s%s); %s times", n.What, has, needed, n.Name, m.underPressure(),
		marginText(n.Margin, n.Margin >= 1))
	if n.Most {
		says = fmt.Sprintf("%s: %s is %s, at most %s; %s times", n.What, n.Name, has, needed, marginText(n.Margin, n.Margin >= 1))
	}
	for i := range m.Together {
		if t := &m.Together[i]; t.Decides && n.Symbol != "" {
			says += fmt.Sprintf("; bending and shear are judged among its neighbours, %s times", marginText(t.Margin, t.Margin >= 1))
		}
	}
	if m.beyond() {
		says += "; outside the range of the method"
	}
	return says
}

// sizes writes what is needed and what is fitted with three figures, and with more where three would not show which of
// them is the greater.
func (n Need) sizes() (needed, fitted string) {
	for figures := 3; figures < 9; figures++ {
		needed, fitted = n.size(n.Needed, figures), n.size(n.Fitted, figures)
		if needed != fitted || n.Needed == n.Fitted {
			break
		}
	}
	return needed, fitted
}

func (n Need) size(v float64, figures int) string {
	text := unit.Figures(v, figures)
	if n.Unit == "" {
		return text
	}
	return text + " " + n.Unit
}

func (m *held) underPressure() string {
	if !m.under.loaded {
		return ""
	}
	return ", " + unit.Text(m.under.pressure, 1) + " kN/m²"
}

// beyond reports whether anything that was asked for rests on a value outside the range of its formula.
func (m *held) beyond() bool {
	return slices.ContainsFunc(m.Needs, func(n Need) bool { return n.State == method.Outside })
}

func (m *held) settle() string {
	switch m.Governs {
	case "slenderness":
		return "a thicker web or flange, or a flange that holds the edge"
	case "shear":
		return "a thicker or higher web, a shorter span, or a lower speed or mass on record"
	}
	return "a larger section, a shorter span, closer spacing, or a lower speed or mass on record"
}

// settleBy names the record keys that would show something.
func settleBy(missing []string) string {
	if len(missing) == 0 {
		return "another method for it, or a calculation by a naval architect"
	}
	return "write " + strings.Join(missing, ", ")
}

// places lists the record lines of the member that the outcome rests on.
func (m *held) places() []finding.Place {
	return onlyKnown(m.Record.At, append([]finding.Place{m.Record.Section.At}, m.rests...))
}
