package chart

import (
	"fmt"
	"math"
	"slices"

	bending "hullfile/engine/beam" // beam is a word of the weighing here
	"hullfile/engine/unit"
)

// FrameRing draws a transverse frame as a ring with its bending moments: each ordinate stands on the side of the bar that the
// moment stretches. key is the record key of the frame, for identifiers; name stands in the title.
func FrameRing(key, name string, ring bending.Ring, r bending.RingResult) Figure {
	id := "fig-ring-" + slug(key)
	title := "Bending moments of " + name
	d := ringDrawing{ring: ring, r: r}
	if !d.drawable() {
		return blank(id, title, "The ring of this frame could not be solved, so there is nothing to draw.", nil)
	}
	p := plate{id: id, title: title, alt: d.words(), paint: d.draw}
	return p.finished(d.note(), d.table())
}

// ringDrawing is the picture of one ring.
type ringDrawing struct {
	ring bending.Ring
	r    bending.RingResult
}

// drawable reports whether there are bars, and all places and moments are numbers that can be drawn.
func (d ringDrawing) drawable() bool {
	for _, n := range d.r.Model.Nodes {
		if !usable(n.X) || !usable(n.Y) {
			return false
		}
	}
	for _, b := range d.r.Beside {
		if !usable(b.Moment.Value) || !usable(b.Shear.Value) || !usable(b.Moves.Value) {
			return false
		}
	}
	return len(d.r.Beside) > 0 && len(d.r.Solution.Bars) == len(d.r.Beside)
}

// worst is the bar with the greatest moment beside what its single span would have.
func (d ringDrawing) worst() bending.Beside {
	worst := d.r.Beside[0]
	for _, b := range d.r.Beside[1:] {
		if math.Abs(b.Moment.Value) > math.Abs(worst.Moment.Value) {
			worst = b
		}
	}
	return worst
}

func (d ringDrawing) words() string {
	w := d.worst()
	words := fmt.Sprintf("The greatest moment is %s kN·m in the %s, %s m from its start", unit.Figures(math.Abs(w.Moment.Value), 3), w.Name, unit.Text(w.Moment.At, 2))
	if w.Fixed > 0 {
		words += fmt.Sprintf("; a single span with fixed ends would have %s kN·m", unit.Figures(w.Fixed, 3))
	}
	return words + "."
}

func (d ringDrawing) note() string {
	return "Ordinates stand on the side that is stretched; figures are the greatest of each bar, in kN·m. A filled disc is a fixed joint, an open one a pinned joint; a filled triangle holds a corner in place, an open one up and down. Seen from aft, starboard to the right."
}

func (d ringDrawing) table() [][]string {
	table := [][]string{{"Bar", "Span, m", "Greatest moment, kN·m", "At its start", "At its end", "Greatest shear, kN", "Moves, mm", "Single span fixed, kN·m", "Ratio"}}
	for _, b := range d.r.Beside {
		ratio := "–"
		if b.Fixed > 0 {
			ratio = unit.Text(b.Ratio, 2)
		}
		table = append(table, []string{b.Name, unit.Text(b.Span, 2), unit.Text(b.Moment.Value, 2), unit.Text(b.Start.Moment, 2), unit.Text(b.End.Moment, 2),
			unit.Text(b.Shear.Value, 2), unit.Text(b.Moves.Value*1000, 2), unit.Text(b.Fixed, 2), ratio})
	}
	return table
}

// ringField is where a ring lies on the sheet.
type ringField struct{ middle, base, perMetre, perMoment float64 }

func (f ringField) at(n bending.Node) point {
	return point{f.middle + float64(n.X*f.perMetre), f.base - float64(n.Y*f.perMetre)}
}

// ordinate is how long the longest ordinate is drawn.
const ordinate = 44.0

func (d ringDrawing) field(s *sheet) ringField {
	var x, z extent
	for _, n := range d.r.Model.Nodes {
		x.take(n.X)
		z.take(n.Y)
	}
	const around = ordinate + 16
	f := ringField{middle: s.w / 2}
	half := max(math.Abs(x.lo), math.Abs(x.hi), 1e-6)
	f.perMetre = min((s.w/2-around)/half, 320/max(z.hi-z.lo, 1e-6))
	f.base = around + float64(z.hi*f.perMetre)
	s.h = f.base - float64(z.lo*f.perMetre) + around
	if most := math.Abs(d.worst().Moment.Value); most > 0 {
		f.perMoment = ordinate / most
	}
	return f
}

