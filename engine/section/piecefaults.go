package section

import (
	"fmt"
	"math"
)

// mostPieces bounds a built-up section: beyond it the list is a slip, and holding all against all would take long.
const mostPieces = 200

// pieceFaults lists what is wrong with the rectangles of a built-up section: no metal, no web, one over another, one that
// touches no other, and none on the plating.
func (s Shape) pieceFaults() Faults {
	var f Faults
	if n := len(s.Pieces); n == 0 || n > mostPieces {
		return Faults{{"pieces", fmt.Sprintf("%d given, must be 1 to %d", n, mostPieces)}}
	}
	for i, p := range s.Pieces {
		name := fmt.Sprintf("piece %d (%s)", i+1, p.Name)
		f = f.positive(name+" breadth", p.Breadth)
		f = f.positive(name+" height", p.Height)
		f = f.notBelow(name+" foot", p.Foot)
		f = f.unless(!math.IsNaN(float64(p.Left)) && !math.IsInf(float64(p.Left), 0), name+" left", "%v mm is no place", p.Left)
		f = f.unless(p.Role == Web || p.Role == Flange || p.Role == Foot, name+" role", "%q is not one of %s, %s, %s", p.Role, Web, Flange, Foot)
	}
	if len(f) > 0 {
		return f
	}
	return s.joins()
}

// joins lists rectangles that lie over each other, and those that no chain of touching ones joins to the first.
func (s Shape) joins() Faults {
	var f Faults
	parts := s.pieces()
	joined := make([]bool, len(parts))
	queue := []int{0}
	joined[0] = true
	for len(queue) > 0 {
		p := parts[queue[0]]
		queue = queue[1:]
		for j, q := range parts {
			if !joined[j] && touching(p, q) > 0 {
				joined[j], queue = true, append(queue, j)
			}
		}
	}
	webs, lowest := 0, math.Inf(1)
	for i, p := range parts {
		name := fmt.Sprintf("piece %d (%s)", i+1, p.Name)
		f = f.unless(joined[i], name, "touches none of the others")
		for j, q := range parts[:i] {
			f = f.unless(!over(p, q), name, "lies over piece %d (%s)", j+1, q.Name)
		}
		if p.Role == Web {
			webs++
		}
		lowest = math.Min(lowest, p.bottom())
	}
	f = f.unless(webs > 0, "pieces", "none is a web")
	return f.unless(lowest < near, "pieces", "the lowest begins %.3f mm above the foot, one must begin at nought", lowest)
}

// over reports whether two upright rectangles share metal.
func over(p, q Part) bool {
	return shared(p.Y-p.Breadth/2, p.Y+p.Breadth/2, q.Y-q.Breadth/2, q.Y+q.Breadth/2) > near && shared(p.bottom(), p.top(), q.bottom(), q.top()) > near
}
