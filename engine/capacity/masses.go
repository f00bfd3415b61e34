package capacity

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// fuelAndWater is the group of the weight breakdown that stands for the contents of tanks.
const fuelAndWater = "fuel and water"

// light takes the mass of the light craft from the last weighing; where there is none, as the record states it; else as
// the items add up.
func (a *assessor) light() Mass {
	w := a.weight
	for _, one := range slices.Backward(w.Weighings) {
		if one.HasMass && w.Light.Whole() && one.Reckoned.Items > 0 {
			// What was ashore or on board that day is in Reckoned, so the difference is that of the light craft.
			m := Mass{KG: w.Light.Mass + one.DiffMass, Has: true, How: "weighed, weighing " + one.Record.ID, Basis: finding.Yard}
			return m.at(one.Record.At)
		}
	}
	if stated := a.hull.Boat.LightMass; stated.Set {
		return Mass{KG: stated.V, Has: true, How: "as the record states it", Basis: finding.Yard}.at(stated.At)
	}
	if w.Light.Whole() {
		return Mass{KG: w.Light.Mass, Has: true, How: "sum of the items", Basis: finding.Derived}
	}
	return Mass{}
}

func (m Mass) at(p finding.Place) Mass {
	if p.Known() {
		m.Places = append(m.Places, p)
	}
	return m
}

// fixed adds up what the fixed tanks hold when full. Where no tank is on record, the fuel and water of the breakdown
// stand in for it.
func (a *assessor) fixed() Contents {
	var c Contents
	for i := range a.hull.Tanks {
		t := &a.hull.Tanks[i]
		part := TankPart{Name: nameOf(t), KG: contentsOf(t), Fixed: t.Fixed.V, Place: t.At}
		c.Parts = append(c.Parts, part)
		if part.Fixed {
			c.KG += part.KG
		}
	}
	if len(c.Parts) > 0 {
		c.Has = true
		return c
	}
	return a.fromBreakdown()
}

func nameOf(t *record.Tank) string {
	if t.Name.Set {
		return t.Name.V
	}
	return t.ID
}

// contentsOf is the mass in a full tank: litres by kilograms in a cubic metre, over a thousand.
func contentsOf(t *record.Tank) unit.KG {
	return unit.KG(float64(t.Volume.V) * float64(t.Density.V) / 1000)
}

func (a *assessor) fromBreakdown() Contents {
	c := Contents{Assumed: true}
	for i := range a.weight.Items {
		it := &a.weight.Items[i]
		if !it.Record.Load.V || it.Record.Group.V != fuelAndWater {
			continue
		}
		if !it.HasMass {
			return Contents{}
		}
		c.Has = true
		c.KG += it.Mass
		c.Parts = append(c.Parts, TankPart{Name: it.Record.Name.V, KG: it.Mass, Fixed: true, Place: it.Record.At})
	}
	return c
}

// carried adds up the load items of the breakdown, without the contents of tanks.
func (a *assessor) carried() {
	a.HasLoads = true
	n := 0
	for i := range a.weight.Items {
		it := &a.weight.Items[i]
		if !it.Record.Load.V || it.Record.Group.V == fuelAndWater {
			continue
		}
		n++
		a.HasLoads = a.HasLoads && it.HasMass
		a.Carried += it.Mass
	}
	a.HasLoads = a.HasLoads && n > 0
}

// foam adds up what is fitted. Of chambers the two largest are taken as flooded (33 CFR 183.105, read).
func foam(h *record.Hull) Foam {
	var f Foam
	var chambers []float64
	for i := range h.Buoyancy {
		piece := &h.Buoyancy[i]
		n := 1
		if piece.Both.V {
			n = 2
		}
		f.Pieces += n
		f.Places = append(f.Places, piece.At)
		for range n {
			if piece.Kind.V == "foam" {
				f.Litres += piece.Volume.V
				continue
			}
			chambers = append(chambers, float64(piece.Volume.V))
		}
	}
	slices.Sort(chambers)
	for _, v := range chambers[:max(0, len(chambers)-2)] {
		f.Chambers += unit.Litre(v)
	}
	return f
}

// assume lists what nobody wrote and that matters.
func (a *assessor) assume() {
	add := func(says, settle string, basis finding.Basis) {
		a.Assumptions = append(a.Assumptions, finding.Assumption{Subject: subjectPlate, Says: says, Settle: settle, Basis: basis})
	}
	if a.Fixed.Has && a.Fixed.Assumed {
		add("no tank is on record; the fuel and water of the weight breakdown, "+unit.Text(a.Fixed.KG, 0)+" kg, are taken as the contents of full fixed tanks",
			"write the tanks as [tank.NAME]", finding.Practice)
	}
	if !a.hull.Plate.PersonMass.Set && a.PerPerson > 0 {
		add("one person is taken as "+unit.Text(a.PerPerson, 0)+" kg, because the plate's record does not say which mass was assumed", "write plate.person_mass_kg", finding.Read)
	}
}
