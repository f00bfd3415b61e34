package loading

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// seaWater is the density of sea water, kg/m³ (practice).
const seaWater = 1025.0

// Assess puts the conditions together and floats them on the lines. hull must be free of contradictions (lines.Check); a
// hull without stations gives conditions that are not floated.
func Assess(h *record.Hull, w weight.Result, hull *lines.Hull) Result {
	a := &assessor{hull: h, weight: w, lines: hull}
	a.out.Density = a.density()
	for _, p := range a.plans() {
		a.out.Conditions = append(a.out.Conditions, a.condition(p))
	}
	a.complete()
	a.tanksPlaced()
	a.countedOnce()
	a.openings()
	return a.out
}

// assessor holds what the conditions of one hull share.
type assessor struct {
	hull   *record.Hull
	weight weight.Result
	lines  *lines.Hull
	out    Result
}

func (a *assessor) assume(says, settle string, basis finding.Basis) {
	for _, old := range a.out.Assumptions {
		if old.Says == says {
			return
		}
	}
	a.out.Assumptions = append(a.out.Assumptions, finding.Assumption{Subject: "loading", Says: says, Settle: settle, Basis: basis})
}

func (a *assessor) say(kind finding.Kind, rule, subject, says, settle string, at ...finding.Place) {
	a.out.Findings = append(a.out.Findings, finding.Finding{Kind: kind, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: finding.Places(at...)})
}

func (a *assessor) density() float64 {
	if d, ok := a.hull.Afloat.Density.Get(); ok {
		return float64(d)
	}
	a.assume("sea water of "+unit.Text(seaWater, 0)+" kg/m³, because no density is written", "write afloat.water_density_kg_m3", finding.Practice)
	return seaWater
}

// condition puts one condition together and floats it.
func (a *assessor) condition(p plan) Condition {
	c := Condition{ID: p.id, Title: p.title, Kind: p.kind, Record: p.record, Persons: p.persons, Person: p.person}
	c.Without = append(c.Without, p.without...)
	a.parts(&c, p)
	c.sum()
	if len(c.Without) == 0 && c.Mass <= 0 {
		c.Without = append(c.Without, "a mass above nought")
	}
	c.Whole = len(c.Without) == 0
	switch {
	case !c.Whole:
		c.Why = "not reckoned: " + strings.Join(c.Without, ", ")
	case len(a.lines.Stations) == 0:
		c.Why = "the lines are not on record"
	case c.Kind == "trailer":
		c.Why = "on the trailer"
	default:
		a.float(&c)
	}
	return c
}

// complete is the check that every condition could be put together.
func (a *assessor) complete() {
	c := finding.Check{Rule: "loading-complete", Subject: "loading", Asks: "mass and centre are known in every condition", Standing: finding.Met,
		Basis: finding.Practice, Source: "practice"}
	var lacks, open []string
	titles := map[string][]string{}
	for _, one := range a.out.Conditions {
		if one.Whole {
			continue
		}
		lack := strings.Join(one.Without, ", ")
		if titles[lack] == nil {
			lacks = append(lacks, lack)
		}
		titles[lack] = append(titles[lack], one.Title)
		if one.Record != nil {
			c.Places = append(c.Places, one.Record.At)
		}
	}
	for _, lack := range lacks {
		open = append(open, strings.Join(titles[lack], ", ")+" for want of "+lack)
	}
	c.Says = fmt.Sprintf("%d conditions, each with its mass and centre", len(a.out.Conditions))
	if len(open) > 0 {
		c.Standing = finding.NotShown
		c.Says = "no mass or centre in " + strings.Join(open, "; ")
		c.Settle = "complete the weight breakdown, the tanks and the places of people"
	}
	c.Places = append(c.Places, a.itemsBehind()...)
	a.out.Checks = append(a.out.Checks, c)
}

// itemsBehind lists the items that lack a mass or a place, and the first of the breakdown where none does.
func (a *assessor) itemsBehind() []finding.Place {
	var out []finding.Place
	for i := range a.weight.Items {
		it := &a.weight.Items[i]
		if !it.HasMass || !it.HasX || !it.HasY || !it.HasZ {
			out = append(out, it.Record.At)
		}
	}
	if len(out) == 0 && len(a.weight.Items) > 0 {
		out = append(out, a.weight.Items[0].Record.At)
	}
	return finding.Places(out...)
}