// draw sets ordinates, bars, joints, holds, figures and a scale on the sheet.
func (d ringDrawing) draw(s *sheet) {
	f := d.field(s)
	p := placer{bounds: box{2, 2, s.w - 2, s.h - 2}}
	for i := range d.r.Solution.Bars {
		d.ordinates(s, f, i, &p)
	}
	for _, m := range d.r.Model.Members {
		a, b := f.at(d.r.Model.Nodes[m.From]), f.at(d.r.Model.Nodes[m.To])
		s.curve("g-edge", a, b)
		p.lines = append(p.lines, segment{a, b})
	}
	d.corners(s, f, &p)
	d.figures(s, f, &p)
	s.h = s.scaleBar(12, s.h+6, f.perMetre, s.w/3) + 4
}

// ordinates draws the moments of one bar.
func (d ringDrawing) ordinates(s *sheet, f ringField, i int, p *placer) {
	const pieces = 24
	m := d.r.Model.Members[i]
	from, to := f.at(d.r.Model.Nodes[m.From]), f.at(d.r.Model.Nodes[m.To])
	bar := d.r.Solution.Bars[i]
	outline := []point{from}
	for k := 0; k <= pieces; k++ {
		outline = append(outline, f.end(from, to, float64(k)/pieces, bar.At(bar.Length*float64(k)/pieces).Moment))
	}
	s.shape("g-area", append(outline, to)...)
	s.curve("g-b", outline[1:]...)
	for k := 2; k < len(outline); k++ {
		p.lines = append(p.lines, segment{outline[k-1], outline[k]})
	}
}

// end is the end of the ordinate of a moment at a part of a bar: to its right where the moment is above nought.
func (f ringField) end(from, to point, part, moment float64) point {
	dx, dy := to.x-from.x, to.y-from.y
	length := max(math.Hypot(dx, dy), 1e-9)
	long := f.perMoment * moment
	return point{from.x + float64(part*dx) - float64(long*dy)/length, from.y + float64(part*dy) + float64(long*dx)/length}
}

// corners draws joints and holds, and names the corners of the starboard side.
func (d ringDrawing) corners(s *sheet, f ringField, p *placer) {
	joints := []bending.Joint{d.ring.AtKeel, d.ring.AtChine, d.ring.AtSheer, d.ring.AtChine, d.ring.AtSheer}
	holds := []bending.Hold{d.ring.KeelHeld, d.ring.ChineHeld, d.ring.SheerHeld, d.ring.ChineHeld, d.ring.SheerHeld}
	nodes := d.r.Model.Nodes
	for i := range min(len(joints), len(nodes)) {
		c := f.at(nodes[i])
		if holds[i] != bending.Loosely {
			class := "g-open"
			if holds[i] == bending.Firmly {
				class = "g-pa"
			}
			s.shape(class, point{c.x, c.y + 3}, point{c.x + 6, c.y + 13}, point{c.x - 6, c.y + 13})
		}
		class := "g-pa"
		if joints[i] == bending.Hinge {
			class = "g-open"
		}
		s.circle(class, c.x, c.y, 3.5)
		p.taken = append(p.taken, box{c.x - 6, c.y - 4, c.x + 6, c.y + 14})
	}
	for i, name := range []string{"keel", "chine", "sheer"} {
		if i < len(nodes) {
			p.set(s, "g-label", f.at(nodes[i]), name)
		}
	}
}

// figures sets the greatest moment of each bar at its ordinate.
func (d ringDrawing) figures(s *sheet, f ringField, p *placer) {
	var done []point
	for i, b := range d.r.Beside {
		m := d.r.Model.Members[i]
		from, to := f.at(d.r.Model.Nodes[m.From]), f.at(d.r.Model.Nodes[m.To])
		bar := d.r.Solution.Bars[i]
		part := b.Moment.At / bar.Length
		at := f.end(from, to, part, bar.At(b.Moment.At).Moment)
		if slices.ContainsFunc(done, func(q point) bool { return math.Hypot(q.x-at.x, q.y-at.y) < 3 }) {
			continue // the halves of a deck beam have their greatest moment in common
		}
		done = append(done, at)
		p.set(s, "g-label g-b-name", at, unit.Text(math.Abs(b.Moment.Value), 2))
	}
}
