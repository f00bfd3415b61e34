package stock

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// parts holds every part of the cut list against its lot, its panel and its drawing.
func (a *assessor) parts() {
	lots := map[string]*record.Lot{}
	for i := range a.yard.Stock.Lots {
		l := &a.yard.Stock.Lots[i]
		lots[l.ID] = l
	}
	plates := map[string]record.Plated{}
	for _, p := range a.hull.Plated() {
		plates[p.ID] = p
	}
	for i := range a.hull.Parts {
		p := &a.hull.Parts[i]
		part := Part{Record: p, Lot: lots[p.Lot.V]}
		a.Parts = append(a.Parts, part)
		a.Checks = append(a.Checks, partLot(part))
		if part.Lot != nil {
			a.against(p, part.Lot)
		}
		if plate, known := plates[p.Panel.V]; known {
			a.panel(p, &plate)
		}
		a.measured(p)
		a.bend(part)
		a.marking(p)
	}
}

// partLot asks for the lot of a part.
func partLot(part Part) finding.Check {
	p := part.Record
	c := finding.Check{Rule: rulePartLot, Subject: "part " + p.ID, Standing: finding.NotShown, Basis: finding.Practice, Source: "practice",
		Asks: "the part leads to the lot that it was cut from", Has: p.Lot.V, Places: finding.Places(p.Lot.At, p.At)}
	switch {
	case !p.Lot.Set:
		c.Says, c.Missing = "from which lot part "+p.ID+" was cut is not on record", []string{"part." + p.ID + ".lot"}
		c.Settle = "read the cast number off the part; if it carries none, this cannot be shown any more"
	case part.Lot == nil:
		c.Says, c.Settle = "part "+p.ID+" was cut from lot "+p.Lot.V+", and the stock has none of that key", "write the lot into stock/, or correct the part"
	default:
		c.Standing, c.Says = finding.Met, "cut from lot "+part.Lot.ID
	}
	return c
}

// against holds a part against the lot it was cut from.
func (a *assessor) against(p *record.Part, l *record.Lot) {
	if p.Alloy.Set && p.Alloy.V != l.Alloy.V {
		a.find(finding.Contradiction, rulePartAlloy, "part "+p.ID, "part "+p.ID+" is drawn in "+p.Alloy.V+", its lot "+l.ID+" is "+l.Alloy.V,
			"find out which of the two is on board; the structure is reckoned with the drawing", p.Alloy.At, l.Alloy.At)
	}
	if p.Drawn.Set && p.Drawn.V != l.Thickness.V && l.Kind.V == "plate" {
		a.find(finding.Contradiction, rulePartThick, "part "+p.ID, fmt.Sprintf("part %s is drawn %s mm thick, its lot %s is %s mm", p.ID, unit.Plain(p.Drawn.V), l.ID, unit.Plain(l.Thickness.V)),
			"measure the part on board", p.Drawn.At, l.Thickness.At)
	}
}

// panel holds a part against the panel or the plate of the skin that it makes.
func (a *assessor) panel(p *record.Part, panel *record.Plated) {
	if p.Drawn.Set && panel.Thickness.Set && p.Drawn.V != panel.Thickness.V {
		a.find(finding.Contradiction, rulePartPanel, "part "+p.ID, fmt.Sprintf("part %s is %s mm thick, %s %s that it makes is reckoned with %s mm", p.ID, unit.Plain(p.Drawn.V), panel.Kind, panel.ID, unit.Plain(panel.Thickness.V)),
			"measure the plate on board and correct the one that is wrong", p.Drawn.At, panel.Thickness.At)
	}
	if p.Lot.Set && panel.Lot.Set && p.Lot.V != panel.Lot.V {
		a.find(finding.Contradiction, rulePartPanel, "part "+p.ID, "part "+p.ID+" was cut from lot "+p.Lot.V+", "+panel.Kind+" "+panel.ID+" that it makes names lot "+panel.Lot.V,
			"read the cast number off the plate", p.Lot.At, panel.Lot.At)
	}
}

