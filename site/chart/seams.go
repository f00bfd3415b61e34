package chart

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
)

// Seam is one seam on the unrolled hull: x forward of the transom, girth along the skin from the keel, to port negative, in
// metres.
type Seam struct {
	Key          string
	X, Girth     float64 // aft end
	ToX, ToGirth float64 // fore end
	Standing     finding.Standing
	Name         bool // whether its key is set beside it
	Href         string
	Shell        bool
}

// SeamMap draws the skin of the hull unrolled, port above and starboard below the keel, with the seams on it.
func SeamMap(r lines.Result, seams []Seam) Figure {
	const id, title = "fig-seams", "Seams on the unrolled hull"
	v, ok := shapeOf(r)
	if !ok {
		return blank(id, title, "The lines are not on record, so the seams stand in the table only.", nil)
	}
	m := seamMap{shape: v}
	for _, s := range seams {
		if near0(s.X) && near0(s.ToX) && near0(s.Girth) && near0(s.ToGirth) {
			m.seams = append(m.seams, s)
		}
	}
	if len(m.seams) == 0 {
		return blank(id, title, "No joint says where it lies on the hull.", nil)
	}
	p := plate{id: id, title: title, alt: m.words(len(seams)), links: true, paint: m.draw}
	return p.finished("Port lies above the keel, starboard below; thin lines are chine, knuckle and sheer. Heavy: shell; fine: all else. Full line: met; broken: not shown; broken with a cross: short.", nil)
}

type seamMap struct {
	shape
	seams []Seam
}

func (m seamMap) words(all int) string {
	n := map[finding.Standing]int{}
	for _, s := range m.seams {
		n[s.Standing]++
	}
	return fmt.Sprintf("%d of %d joints drawn: %d met, %d short, %d not shown.", len(m.seams), all, n[finding.Met], n[finding.Short], n[finding.NotShown])
}

// girths gives the distance of an edge from the keel along the skin at a station.
func girths(s lines.Station, to lines.Edge) float64 {
	sum := 0.0
	for e := lines.Keel; e < to; e++ {
		a, b := s.At[e], s.At[e+1]
		sum += math.Hypot(b.Y-a.Y, b.Z-a.Z)
	}
	return sum
}

func (m seamMap) draw(s *sheet) {
	const edge, top, foot = 14.0, 16.0, 40.0
	aft, fore := m.stations[0].X, m.stations[len(m.stations)-1].X
	widest := 0.0
	for _, st := range m.stations {
		widest = math.Max(widest, girths(st, lines.Sheer))
	}
	t := newTape(aft-0.15, fore+0.15, edge, s.w-2*edge)
	scale := t.length / (t.most - t.least)
	middle := top + float64(widest*scale)
	at := func(x, girth float64) point { return point{t.at(x), middle + float64(girth*scale)} }
	for _, side := range []float64{-1, 1} {
		for e := lines.Chine; e <= lines.Sheer; e++ {
			var way []point
			for _, st := range m.stations {
				way = append(way, at(st.X, side*girths(st, e)))
			}
			s.curve("g-station", way...)
		}
		s.curve("g-station", at(aft, 0), at(aft, side*girths(m.stations[0], lines.Sheer)))
	}
	s.curve("g-station", at(aft, 0), at(fore, 0))
	p := &placer{bounds: box{2, 2, s.w - 2, 2*middle - top}}
	for _, one := range m.seams {
		m.seam(s, one, m.way(one, at))
	}
	for _, one := range m.seams {
		if one.Name && !s.slim() {
			a, b := at(one.X, one.Girth), at(one.ToX, one.ToGirth)
			s.linked(one.Href, func() { p.set(s, "g-label g-key", point{(a.x + b.x) / 2, (a.y + b.y) / 2}, fit(one.Key, 60)) })
		}
	}
	s.text("g-soft", edge, top-4, start, "port")
	s.text("g-soft", edge, 2*middle-top+14, start, "starboard")
	s.h = s.ruled(t, top, 2*middle-top+foot-14, "forward of the transom, m")
}

// way gives the places of a seam: along an edge of the hull where both ends lie on it, else straight.
func (m seamMap) way(one Seam, at func(x, girth float64) point) []point {
	side := 1.0
	if one.Girth+one.ToGirth < 0 {
		side = -1
	}
	all := []point{at(one.X, one.Girth)}
	if e, on := m.edgeOf(one, side); on {
		for _, st := range m.stations {
			if st.X > one.X && st.X < one.ToX {
				all = append(all, at(st.X, side*girths(st, e)))
			}
		}
	}
	return append(all, at(one.ToX, one.ToGirth))
}

// edgeOf gives the edge that both ends of a seam lie nearest to; on is false where none is within a hand's breadth.
func (m seamMap) edgeOf(one Seam, side float64) (edge lines.Edge, on bool) {
	least := 0.08 // metre
	for e := lines.Chine; e <= lines.Sheer; e++ {
		off := math.Max(math.Abs(m.girth(one.X, e)-side*one.Girth), math.Abs(m.girth(one.ToX, e)-side*one.ToGirth))
		if off < least {
			edge, on, least = e, true, off
		}
	}
	return edge, on
}

// girth gives the distance of an edge from the keel along the skin anywhere along the hull.
func (m seamMap) girth(x float64, e lines.Edge) float64 {
	for i := 1; i < len(m.stations); i++ {
		a, b := m.stations[i-1], m.stations[i]
		if x <= b.X && b.X > a.X {
			f := (x - a.X) / (b.X - a.X)
			return girths(a, e) + float64(f*(girths(b, e)-girths(a, e)))
		}
	}
	return girths(m.stations[len(m.stations)-1], e)
}

// seam draws one seam: its line says its standing, its weight whether it is of the shell.
func (m seamMap) seam(s *sheet, one Seam, way []point) {
	class := "g-seam"
	if one.Shell {
		class += " g-heavy"
	}
	switch one.Standing {
	case finding.Short:
		class += " g-bad"
	case finding.NotShown:
		class += " g-lacking"
	}
	s.curve(class, way...)
	if one.Standing == finding.Short {
		a, b := way[(len(way)-1)/2], way[len(way)/2]
		x, y := (a.x+b.x)/2, (a.y+b.y)/2
		s.line("g-seam g-bad", x-5, y-5, x+5, y+5)
		s.line("g-seam g-bad", x-5, y+5, x+5, y-5)
	}
}
