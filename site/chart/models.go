package chart

import (
	"fmt"
	"math"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// RingModel draws the starboard half of a frame with its bending moments: each ordinate stands on the side of the bar that
// the moment stretches.
func RingModel(m scantling.Model) Figure {
	id, title := "fig-ring-"+slug(m.Name), "Bending moments of the "+m.Name
	d := modelDrawing{m}
	if !d.drawable() {
		return blank(id, title, "This model could not be solved, so there is nothing to draw.", nil)
	}
	p := plate{id: id, title: title, alt: d.words(), paint: d.ring}
	return p.finished("Starboard half, seen from aft. Ordinates stand on the side that is stretched; figures are the greatest of each bar, in kN·m. A triangle holds a joint in place.", nil)
}

// GrillageModel draws a bottom between two bulkheads in plan: keel above, chine below, with the greatest moment of each
// stretch and what holds its joints.
func GrillageModel(m scantling.Model) Figure {
	id, title := "fig-grillage-"+slug(m.Name), "Plan of "+m.Name
	d := modelDrawing{m}
	if !d.drawable() {
		return blank(id, title, "This model could not be solved, so there is nothing to draw.", nil)
	}
	p := plate{id: id, title: title, alt: d.words(), paint: d.grillage}
	return p.finished("Starboard half in plan, forward to the right. Figures on bars are their greatest moments in kN·m; the heavier a bar is drawn, the more it bends. Figures at the triangles are what holds the joint, in kN, upward on the plate.", nil)
}

type modelDrawing struct{ scantling.Model }

func (d modelDrawing) drawable() bool {
	for i := range d.Bars {
		b := &d.Bars[i]
		for _, e := range b.Ends {
			if !near0(e.X) || !near0(e.Y) || !near0(e.Z) {
				return false
			}
		}
		for _, q := range b.At {
			if !usable(q.Moment) || !usable(q.At) {
				return false
			}
		}
		if len(b.At) < 2 || !(b.Length > 0) {
			return false
		}
	}
	return d.Solved && len(d.Bars) > 0
}

// greatestOf is the point of a bar with the greatest moment.
func greatestOf(b *scantling.ModelBar) scantling.ModelPoint {
	out := b.At[0]
	for _, q := range b.At[1:] {
		if math.Abs(q.Moment) > math.Abs(out.Moment) {
			out = q
		}
	}
	return out
}

func (d modelDrawing) most() (m float64, of *scantling.ModelBar) {
	of = &d.Bars[0]
	for i := range d.Bars {
		if v := math.Abs(greatestOf(&d.Bars[i]).Moment); v > m {
			m, of = v, &d.Bars[i]
		}
	}
	return m, of
}

func (d modelDrawing) words() string {
	most, of := d.most()
	return fmt.Sprintf("%d stretches; the greatest moment is %s kN·m, in %s.", len(d.Bars), unit.Text(most, 2), of.Member)
}

// ordinate is how long the longest ordinate of a ring is drawn.
const ordinate = 60.0

// layout fits places into the sheet with room around them.
func layout(s *sheet, places [][2]float64, around, tallest float64) func(a, b float64) point {
	var x, y extent
	for _, p := range places {
		x.take(p[0])
		y.take(p[1])
	}
	per := min((s.w-2*around)/max(x.hi-x.lo, 0.05), tallest/max(y.hi-y.lo, 0.05))
	left := (s.w - (x.hi-x.lo)*per) / 2
	s.h = 2*around + (y.hi-y.lo)*per
	return func(a, b float64) point {
		return point{left + float64((a-x.lo)*per), around + float64((b-y.lo)*per)}
	}
}

func (d modelDrawing) ring(s *sheet) {
	var places [][2]float64
	for i := range d.Bars {
		for _, e := range d.Bars[i].Ends {
			places = append(places, [2]float64{e.Y, -e.Z})
		}
	}
	to := layout(s, places, ordinate+18, 300)
	at := func(v hydrostatics.Vector) point { return to(v.Y, -v.Z) }
	p := &placer{bounds: box{2, 2, s.w - 2, s.h - 2}}
	most, _ := d.most()
	per := 0.0
	if most > 0 {
		per = ordinate / most
	}
	inside := d.inside(at)
	var tips []point
	for i := range d.Bars {
		tips = append(tips, d.ordinates(s, &d.Bars[i], at, per, inside, p))
	}
	for i := range d.Bars {
		a, b := at(d.Bars[i].Ends[0]), at(d.Bars[i].Ends[1])
		s.curve("g-edge", a, b)
		p.lines = append(p.lines, segment{a, b})
	}
	d.holds(s, at, p, false)
	for i := range d.Bars {
		b := &d.Bars[i]
		p.set(s, "g-label g-b-name", tips[i], unit.Text(math.Abs(greatestOf(b).Moment), 2))
	}
	s.momentBar(per)
	named := map[string]bool{}
	for i := range d.Bars {
		b := &d.Bars[i]
		for k, name := range []string{b.From, b.To} {
			if !named[name] {
				named[name] = true
				p.set(s, "g-label", at(b.Ends[k]), fit(name, s.w/3))
			}
		}
	}
}

// momentBar draws how long a round moment is, below the picture at the left.
func (s *sheet) momentBar(per float64) {
	if !(per > 0) {
		return
	}
	of := 0.001
	for _, step := range roundMoments {
		if float64(step*per) <= 80 {
			of = step
			break
		}
	}
	y, to := s.h+8, 8+float64(of*per)
	s.line("g-dim", 8, y, to, y)
	s.tip(8, y)
	s.tip(to, y)
	s.text("g-text", to+8, y+rise/2, start, unit.Plain(of)+" kN·m")
	s.h += 22
}

// roundMoments are the moments in kN·m of which one is drawn as a measure, great first.
var roundMoments = [...]float64{100, 50, 20, 10, 5, 2, 1, 0.5, 0.2, 0.1, 0.05, 0.02, 0.01}

// inside is a place inside the half ring.
func (d modelDrawing) inside(at func(hydrostatics.Vector) point) point {
	var z, y extent
	for i := range d.Bars {
		for _, e := range d.Bars[i].Ends {
			z.take(e.Z)
			y.take(e.Y)
		}
	}
	return at(hydrostatics.Vector{Y: y.lo + 0.4*(y.hi-y.lo), Z: (z.lo + z.hi) / 2})
}

// ordinates draws the moments of one bar: below nought they stretch the inner face, so they stand inside. It gives the end
// of the longest.
func (d modelDrawing) ordinates(s *sheet, b *scantling.ModelBar, at func(hydrostatics.Vector) point, per float64, inside point, p *placer) point {
	from, to := at(b.Ends[0]), at(b.Ends[1])
	dx, dy := to.x-from.x, to.y-from.y
	long := max(math.Hypot(dx, dy), 1e-9)
	nx, ny := -dy/long, dx/long
	if nx*(inside.x-from.x)+ny*(inside.y-from.y) < 0 {
		nx, ny = -nx, -ny
	}
	end := func(q scantling.ModelPoint) point {
		part, high := q.At/b.Length, -q.Moment*per
		return point{from.x + float64(part*dx) + float64(high*nx), from.y + float64(part*dy) + float64(high*ny)}
	}
	outline := []point{from}
	for _, q := range b.At {
		outline = append(outline, end(q))
	}
	s.shape("g-area", append(outline, to)...)
	s.curve("g-b", outline[1:]...)
	for k := 2; k < len(outline); k++ {
		p.lines = append(p.lines, segment{outline[k-1], outline[k]})
	}
	return end(greatestOf(b))
}

// holds draws what holds the joints, with what it bears where the picture is a plan.
func (d modelDrawing) holds(s *sheet, at func(hydrostatics.Vector) point, p *placer, bears bool) {
	for _, r := range d.Reactions {
		c := at(r.At)
		s.shape("g-open", point{c.x, c.y + 2}, point{c.x + 5, c.y + 11}, point{c.x - 5, c.y + 11})
		p.taken = append(p.taken, box{c.x - 6, c.y - 2, c.x + 6, c.y + 12})
	}
	if !bears {
		return
	}
	for _, r := range d.Reactions {
		if math.Abs(r.Force[0]) >= 0.005 {
			p.set(s, "g-label g-soft", point{at(r.At).x, at(r.At).y + 8}, unit.Text(r.Force[0], 1))
		}
	}
}

func (d modelDrawing) grillage(s *sheet) {
	var places [][2]float64
	for i := range d.Bars {
		for _, e := range d.Bars[i].Ends {
			places = append(places, [2]float64{e.X, e.Y})
		}
	}
	to := layout(s, places, 30, 380)
	at := func(v hydrostatics.Vector) point { return to(v.X, v.Y) }
	p := &placer{bounds: box{2, 2, s.w - 2, s.h - 2}}
	most, _ := d.most()
	for i := range d.Bars {
		b := &d.Bars[i]
		class := "g-edge-thin"
		if most > 0 && math.Abs(greatestOf(b).Moment) > most/3 {
			class = "g-edge"
		}
		if most > 0 && math.Abs(greatestOf(b).Moment) > 2*most/3 {
			class = "g-edge g-heavybar"
		}
		from, end := at(b.Ends[0]), at(b.Ends[1])
		s.curve(class, from, end)
		p.lines = append(p.lines, segment{from, end})
	}
	p.taken = append(p.taken, textBox(2, 12, start, "keel").grown(2), textBox(2, s.h-4, start, "chine").grown(2))
	d.holds(s, at, p, true)
	for i := range d.Bars {
		b := &d.Bars[i]
		q := greatestOf(b)
		from, end := at(b.Ends[0]), at(b.Ends[1])
		part := nearest(q.At/b.Length, 0.15, 0.85)
		place := point{from.x + part*(end.x-from.x), from.y + part*(end.y-from.y)}
		if p.near(place, unit.Text(math.Abs(q.Moment), 2)) {
			p.set(s, "g-label g-b-name", place, unit.Text(math.Abs(q.Moment), 2))
		}
	}
	s.text("g-soft", 2, 12, start, "keel")
	s.text("g-soft", 2, s.h-4, start, "chine")
	s.h += 4
}