// measured holds a measured thickness against the drawing.
func (a *assessor) measured(p *record.Part) {
	lim := a.limits.Thickness
	if !p.Measured.Set || !p.Drawn.Set {
		return
	}
	least := float64(p.Drawn.V) * (1 - lim.Under/100)
	c := finding.Check{Rule: ruleMeasured, Subject: "part " + p.ID, Standing: finding.Met, Basis: lim.Basis, Source: "practice",
		Asks: "the measured thickness reaches that of the drawing, less what rolling leaves", Needed: unit.Text(least, 2) + " mm", Has: written(p.Measured) + " mm",
		Says: "measured " + written(p.Measured) + " mm, drawn " + unit.Plain(p.Drawn.V) + " mm", Places: finding.Places(p.Measured.At, p.Drawn.At)}
	if float64(p.Measured.V) < least {
		c.Standing = finding.Short
		c.Settle = "measure again beside the spot; reckon the panel with the measured thickness"
	}
	a.Checks = append(a.Checks, c)
}

// written is a number as it was written, with its decimals.
func written[T ~float64](v record.Val[T]) string {
	if v.Text != "" {
		return v.Text
	}
	return unit.Plain(v.V)
}

// bend holds the radius of a bend against the least one for alloy, temper and thickness.
func (a *assessor) bend(part Part) {
	p := part.Record
	alloy := p.Alloy.V
	if part.Lot != nil {
		alloy = part.Lot.Alloy.V
	}
	if !p.Bend.Set || !p.Drawn.Set || alloy == "" {
		return
	}
	_, temper, _ := strings.Cut(alloy, "-")
	c := finding.Check{Rule: ruleBend, Subject: "part " + p.ID, Standing: finding.NotShown, Basis: finding.Read,
		Asks: "the part was not bent more sharply than its temper bears", Has: written(p.Bend) + " mm", Places: finding.Places(p.Bend.At, p.Drawn.At),
		Says: "no source at hand gives a least radius for " + alloy + " of " + unit.Plain(p.Drawn.V) + " mm", Settle: "bend a trial piece and look at it with penetrant"}
	if b := a.bendFor(temper, float64(p.Drawn.V)); b != nil {
		least := b.Times * float64(p.Drawn.V)
		c.Basis, c.Source, c.Needed = b.Basis, b.String(), unit.Plain(least)+" mm"
		c.Standing, c.Settle = finding.Met, ""
		c.Says = fmt.Sprintf("bent to %s mm, at least %s mm is asked: %v times the thickness", written(p.Bend), unit.Plain(least), b.Times)
		if float64(p.Bend.V) < least {
			c.Standing, c.Settle = finding.Short, "look at the outside of the bend with penetrant; bend a new part to a larger radius"
		}
	}
	a.Checks = append(a.Checks, c)
}

func (a *assessor) bendFor(temper string, t float64) *Bend {
	for i := range a.limits.Bends {
		b := &a.limits.Bends[i]
		for _, known := range b.Tempers {
			if known == temper && t > b.Over && t <= b.To {
				return b
			}
		}
	}
	return nil
}

// marking tells of a part on which the cast number was not carried over.
func (a *assessor) marking(p *record.Part) {
	if !p.Marked.Set {
		return
	}
	c := finding.Check{Rule: ruleMark, Subject: "part " + p.ID, Standing: finding.Met, Basis: finding.Practice, Source: "practice",
		Asks: "the cast number was carried over to the part before the plate was cut", Says: "carried over", Places: finding.Places(p.Marked.At)}
	if !p.Marked.V {
		c.Standing, c.Says = finding.Short, "the cast number was not carried over to part "+p.ID+": only the cut list says where it came from"
		c.Settle = "mark the part from the cut list while somebody still knows, and say so in its note"
	}
	a.Checks = append(a.Checks, c)
}
