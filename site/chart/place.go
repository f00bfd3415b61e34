package chart

// placer finds room for labels: beside what they name, inside the bounds, off other words and points, and off lines
// where that can be had.
type placer struct {
	bounds box
	taken  []box
	lines  []segment
	soft   []box // better left free
}

// sides are the places that a label is tried at, best first: direction from the point, in parts of its size.
var sides = [...]struct{ dx, dy float64 }{
	{1, 0}, {0, -1}, {-1, 0}, {0, 1}, {1, -1}, {-1, -1}, {1, 1}, {-1, 1}, {0.5, -1}, {-0.5, -1}, {0.5, 1}, {-0.5, 1},
}

// rings are the distances from the point, near first; from the one numbered leads a leader is drawn.
var rings = [...]float64{7, 12, 20, 30, 44, 60}

const leads = 2

// find gives the room for a text that names a point, and how far out it is; false where there is none.
// The first place that is free of lines is taken, else the first that crosses fewest.
func (p *placer) find(at point, text string) (found box, ring int, ok bool) {
	width, fewest := advance(text), len(p.lines)+len(p.soft)+len(p.taken)+1
	for i, distance := range rings {
		for _, side := range sides {
			b := beside(at, width, distance, side.dx, side.dy)
			if !b.within(p.bounds) || p.blocked(b) {
				continue
			}
			crossed := p.crossed(b, fewest)
			if i >= leads {
				crossed += p.struck(leader(at, b))
			}
			if crossed == 0 {
				return b, i, true
			}
			if crossed < fewest {
				found, ring, fewest, ok = b, i, crossed, true
			}
		}
	}
	return found, ring, ok
}

// clear is find where only a place free of lines will do.
func (p *placer) clear(at point, text string) (found box, ring int, ok bool) {
	found, ring, ok = p.find(at, text)
	return found, ring, ok && p.crossed(found, 1) == 0
}

// near reports whether clear finds a place so near that it needs no leader. It looks no further than that.
func (p *placer) near(at point, text string) bool {
	width := advance(text)
	for _, distance := range rings[:leads] {
		for _, side := range sides {
			b := beside(at, width, distance, side.dx, side.dy)
			if b.within(p.bounds) && !p.blocked(b) && p.crossed(b, 1) == 0 {
				return true
			}
		}
	}
	return false
}

// beside gives the box of a text at a distance from a point.
func beside(at point, width, distance, dx, dy float64) box {
	const height = ascent + descent
	left := at.x - width/2 + float64(dx*(width/2+distance))
	top := at.y - height/2 + float64(dy*(height/2+distance))
	return box{left, top, left + width, top + height}
}

func (p *placer) blocked(b box) bool {
	for _, t := range p.taken {
		if t.meets(b) {
			return true
		}
	}
	return false
}

// crossed counts the lines through a box, with a little air around it, and what had better be left free. It stops
// counting where there are as many as the caller has seen elsewhere.
func (p *placer) crossed(b box, enough int) int {
	n, airy := 0, b.grown(1.5)
	for i := 0; i < len(p.lines) && n < enough; i++ {
		if l := &p.lines[i]; !l.beside(airy) && l.crosses(airy) {
			n++
		}
	}
	for _, f := range p.soft {
		if f.meets(b) {
			n++
		}
	}
	return n
}

// set places a text and draws it, with a leader where it had to go far. It reports whether there was room.
func (p *placer) set(s *sheet, class string, at point, text string) bool {
	b, ring, ok := p.find(at, text)
	if !ok {
		return false
	}
	if ring >= leads {
		l := leader(at, b)
		s.circle("g-pa", at.x, at.y, 1.4)
		s.line("g-lead", l.from.x, l.from.y, l.to.x, l.to.y)
		p.lines = append(p.lines, l)
	}
	s.text(class, b.left, b.top+ascent, start, text)
	p.taken = append(p.taken, b.grown(2))
	return true
}

// leader is the stroke from a point to the nearest place of its label.
func leader(at point, b box) segment {
	return segment{at, point{nearest(at.x, b.left, b.right), nearest(at.y, b.top+2, b.bottom-1)}}
}

// struck counts the words and points that a leader would strike through, its own point not among them.
func (p *placer) struck(l segment) int {
	n := 0
	for _, t := range p.taken {
		own := box{l.from.x, l.from.y, l.from.x, l.from.y}.within(t)
		if !own && l.crosses(t) {
			n++
		}
	}
	return n
}

func nearest(v, lo, hi float64) float64 { return min(max(v, lo), hi) }
