package chart

import "math"

// ruler is a scale laid along a drawing that go-chart has no part in.
type ruler struct {
	scale
	least, most  float64 // the ends, which need not be ticks
	from, length float64 // on the drawing
}

// at gives the place of a value.
func (r ruler) at(v float64) float64 {
	return r.from + float64(r.length*(v-r.least))/(r.most-r.least)
}

// marks gives the ticks, or the values between them, that lie between the ends.
func (r ruler) marks(all []float64) []float64 {
	kept := all[:0]
	for _, v := range all {
		if air := (r.most - r.least) * 1e-9; v >= r.least-air && v <= r.most+air {
			kept = append(kept, v)
		}
	}
	return kept
}

func (r ruler) long() []float64  { return r.marks(r.ticks()) }
func (r ruler) short() []float64 { return r.marks(r.minor()) }

// newRuler covers lo to hi in a given room, with as many ticks as their labels leave room for. The ends are ticks.
func newRuler(lo, hi, from, length float64) ruler {
	var r ruler
	for most := 8; most >= 3; most-- {
		c := newScale(lo, hi, most)
		r = ruler{c, c.lo(), c.hi(), from, length}
		if float64(r.intervals())*(r.widest()+16) <= length {
			return r
		}
	}
	return r
}

// newTape covers lo to hi and no more, for lengths on board: its ends need not be ticks.
func newTape(lo, hi, from, length float64) ruler {
	r := newRuler(lo, hi, from, length)
	r.least, r.most = opened(lo, hi)
	return r
}

func (r ruler) widest() float64 {
	most := 0.0
	for _, v := range r.ticks() {
		most = max(most, advance(r.label(v)))
	}
	return most
}

// ruled draws the grid of a ruler from top to bottom, its ticks and labels below, and its name under them.
// It gives the lower edge of what it drew.
func (s *sheet) ruled(r ruler, top, bottom float64, name string) float64 {
	for _, v := range r.long() {
		class := "g-grid"
		if v == 0 {
			class = "g-axis"
		}
		s.line(class, r.at(v), top, r.at(v), bottom)
	}
	s.line("g-axis", r.from, bottom, r.from+r.length, bottom)
	s.divisions(r, bottom)
	s.figures(r, bottom+18)
	s.text("g-text", r.from+r.length/2, bottom+36, middle, fit(name, s.w-8))
	return bottom + 42
}

// divisions draws the ticks of a ruler downward, long and short.
func (s *sheet) divisions(r ruler, y float64) {
	var strokes []segment
	for _, v := range r.long() {
		strokes = append(strokes, segment{point{r.at(v), y}, point{r.at(v), y + 5}})
	}
	for _, v := range r.short() {
		strokes = append(strokes, segment{point{r.at(v), y}, point{r.at(v), y + 3}})
	}
	s.strokes("g-axis", strokes)
}

// figures sets the labels of a ruler under its ticks.
func (s *sheet) figures(r ruler, y float64) {
	for _, v := range r.long() {
		half := advance(r.label(v)) / 2
		s.text("g-text", nearest(r.at(v), half, s.w-half), y, middle, r.label(v))
	}
}

// across draws a horizontal dimension with its words over the line.
func (s *sheet) across(x0, x1, y float64, words string) {
	s.line("g-dim", x0, y, x1, y)
	s.tip(x0, y)
	s.tip(x1, y)
	x := nearest((x0+x1)/2, advance(words)/2+1, s.w-advance(words)/2-1)
	s.text("g-label", x, y-4, middle, words)
}

// upright draws a vertical dimension with its words to the left of the line, read upward and not above ceiling.
func (s *sheet) upright(y0, y1, x, ceiling float64, words string) {
	s.line("g-dim", x, y0, x, y1)
	s.tip(x, y0)
	s.tip(x, y1)
	s.turned("g-label", x-10, max((y0+y1)/2, ceiling+advance(words)/2), words)
}

// tip ends a dimension line with a short stroke, as on a workshop drawing.
func (s *sheet) tip(x, y float64) { s.line("g-tip", x-3, y+3, x+3, y-3) }

// hatched draws hatching at half a right angle inside a box.
func (s *sheet) hatched(b box, gap float64) {
	height := b.bottom - b.top
	if height <= 0 || b.right <= b.left || gap < 1 {
		return
	}
	var strokes []segment
	for x := float64(math.Floor((b.left-height)/gap) * gap); x < b.right; x += gap {
		from, to := max(x, b.left), min(x+height, b.right)
		if to > from {
			strokes = append(strokes, segment{point{from, b.bottom - (from - x)}, point{to, b.bottom - (to - x)}})
		}
	}
	s.strokes("g-hatch", strokes)
}
