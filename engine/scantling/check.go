package scantling

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// check turns the judgement of a panel into a check.
func (p *judged) check() finding.Check {
	c := finding.Check{
		Rule: ruleThickness, Subject: "panel " + p.Record.ID, Asks: "the plate is as thick as the method asks",
		Standing: p.Standing, Basis: p.Basis, Missing: p.missing, Places: p.places(),
	}
	if p.rule.sheet != nil {
		c.Source = p.rule.sheet.Cite(p.clause)
	}
	if p.Record.Thickness.Set {
		c.Has = fittedText(p.Fitted) + " mm"
	}
	if p.Standing == finding.NotShown {
		c.Says = "the thickness needed is not shown: " + p.Why
		c.Settle = p.settle()
		return c
	}
	needed := neededText(p.Needed, p.Fitted)
	c.Needed = needed + " mm"
	c.Says = fmt.Sprintf("%s mm fitted, %s mm needed (%s%s); %s times", fittedText(p.Fitted), needed, p.asked, p.underPressure(),
		marginText(p.Margin, p.Standing == finding.Met))
	if p.beyond() {
		c.Says += "; outside the range of the method"
	}
	if p.Standing == finding.Met {
		return c
	}
	if p.Why != "" {
		c.Says += "; more may be needed: " + p.Why
	}
	c.Settle = fmt.Sprintf("plate of %s mm or more, closer stiffeners, or a lower speed or mass on record", needed)
	return c
}

// beyond reports whether any thickness that was asked for rests on a value outside the range of its formula.
func (p *judged) beyond() bool {
	return slices.ContainsFunc(p.Asks, func(a Ask) bool { return a.State == method.Outside })
}

// underPressure names the pressure where the governing thickness comes from it and not from a minimum.
func (p *judged) underPressure() string {
	if !p.under.loaded {
		return ""
	}
	return ", " + unit.Text(p.under.pressure, 1) + " kN/m²"
}

// places lists the record lines of the panel that the outcome rests on, that of the thickness first.
func (p *judged) places() []finding.Place {
	return onlyKnown(p.Record.At, append([]finding.Place{p.Record.Thickness.At, p.Record.Alloy.At}, p.rests...))
}

// onlyKnown gives the places that are known, each once; where there is none, that of the record itself.
func onlyKnown(record finding.Place, all []finding.Place) []finding.Place {
	out := make([]finding.Place, 0, 10)
	for _, at := range all {
		if at.Known() && !slices.Contains(out, at) {
			out = append(out, at)
		}
	}
	if len(out) == 0 && record.Known() {
		out = append(out, record)
	}
	return out
}

// settle says what would show the panel.
func (p *judged) settle() string {
	var write []string
	for _, key := range p.missing {
		if key != p.key("alloy") || !p.Record.Alloy.Set {
			write = append(write, key)
		}
	}
	var parts []string
	if len(write) > 0 {
		parts = append(parts, "write "+strings.Join(write, ", "))
	}
	if len(write) < len(p.missing) {
		parts = append(parts, "an alloy whose strength the method gives, or a method sheet that gives it")
	}
	return strings.Join(parts, "; ")
}
