package weight

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// statedAllowance is the part of a stated mass by which the sum of the items may differ from it (practice). The record
// has no key for it, so wherever it decides it is named as an assumption.
const statedAllowance = 0.02

// stated holds the masses that the record states against the sums.
func (r *Result) stated(boat *record.Boat) {
	if boat.LightMass.Set {
		r.hold("light-mass", "boat.light_mass_kg", "light craft", boat.LightMass, &r.Light)
	}
	r.hold("loaded-mass", "boat.loaded_mass_kg", "loaded mass", boat.LoadedMass, &r.Loaded)
}

// hold compares one stated mass with its sum.
func (r *Result) hold(rule, key, name string, stated record.Val[unit.KG], reckoned *Total) {
	c := finding.Check{
		Rule: rule, Subject: "boat", Standing: finding.NotShown,
		Asks:  fmt.Sprintf("the %s that is stated is that of the items", name),
		Basis: finding.Practice, Source: "practice",
	}
	switch {
	case !stated.Set:
		c.Says = "the record states no " + name
		if reckoned.Items > 0 {
			c.Says += "; the items add up to " + unit.Text(reckoned.Mass, 0) + " kg"
		}
		c.Missing, c.Settle = []string{key}, "write "+key
	case reckoned.Items == 0:
		c.Says, c.Settle = "no weights are on record to hold against it", "write the weight breakdown"
		c.Places = []finding.Place{stated.At}
	case !reckoned.Whole():
		c.Says = fmt.Sprintf("stated %s kg; the items add up to %s kg without %s", unit.Text(stated.V, 0), unit.Text(reckoned.Mass, 0), keys(reckoned.NoMass))
		c.Settle = "complete the masses"
		c.Places = []finding.Place{stated.At}
	default:
		r.compareStated(&c, key, name, stated, reckoned.Mass)
	}
	r.Checks = append(r.Checks, c)
	r.Findings = append(r.Findings, contradiction(c)...)
}

// compareStated decides, and names the allowance that decided.
func (r *Result) compareStated(c *finding.Check, key, name string, stated record.Val[unit.KG], reckoned unit.KG) {
	s := Stated{
		Key: key, Name: name, Mass: stated.V, Reckoned: reckoned, Diff: stated.V - reckoned,
		Allowed: unit.KG(statedAllowance * float64(stated.V)),
	}
	r.Stated = append(r.Stated, s)
	c.Places = []finding.Place{stated.At}
	c.Needed = unit.Text(reckoned, 0) + " ± " + unit.Text(s.Allowed, 0) + " kg"
	c.Has = unit.Text(stated.V, 0) + " kg"
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("%s stated as %s kg; the items add up to %s kg, %s kg apart with %s kg allowed",
		name, unit.Text(stated.V, 0), unit.Text(reckoned, 0), unit.Text(math.Abs(float64(s.Diff)), 0), unit.Text(s.Allowed, 0))
	if math.Abs(float64(s.Diff)) > float64(s.Allowed) {
		c.Standing = finding.Short
		c.Settle = "find the items that are missing or counted twice, or correct " + key
	}
	r.Assumptions = append(r.Assumptions, finding.Assumption{
		Subject: "boat",
		Says:    fmt.Sprintf("%s and the sum of the items agree when they are within %s %% of the mass stated", name, unit.Text(statedAllowance*100, 0)),
		Settle:  "a weighing with its own allowance says more", Basis: finding.Practice,
	})
}
