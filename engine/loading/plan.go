package loading

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Values of the derived conditions. Person mass and fill are those of ISO 12217-3:2013 as read in an extract; the rest says
// what it rests on in its assumption.
const (
	personMass = 75.0 // kg, ISO 12217-3:2013, 3.3 (read)
	fillFull   = 95.0 // %, ISO 12217-3:2013, 3.3 (read)
	fillEnd    = 10.0 // %, practice
	storesEnd  = 10.0 // %, practice
	fullFrom   = 98.0 // %, from which a tank has no free surface (recalled: IMO intact stability code)
)

// plan is a condition before it is put together.
type plan struct {
	id, title, kind string
	record          *record.Condition
	persons         int
	person          float64
	fill            func(contents string) float64 // part of a tank, %
	stores          float64                       // %
	without         []string
}

// plans gives the usual conditions, each written one in the place of the derived one of its kind, and then what else is
// written. A maximum load beyond the boat loaded and ready, a trailer load and any other condition are the yard's to write.
func (a *assessor) plans() []plan {
	var out []plan
	for _, derive := range []func() (plan, bool){a.light, a.operating, a.ready, a.arrival} {
		p, wanted := derive()
		if written := a.written(p.kind); len(written) > 0 {
			out = append(out, written...)
		} else if wanted {
			out = append(out, p)
		}
	}
	for _, kind := range []string{"maximum load", "trailer", "other"} {
		out = append(out, a.written(kind)...)
	}
	return out
}

func (a *assessor) written(kind string) []plan {
	var out []plan
	for i := range a.hull.Conditions {
		c := &a.hull.Conditions[i]
		if c.Kind.V != kind {
			continue
		}
		p := plan{id: c.ID, title: c.Title.V, kind: kind, record: c, persons: c.Persons.V, person: personMass, stores: float64(c.Stores.V)}
		if m, ok := c.Person.Get(); ok {
			p.person = float64(m)
		} else if p.persons > 0 {
			a.assumePerson()
		}
		fill := float64(c.Tanks.V)
		p.fill = func(string) float64 { return fill }
		out = append(out, p)
	}
	return out
}

func (a *assessor) light() (plan, bool) {
	return plan{id: "light", title: "light craft", kind: "light craft", fill: all(0)}, true
}

func all(percent float64) func(string) float64 { return func(string) float64 { return percent } }

// operating is the boat with the least crew, tanks empty and nothing carried.
func (a *assessor) operating() (plan, bool) {
	p := plan{id: "operating", title: "minimum operating", kind: "minimum operating", person: personMass, fill: all(0)}
	if a.replaced(p.kind) {
		return p, false
	}
	p.persons = 1
	if a.lengthHull() > 8 {
		p.persons = 2
	}
	a.assumePerson()
	a.assume(fmt.Sprintf("in the minimum operating condition %d on board, one up to 8 m of hull and two above, tanks empty and nothing carried", p.persons),
		"write a condition of kind minimum operating", finding.Recalled)
	return p, true
}

// ready is the boat with all its people and tanks as the standard fills them: the fully loaded condition of ISO 12217.
func (a *assessor) ready() (plan, bool) {
	p := plan{id: "loaded", title: "loaded and ready", kind: "loaded ready", person: personMass, stores: 100, fill: filled}
	if a.replaced(p.kind) {
		return p, false
	}
	a.allAboard(&p)
	a.assume("loaded and ready, tanks are "+unit.Text(fillFull, 0)+" % full, bait and ballast 100 %, as in ISO 12217-3:2013, 3.3", "write a condition of kind loaded ready", finding.Read)
	return p, true
}

func filled(contents string) float64 {
	if contents == "bait" || contents == "ballast" {
		return 100
	}
	return fillFull
}

// arrival is the same boat at the end of its day.
func (a *assessor) arrival() (plan, bool) {
	p := plan{id: "arrival", title: "arrival", kind: "arrival", person: personMass, stores: storesEnd, fill: atEnd}
	if a.replaced(p.kind) {
		return p, false
	}
	a.allAboard(&p)
	a.assume(fmt.Sprintf("on arrival fuel, water and stores are down to %s %%, waste is up to %s %%", unit.Text(fillEnd, 0), unit.Text(fillFull, 0)),
		"write a condition of kind arrival", finding.Practice)
	return p, true
}

func atEnd(contents string) float64 {
	switch contents {
	case "bait", "ballast":
		return 100
	case "waste":
		return fillFull
	}
	return fillEnd
}

func (a *assessor) replaced(kind string) bool {
	for i := range a.hull.Conditions {
		if a.hull.Conditions[i].Kind.V == kind {
			return true
		}
	}
	return false
}

// allAboard takes the greatest number of persons.
func (a *assessor) allAboard(p *plan) {
	n, ok := a.hull.Boat.Persons.Get()
	if !ok {
		p.without = append(p.without, "boat.persons is not written")
		return
	}
	p.persons = n
	a.assumePerson()
}

func (a *assessor) assumePerson() {
	a.assume("a person weighs "+unit.Text(personMass, 0)+" kg, as in ISO 12217-3:2013, 3.3", "write person_mass_kg in a condition", finding.Read)
}

// lengthHull is LH as written, or the length of the lines.
func (a *assessor) lengthHull() float64 {
	if l, ok := a.hull.Boat.LengthHull.Get(); ok {
		return float64(l)
	}
	if n := len(a.lines.Stations); n > 0 {
		return a.lines.Stations[n-1].X - a.lines.Stations[0].X
	}
	return 0
}
