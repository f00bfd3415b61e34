package chart

import (
	"fmt"
	"sort"

	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// Weighing draws a weighing from the side: the boat as a beam on its points, the net reading of each, and the centre that
// follows from them beside the one that was reckoned for that day.
func Weighing(w weight.Weighing) Figure {
	id := "fig-weighing-" + slug(keyOfWeighing(w))
	title := "Weighing" + keyOfWeighing(w)
	b := newBeam(w)
	if len(b.points) == 0 {
		return blank(id, title, "No weighing point with a position and a reading on record.", nil)
	}
	p := plate{id: id, title: title, alt: b.words(), paint: b.draw}
	return p.finished("Readings are net of tare. Points at one place along the boat stand together. Solid triangle: weighed centre; open triangle: reckoned centre.", b.table())
}

// beam is the picture of a weighing.
type beam struct {
	weight.Weighing
	points   []held // from aft to forward
	reckoned bool   // the reckoned centre is known
}

// held is what the boat weighs at one place along it.
type held struct {
	x, net float64
	each   []float64 // net readings that stand at this place
}

func newBeam(w weight.Weighing) beam {
	b := beam{Weighing: w, reckoned: w.Reckoned.HasX && near0(float64(w.Reckoned.X))}
	for _, p := range w.Points {
		if p.Record == nil || !p.Record.X.Set || !near0(float64(p.Record.X.V)) || !usable(float64(p.Net)) {
			continue
		}
		b.take(float64(p.Record.X.V), float64(p.Net))
	}
	sort.SliceStable(b.points, func(i, j int) bool { return b.points[i].x < b.points[j].x })
	return b
}

// take adds a reading to the place it stands at; places within a centimetre are one.
func (b *beam) take(x, net float64) {
	for i := range b.points {
		if d := b.points[i].x - x; d > -0.01 && d < 0.01 {
			b.points[i].net += net
			b.points[i].each = append(b.points[i].each, net)
			return
		}
	}
	b.points = append(b.points, held{x: x, net: net, each: []float64{net}})
}

func (b beam) centred() bool { return b.HasX && near0(float64(b.X)) }

func (b beam) words() string {
	words := fmt.Sprintf("%d points, %s kg in all.", len(b.Points), unit.Text(b.Mass, 0))
	if b.centred() {
		words += " Weighed centre " + unit.Text(b.X, 3) + " m forward of the transom."
	}
	if b.reckoned {
		words += fmt.Sprintf(" Reckoned for that day: %s kg at %s m.", unit.Text(b.Reckoned.Mass, 0), unit.Text(b.Reckoned.X, 3))
	}
	return words
}

func (b beam) table() [][]string {
	table := [][]string{{"Of the weighing", "x, m", "Net, kg"}}
	for _, p := range b.Points {
		if p.Record != nil {
			table = append(table, []string{"point " + p.Record.ID, figure(float64(p.Record.X.V), p.Record.X.Set, 3), unit.Text(p.Net, 1)})
		}
	}
	table = append(table, []string{"weighed", figure(float64(b.X), b.centred(), 3), unit.Text(b.Mass, 1)})
	return append(table, []string{"reckoned for that day", figure(float64(b.Reckoned.X), b.reckoned, 3), unit.Text(b.Reckoned.Mass, 1)})
}

// reach is how far the picture goes along the boat.
func (b beam) reach() extent {
	e := extent{has: true}
	for _, p := range b.points {
		e.take(p.x)
	}
	if b.centred() {
		e.take(float64(b.X))
	}
	if b.reckoned {
		e.take(float64(b.Reckoned.X))
	}
	return e
}

// draw paints the centres over the beam, the points and readings under it, and the scale at the foot.
func (b beam) draw(s *sheet) {
	const edge, top = 40.0, 86.0
	e := b.reach()
	r := newTape(e.lo-0.2, e.hi+0.4, edge, s.w-2*edge)
	s.rect("g-hull", box{r.at(0), top, r.from + r.length, top + 8})
	low := b.supports(s, r, top+8)
	s.h = s.ruled(r, low+10, low+10, "forward of the transom, m")
	b.centresOver(s, r, top)
}

// supports draws a triangle and the reading under every point; readings that would touch go a line lower.
func (b beam) supports(s *sheet, r ruler, y float64) float64 {
	low, taken := y+40, []box{}
	for _, p := range b.points {
		x := r.at(p.x)
		s.shape("g-stiff", point{x, y}, point{x + 9, y + 15}, point{x - 9, y + 15})
		words := fit(p.words(), s.w-8)
		half := advance(words) / 2
		at, base := nearest(x, half+2, s.w-half-2), y+32
		for meetsAny(textBox(at, base, middle, words).grown(3), taken) {
			base += line
		}
		taken = append(taken, s.text("g-label", at, base, middle, words))
		low = max(low, base+8)
	}
	return low
}

func meetsAny(b box, all []box) bool {
	p := placer{taken: all}
	return p.blocked(b)
}

// words gives the reading of a place, with its parts where it has several.
func (h held) words() string {
	words := unit.Text(h.net, 0) + " kg"
	if len(h.each) != 2 {
		return words
	}
	return unit.Text(h.each[0], 0) + " + " + unit.Text(h.each[1], 0) + " = " + words
}

// centresOver draws the weighed and the reckoned centre over the beam, and tells them in rows above.
func (b beam) centresOver(s *sheet, r ruler, top float64) {
	y := 14.0
	tell := func(class string, x, size float64, words string) {
		s.arrow(class, r.at(x), top, size)
		s.arrow(class, 9, y+1, size)
		s.text("g-text", 22, y, start, fit(words, s.w-24))
		y += line + 2
	}
	if b.reckoned {
		tell("g-open", float64(b.Reckoned.X), 7.5, "reckoned: "+unit.Text(b.Reckoned.Mass, 0)+" kg at "+unit.Text(b.Reckoned.X, 3)+" m")
	}
	if !b.centred() {
		return
	}
	tell("g-pa", float64(b.X), 4.5, "weighed: "+unit.Text(b.Mass, 0)+" kg at "+unit.Text(b.X, 3)+" m")
	if b.reckoned {
		s.text("g-soft", 22, y, start, fit(b.difference(), s.w-24))
	}
}

// difference tells weighed less reckoned.
func (b beam) difference() string {
	way, mm := "forward", float64(b.DiffX)
	if mm < 0 {
		way, mm = "aft", -mm
	}
	return fmt.Sprintf("weighed less reckoned: %s kg, centre %s mm %s", unit.Text(b.DiffMass, 0), unit.Text(mm, 0), way)
}

// arrow draws a triangle that points down to a place. The weighed one is small and solid and is drawn last, so that it
// stands inside the open one where the two agree.
func (s *sheet) arrow(class string, x, y, half float64) {
	s.shape(class, point{x, y - 1}, point{x + half, y - 1 - float64(half*1.7)}, point{x - half, y - 1 - float64(half*1.7)})
}
