package grid

import (
	"math"
	"slices"

	"hullfile/engine/hydrostatics"
)

// faceBars lays the stiffeners of a face.
func (b *builder) faceBars(f *face) {
	for i := range f.bars {
		s := &f.bars[i]
		if s.level {
			b.levelBar(f, s)
		} else {
			b.uprightBar(f, s)
		}
	}
}

// uprightBar lays an upright, broken where a shelf or a primary level bar holds it.
func (b *builder) uprightBar(f *face, s *bar) {
	low, high, ok := upright(f.outline, s.at)
	if !ok {
		b.barOutside(f, s)
		return
	}
	low, high = max(low, s.from), min(high, s.to)
	if high-low < near {
		b.barOutside(f, s)
		return
	}
	var holds []float64
	for i := range f.bars {
		o := &f.bars[i]
		if o.level && o.primary && !s.primary && o.from <= s.at+near && o.to >= s.at-near {
			holds = append(holds, o.at)
		}
	}
	holds = append(holds, f.shelves...)
	for n, z := range cutsOf(low, high, holds) {
		p := b.barPiece(f, s, n, len(holds))
		p.spacing = f.gapBeside(s, (z[0]+z[1])/2)
		if s.at < near {
			p.count = 1
		}
		p.path = []hydrostatics.Vector{f.vector(point{Y: s.at, Z: z[0]}), f.vector(point{Y: s.at, Z: z[1]})}
		p.flat = [][2]float64{{s.at, f.up(z[0])}, {s.at, f.up(z[1])}}
		p.head = f.head((z[0] + z[1]) / 2)
		b.member(p)
	}
}

// levelBar lays a level bar, broken by the uprights unless other stiffeners end on it.
func (b *builder) levelBar(f *face, s *bar) {
	edge, ok := level(f.outline, s.at)
	if !ok {
		b.barOutside(f, s)
		return
	}
	from, to := max(s.from, 0), min(s.to, edge)
	if to-from < near {
		b.barOutside(f, s)
		return
	}
	var holds []float64
	middle := false
	for i := range f.bars {
		o := &f.bars[i]
		if o.level || s.primary && !o.primary || o.from > s.at+near || o.to < s.at-near {
			continue
		}
		holds = append(holds, o.at)
		middle = middle || o.at < near
	}
	for n, y := range cutsOf(from, to, holds) {
		p := b.barPiece(f, s, n, len(holds))
		p.spacing = f.gapAbove(s, (y[0]+y[1])/2)
		start := y[0]
		if start < near && !middle {
			start, p.count = -y[1], 1
		}
		p.path = []hydrostatics.Vector{f.vector(point{Y: start, Z: s.at}), f.vector(point{Y: y[1], Z: s.at})}
		h := f.up(s.at)
		p.flat = [][2]float64{{start, h}, {y[1], h}}
		p.head = f.head(s.at)
		b.member(p)
	}
}

// head of water on a bulkhead at a height.
func (f *face) head(z float64) float64 {
	if f.zone != "bulkhead" {
		return 0
	}
	return f.top - z
}

func (b *builder) barPiece(f *face, s *bar, nth, holds int) piece {
	kind := f.zone + " stiffener"
	p := piece{kind: kind, zone: f.zone, on: f.name, judged: f.zone, section: s.section, at: s.place, spaced: s.place, fixed: s.fixed, primary: s.primary, count: 2}
	p.name = f.name + " " + s.name
	p.where = f.name + ", " + s.name
	if holds > 0 {
		p.name += [...]string{" first span", " second span", " third span", " further span"}[min(nth, 3)]
	}
	if s.sides == "port" || s.sides == "starboard" {
		p.count, p.one = 1, s.sides
	}
	p.plate = b.facePlate(f, column{poly: []point{{Y: s.at}, {Y: s.at}}})
	if s.level {
		p.plate = b.facePlate(f, column{poly: []point{{Y: max(s.from, 0)}, {Y: max(s.from, 0)}}})
	}
	return p
}

// cutsOf cuts a stretch at the places where something holds it.
func cutsOf(from, to float64, holds []float64) [][2]float64 {
	slices.Sort(holds)
	var out [][2]float64
	at := from
	for _, h := range holds {
		if h > at+2*near && h < to-2*near {
			out = append(out, [2]float64{at, h})
			at = h
		}
	}
	return append(out, [2]float64{at, to})
}

// gapBeside is the breadth of plate that an upright carries at a height: half way to what stands beside it.
func (f *face) gapBeside(s *bar, z float64) float64 {
	edge, ok := level(f.outline, z)
	if !ok {
		edge = s.at
	}
	in, out := math.Inf(-1), max(edge, s.at)
	mirror := func(y float64) {
		if y < s.at-near/2 {
			in = max(in, y)
		}
		if y > s.at+near/2 {
			out = min(out, y)
		}
	}
	for i := range f.bars {
		o := &f.bars[i]
		if o.level || o == s || o.sides == "port" || o.sides == "starboard" || o.from > z+near || o.to < z-near {
			continue
		}
		mirror(o.at)
		mirror(-o.at)
	}
	mirror(-s.at)
	if math.IsInf(in, -1) {
		in = -edge
	}
	return (out - in) / 2
}

// gapAbove is the height of plate that a level bar carries: half way to what lies above and below it.
func (f *face) gapAbove(s *bar, y float64) float64 {
	low, high, ok := upright(f.outline, y)
	if !ok {
		return 0
	}
	heights := slices.Clone(f.shelves)
	for i := range f.bars {
		if o := &f.bars[i]; o.level && o != s && o.from <= y+near && o.to >= y-near {
			heights = append(heights, o.at)
		}
	}
	for _, z := range heights {
		if z < s.at-near/2 {
			low = max(low, z)
		}
		if z > s.at+near/2 {
			high = min(high, z)
		}
	}
	return (high - low) / 2 * f.slope()
}
