package weight

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// complete checks that every item has a mass.
func complete(r *Result, how []reckoned) finding.Check {
	c := finding.Check{
		Rule: "weight-breakdown", Subject: "weights", Standing: finding.NotShown,
		Asks:  "every item of the weight breakdown has a mass",
		Basis: finding.Practice, Source: "practice",
	}
	if len(r.Items) == 0 {
		c.Says = "no weights are on record"
		c.Missing = []string{"weight"}
		c.Settle = "write the weight breakdown, as [weight.NAME] tables or weights.csv"
		return c
	}
	for i, it := range r.Items {
		if it.HasMass {
			continue
		}
		c.Places = append(c.Places, it.Record.At)
		for _, key := range how[i].lacks {
			c.Missing = append(c.Missing, "weight."+it.Record.ID+"."+key)
		}
	}
	if len(c.Missing) > 0 {
		c.Says = fmt.Sprintf("of %d items %d without a mass, not in the sum: %s", len(r.Items), len(r.Loaded.NoMass), keys(r.Loaded.NoMass))
		c.Settle = "write a mass, or what it is reckoned from"
		return c
	}
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("%d items, %s kg loaded, %s kg of it margin", len(r.Items), unit.Text(r.Loaded.Mass, 0), unit.Text(r.Loaded.Margin, 0))
	return c
}

// positioned checks that every item has its three positions.
func positioned(r *Result) finding.Check {
	c := finding.Check{
		Rule: "weight-centre", Subject: "weights", Standing: finding.NotShown,
		Asks:  "every item has a position fore and aft, athwart and in height",
		Basis: finding.Practice, Source: "practice",
	}
	if len(r.Items) == 0 {
		c.Says, c.Settle = "no weights are on record, so no centre is shown", "write the weight breakdown"
		return c
	}
	var without []string
	for _, it := range r.Items {
		axes := lacking(missing{"x_m", it.HasX}, missing{"y_m", it.HasY}, missing{"z_m", it.HasZ})
		if len(axes) == 0 {
			continue
		}
		without = append(without, fmt.Sprintf("%s (%s)", it.Record.ID, strings.Join(axes, ", ")))
		c.Places = append(c.Places, it.Record.At)
		for _, a := range axes {
			c.Missing = append(c.Missing, "weight."+it.Record.ID+"."+a)
		}
	}
	if len(without) > 0 {
		c.Says = "no centre is shown where a position is missing: " + keys(without)
		c.Settle = "write the positions"
		return c
	}
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("loaded centre %s m forward of the transom, %s m to starboard, %s m above the base line",
		unit.Text(r.Loaded.X, 3), unit.Text(r.Loaded.Y, 3), unit.Text(r.Loaded.Z, 3))
	return c
}

// heldBy starts a check of a weighing.
func heldBy(w *Weighing, rule, asks string) finding.Check {
	return finding.Check{
		Rule: rule, Subject: "weighing " + w.Record.ID, Standing: finding.NotShown, Asks: asks,
		Basis: finding.Yard, Source: "allowance of the record", Places: []finding.Place{w.Record.At},
	}
}

// massHeld holds the mass weighed against the items as they were on that day.
func massHeld(w *Weighing) finding.Check {
	c := heldBy(w, "weighing-mass", "the mass weighed is that of the items on board that day, within the allowance of the record")
	switch {
	case !w.HasMass:
		c.Says, c.Settle = w.Why, "read the weighing sheet again"
		return c
	case !w.Reckoned.Whole():
		c.Says = "weighed " + unit.Text(w.Mass, 0) + " kg; " + incomplete(&w.Reckoned)
		c.Settle = "complete the weight breakdown"
		return c
	}
	part := 100 * float64(w.DiffMass) / float64(w.Mass)
	c.Says = fmt.Sprintf("weighed %s kg, the items on board that day add up to %s kg: %s kg or %s %% of the mass weighed",
		unit.Text(w.Mass, 0), unit.Text(w.Reckoned.Mass, 0), unit.Text(w.DiffMass, 0), unit.Text(part, 1))
	c.Has = unit.Text(part, 1) + " %"
	if !w.HasAllowed {
		c.Says += "; no allowance is written"
		c.Missing = []string{"weighing." + w.Record.ID + ".allowance_mass_percent"}
		c.Settle = "write the difference of mass that the yard accepts"
		return c
	}
	c.Places = append(c.Places, w.Record.AllowedMass.At)
	c.Needed = "within ± " + unit.Text(w.Allowed, 1) + " %"
	decide(&c, math.Abs(part) <= float64(w.Allowed), unit.Text(w.Allowed, 1)+" %")
	return c
}

// centreHeld holds the centre fore and aft by weighing against that of the items as they were on that day.
func centreHeld(w *Weighing) finding.Check {
	c := heldBy(w, "weighing-centre", "the centre fore and aft by weighing is that of the items on board that day, within the allowance of the record")
	switch {
	case !w.HasX:
		c.Says, c.Settle = w.Why, "weigh at two or more places along the boat"
		return c
	case !w.comparesX():
		c.Says = "centre weighed at x " + unit.Text(w.X, 3) + " m; " + incomplete(&w.Reckoned)
		c.Settle = "complete the weight breakdown"
		return c
	}
	c.Says = fmt.Sprintf("centre weighed at x %s m, that of the items on board that day is at x %s m: %s mm",
		unit.Text(w.X, 3), unit.Text(w.Reckoned.X, 3), unit.Text(w.DiffX, 0))
	c.Has = unit.Text(w.DiffX, 0) + " mm"
	if !w.HasAllowX {
		c.Says += "; no allowance is written"
		c.Missing = []string{"weighing." + w.Record.ID + ".allowance_centre_mm"}
		c.Settle = "write the difference of the centre that the yard accepts"
		return c
	}
	c.Places = append(c.Places, w.Record.AllowedCentre.At)
	c.Needed = "within ± " + unit.Text(w.AllowedX, 0) + " mm"
	decide(&c, math.Abs(float64(w.DiffX)) <= float64(w.AllowedX), unit.Text(w.AllowedX, 0)+" mm")
	return c
}

// decide closes a check of a weighing.
func decide(c *finding.Check, within bool, allowed string) {
	if within {
		c.Standing = finding.Met
		c.Says += ", within the " + allowed + " allowed"
		return
	}
	c.Standing = finding.Short
	c.Says += ", beyond the " + allowed + " allowed; weighing and breakdown cannot both be right"
	c.Settle = "look for items that were on board or ashore on the day and are not named, then weigh again"
}

// notWeighed is the check of a hull without a weighing.
func notWeighed(h *record.Hull) finding.Check {
	return finding.Check{
		Rule: "weighing-mass", Subject: "boat", Standing: finding.NotShown,
		Asks: "the boat was weighed", Says: "no weighing is on record",
		Basis: finding.Practice, Source: "practice", Missing: []string{"weighing"},
		Settle: "weigh the boat at two or more points and write [weighing.NAME]",
	}
}

// incomplete says why a sum cannot be held against a weighing.
func incomplete(t *Total) string {
	switch {
	case t.Items == 0:
		return "no items are on record to hold against it"
	case len(t.NoMass) > 0:
		return "no mass is written for " + keys(t.NoMass)
	}
	return "a position is missing for " + keys(t.Without)
}
