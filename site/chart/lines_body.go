package chart

import (
	"fmt"
	"sort"

	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

// BodyPlan draws the sections to scale: those aft of the middle to the left, those forward to the right, with the water.
func BodyPlan(r lines.Result) Figure {
	const id, title = "fig-body-plan", "Body plan"
	v, ok := shapeOf(r)
	if !ok {
		return blank(id, title, "The lines are not on record, or are not those of a hull.", nil)
	}
	b := bodyPlan{v}
	p := plate{id: id, title: title, alt: b.words(), paint: b.draw}
	return p.finished(b.note(), b.table())
}

type bodyPlan struct{ shape }

// planField is where the body plan lies on the sheet.
type planField struct {
	middle, base, perMetre float64
	left, right            float64
}

func (f planField) at(side float64) func(y, z float64) point {
	return func(y, z float64) point {
		return point{f.middle + float64(side*y*f.perMetre), f.base - float64(z*f.perMetre)}
	}
}

func (b bodyPlan) words() string {
	words := fmt.Sprintf("%d sections from x %s to %s m, half breadth up to %s m.", len(b.stations), unit.Text(b.aft(), 2), unit.Text(b.fore(), 2), unit.Text(b.half, 2))
	if b.floats {
		words += fmt.Sprintf(" The water stands %s m above the base line amidships.", unit.Text(b.water(b.amidships()), 3))
	}
	return words
}

func (b bodyPlan) note() string {
	note := "Sections aft of the middle of the hull to the left, forward of it to the right; numbers are those of the stations. Heights are above the base line."
	if b.floats {
		note += " The broken line is the water amidships, loaded; a ring is where the water meets a section."
	}
	if n := len(b.stations) - len(b.shown()); n > 0 {
		note += fmt.Sprintf(" %d stations are not drawn.", n)
	}
	return note
}

func (b bodyPlan) amidships() float64 { return (b.aft() + b.fore()) / 2 }

// table gives the offsets.
func (b bodyPlan) table() [][]string {
	head := []string{"Station", "x, m"}
	for _, e := range b.edges() {
		if e != lines.Keel {
			head = append(head, e.String()+" y, m")
		}
		head = append(head, e.String()+" z, m")
	}
	table := [][]string{head}
	for _, s := range b.stations {
		row := []string{s.ID, unit.Text(s.X, 3)}
		for _, e := range b.edges() {
			if e != lines.Keel {
				row = append(row, unit.Text(s.At[e].Y, 3))
			}
			row = append(row, unit.Text(s.At[e].Z, 3))
		}
		table = append(table, row)
	}
	return cut(table)
}

func (b bodyPlan) field(s *sheet) planField {
	const margin, names, tallest = 44.0, 34.0, 430.0
	low := min(b.low, 0)
	if low < b.low-2 {
		low = b.low
	}
	f := planField{left: margin, right: s.w - 12}
	f.middle = (f.left + f.right) / 2
	f.perMetre = min((f.right-f.left)/(2*b.half), tallest/(b.high-low))
	f.base = names + float64(b.high*f.perMetre)
	s.h = f.base - float64(low*f.perMetre) + 14
	return f
}

func (b bodyPlan) draw(s *sheet) {
	f := b.field(s)
	foot := s.h
	b.heights(s, f)
	s.line("g-axis", f.middle, 26, f.middle, foot-10)
	for _, one := range b.shown() {
		side := b.side(one)
		s.curve("g-section", points(one.Half(), f.at(side))...)
	}
	b.waterline(s, f)
	b.names(s, f, -1)
	b.names(s, f, 1)
	s.h = b.breadths(s, f, foot)
}

// breadths draws the scale of half breadths under the sections, to both sides of the middle, and gives its lower edge.
func (b bodyPlan) breadths(s *sheet, f planField, foot float64) float64 {
	out := newScale(0, b.half, 4)
	s.line("g-axis", f.left, foot, f.right, foot)
	var strokes []segment
	mark := func(y, long float64) {
		for _, side := range []float64{-1, 1} {
			if x := f.at(side)(y, 0).x; x >= f.left-0.5 && x <= f.right+0.5 {
				strokes = append(strokes, segment{point{x, foot}, point{x, foot + long}})
				if long > 4 && (side > 0 || y > 0) {
					s.text("g-text", nearest(x, advance(out.label(y))/2, s.w-advance(out.label(y))/2), foot+18, middle, out.label(y))
				}
			}
		}
	}
	for _, y := range out.ticks() {
		mark(y, 5)
	}
	for _, y := range out.minor() {
		mark(y, 3)
	}
	s.strokes("g-axis", strokes)
	s.text("g-text", f.middle, foot+36, middle, "half breadth, m")
	s.text("g-soft", f.left, foot+36, start, "aft")
	s.text("g-soft", f.right, foot+36, end, "forward")
	return foot + 42
}

// side is -1 for a section aft of the middle, 1 for one forward.
func (b bodyPlan) side(one lines.Station) float64 {
	if one.X < b.amidships() {
		return -1
	}
	return 1
}

// heights draws hairlines at round heights, with their figures at the left.
func (b bodyPlan) heights(s *sheet, f planField) {
	up := newScale(b.low, b.high, 6)
	last := s.h + 99
	for _, z := range up.ticks() {
		y := f.at(1)(0, z).y
		if y < 24 || y > s.h-8 {
			continue
		}
		class := "g-grid"
		if z == 0 {
			class = "g-axis"
		}
		s.line(class, f.left, y, f.right, y)
		if last-y > line {
			s.text("g-text", f.left-7, y+rise/2, end, up.label(z))
			last = y
		}
	}
	s.text("g-text", 2, 14, start, "m")
}

// waterline draws the water amidships and where it meets each section.
func (b bodyPlan) waterline(s *sheet, f planField) {
	if !b.floats {
		return
	}
	z := b.water(b.amidships())
	if z < b.low || z > b.high {
		return
	}
	s.line("g-water", f.left, f.at(1)(0, z).y, f.right, f.at(1)(0, z).y)
	for _, one := range b.shown() {
		if y, z, ok := b.wetHalf(one); ok {
			at := f.at(b.side(one))(y, z)
			s.circle("g-raw", at.x, at.y, 2.2)
		}
	}
}

// names sets the numbers of the sections of one side in a row over them, each with a leader to its sheer.
func (b bodyPlan) names(s *sheet, f planField, side float64) {
	var all []rowName
	for _, one := range b.shown() {
		if b.side(one) == side && one.ID != "" {
			top := one.At[lines.Sheer]
			all = append(all, rowName{f.at(side)(top.Y, top.Z), fit(one.ID, 40)})
		}
	}
	room := stretch{f.left, f.middle - 6}
	if side > 0 {
		room = stretch{f.middle + 6, f.right}
	}
	s.nameRow(all, room, 14)
}

// rowName is a name in a row, and the place that it belongs to.
type rowName struct {
	at   point
	name string
}

// stretch is a stretch along a row.
type stretch struct{ from, to float64 }

// nameRow sets names in one row on the base line y, in the order of their places and as near over them as there is
// room, with leaders down to the places. Where they do not all fit, every other one is left out.
func (s *sheet) nameRow(all []rowName, room stretch, y float64) {
	sort.SliceStable(all, func(i, j int) bool { return all[i].at.x < all[j].at.x })
	for rowWidth(all) > room.to-room.from && len(all) > 1 {
		kept := all[:0]
		for i := range all {
			if i%2 == 0 {
				kept = append(kept, all[i])
			}
		}
		all = kept
	}
	for i, x := range spread(all, room) {
		s.line("g-lead", x, y+descent+1, all[i].at.x, all[i].at.y)
		s.text("g-text", x, y, middle, all[i].name)
	}
}

const rowGap = 7.0

func rowWidth(all []rowName) float64 {
	width := 0.0
	for _, n := range all {
		width += advance(n.name) + rowGap
	}
	return width
}

// spread gives the middles of names in a row: over their places where they can be, pushed right and then left till none
// stands in the next.
func spread(all []rowName, room stretch) []float64 {
	x := make([]float64, len(all))
	reach := room.from
	for i, n := range all {
		half := advance(n.name)/2 + rowGap/2
		x[i] = max(n.at.x, reach+half)
		reach = x[i] + half
	}
	reach = room.to
	for i := len(all) - 1; i >= 0; i-- {
		half := advance(all[i].name)/2 + rowGap/2
		x[i] = min(x[i], reach-half)
		reach = x[i] - half
	}
	return x
}
