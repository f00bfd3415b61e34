package chart

import (
	"math"
	"strconv"

	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// People draws the boat from above with the places for people, one figure a person, and the tanks.
func People(r lines.Result, areas []record.CrewArea, tanks []record.Tank) Figure {
	const id, title = "fig-people", "Places for people, and tanks, from above"
	v, ok := shapeOf(r)
	if !ok || len(areas)+len(tanks) == 0 {
		return blank(id, title, "Lines, or places for people, are not on record.", nil)
	}
	d := deckPlan{shape: v, areas: areas, tanks: tanks}
	p := plate{id: id, title: title, alt: d.words(), paint: d.draw}
	rows := [][]string{{"Place", "Persons", "Forward of the transom, m", "Outer edge, m"}}
	for i := range areas {
		a := &areas[i]
		rows = append(rows, []string{a.Name.V, strconv.Itoa(a.Persons.V), unit.Text(a.X.V, 2), unit.Text(a.Y.V, 2)})
	}
	return p.finished("Bow to the right. A disc is a person, a hatched field a tank.", rows)
}

// mostDiscs is how many discs one place shows; of more, the number beside it tells.
const mostDiscs = 30

type deckPlan struct {
	shape
	areas []record.CrewArea
	tanks []record.Tank
}

func (d deckPlan) words() string {
	n := 0
	for i := range d.areas {
		n += d.areas[i].Persons.V
	}
	return strconv.Itoa(n) + " people in " + strconv.Itoa(len(d.areas)) + " places, " + strconv.Itoa(len(d.tanks)) + " tanks."
}

func (d deckPlan) draw(s *sheet) {
	const edge, top = 14.0, 22.0
	t := newTape(d.aft()-0.15, d.fore()+0.15, edge, s.w-2*edge)
	scale := t.length / (t.most - t.least)
	middleY := top + float64(d.half*scale)
	at := func(x, y float64) point { return point{t.at(x), middleY + float64(y*scale)} }
	var out []point
	for _, st := range d.stations {
		out = append(out, at(st.X, -st.At[lines.Sheer].Y))
	}
	for n := len(d.stations) - 1; n >= 0; n-- {
		out = append(out, at(d.stations[n].X, d.stations[n].At[lines.Sheer].Y))
	}
	s.shape("g-hull", out...)
	for i := range d.tanks {
		d.tank(s, &d.tanks[i], at)
	}
	p := &placer{bounds: box{2, 2, s.w - 2, 2*middleY - top + 14}}
	for i := range d.areas {
		d.area(s, p, &d.areas[i], at)
	}
	s.h = s.ruled(t, top, 2*middleY-top+26, "forward of the transom, m")
}

func (d deckPlan) tank(s *sheet, tank *record.Tank, at func(x, y float64) point) {
	x, y, long, wide := float64(tank.X.V), float64(tank.Y.V), float64(tank.Length.V), float64(tank.Breadth.V)
	if !near0(x) || !near0(y) || !near0(long) || !near0(wide) {
		return
	}
	if long <= 0 || wide <= 0 {
		long, wide = 0.5, 0.4
	}
	a, b := at(x-long/2, y-wide/2), at(x+long/2, y+wide/2)
	s.rect("g-gap", box{a.x, a.y, b.x, b.y})
	var all []segment
	for gap := 8.0; gap < (b.x - a.x); gap += 8 {
		all = append(all, segment{point{a.x + gap, a.y}, point{math.Max(a.x, a.x+gap-(b.y-a.y)), math.Min(b.y, a.y+gap)}})
	}
	s.strokes("g-hatch", all)
}

// area draws the people of one place in rows across the boat.
func (d deckPlan) area(s *sheet, p *placer, a *record.CrewArea, at func(x, y float64) point) {
	x, y := float64(a.X.V), float64(a.Y.V)
	if !near0(x) || !near0(y) || y <= 0 {
		return
	}
	n := min(max(a.Persons.V, 0), mostDiscs)
	across := max(1, min(n, int(2*y/0.5)))
	rows := (n + across - 1) / across
	for i := range n {
		row, col := i/across, i%across
		inRow := min(across, n-row*across)
		cy := (float64(col)+0.5)/float64(inRow)*2*y - y
		cx := x + float64((float64(row)-float64(rows-1)/2)*0.5)
		c := at(cx, cy)
		s.circle("g-person", c.x, c.y, 7)
	}
	name := a.Name.V
	if name != "" {
		name += ", "
	}
	p.set(s, "g-label", at(x, -y-0.15), fit(name+strconv.Itoa(a.Persons.V), 150))
}
