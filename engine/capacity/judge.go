package capacity

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Where the demands of this package come from.
const (
	sourceLoad   = "94/25/EC as amended, annex I, A 2.2 and 3.6"
	sourceSeen   = "33 CFR 183.25(a); audits of plates in Victoria, 2017 to 2018"
	sourceBy     = "NSW Marine Safety Regulation 2016, cl. 67"
	sourceMasses = "audits of plates in Victoria, 2017 to 2018"
	sourceAU     = "pages of the Australian states on the builders plate"
)

// judge holds what stands on the plate against what the checks leave and against the rest of the record. A boat in build
// needs no plate yet.
func (a *assessor) judge() {
	if !a.Stated {
		if done(a.hull) {
			a.Checks = append(a.Checks, a.absent())
		}
		return
	}
	a.Checks = append(a.Checks, a.load(), a.persons())
	a.enough()
	a.fittedPower()
	a.american183()
	a.category()
	a.Checks = append(a.Checks, a.approved(), a.assumed(), a.seen())
	a.statement()
	a.floats()
}

// ask begins a check about the plate.
func ask(rule, asks, source string, basis finding.Basis, at ...finding.Place) finding.Check {
	c := finding.Check{Rule: rule, Subject: subjectPlate, Standing: finding.NotShown, Asks: asks, Basis: basis, Source: source}
	for _, p := range at {
		if p.Known() && !slices.Contains(c.Places, p) {
			c.Places = append(c.Places, p)
		}
	}
	return c
}

func (a *assessor) absent() finding.Check {
	c := ask("plate-recorded", "what stands on the builder's plate is on record", sourceLoad, finding.Read)
	c.Says = "nothing of what stands on the builder's plate is on record"
	c.Missing = []string{"plate.max_load_kg", "plate.persons"}
	c.Settle = "read the plate on the boat and write it under [plate]"
	return c
}

// slack is how far a stated figure may pass a reckoned one before it counts: the rounding of a plate that is given in
// whole kilograms.
const slack = 0.5

// load holds the load on the plate against the least that any binding check leaves.
func (a *assessor) load() finding.Check {
	plate := a.hull.Plate.MaxLoad
	c := ask("plate-load", "the load on the plate is not above what the checks leave", sourceLoad, finding.Read, plate.At)
	l, governed := a.Governing(a.Load)
	switch {
	case !plate.Set:
		c.Says, c.Missing, c.Settle = "the greatest load on the plate is not written", []string{"plate.max_load_kg"}, "read the plate on the boat and write plate.max_load_kg"
		return c
	case !governed:
		c.Says, c.Missing = "no check says how much the boat may carry: "+a.whyNone(), a.lacking()
		c.Settle = "write what the checks need: " + strings.Join(c.Missing, ", ")
		return c
	}
	c.Places = append(c.Places, l.Places...)
	c.Basis = finding.Softer(c.Basis, l.Basis)
	c.Needed, c.Has = unit.Text(l.Load, 0)+" kg", unit.Text(plate.V, 0)+" kg"
	c.Says = fmt.Sprintf("the plate permits %s; %s is %s, by %s", c.Has, l.Name, c.Needed, l.Source)
	if plate.V <= l.Load+slack {
		c.Standing = finding.Met
		return c
	}
	c.Standing = finding.Short
	c.Settle = "reckon the plate anew, or correct the record that the check rests on; a plate that permits too much is taken off the boat"
	a.against(&c)
	return c
}

// whyNone says why no check gives a load.
func (a *assessor) whyNone() string {
	var whys []string
	for _, l := range a.Limits {
		if !l.HasLoad && l.Why != "" && !l.Info {
			whys = append(whys, l.Name+": "+l.Why)
		}
	}
	if len(whys) == 0 {
		return "none binds this boat"
	}
	return strings.Join(whys, "; ")
}

func (a *assessor) lacking() []string {
	var keys []string
	for _, l := range a.Limits {
		for _, k := range l.Missing {
			if key := recordKey(k); !slices.Contains(keys, key) {
				keys = append(keys, key)
			}
		}
	}
	return keys
}

// recordKey turns the name of a reckoned value into the record key that would give it.
func recordKey(from string) string {
	switch from {
	case "rating.light_mass_kg":
		return "boat.light_mass_kg"
	case "rating.fixed_contents_kg":
		return "tank"
	case "rating.power_kw":
		return "plate.power_kw"
	case "list_test.weight_kg":
		return "list_test"
	}
	return from
}

