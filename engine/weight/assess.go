package weight

import (
	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
)

// Assess adds up the items of a hull and holds the sums against what the record states and what was weighed. The
// table of alloys gives the density of plate and profile, zones what the lines give to items that ask for it.
//
// Lengths are in metres from the transom, the centre line and the base line; masses in kilograms with their margin.
// Where two records cannot both be true, the check is short and a contradiction with the same rule and subject says so
// in its stead.
func Assess(h *record.Hull, alloys *material.Table, zones ...Zone) Result {
	var r Result
	var how []reckoned
	for i := range h.Weights {
		rec, zone, found := fromLines(&h.Weights[i], zones)
		it, ways := reckon(rec, alloys)
		if found {
			it.ofZone(&h.Weights[i], zone)
		}
		r.zone(&h.Weights[i], zone, found)
		r.Items = append(r.Items, it)
		how = append(how, ways)
	}
	r.Light, r.Load, r.Loaded = sum(r.Items, light), sum(r.Items, load), sum(r.Items, all)
	r.Lift = lift(h, &r.Light)
	r.Groups = groups(r.Items, r.Loaded.Mass)
	r.sensitivity()
	r.Checks = append(r.Checks, complete(&r, how), positioned(&r))
	r.Findings = append(r.Findings, itemFindings(&r, how, alloys)...)
	r.Findings = append(r.Findings, sumFindings(&r)...)
	r.Findings = append(r.Findings, liftFindings(h, &r.Lift)...)
	r.stated(&h.Boat)
	r.weighed(h)
	return r
}

// zone judges one item that asks for a zone of the lines.
func (r *Result) zone(rec *record.Weight, z Zone, found bool) {
	if !rec.AreaFrom.Set && !rec.LenFrom.Set {
		return
	}
	if c, judged := zoneHeld(rec, z, found); judged {
		r.Checks = append(r.Checks, c)
		r.Findings = append(r.Findings, contradiction(c)...)
	}
}

// weighed does all weighings.
func (r *Result) weighed(h *record.Hull) {
	for i := range h.Weighings {
		w := weigh(&h.Weighings[i], r.Items)
		for _, c := range []finding.Check{massHeld(&w), centreHeld(&w)} {
			r.Checks = append(r.Checks, c)
			r.Findings = append(r.Findings, contradiction(c)...)
		}
		r.Findings = append(r.Findings, weighingFindings(&w, r.Items)...)
		r.Weighings = append(r.Weighings, w)
	}
	if len(h.Weighings) == 0 && h.Identity.State.V != "design" {
		r.Checks = append(r.Checks, notWeighed(h))
	}
}

// contradiction words a short check as two records that cannot both be true. Same rule and subject: it stands in for
// the shortfall that the check alone would give.
func contradiction(c finding.Check) []finding.Finding {
	if c.Standing != finding.Short {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Contradiction, Rule: c.Rule, Subject: c.Subject, Says: c.Says, Settle: c.Settle, Places: c.Places,
	}}
}
