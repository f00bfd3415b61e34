package chart

import (
	"fmt"
	"math"

	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// Hours draws the running hours as one bar along the meter: up to the last look in full, what was run since hatched, every
// look as an upright line, what was found under it, and how hard the boat was hit above it.
func Hours(r *running.Result) Figure {
	const id, title = "fig-hours", "Running hours and looks"
	if len(r.Rows) == 0 || !(r.Logged > 0) || !(r.Start >= 0) || !(r.End > r.Start && r.End < 1e6) {
		return blank(id, title, "No running hours on record.", nil)
	}
	h := hourBar{r}
	p := plate{id: id, title: title, alt: h.words(), paint: h.draw}
	return p.finished("Hatched: run since the last look. Bars above: mean of the highest tenth of impacts for the speed and sea of the entry, by the sheet. Triangle: crack; open disc: indication that was none.", h.table())
}

type hourBar struct{ *running.Result }

func (h hourBar) words() string {
	return fmt.Sprintf("%s h from %s to %s h, %d looks, %s h run since the last.", unit.Text(h.Logged, 0), unit.Text(h.Start, 1), unit.Text(h.End, 1), len(h.Looks), unit.Text(h.AtRisk, 1))
}

func (h hourBar) table() [][]string {
	table := [][]string{{"Look", "Meter, h", "Method", "Cracks", "Other indications"}}
	for i := range h.Looks {
		l := &h.Looks[i]
		table = append(table, []string{l.Record.ID, unit.Text(l.Record.Meter.V, 1), l.Record.Method.V, fmt.Sprint(l.Cracks), fmt.Sprint(len(l.Record.Indications) - l.Cracks)})
	}
	return table
}

func (h hourBar) draw(s *sheet) {
	const edge = 32.0
	r := newTape(math.Min(0, h.Start), h.End, edge, s.w-2*edge)
	low := h.severity(s, r, 8)
	bar := box{r.at(h.Start), low + 6, r.at(h.End), low + 26}
	seen := h.seenTo()
	s.rect("g-gap", bar)
	if seen > h.Start {
		s.rect("g-room", box{bar.left, bar.top, r.at(seen), bar.bottom})
	}
	s.hatched(box{r.at(math.Max(seen, h.Start)), bar.top, bar.right, bar.bottom}, 6)
	foot := h.looks(s, r, bar)
	s.h = s.ruled(r, foot+6, foot+6, "engine hours")
}

// seenTo is the meter at the last look, not beyond the log.
func (h hourBar) seenTo() float64 {
	if len(h.Looks) == 0 {
		return h.Start
	}
	return math.Min(float64(h.Looks[len(h.Looks)-1].Record.Meter.V), h.End)
}

// severity draws a bar for every entry that has a speed and a sea, and gives its lower edge.
func (h hourBar) severity(s *sheet, r ruler, top float64) float64 {
	const height = 70.0
	most := 0.0
	for _, row := range h.Rows {
		if usable(row.G) {
			most = math.Max(most, row.G)
		}
	}
	if most == 0 {
		return top
	}
	foot := top + line + 8 + height
	up := newScale(0, most, 4)
	s.forces(r, up, foot, height)
	for _, row := range h.Rows {
		if from, to := float64(row.Record.From.V), float64(row.Record.To.V); row.G > 0 && usable(row.G) && from >= h.Start && to <= h.End {
			s.rect("g-maker", box{r.at(from), foot - float64(height*up.part(row.G)), r.at(to), foot})
		}
	}
	s.line("g-axis", r.at(h.Start), foot, r.at(h.End), foot)
	s.text("g-soft", 2, top+8, start, fit("Impacts by the sheet, g", s.w-4))
	return foot
}

// forces draws the scale of the impacts: hairlines over the field with their figures at the left.
func (s *sheet) forces(r ruler, up scale, foot, height float64) {
	for _, g := range up.ticks() {
		y := foot - float64(height*up.part(g))
		if g > 0 {
			s.line("g-grid", r.from, y, r.from+r.length, y)
		}
		if advance(up.label(g)) < r.from-7 {
			s.text("g-text", r.from-5, y+rise/2, end, up.label(g))
		}
	}
}

// looks draws every look and what it found, with names in rows so that they do not touch, and gives the lower edge.
func (h hourBar) looks(s *sheet, r ruler, bar box) float64 {
	low := bar.bottom + 14
	var taken []box
	for i := range h.Looks {
		l := &h.Looks[i]
		x := r.at(math.Min(math.Max(float64(l.Record.Meter.V), r.least), r.most))
		s.line("g-tip", x, bar.top-5, x, bar.bottom+8)
		words := fit(l.Record.ID, s.w/4)
		half := advance(words) / 2
		at, base := nearest(x, half+2, s.w-half-2), bar.bottom+22
		for meetsAny(textBox(at, base, middle, words).grown(3), taken) {
			base += line + 4
		}
		taken = append(taken, s.text("g-text g-label", at, base, middle, words))
		low = math.Max(low, base+6)
		h.found(s, l, x, bar.top+10)
	}
	return low
}

func (h hourBar) found(s *sheet, l *running.Look, x, y float64) {
	switch {
	case l.Cracks > 0:
		s.shape("g-need", point{x, y - 9}, point{x + 8, y + 6}, point{x - 8, y + 6})
	case len(l.Record.Indications) > 0:
		s.circle("g-open", x, y, 4.5)
	}
}
