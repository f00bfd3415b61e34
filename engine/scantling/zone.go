package scantling

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// zones sums panels and members up by the part of the boat and by sheet.
func (j *judge) zones(out *Result) {
	at := map[string]int{}
	zone := func(name string) *Zone {
		i, known := at[name]
		if !known {
			i = len(out.Zones)
			at[name] = i
			z := Zone{Name: name}
			for r := range j.rules {
				z.ByRule = append(z.ByRule, ZoneView{Rule: r, Panel: -1, Member: -1})
			}
			out.Zones = append(out.Zones, z)
		}
		return &out.Zones[i]
	}
	for i := range out.Panels {
		p := &out.Panels[i]
		z := zone(p.Record.Zone.V)
		z.Panels += p.Count
		for r := range z.ByRule {
			s, margin := p.by(r)
			z.ByRule[r].count(s, p.Count)
			if margin > 0 && (z.ByRule[r].Panel < 0 || margin < out.Panels[z.ByRule[r].Panel].marginBy(r)) {
				z.ByRule[r].Panel = i
			}
		}
	}
	for i := range out.Members {
		m := &out.Members[i]
		z := zone(m.Record.Zone.V)
		z.Members += m.Count
		for r := range z.ByRule {
			s, margin := m.by(r)
			z.ByRule[r].count(s, m.Count)
			if margin > 0 && (z.ByRule[r].Member < 0 || margin < out.Members[z.ByRule[r].Member].marginBy(r)) {
				z.ByRule[r].Member = i
			}
		}
	}
}

// count adds so many panels or members of a standing to what a sheet says of a zone.
func (v *ZoneView) count(s finding.Standing, n int) {
	switch s {
	case finding.Short:
		v.Short += n
	case finding.NotShown:
		v.NotShown += n
	}
	if v.Standing == "" {
		v.Standing = s
	}
	v.Standing = finding.Worst(v.Standing, s)
}

// by gives standing and margin of a panel by a sheet.
func (p *Panel) by(rule int) (finding.Standing, float64) {
	if rule == 0 {
		return p.Standing, p.Margin
	}
	o := &p.Opinions[rule-1]
	return o.Standing, o.Margin
}

func (p *Panel) marginBy(rule int) float64 { _, m := p.by(rule); return m }

func (m *Member) by(rule int) (finding.Standing, float64) {
	if rule == 0 {
		return m.Standing, m.Margin
	}
	o := &m.Opinions[rule-1]
	return o.Standing, o.Margin
}

func (m *Member) marginBy(rule int) float64 { _, x := m.by(rule); return x }

// opinions tells where a sheet that does not govern asks for more than is fitted: once for each zone and sheet, with the
// worst named. A sheet that judges nothing is told once.
func (j *judge) opinions(out *Result) []finding.Finding {
	var all []finding.Finding
	for i, r := range j.rules[1:] {
		if r.refuses != "" {
			all = append(all, finding.Finding{Kind: finding.Doubt, Rule: ruleOpinion, Subject: "boat",
				Says: r.name + " gives no second opinion: " + r.refuses, Settle: "mend rules.also, or take it out", Places: placesOf(j.hull.Rules.Also.At)})
			continue
		}
		for z := range out.Zones {
			if f, told := j.opinionOf(out, &out.Zones[z], i+1); told {
				all = append(all, f)
			}
		}
	}
	return all
}

func (j *judge) opinionOf(out *Result, z *Zone, rule int) (finding.Finding, bool) {
	v := &z.ByRule[rule]
	if v.Short == 0 {
		return finding.Finding{}, false
	}
	subject, o := worstOpinion(out, v, rule)
	says := fmt.Sprintf("by %s, which does not govern, %d of %d panels and members of the %s are short, this one most: %s",
		out.Rules[rule].Cite, v.Short, z.Panels+z.Members, z.Name, o.sizes())
	if o.Differs.Says != "" {
		says += ". It " + o.Differs.Says
	}
	if o.Outside {
		says += ". It rests on values outside the range of its formulas"
	}
	return finding.Finding{Kind: finding.Doubt, Rule: ruleOpinion, Subject: subject, Says: says,
		Settle: "say why the governing sheet is enough here, or build to the second opinion", Places: placesOf(j.hull.Rules.Also.At)}, true
}

// sizes says what is fitted and what is needed; a slenderness must stay below its limit and has no unit.
func (o *Opinion) sizes() string {
	margin := marginText(o.Margin, false)
	if o.What == "slenderness" {
		return fmt.Sprintf("slenderness %s times its limit; margin %s", unit.Figures(o.Fitted, 3), margin)
	}
	return fmt.Sprintf("%s of %s %s fitted, %s times", unit.Figures(o.Fitted, 3), unit.Figures(o.Needed, 3), o.Unit, margin)
}

func worstOpinion(out *Result, v *ZoneView, rule int) (string, *Opinion) {
	if v.Member >= 0 && (v.Panel < 0 || out.Members[v.Member].marginBy(rule) < out.Panels[v.Panel].marginBy(rule)) {
		m := &out.Members[v.Member]
		return "member " + m.Record.ID, &m.Opinions[rule-1]
	}
	p := &out.Panels[v.Panel]
	return "panel " + p.Record.ID, &p.Opinions[rule-1]
}
