package grid

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// field is one piece of skin that is cut into strakes by runs and into bays by stops: bottom, chine flat, side, one deck
// or one sole. It is the same to port.
type field struct {
	name    string // what names begin with: "bottom", "deck foredeck"
	zone    string // as in Patch
	judged  string // as in record.Panel
	course  func(x float64) course
	base    func(x float64) float64 // girth from the keel to the inner edge
	inner   float64                 // girth of the inner edge on the course, from the centre line; nought but for decks and soles
	outer   func(x float64) float64
	central bool // the inner edge is the centre line, and nothing but a run holds it there
	stops   []stop
	runs    []*run
	plates  []*record.Plating
	one     *record.Plating // of a deck or sole: the plate it is
	level   float64         // of a sole
	at      finding.Place
	found   map[[2]float64][]*run // runs of a bay, once they were asked for
}

// bound is an edge of a strake: a run, or an edge of the field.
type bound struct {
	run  *run
	edge int // -1 inner, +1 outer, 0 a run
}

// cell is one panel of a field.
type cell struct {
	f            *field
	aft, fore    stop
	inner, outer bound
	strake       int  // from the inner edge, from one
	only         bool // the only strake of its bay
	across       bool // lies across the centre line
}

// girth is where a bound lies on a course at x.
func (f *field) girth(e bound, x float64, c course) float64 {
	edge := f.outer(x)
	switch e.edge {
	case -1:
		return f.inner
	case 1:
		return edge
	}
	return min(max(e.run.girth(x, c.long()), f.inner), edge)
}

// cells cuts a field into bays and strakes.
func (b *builder) cells(f *field) []*cell {
	var out []*cell
	for i := 1; i < len(f.stops); i++ {
		out = append(out, f.strakes(f.stops[i-1], f.stops[i])...)
	}
	return b.runOn(f, out)
}

// strakes cuts one bay along the runs that go through it.
func (f *field) strakes(aft, fore stop) []*cell {
	mid := (aft.x + fore.x) / 2
	c := f.course(mid)
	edge := f.outer(mid)
	var inside []*run
	middle := bound{edge: -1}
	for _, r := range f.runs {
		g := r.girth(mid, c.long())
		switch {
		case !f.through(r, aft.x, fore.x) || r.side == "port" || r.side == "starboard":
		case f.central && g < near:
			middle = bound{run: r}
		case g > f.inner+near && g < edge-near:
			inside = append(inside, r)
		}
	}
	slices.SortStableFunc(inside, func(p, q *run) int {
		return order(p.girth(mid, c.long()), q.girth(mid, c.long()))
	})
	bounds := []bound{middle}
	for _, r := range inside {
		bounds = append(bounds, bound{run: r})
	}
	bounds = append(bounds, bound{edge: 1})
	var out []*cell
	for i := 1; i < len(bounds); i++ {
		out = append(out, &cell{f: f, aft: aft, fore: fore, inner: bounds[i-1], outer: bounds[i], strake: i,
			only: len(bounds) == 2, across: i == 1 && f.central && middle.run == nil})
	}
	return out
}

func order(p, q float64) int {
	switch {
	case p < q:
		return -1
	case p > q:
		return 1
	}
	return 0
}

// runOn joins panels over a stop that does not reach them.
func (b *builder) runOn(f *field, all []*cell) []*cell {
	for i := 0; i < len(all); i++ {
		c := all[i]
		if c.fore.frame == nil || c.fore.reach < 0 {
			continue
		}
		on := f.course(c.fore.x)
		in, out := f.girth(c.inner, c.fore.x, on), f.girth(c.outer, c.fore.x, on)
		if out <= c.fore.reach+near {
			continue
		}
		if in < c.fore.reach-near {
			b.endsInPlate(f, c)
		}
		next := slices.IndexFunc(all[i+1:], func(d *cell) bool { return d.aft.x == c.fore.x && d.inner == c.inner && d.outer == c.outer })
		if next < 0 {
			b.strakesChange(f, c)
			continue
		}
		next += i + 1
		c.fore = all[next].fore
		all = slices.Delete(all, next, next+1)
		i--
	}
	return all
}
