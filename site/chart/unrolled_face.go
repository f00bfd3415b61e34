package chart

import (
	"math"
	"slices"

	"hullfile/engine/finding"
)

// The shades of a panel by its room, most room first: class, and the least margin that falls into it.
var shades = [...]struct {
	class string
	from  float64
	words string
}{
	{"g-m5", 2, "2 and more"},
	{"g-m4", 1.5, "1.5"},
	{"g-m3", 1.25, "1.25"},
	{"g-m2", 1.1, "1.1"},
	{"g-m1", 0, "1"},
}

func shade(t *Tile) string {
	switch {
	case !judgedTile(t.Standing, t.Margin):
		return "g-m6"
	case t.Standing == finding.Short:
		return "g-m0"
	}
	for _, s := range shades {
		if t.Margin >= s.from {
			return s.class
		}
	}
	return "g-m1"
}

// readable is the breadth of a panel on the drawing in which its figure finds room.
const readable = 32.0

// flatField is where a stretch of a face lies on the sheet.
type flatField struct {
	left, top, perMetre float64
	aft, high           float64 // of the face, at left and top
	up                  bool    // z runs upward
}

func (f flatField) at(p [2]float64) point {
	y := p[1] - f.high
	if f.up {
		y = f.high - p[1]
	}
	return point{f.left + float64((p[0]-f.aft)*f.perMetre), f.top + float64(y*f.perMetre)}
}

// bounds of a face, metres.
func (f *Unfolded) bounds() (x, y extent) {
	for i := range f.Tiles {
		for _, p := range f.Tiles[i].Flat {
			x.take(p[0])
			y.take(p[1])
		}
	}
	for i := range f.Bars {
		for _, p := range f.Bars[i].Flat {
			x.take(p[0])
			y.take(p[1])
		}
	}
	return x, y
}

// usualLength is the median length of its panels along the face.
func (f *Unfolded) usualLength() float64 {
	all := make([]float64, 0, len(f.Tiles))
	for i := range f.Tiles {
		var e extent
		for _, p := range f.Tiles[i].Flat {
			e.take(p[0])
		}
		all = append(all, e.hi-e.lo)
	}
	if len(all) == 0 {
		return 0.5
	}
	slices.Sort(all)
	return max(all[len(all)/2], 0.02)
}

// cuts divides the length of faces into as many stretches as it takes for figures to be read, at the ends of panels.
func (u unrolled) cuts(x extent, room float64) []float64 {
	usual := math.Inf(1)
	for i := range u.faces {
		if u.faces[i].Along {
			usual = min(usual, u.faces[i].usualLength())
		}
	}
	pieces := int(math.Ceil((x.hi - x.lo) * readable / usual / room))
	pieces = min(max(pieces, 1), 6)
	cuts := []float64{x.lo}
	for k := 1; k < pieces; k++ {
		ideal := x.lo + (x.hi-x.lo)*float64(k)/float64(pieces)
		best := ideal
		away := math.Inf(1)
		for i := range u.faces {
			for _, t := range u.faces[i].Tiles {
				if !u.faces[i].Along {
					continue
				}
				for _, p := range t.Flat {
					if d := math.Abs(p[0] - ideal); d < away {
						best, away = p[0], d
					}
				}
			}
		}
		if best > cuts[len(cuts)-1]+1e-6 {
			cuts = append(cuts, best)
		}
	}
	return append(cuts, x.hi)
}

// middleOf is the mean of the corners.
func middleOf(flat [][2]float64) (x, y float64) {
	for _, p := range flat {
		x += p[0] / float64(len(flat))
		y += p[1] / float64(len(flat))
	}
	return x, y
}

// between keeps what has its middle in a stretch. The last stretch takes its end too.
func between(flat [][2]float64, from, to float64) bool {
	x, _ := middleOf(flat)
	return x >= from && x < to
}

// holds reports whether a box lies wholly in a shape: its corners and the middles of its sides do.
func holds(shape []point, b box) bool {
	mx, my := (b.left+b.right)/2, (b.top+b.bottom)/2
	for _, p := range []point{{b.left, b.top}, {b.right, b.top}, {b.left, b.bottom}, {b.right, b.bottom}, {mx, b.top}, {mx, b.bottom}, {b.left, my}, {b.right, my}} {
		if !encloses(shape, p) {
			return false
		}
	}
	return true
}

// encloses counts crossings of a ray.
func encloses(shape []point, p point) bool {
	in := false
	for i, a := range shape {
		b := shape[(i+1)%len(shape)]
		if (a.y > p.y) != (b.y > p.y) && p.x < a.x+(p.y-a.y)/(b.y-a.y)*(b.x-a.x) {
			in = !in
		}
	}
	return in
}

// roomIn finds where in a shape a text fits, nearest to its middle; false where it fits nowhere.
func roomIn(shape []point, text string) (at point, ok bool) {
	width, height := advance(text)+3, rise+3
	var x, y extent
	cx, cy := 0.0, 0.0
	for _, p := range shape {
		x.take(p.x)
		y.take(p.y)
		cx += p.x / float64(len(shape))
		cy += p.y / float64(len(shape))
	}
	if x.hi-x.lo < width || y.hi-y.lo < height {
		return point{}, false
	}
	best := math.Inf(1)
	try := func(px, py float64) {
		far := math.Hypot(px-cx, py-cy)
		if far < best && holds(shape, box{px - width/2, py - height/2, px + width/2, py + height/2}) {
			at, ok, best = point{px, py}, true, far
		}
	}
	if try(cx, cy); ok {
		return at, true
	}
	const steps = 8
	for i := 1; i < steps; i++ {
		for k := 1; k < steps; k++ {
			try(x.lo+(x.hi-x.lo)*float64(i)/steps, y.lo+(y.hi-y.lo)*float64(k)/steps)
		}
	}
	return at, ok
}