// against tells of a check that is short that two records cannot both be true.
func (a *assessor) against(c *finding.Check) {
	a.Findings = append(a.Findings, finding.Finding{
		Kind: finding.Contradiction, Rule: c.Rule, Subject: c.Subject, Says: c.Says, Settle: c.Settle, Places: c.Places,
	})
}

func (a *assessor) persons() finding.Check {
	plate := a.hull.Plate.Persons
	c := ask("plate-persons", "the plate does not permit more persons than the checks leave", sourceLoad, finding.Read, plate.At)
	l, governed := a.Governing(a.Persons)
	switch {
	case !plate.Set:
		c.Says, c.Missing, c.Settle = "the number of persons on the plate is not written", []string{"plate.persons"}, "read the plate on the boat and write plate.persons"
		return c
	case !governed:
		c.Says, c.Missing, c.Settle = "no check says how many the boat may carry", []string{"boat.persons"}, "write boat.persons"
		return c
	}
	c.Places = append(c.Places, l.Places...)
	c.Basis = finding.Softer(c.Basis, l.Basis)
	c.Needed, c.Has = fmt.Sprint(l.Persons), fmt.Sprint(plate.V)
	c.Says = fmt.Sprintf("the plate permits %s; %s: %s, by %s", people(plate.V), l.Name, people(l.Persons), l.Source)
	if plate.V <= l.Persons {
		c.Standing = finding.Met
		return c
	}
	c.Standing, c.Settle = finding.Short, "reckon the plate anew, or correct the record that the check rests on"
	a.against(&c)
	return c
}

func people(n int) string { return unit.Count(n, "person", "persons") }

// enough holds what the breakdown carries against the load on the plate.
func (a *assessor) enough() {
	plate := a.hull.Plate.MaxLoad
	if !plate.Set || !a.HasLoads {
		return
	}
	c := ask("plate-carried", "the boat is not recorded as carrying more than its plate permits", "the weight breakdown", finding.Yard, plate.At)
	c.Needed, c.Has = unit.Text(plate.V, 0)+" kg", unit.Text(a.Carried, 0)+" kg"
	c.Says = fmt.Sprintf("people, stores and gear of the breakdown add up to %s, without the contents of tanks; the plate permits %s", c.Has, c.Needed)
	c.Standing = finding.Met
	if a.Carried > plate.V+slack {
		c.Standing, c.Settle = finding.Short, "take load items out, or reckon the plate anew"
		a.against(&c)
	}
	a.Checks = append(a.Checks, c)
}

// fittedPower holds the engines of the record against the power on the plate.
func (a *assessor) fittedPower() {
	plate, fitted := a.hull.Plate.Power, a.hull.Boat.Power
	if !plate.Set && !fitted.Set {
		return
	}
	c := ask("plate-power", "the engines have no more power than the plate permits", "ISO 14945", finding.Recalled, plate.At, fitted.At)
	switch {
	case !plate.Set:
		c.Says, c.Missing, c.Settle = "the power on the plate is not written", []string{"plate.power_kw"}, "read the plate on the boat and write plate.power_kw"
	case !fitted.Set:
		c.Says, c.Missing, c.Settle = "the power of the engines is not written", []string{"boat.power_kw"}, "write boat.power_kw"
	default:
		c.Needed, c.Has = power(plate.V), power(fitted.V)
		c.Says = fmt.Sprintf("engines of %s, the plate permits %s", c.Has, c.Needed)
		c.Standing = finding.Met
		if fitted.V > plate.V {
			c.Standing, c.Settle = finding.Short, "correct the record of the engines or the plate"
			a.against(&c)
		}
	}
	a.Checks = append(a.Checks, c)
}

func power(kw unit.KW) string { return unit.Text(kw, 0) + " kW" }

// category holds the design category of the plate against that of the record.
func (a *assessor) category() {
	plate, boat := a.hull.Plate.Category, a.hull.Boat.Category
	if !plate.Set || !boat.Set {
		return
	}
	c := ask("plate-category", "the design category on the plate is that of the record", sourceLoad, finding.Read, plate.At, boat.At)
	c.Needed, c.Has, c.Standing = boat.V, plate.V, finding.Met
	c.Says = fmt.Sprintf("the plate states category %s, the record %s", plate.V, boat.V)
	if plate.V != boat.V {
		c.Standing, c.Settle = finding.Short, "correct the plate or boat.category"
		a.against(&c)
	}
	a.Checks = append(a.Checks, c)
}
