package capacity

import (
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Three questions that audits of plates found unanswered: who approved the figures and in what capacity, which masses of
// engine and person went in and by which standard, and from where the plate can be read.

// wants lists the keys that are not written, and turns a check to met where there are none.
func wants(c *finding.Check, says string, keys map[string]bool, order ...string) {
	for _, key := range order {
		if !keys[key] {
			c.Missing = append(c.Missing, key)
		}
	}
	if len(c.Missing) == 0 {
		c.Standing, c.Says = finding.Met, says
		return
	}
	c.Says = "not written: " + strings.Join(c.Missing, ", ")
	c.Settle = "write " + strings.Join(c.Missing, ", ")
}

func (a *assessor) approved() finding.Check {
	p := &a.hull.Plate
	c := ask("plate-approved", "it is on record who approved the figures of the plate, and in what capacity", sourceBy, finding.Read, p.By.At, p.As.At)
	wants(&c, fmt.Sprintf("approved by %s as %s", a.person(p.By.V), p.As.V),
		map[string]bool{"plate.approved_by": p.By.Set, "plate.approved_as": p.As.Set}, "plate.approved_by", "plate.approved_as")
	return c
}

func (a *assessor) person(key string) string {
	for i := range a.builder.People {
		if one := &a.builder.People[i]; one.ID == key && one.Name.Set {
			return one.Name.V
		}
	}
	return key
}

// assumed asks for the mass of the engines only where the boat has an outboard or does not say.
func (a *assessor) assumed() finding.Check {
	p := &a.hull.Plate
	c := ask("plate-assumed", "it is on record which masses of engine and person the figures rest on, and from which standard they come", sourceMasses, finding.Read,
		p.PersonMass.At, p.EngineMass.At, p.Standard.At)
	engine := p.EngineMass.Set || a.hull.Capacity.Drive.V == "inboard" || a.hull.Capacity.Drive.V == "oars"
	says := "person " + unit.Text(p.PersonMass.V, 0) + " kg"
	if p.EngineMass.Set {
		says += ", engines " + unit.Text(p.EngineMass.V, 0) + " kg"
	}
	wants(&c, says+", by "+p.Standard.V,
		map[string]bool{"plate.person_mass_kg": p.PersonMass.Set, "plate.engine_mass_kg": engine, "plate.standard": p.Standard.Set},
		"plate.person_mass_kg", "plate.engine_mass_kg", "plate.standard")
	return c
}

func (a *assessor) seen() finding.Check {
	p := &a.hull.Plate
	c := ask("plate-seen", "it is on record from where on board the plate can be read", sourceSeen, finding.Read, p.Seen.At)
	wants(&c, "seen from: "+p.Seen.V, map[string]bool{"plate.seen_from": p.Seen.Set}, "plate.seen_from")
	return c
}

// shortBoat is the length under which an Australian plate states the flotation (read on the states' pages).
const shortBoat = 6

// statement asks for the flotation that an Australian plate of a boat under 6 m must state.
func (a *assessor) statement() {
	p, length := &a.hull.Plate, a.hull.Boat.LengthHull
	if !slices.Contains(p.Law.V, "Australia") || !length.Set || length.V >= shortBoat {
		return
	}
	c := ask("plate-buoyancy", "the plate of a boat under 6 m states level or basic flotation", sourceAU, finding.Read, p.Buoyancy.At, length.At)
	wants(&c, "the plate states "+p.Buoyancy.V+" flotation", map[string]bool{"plate.buoyancy": p.Buoyancy.Set}, "plate.buoyancy")
	a.Checks = append(a.Checks, c)
}

// american183 holds power and load of the plate against the United States' rule where it binds.
func (a *assessor) american183() {
	if !a.American.Binds {
		return
	}
	plate := a.hull.Plate.Power
	if most, ok := a.Power.Value("p_max"); ok && plate.Set {
		c := ask("plate-power-us", "the plate permits no more power than the rule of the United States", a.Power.Sheet.Cite("183.53"), rests(a.Power, "p_max"), plate.At)
		c.Needed, c.Has, c.Standing = unit.Text(most, 1)+" kW", unit.Text(plate.V, 1)+" kW", finding.Met
		c.Says = fmt.Sprintf("the plate permits %s, the rule %s", c.Has, c.Needed)
		if float64(plate.V) > settled(most)+0.05 {
			c.Standing, c.Settle = finding.Short, "reckon the plate anew; the rule also knows a test on the water for some small boats"
		}
		a.Checks = append(a.Checks, c)
	}
	whole := a.hull.Plate.WithEngine
	if most, ok := a.Loading.Value("m_W"); ok && whole.Set && a.hull.Capacity.Drive.V == "outboard" {
		c := ask("plate-load-us", "the load on the label, outboards in, is not above the weight capacity", a.Loading.Sheet.Cite("183.35"), rests(a.Loading, "m_W"), whole.At)
		c.Needed, c.Has, c.Standing = unit.Text(most, 0)+" kg", unit.Text(whole.V, 0)+" kg", finding.Met
		c.Says = fmt.Sprintf("the label permits %s with the outboards, the rule %s", c.Has, c.Needed)
		if float64(whole.V) > settled(most)+slack {
			c.Standing, c.Settle = finding.Short, "reckon the label anew"
			a.against(&c)
		}
		a.Checks = append(a.Checks, c)
	}
}

// floats holds the foam fitted against what the handbook of the United States reckons, where the rule binds.
func (a *assessor) floats() {
	if !a.American.Binds || a.Flotation == nil {
		return
	}
	c := ask("flotation-us", "the foam fitted is as much as the Coast Guard's handbook reckons", a.Flotation.Sheet.Cite("handbook, flotation"), rests(a.Flotation, "V"), a.Foam.Places...)
	needed, ok := a.Flotation.Value("V")
	s, _ := a.Flotation.Get("V")
	switch {
	case !ok && s == nil:
		return
	case !ok:
		c.Says, c.Missing = "the foam needed could not be reckoned: "+s.Why(), nil
		for _, from := range s.Lacks() {
			c.Missing = append(c.Missing, recordKey(from))
		}
		c.Settle = "write " + strings.Join(c.Missing, ", ")
	case a.Foam.Pieces == 0:
		c.Says, c.Missing, c.Settle = "no foam is on record; "+unit.Text(needed, 0)+" l are reckoned", []string{"buoyancy"}, "write the foam as [buoyancy.NAME], or a swamp test"
	default:
		c.Needed, c.Has, c.Standing = unit.Text(needed, 0)+" l", unit.Text(a.Foam.Litres, 0)+" l", finding.Met
		c.Says = fmt.Sprintf("%s of foam fitted, %s reckoned; air chambers are not counted", c.Has, c.Needed)
		if float64(a.Foam.Litres) < settled(needed) {
			c.Standing, c.Settle = finding.Short, "more foam, or a swamp test on record"
		}
	}
	a.Checks = append(a.Checks, c)
}
