package chart

import (
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// barField is one field of horizontal bars, one an item, from nought to both sides.
type barField struct {
	top, from, length float64
	left, right       float64 // as far as its figures may go
	name              string
	named             bool // the names of the items stand here
	value             func(weight.Item) (float64, bool)
}

// bars draws the field and gives its lower edge.
func (v sensitivity) bars(s *sheet, f barField) float64 {
	pitch := 24.0
	if s.slim() {
		pitch = 38
	}
	e := extent{has: true, hi: 0.1} // a tenth at least, so that the scale can be read
	for _, i := range v.items {
		if x, has := f.value(i); has {
			e.take(x)
		}
	}
	r := newRuler(e.lo, e.hi, f.from, f.length)
	foot := s.ruled(r, f.top+4, f.top+8+float64(pitch*float64(len(v.items))), f.name)
	places := placesOf(max(e.hi, -e.lo))
	for n, i := range v.items {
		y := f.top + 4 + float64(pitch*float64(n))
		if f.named {
			v.itemName(s, i, f, y)
		}
		if x, has := f.value(i); has {
			s.valueBar(r, x, y+pitch-12, unit.Text(x, places), f)
		}
	}
	return foot
}

// itemName sets the name of an item beside its bar, on a phone above it.
func (v sensitivity) itemName(s *sheet, i weight.Item, f barField, y float64) {
	if s.slim() {
		s.text("g-text g-label", 2, y+15, start, fit(nameOf(i), s.w-4))
		return
	}
	s.text("g-text", 2, y+16, start, fit(nameOf(i), f.from-40))
}

// valueBar draws a bar from nought, with its figure at the end of it and inside the field.
func (s *sheet) valueBar(r ruler, x, y float64, words string, f barField) {
	from, to, width := r.at(0), r.at(x), advance(words)
	s.rect("g-room", box{min(from, to), y - 4, max(from, to), y + 4})
	left := to + 5
	if x < 0 {
		left = to - 5 - width
	}
	s.text("g-label", nearest(left, f.left, f.right-width), y+4.3, start, words)
}
