package chart

import (
	"fmt"
	"math"
	"sort"

	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// movers is how many items are drawn.
const movers = 12

// Sensitivity draws for the items that matter most how far the mass and the centre of the boat would move if the item
// were a tenth heavier.
func Sensitivity(r weight.Result) Figure {
	const id, title = "fig-sensitivity", "What a tenth more of an item would change"
	v := newSensitivity(r)
	if len(v.items) == 0 {
		return blank(id, title, "No weight item with a mass on record.", nil)
	}
	p := plate{id: id, title: title, alt: v.words(), paint: v.draw}
	note := "Bars from 0: change of mass on the left, change of the centre of the loaded boat on the right, aft to the left and forward to the right."
	if rest := v.rest; rest > 0 {
		note += fmt.Sprintf(" %d more items are in the table.", rest)
	}
	return p.finished(note, v.table())
}

// sensitivity is the picture of what moves the sums.
type sensitivity struct {
	all, items []weight.Item // those that move the sums most first; items are those drawn
	rest       int
}

func newSensitivity(r weight.Result) sensitivity {
	var v sensitivity
	for _, i := range r.Items {
		if i.HasMass && usable(float64(i.MovesKG)) && usable(float64(i.MovesX)) {
			v.all = append(v.all, i)
		}
	}
	kg, mm := v.greatest()
	weigh := func(i weight.Item) float64 {
		return max(math.Abs(float64(i.MovesKG))/kg, math.Abs(float64(i.MovesX))/mm)
	}
	sort.SliceStable(v.all, func(i, j int) bool { return weigh(v.all[i]) > weigh(v.all[j]) })
	v.items = v.all[:min(movers, len(v.all))]
	v.rest = len(v.all) - len(v.items)
	return v
}

// greatest gives the greatest change of mass and of centre, never nought.
func (v sensitivity) greatest() (kg, mm float64) {
	for _, i := range v.all {
		kg, mm = max(kg, math.Abs(float64(i.MovesKG))), max(mm, math.Abs(float64(i.MovesX)))
	}
	return max(kg, 1e-9), max(mm, 1e-9)
}

func (v sensitivity) words() string {
	heavy, far := v.all[0], v.all[0]
	for _, i := range v.all {
		if math.Abs(float64(i.MovesKG)) > math.Abs(float64(heavy.MovesKG)) {
			heavy = i
		}
		if math.Abs(float64(i.MovesX)) > math.Abs(float64(far.MovesX)) {
			far = i
		}
	}
	words := fmt.Sprintf("The mass moves most with %s: %s kg for a tenth of it.", nameOf(heavy), unit.Text(heavy.MovesKG, 1))
	return words + fmt.Sprintf(" The centre moves most with %s: %s.", nameOf(far), moved(far))
}

// moved says how far and which way an item moves the centre.
func moved(i weight.Item) string {
	x := float64(i.MovesX)
	switch {
	case !i.HasX:
		return "–"
	case x > 0:
		return unit.Text(x, 1) + " mm forward"
	case x < 0:
		return unit.Text(-x, 1) + " mm aft"
	}
	return "0 mm"
}

func (v sensitivity) table() [][]string {
	table := [][]string{{"Item", "Mass, kg", "A tenth of it moves the mass by, kg", "and the centre by"}}
	for _, i := range v.all {
		table = append(table, []string{nameOf(i), unit.Text(i.Mass, 1), unit.Text(i.MovesKG, 1), moved(i)})
	}
	return cut(table)
}

// draw sets the two scales beside each other on a page, and under each other on a phone.
func (v sensitivity) draw(s *sheet) {
	mass := barField{from: 232, length: 166, left: 196, right: 436, name: "change of mass, kg", named: true, value: movesMass}
	centre := barField{from: 478, length: 200, left: 440, right: s.w - 2, name: "aft – change of centre, mm – forward", value: movesCentre}
	if !s.slim() {
		s.h = max(v.bars(s, mass), v.bars(s, centre))
		return
	}
	mass.from, mass.length, mass.left, mass.right = 40, s.w-80, 2, s.w-2
	centre.from, centre.length, centre.left, centre.right = 40, s.w-80, 2, s.w-2
	centre.named = true
	centre.top = v.bars(s, mass) + 16
	s.h = v.bars(s, centre)
}

func movesMass(i weight.Item) (float64, bool)   { return float64(i.MovesKG), true }
func movesCentre(i weight.Item) (float64, bool) { return float64(i.MovesX), i.HasX }
