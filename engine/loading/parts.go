package loading

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// parts fills a condition: the light craft, people, tanks, what is carried, and what the record adds.
func (a *assessor) parts(c *Condition, p plan) {
	a.lightCraft(c)
	a.people(c, p)
	for i := range a.hull.Tanks {
		a.tank(c, &a.hull.Tanks[i], p.fill(a.hull.Tanks[i].Contents.V))
	}
	for i := range a.weight.Items {
		if it := &a.weight.Items[i]; it.Record.Load.V && it.Record.Group.V != "people" && a.tankOf(it.Record.ID) == nil {
			a.carried(c, it, p)
		}
	}
	c.extra(p.record)
}

func (c *Condition) add(p Part) {
	if p.Mass != 0 {
		c.Parts = append(c.Parts, p)
	}
}

func (a *assessor) lightCraft(c *Condition) {
	t := &a.weight.Light
	if !t.Whole() || !t.HasX || !t.HasY || !t.HasZ {
		c.Without = append(c.Without, lacking(t)...)
		return
	}
	c.add(Part{Name: "light craft", Mass: float64(t.Mass), Centre: hydrostatics.Vector{X: float64(t.X), Y: float64(t.Y), Z: float64(t.Z)},
		Working: fmt.Sprintf("sum of %d items of the weight breakdown that are not load", t.Items)})
}

func lacking(t *weight.Total) []string {
	if t.Items == 0 {
		return []string{"the light craft in the weight breakdown"}
	}
	if len(t.Without) == 0 {
		return []string{"the light craft has no mass above nought"}
	}
	out := make([]string, len(t.Without))
	for i, id := range t.Without {
		out[i] = "mass or place of weight " + id
	}
	return out
}

// tank adds the contents of one tank at its centre, and its free surface where it is slack.
func (a *assessor) tank(c *Condition, t *record.Tank, percent float64) {
	if percent <= 0 {
		return
	}
	mass := float64(t.Volume.V) / 1000 * float64(t.Density.V) * percent / 100
	c.add(Part{Name: tankName(t), Mass: mass, Centre: hydrostatics.Vector{X: float64(t.X.V), Y: float64(t.Y.V), Z: float64(t.Z.V)},
		Working: fmt.Sprintf("%s l × %s kg/m³ × %s %%", unit.Text(t.Volume.V, 0), unit.Text(t.Density.V, 0), unit.Plain(percent)),
		Places:  finding.Places(t.Volume.At, t.Density.At)})
	if percent < fullFrom {
		c.Surfaces = append(c.Surfaces, Surface{Tank: t})
	}
}

func tankName(t *record.Tank) string {
	if n, ok := t.Name.Get(); ok {
		return n
	}
	return t.Contents.V + " in tank " + t.ID
}

// tankOf finds the tank whose contents a load item stands for.
func (a *assessor) tankOf(item string) *record.Tank {
	for i := range a.hull.Tanks {
		if t := &a.hull.Tanks[i]; t.Weight.Set && t.Weight.V == item {
			return t
		}
	}
	return nil
}

// carried adds a load item that is neither people nor the contents of a tank on record.
func (a *assessor) carried(c *Condition, it *weight.Item, p plan) {
	percent := p.stores
	if it.Record.Group.V == "fuel and water" {
		percent = p.fill("fuel")
		a.assume("the load item "+it.Record.ID+" is the mass of a full tank, and its free surface is not reckoned", "write the tank, with weight = \""+it.Record.ID+"\"", finding.Practice)
	}
	if percent <= 0 {
		return
	}
	if !it.HasMass || !it.HasX || !it.HasY || !it.HasZ {
		c.Without = append(c.Without, "weight "+it.Record.ID)
		return
	}
	c.add(Part{Name: it.Record.Name.V, Mass: float64(it.Mass) * percent / 100, Centre: itemCentre(it),
		Working: fmt.Sprintf("%s kg × %s %%", unit.Text(it.Mass, 1), unit.Plain(percent)), Places: finding.Places(it.Record.At)})
}

func itemCentre(it *weight.Item) hydrostatics.Vector {
	return hydrostatics.Vector{X: float64(it.Record.X.V), Y: float64(it.Record.Y.V), Z: float64(it.Record.Z.V)}
}

// extra adds the mass that a condition of the record has beside the breakdown.
func (c *Condition) extra(r *record.Condition) {
	if r == nil || r.Extra.V == 0 {
		return
	}
	if !r.X.Set || !r.Y.Set || !r.Z.Set {
		c.Without = append(c.Without, "extra mass of condition "+r.ID)
		return
	}
	c.add(Part{Name: "extra mass", Mass: float64(r.Extra.V), Centre: hydrostatics.Vector{X: float64(r.X.V), Y: float64(r.Y.V), Z: float64(r.Z.V)},
		Working: "record", Places: finding.Places(r.Extra.At)})
}

// sum adds the parts up and finds the rise by free surfaces.
func (c *Condition) sum() {
	var m hydrostatics.Vector
	for _, p := range c.Parts {
		c.Mass += p.Mass
		m.X += float64(p.Mass * p.Centre.X)
		m.Y += float64(p.Mass * p.Centre.Y)
		m.Z += float64(p.Mass * p.Centre.Z)
	}
	if c.Mass <= 0 {
		return
	}
	c.Centre = hydrostatics.Vector{X: m.X / c.Mass, Y: m.Y / c.Mass, Z: m.Z / c.Mass}
	for i := range c.Surfaces {
		c.Surfaces[i].reckon(c.Mass)
		c.Rise += c.Surfaces[i].Rise
	}
}

func (s *Surface) reckon(mass float64) {
	t := s.Tank
	if !t.Length.Set || !t.Breadth.Set {
		s.Working = "the record gives no free surface"
		return
	}
	parts := 1
	if n, ok := t.Parts.Get(); ok {
		parts = n
	}
	s.Known = true
	s.Rise = FreeSurface(float64(t.Length.V), float64(t.Breadth.V), parts, float64(t.Density.V), mass)
	s.Working = fmt.Sprintf("%s kg/m³ × %d × %s m × (%s m)³ / (12 × %s kg) = %s mm", unit.Text(t.Density.V, 0), parts,
		unit.Plain(t.Length.V), unit.Plain(t.Breadth.V), unit.Text(mass, 0), unit.Text(s.Rise*1000, 1))
}

// FreeSurface is the rise of the centre of gravity by the free surface of a slack tank, metres: the second moment of the
// surface, rectangular in parts side by side, times the density of the liquid over the mass of the boat. Lengths in metres,
// density in kg/m³, mass in kilograms. Classical hydrostatics; it holds for small angles, and overstates at large ones.
func FreeSurface(length, breadth float64, parts int, density, mass float64) float64 {
	return density * float64(parts) * length * math.Pow(breadth, 3) / (12 * mass)
}
