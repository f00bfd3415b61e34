package chart

import (
	"fmt"
	"math"
	"sort"
	"strings"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/record"
	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// inboard is how far people stand inside the edge of their place, as the moment is reckoned, metres.
const inboard = 0.2

// Crowd draws the section at the centre of gravity as the boat lies with everybody to one side: the hull turned by the
// heel, the water level, the people where they are taken to stand. The condition may be nil.
func Crowd(r lines.Result, h stability.Heeling, c *loading.Condition, areas []record.CrewArea, persons int) Figure {
	id := "fig-crowd-" + slug(h.Condition+" "+h.Name)
	title := "Heel with " + h.Name
	v, ok := shapeOf(r)
	switch {
	case !ok:
		return blank(id, title, "The lines are not on record, or are not those of a hull.", nil)
	case !h.Rests || !usable(h.Heel) || !(math.Abs(h.Attitude.Trim) < 1 && math.Abs(h.Attitude.Level) <= 1000 && math.Abs(h.Attitude.Heel) <= math.Pi):
		return blank(id, title, "The boat does not come to rest under this moment before water comes in.", nil)
	}
	w := crowd{shape: v, heeling: h, condition: c, places: crowdOf(areas, persons)}
	w.section = v.Section(w.x())
	p := plate{id: id, title: title, alt: w.words(), paint: w.draw}
	return p.finished(w.note(), nil)
}

type crowd struct {
	shape
	heeling   stability.Heeling
	condition *loading.Condition
	places    []crowdPlace
	section   lines.Station
}

// crowdPlace is a place with the people in it, at its outer edge.
type crowdPlace struct {
	x, y, z float64
	sitting bool
	persons int
}

// crowdOf fills the places from the widest inwards, each to its number, as the moment is reckoned.
func crowdOf(areas []record.CrewArea, persons int) []crowdPlace {
	order := make([]*record.CrewArea, 0, len(areas))
	for i := range areas {
		if near0(float64(areas[i].Y.V)) && near0(float64(areas[i].Z.V)) {
			order = append(order, &areas[i])
		}
	}
	sort.SliceStable(order, func(i, j int) bool { return order[i].Y.V > order[j].Y.V })
	var out []crowdPlace
	for _, a := range order {
		n := min(persons, a.Persons.V)
		if n <= 0 {
			continue
		}
		persons -= n
		out = append(out, crowdPlace{float64(a.X.V), max(0, float64(a.Y.V)-inboard), float64(a.Z.V), a.Posture.V == "sitting", n})
	}
	if persons > 0 && len(out) > 0 {
		out[0].persons += persons
	}
	return out
}

func (w crowd) x() float64 {
	if w.condition != nil && near0(w.condition.Centre.X) {
		return w.condition.Centre.X
	}
	return (w.aft() + w.fore()) / 2
}

func (w crowd) words() string {
	words := fmt.Sprintf("Section at x %s m, heeled %s°.", unit.Text(w.x(), 2), unit.Text(w.heeling.Heel, 1))
	if usable(w.heeling.Least) {
		words += fmt.Sprintf(" The lowest way in lies %s m above the water.", unit.Text(w.heeling.Least, 3))
	}
	return words
}

func (w crowd) note() string {
	note := "To scale, seen from aft; moment " + unit.Text(w.heeling.Moment, 0) + " N·m upright."
	if len(w.places) > 0 {
		note += " People are drawn " + unit.Plain(inboard) + " m inside the edge of their place; one figure stands for all who are there."
	}
	if strings.Contains(w.heeling.Name, "simplified") {
		note += " The moment is that of a simplified formula and not of the figures."
	}
	return note
}

// earth turns the section into the axes of the earth: level to starboard, and above the water.
func (w crowd) earth(y, z float64) (side, up float64) {
	at := w.heeling.Attitude
	v := hydrostatics.Vector{X: w.section.X, Y: y, Z: z}
	return at.Across().Dot(v), at.Height(v)
}

// outline is the whole section with its deck.
func (w crowd) outline() []hydrostatics.Point {
	half := append(w.section.Half(), reversedDeck(w.Deck(w.section, 4))...)
	out := append([]hydrostatics.Point{}, half...)
	for k := len(half) - 2; k > 0; k-- {
		out = append(out, hydrostatics.Point{Y: -half[k].Y, Z: half[k].Z})
	}
	return out
}

// reversedDeck gives the deck from next to the sheer in to the centre line.
func reversedDeck(deck []hydrostatics.Point) []hydrostatics.Point {
	out := make([]hydrostatics.Point, 0, len(deck))
	for k := len(deck) - 2; k >= 0; k-- {
		out = append(out, deck[k])
	}
	return out
}

// mast is the height to which the centre line is drawn.
func (w crowd) mast() float64 { return w.section.At[lines.Sheer].Z + 0.35 }

const tall = 1.75 // metres, of the figures that stand for people

func (p crowdPlace) height() float64 {
	if p.sitting {
		return 0.9
	}
	return tall
}

// field finds the scale and the place of the water.
func (w crowd) field(s *sheet) func(y, z float64) point {
	x, y := extent{}, extent{}
	take := func(py, pz float64) {
		side, up := w.earth(py, pz)
		x.take(side)
		y.take(up)
	}
	for _, p := range w.outline() {
		take(p.Y, p.Z)
	}
	take(0, w.mast())
	for _, p := range w.places {
		take(p.y, p.z+p.height())
		take(p.y+0.22, p.z+p.height())
		take(p.y+0.22, p.z)
	}
	const edge, tallest = 28.0, 250.0
	perMetre := min((s.w-2*edge)/(x.hi-x.lo+0.3), tallest/(y.hi-y.lo+0.1))
	top := 30.0
	s.h = top + float64(perMetre*(y.hi-y.lo)) + 30
	middle := s.w/2 - float64(perMetre*(x.hi+x.lo))/2
	water := top + float64(perMetre*y.hi)
	return func(py, pz float64) point {
		side, up := w.earth(py, pz)
		return point{middle + float64(perMetre*side), water - float64(perMetre*up)}
	}
}

func (w crowd) draw(s *sheet) {
	at := w.field(s)
	level := w.level(at)
	foot := s.h - 8
	if level < foot {
		s.rect("g-sea", box{8, level, s.w - 8, foot})
	}
	s.shape("g-metal", points(w.outline(), at)...)
	keel, top := at(0, w.section.At[lines.Keel].Z), at(0, w.mast())
	s.line("g-lead", keel.x, keel.y, top.x, top.y)
	s.line("g-lead", keel.x, keel.y, keel.x, max(14, top.y-14))
	s.line("g-water", 8, level, s.w-8, level)
	place := placer{bounds: box{4, 4, s.w - 4, s.h - 4}}
	far := append([]crowdPlace{}, w.places...)
	sort.SliceStable(far, func(i, j int) bool { return far[i].x > far[j].x }) // seen from aft: those forward stand behind
	for _, p := range far {
		w.person(s, at, p, &place)
	}
	w.names(s, at, level, &place)
}

// level is where the water stands on the sheet.
func (w crowd) level(at func(y, z float64) point) float64 {
	a, b := at(0, 0), at(0, 1)
	_, up0 := w.earth(0, 0)
	_, up1 := w.earth(0, 1)
	if up1 == up0 {
		return a.y
	}
	return a.y + float64((b.y-a.y)*(0-up0))/(up1-up0)
}

// person draws a figure square to the sole or the seat, with how many it stands for. All is to scale: shoulders 0.44 m
// broad, head 0.21 m.
func (w crowd) person(s *sheet, at func(y, z float64) point, p crowdPlace, place *placer) {
	h := p.height()
	top, hip := p.z+h-0.27, p.z
	if !p.sitting {
		hip = p.z + 0.48*h
		s.shape("g-person", at(p.y-0.13, hip), at(p.y-0.12, p.z), at(p.y+0.12, p.z), at(p.y+0.13, hip))
	}
	body := []point{at(p.y-0.15, hip), at(p.y-0.22, top-0.05), at(p.y-0.12, top), at(p.y+0.12, top), at(p.y+0.22, top-0.05), at(p.y+0.15, hip)}
	s.shape("g-person", body...)
	head, crown := at(p.y, p.z+h-0.105), at(p.y, p.z+h)
	radius := math.Hypot(head.x-crown.x, head.y-crown.y)
	s.circle("g-person", head.x, head.y, radius)
	place.taken = append(place.taken, around(head.x, head.y, radius))
	for i := range body {
		place.lines = append(place.lines, segment{body[i], body[(i+1)%len(body)]})
	}
	name(s, place, "g-label", at(p.y+0.25, p.z+h/2), plural(p.persons))
}

func plural(n int) string {
	if n == 1 {
		return "1 person"
	}
	return fmt.Sprintf("%d persons", n)
}

func (w crowd) names(s *sheet, at func(y, z float64) point, level float64, place *placer) {
	outline := points(w.outline(), at)
	for i := range outline {
		place.lines = append(place.lines, segment{outline[i], outline[(i+1)%len(outline)]})
	}
	place.lines = append(place.lines, segment{point{8, level}, point{s.w - 8, level}})
	if c := w.condition; c != nil && near0(c.Centre.Y) && near0(c.Centre.Z) {
		g := at(c.Centre.Y, c.Centre.Z+max(0, c.Rise))
		if g.x > 8 && g.x < s.w-8 && g.y > 8 && g.y < s.h-8 {
			s.gravity("g-loaded", g.x, g.y)
			place.taken = append(place.taken, around(g.x, g.y, 8))
			name(s, place, "g-label", g, "G")
		}
	}
	top := at(0, w.mast())
	name(s, place, "g-label", point{top.x, max(top.y, 20)}, unit.Text(w.heeling.Heel, 1)+"°")
	s.text("g-label g-b-name", 12, level-6, start, "water")
}
