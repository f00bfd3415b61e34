package loading

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Heights of the centre of a person, metres (recalled: IMO intact stability code, passengers).
const (
	overSole = 1.0
	overSeat = 0.3
)

// CrewHeight is the height of the centre of a person in a place: 1.0 m above the sole where people stand, 0.3 m above the
// seat where they sit (recalled: IMO intact stability code).
func CrewHeight(c *record.CrewArea) float64 {
	if c.Posture.V == "sitting" {
		return float64(c.Z.V) + overSeat
	}
	return float64(c.Z.V) + overSole
}

// people adds the persons of a condition on the centre line. They fill the places of the record in its order, each to its
// number; without places they are where the people items of the breakdown are.
func (a *assessor) people(c *Condition, p plan) {
	if p.persons == 0 {
		return
	}
	at, working, ok := a.peopleAt(p.persons)
	if !ok {
		c.Without = append(c.Without, "where people are")
		return
	}
	c.add(Part{Name: "people", Mass: float64(p.persons) * p.person, Centre: at,
		Working: fmt.Sprintf("%d × %s kg, %s", p.persons, unit.Plain(p.person), working), Places: finding.Places(a.hull.Boat.Persons.At)})
}

func (a *assessor) peopleAt(n int) (at hydrostatics.Vector, working string, ok bool) {
	if len(a.hull.CrewAreas) == 0 {
		return a.peopleItems()
	}
	placed := Places(a.hull.CrewAreas, n)
	total := 0.0
	for i, k := range placed {
		area := &a.hull.CrewAreas[i]
		total += k
		at.X += k * float64(area.X.V)
		at.Z += k * CrewHeight(area)
	}
	if total == 0 {
		return at, "", false
	}
	a.assume("the centre of a person is "+unit.Plain(overSole)+" m above the sole where people stand, "+unit.Plain(overSeat)+" m above the seat where they sit",
		"write the condition with its people as extra mass", finding.Recalled)
	return hydrostatics.Vector{X: at.X / total, Z: at.Z / total}, "in their places", true
}

// Places shares persons out over the places in order, each to its number. More persons than there is room for are shared
// out in proportion to the room.
func Places(areas []record.CrewArea, n int) []float64 {
	out := make([]float64, len(areas))
	left, room := float64(n), 0.0
	for i := range areas {
		k := min(left, float64(areas[i].Persons.V))
		out[i] = k
		left -= k
		room += float64(areas[i].Persons.V)
	}
	if left > 0 && room > 0 {
		for i := range out {
			out[i] = float64(n) * float64(areas[i].Persons.V) / room
		}
	}
	return out
}

// peopleItems takes the centre of the people items of the breakdown.
func (a *assessor) peopleItems() (at hydrostatics.Vector, working string, ok bool) {
	mass := 0.0
	for i := range a.weight.Items {
		it := &a.weight.Items[i]
		if !it.Record.Load.V || it.Record.Group.V != "people" || !it.HasMass || !it.HasX || !it.HasZ {
			continue
		}
		mass += float64(it.Mass)
		at.X += float64(it.Mass) * float64(it.Record.X.V)
		at.Z += float64(it.Mass) * float64(it.Record.Z.V)
	}
	if mass <= 0 {
		return at, "", false
	}
	a.assume("people are where the people items of the weight breakdown are, because no places are written", "write the places as [crew_area.NAME]", finding.Practice)
	return hydrostatics.Vector{X: at.X / mass, Z: at.Z / mass}, "where the breakdown has people", true
}
