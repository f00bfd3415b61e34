package chart

import (
	"fmt"
	"math"

	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// Centres draws the items along the boat as discs with areas in the proportion of their masses, at their height where it
// is known, and under them the centres of the light and the loaded boat and of each weighing. The boat may be nil.
func Centres(r weight.Result, boat *record.Boat) Figure {
	const id, title = "fig-centres", "Weight items and centres along the boat"
	c := newCentres(r, boat)
	if len(c.items)+len(c.marks) == 0 {
		return blank(id, title, "No weight item with a mass and a position on record.", nil)
	}
	p := plate{id: id, title: title, alt: c.words(), paint: c.draw}
	return p.finished(c.note(), c.table())
}

// centres is the picture of what weighs where.
type centres struct {
	items   []placed // heaviest first
	marks   []centre
	length  float64 // of the hull in metres, nought where not known
	without int     // items without a mass or a position
	level   bool    // no height is known: all items stand on one line
}

// placed is an item with its mass and position.
type placed struct {
	name       string
	mass, x, z float64
	hasZ       bool
}

// centre is a centre of gravity, with the word that names it.
type centre struct {
	word, class string
	mass, x, z  float64
	hasZ        bool
}

func newCentres(r weight.Result, boat *record.Boat) centres {
	c := centres{}
	for _, item := range r.Items {
		one, ok := placedOf(item)
		if !ok {
			c.without++
			continue
		}
		c.items = append(c.items, one)
	}
	sortByMass(c.items)
	c.take("light", "g-light", r.Light)
	c.take("loaded", "g-loaded", r.Loaded)
	for _, w := range r.Weighings {
		if w.HasX && near0(float64(w.X)) && usable(float64(w.Mass)) {
			c.marks = append(c.marks, centre{word: "weighed" + keyOfWeighing(w), class: "g-scale", mass: float64(w.Mass), x: float64(w.X)})
		}
	}
	c.level = !c.anyHeight()
	if boat != nil && boat.LengthHull.Set && near0(float64(boat.LengthHull.V)) {
		c.length = max(0, float64(boat.LengthHull.V))
	}
	return c
}

// anyHeight reports whether a height is known of any item or centre.
func (c centres) anyHeight() bool {
	for _, i := range c.items {
		if i.hasZ {
			return true
		}
	}
	for _, m := range c.marks {
		if m.hasZ {
			return true
		}
	}
	return false
}

// take adds a centre where its mass and its place along the boat are known.
func (c *centres) take(word, class string, t weight.Total) {
	if !t.HasX || !near0(float64(t.X)) || !usable(float64(t.Mass)) {
		return
	}
	mark := centre{word: word, class: class, mass: float64(t.Mass), x: float64(t.X)}
	if z := float64(t.Z); t.HasZ && near0(z) {
		mark.z, mark.hasZ = z, true
	}
	c.marks = append(c.marks, mark)
}

// near0 reports whether a position in metres is one that a boat can have.
func near0(v float64) bool { return usable(v) && math.Abs(v) <= 1000 }

func placedOf(item weight.Item) (placed, bool) {
	if item.Record == nil || !item.HasMass || !item.HasX || !usable(float64(item.Mass)) || item.Mass == 0 {
		return placed{}, false
	}
	one := placed{name: nameOf(item), mass: float64(item.Mass), x: float64(item.Record.X.V)}
	if z := float64(item.Record.Z.V); item.HasZ && near0(z) {
		one.z, one.hasZ = z, true
	}
	return one, near0(one.x)
}

func nameOf(item weight.Item) string {
	if item.Record == nil {
		return "item without a record"
	}
	if name, set := item.Record.Name.Get(); set && name != "" {
		return name
	}
	return item.Record.ID
}

func keyOfWeighing(w weight.Weighing) string {
	if w.Record == nil || w.Record.ID == "" {
		return ""
	}
	return " " + w.Record.ID
}

func (c centres) words() string {
	words := fmt.Sprintf("%d items placed along the boat.", len(c.items))
	for _, m := range c.marks {
		words += fmt.Sprintf(" Centre %s: %s m forward of the transom, %s kg.", m.word, unit.Text(m.x, 2), unit.Text(m.mass, 0))
	}
	return words
}

func (c centres) note() string {
	const signs = "Area of a disc: mass; numbers name the heaviest. Quartered disc: centre of the light boat; filled disc with a cross: of the loaded boat; triangle: as weighed."
	note := signs + " Heights are above the base line."
	low := 0
	for _, i := range c.items {
		if !i.hasZ {
			low++
		}
	}
	switch {
	case c.level:
		note = signs + " No heights are on record, so all items stand on one line."
	case low > 0:
		note += " Without a height on record, drawn on the base line: " + itemsOf(low) + "."
	}
	if c.without > 0 {
		note += " Without a mass or a position, not drawn: " + itemsOf(c.without) + "."
	}
	return note
}

func (c centres) table() [][]string {
	table := [][]string{{"Item or centre", "Mass, kg", "x, m", "z, m"}}
	for _, m := range c.marks {
		table = append(table, []string{"centre, " + m.word, unit.Text(m.mass, 0), unit.Text(m.x, 3), figure(m.z, m.hasZ, 3)})
	}
	for _, i := range c.items {
		table = append(table, []string{i.name, unit.Text(i.mass, 1), unit.Text(i.x, 2), figure(i.z, i.hasZ, 2)})
	}
	return cut(table)
}

func itemsOf(n int) string {
	if n == 1 {
		return "1 item"
	}
	return fmt.Sprintf("%d items", n)
}
