package tracklog

import "math"

// Point is a sample that is kept for a picture.
type Point struct {
	Time, Lat, Lon, Speed, Toward, RPM, Fuel, Trim float64
	Break                                          bool
}

// thin keeps at most so many points of a stretch, evenly: when it is full, every second goes and from then on half as many
// are taken. A gap stays a gap, whichever of its points went.
type thin struct {
	most   int
	every  int
	seen   int
	broken bool // a point with a gap before it was passed over
	all    []Point
}

func newThin(most int) thin { return thin{most: most, every: 1} }

func (t *thin) take(s *Sample) {
	t.broken = t.broken || s.Break
	t.seen++
	if (t.seen-1)%t.every != 0 {
		return
	}
	if len(t.all) == t.most {
		t.halve()
		if (t.seen-1)%t.every != 0 {
			return
		}
	}
	t.all = append(t.all, Point{Time: s.Time, Lat: s.Lat, Lon: s.Lon, Speed: s.Speed, Toward: s.toward(), RPM: s.RPM, Fuel: s.Fuel, Trim: s.Trim, Break: t.broken})
	t.broken = false
}

func (t *thin) halve() {
	kept := t.all[:0]
	carried := false
	for i, p := range t.all {
		carried = carried || p.Break
		if i%2 == 0 {
			p.Break = carried
			kept, carried = append(kept, p), false
		}
	}
	t.all, t.every = kept, t.every*2
	t.broken = t.broken || carried
}

// Placed reports whether the point has a position.
func (p *Point) Placed() bool { return !math.IsNaN(p.Lat) && !math.IsNaN(p.Lon) }
