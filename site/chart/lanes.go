package chart

import (
	"sort"

	"hullfile/engine/unit"
)

// lanes are the centres with their words, each on a line of its own under the picture. The foremost stands highest, so
// that the stroke down to a lower one passes aft of every word above it.
type lanes []centre

func (c centres) lanes() lanes {
	l := append(lanes{}, c.marks...)
	sort.SliceStable(l, func(i, j int) bool { return l[i].x > l[j].x })
	return l
}

// draw paints each centre, a stroke down from it, and its words. It gives the room that the centres take.
func (l lanes) draw(s *sheet, p profile, top float64) (taken []box) {
	for i, m := range l {
		x, y := p.at(m.x), p.base
		if m.hasZ {
			y = p.up(m.z)
		}
		base := top + line*float64(i+1)
		s.line("g-lead", x, y, x, base-4)
		s.line("g-lead", x, base-4, x+6, base-4)
		words := m.word + ": " + unit.Text(m.mass, 0) + " kg at " + unit.Text(m.x, 2) + " m"
		words = fit(words, s.w-8)
		s.text("g-label", min(x+9, s.w-2-advance(words)), base, start, words)
	}
	for _, m := range l {
		y := p.base
		if m.hasZ {
			y = p.up(m.z)
		}
		s.gravity(m.class, p.at(m.x), y)
		taken = append(taken, around(p.at(m.x), y, 8))
	}
	return taken
}

// gravity draws the sign of a centre of gravity: a disc in quarters for a reckoned one, open or filled for light and
// loaded, and an upright triangle under the place for a weighed one.
func (s *sheet) gravity(class string, x, y float64) {
	const r = 6.5
	switch class {
	case "g-scale":
		s.shape("g-pa", point{x, y + 1}, point{x + 6, y + 11}, point{x - 6, y + 11})
	case "g-loaded":
		s.circle("g-pa", x, y, r)
		s.line("g-cross", x-r, y, x+r, y)
		s.line("g-cross", x, y-r, x, y+r)
	default:
		s.circle("g-open", x, y, r)
		s.quarter(x, y, r, -1)
		s.quarter(x, y, r, 1)
	}
}

// quarter fills one quarter of a disc, upper left for -1 and lower right for 1, from points on its rim.
func (s *sheet) quarter(x, y, r, sign float64) {
	rim := [...]point{{0, 0}, {1, 0}, {0.924, 0.383}, {0.707, 0.707}, {0.383, 0.924}, {0, 1}}
	points := make([]point, 0, len(rim))
	for _, p := range rim {
		points = append(points, point{x + float64(sign*r*p.x), y + float64(sign*r*p.y)})
	}
	s.shape("g-pa", points...)
}
