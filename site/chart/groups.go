package chart

import (
	"fmt"

	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// known is one way in which a mass is known, firm first, with the look of its part of a bar.
type known struct {
	word  string
	class string
	hatch float64 // distance of the hatching, none where nought
}

// ways lists them. Darkness falls and the pattern changes from weighed to estimated.
func ways() []known {
	return []known{{"weighed", "g-weighed", 0}, {"reckoned", "g-reckoned", 4}, {"maker's", "g-maker", 0}, {"estimated", "g-estimated", 0}}
}

// WeightGroups draws the mass of each group as a bar, its parts shaded by how they are known.
func WeightGroups(r weight.Result) Figure {
	const id, title = "fig-weight-groups", "Mass of each group by how it is known"
	g := groups{}
	for _, one := range r.Groups {
		if usable(float64(one.Total.Mass)) {
			g = append(g, one)
		}
	}
	if len(g) == 0 {
		return blank(id, title, "No weight item with a mass on record.", nil)
	}
	p := plate{id: id, title: title, alt: g.words(r), paint: g.draw}
	note := "Parts of a bar from the left: weighed, reckoned, maker's figure, estimated. Margins are included. The scale begins at 0."
	return p.finished(note, g.table())
}

// groups is the picture of the weight breakdown.
type groups []weight.Group

// part gives the mass of a group that is known in one way.
func part(g weight.Group, way string) float64 {
	sum := 0.0
	for _, b := range g.Basis {
		if b.Basis == way && usable(float64(b.Mass)) {
			sum += float64(b.Mass)
		}
	}
	return sum
}

func (g groups) words(r weight.Result) string {
	heaviest := g[0]
	for _, one := range g {
		if one.Total.Mass > heaviest.Total.Mass {
			heaviest = one
		}
	}
	return fmt.Sprintf("%d groups, light craft %s kg, loaded %s kg. The heaviest is %s with %s kg.",
		len(g), unit.Text(r.Light.Mass, 0), unit.Text(r.Loaded.Mass, 0), heaviest.Name, unit.Text(heaviest.Total.Mass, 0))
}

func (g groups) table() [][]string {
	head := []string{"Group", "Mass, kg", "Of the loaded mass, %"}
	for _, way := range ways() {
		head = append(head, way.word+", kg")
	}
	table := [][]string{head}
	for _, one := range g {
		row := []string{one.Name, unit.Text(one.Total.Mass, 0), unit.Text(float64(one.Share*100), 1)}
		for _, way := range ways() {
			row = append(row, unit.Text(part(one, way.word), 0))
		}
		table = append(table, row)
	}
	return table
}

// reach gives how far the bars reach left and right of nought.
func (g groups) reach() extent {
	e := extent{has: true, hi: 1} // a kilogram at least, so that the scale can be read
	for _, one := range g {
		left, right := 0.0, 0.0
		for _, way := range ways() {
			left, right = left+min(0, part(one, way.word)), right+max(0, part(one, way.word))
		}
		e.take(left)
		e.take(right)
	}
	return e
}

func (g groups) draw(s *sheet) {
	from, length, pitch := 132.0, 440.0, 26.0
	if s.slim() {
		from, length, pitch = 8, s.w-24, 44
	}
	top := s.key(ways()) + 12
	e := g.reach()
	r := newRuler(e.lo, e.hi, from, length)
	s.h = s.ruled(r, top, top+float64(pitch*float64(len(g))), "mass, kg")
	for i, one := range g {
		y := top + float64(pitch*float64(i))
		mass, share := unit.Text(one.Total.Mass, 0)+" kg", unit.Text(float64(one.Share*100), 1)+" %"
		if s.slim() {
			b := s.text("g-text g-label", s.w-4, y+17, end, mass+", "+share)
			s.text("g-text g-label", 2, y+17, start, fit(one.Name, b.left-12))
			s.stack(r, one, box{0, y + 23, 0, y + 37})
			continue
		}
		s.text("g-text", 2, y+17, start, fit(one.Name, from-14))
		s.stack(r, one, box{0, y + 6, 0, y + 20})
		s.text("g-text", 654, y+17, end, mass)
		s.text("g-soft", s.w-2, y+17, end, share)
	}
}

// stack draws the parts of one bar, what is taken away to the left of nought; the height comes from room.
func (s *sheet) stack(r ruler, g weight.Group, room box) {
	left, right := 0.0, 0.0
	for _, way := range ways() {
		mass := part(g, way.word)
		switch {
		case mass > 0:
			s.swatch(way, box{r.at(right), room.top, r.at(right + mass), room.bottom})
			right += mass
		case mass < 0:
			s.swatch(way, box{r.at(left + mass), room.top, r.at(left), room.bottom})
			left += mass
		}
	}
}

// swatch fills a box in the look of one way of knowing.
func (s *sheet) swatch(way known, b box) {
	s.rect(way.class, b)
	s.hatched(b, way.hatch)
}

// key explains the looks in one row, two on a phone, and gives its lower edge.
func (s *sheet) key(all []known) float64 {
	x, y := 2.0, 4.0
	for _, way := range all {
		if x+34+advance(way.word) > s.w {
			x, y = 2, y+20
		}
		s.swatch(way, box{x, y, x + 24, y + 12})
		b := s.text("g-text", x+31, y+10.5, start, way.word)
		x = b.right + 24
	}
	return y + 14
}
