package grid

import (
	"fmt"
	"math"
	"slices"

	"hullfile/engine/hydrostatics"
)

// hard reports whether a run is one that frames end on: its spans go from bulkhead to bulkhead.
func (r *run) hard() bool { return r.kind == "girder" || r.kind == "engine girder" }

// edgeBar reports whether a run lies in the edge of a zone.
func (r *run) edgeBar() bool {
	return r.kind == "keel bar" || r.kind == "chine bar" || r.kind == "formed chine" || r.kind == "gunwale bar"
}

// lengths lays what runs fore and aft on a field: a piece for every stretch between two stops.
func (b *builder) lengths(f *field) {
	for i := 1; i < len(f.stops); i++ {
		number := 0
		for _, r := range b.beside(f, f.stops[i-1], f.stops[i]) {
			if r.hard() || r.kind == "support" || r.rec == nil {
				continue
			}
			if !r.edgeBar() {
				number++
			}
			if fore, held := f.heldFrom(r, i); held && r.rec.Section.Set {
				b.stretch(f, r, f.stops[i-1], fore, number)
			}
		}
	}
	hard := slices.DeleteFunc(slices.Clone(f.stops), func(s stop) bool {
		return s.frame != nil && s.frame.Kind.V != "bulkhead" && s.frame.Kind.V != "web frame"
	})
	for _, r := range f.runs {
		if r.hard() && r.rec.Section.Set {
			b.girder(f, r, hard)
		}
	}
}

// beside lists the runs that go through a bay, from the inner edge outwards.
func (b *builder) beside(f *field, aft, fore stop) []*run {
	key := [2]float64{aft.x, fore.x}
	if known, done := f.found[key]; done {
		return known
	}
	mid := (aft.x + fore.x) / 2
	on := f.course(mid)
	var out []*run
	for _, r := range f.runs {
		g := r.girth(mid, on.long())
		within := g > f.inner-near && g < f.outer(mid)+near
		inside := g > f.inner+near && g < f.outer(mid)-near
		middle := f.central && g < near
		if f.through(r, aft.x, fore.x) && (inside || within && r.edgeBar() || middle) {
			out = append(out, r)
		}
	}
	slices.SortStableFunc(out, func(p, q *run) int { return order(p.girth(mid, on.long()), q.girth(mid, on.long())) })
	if f.found == nil {
		f.found = map[[2]float64][]*run{}
	}
	f.found[key] = out
	return out
}

// heldFrom gives the fore end of a span that begins at the stop before i: the next stop that reaches out to the run. held
// is false where the stop before i does not reach it, so that the span has begun farther aft.
func (f *field) heldFrom(r *run, i int) (fore stop, held bool) {
	holds := func(s stop) bool { return r.girth(s.x, f.course(s.x).long()) <= s.reach+near }
	if !holds(f.stops[i-1]) {
		return stop{}, false
	}
	for k := i; k < len(f.stops); k++ {
		if !f.through(r, f.stops[i-1].x, f.stops[k].x) {
			break
		}
		fore = f.stops[k]
		if holds(fore) {
			return fore, true
		}
	}
	return fore, fore.name != ""
}

// stretch lays one run between two stops.
func (b *builder) stretch(f *field, r *run, aft, fore stop, number int) {
	label := lineKind(f, r)
	p := piece{kind: label, zone: f.zone, on: f.name, judged: f.judged, section: r.rec.Section.V, at: r.at, spaced: r.at, number: number,
		where: r.words() + ", " + bay(aft, fore), fixed: b.held(r), count: 2, run: r, plate: b.plateUnder(f, r, aft, fore)}
	switch {
	case r.edgeBar():
		p.name = fmt.Sprintf("%s %s", r.kind, bay(aft, fore))
		if r.name != r.kind {
			p.name = fmt.Sprintf("%s %s %s", r.kind, r.name, bay(aft, fore))
		}
	case f.one != nil:
		p.group = label + "%s " + f.one.ID + " " + bay(aft, fore)
		p.name = fmt.Sprintf(p.group, fmt.Sprintf(" %d", number))
	default:
		p.group = label + "%s " + bay(aft, fore)
		p.name = fmt.Sprintf(p.group, fmt.Sprintf(" %d", number))
	}
	if b.inMiddle(f, r, (aft.x+fore.x)/2) || r.side == "port" || r.side == "starboard" {
		p.count = 1
	}
	if r.side == "port" || r.side == "starboard" {
		p.one = r.side
	}
	p.spacing, p.tapers = b.carries(f, r, aft, fore)
	p.path, p.flat = b.path(f, r, aft.noFarther(r), fore.noFarther(r))
	if long(p.path) < 0.01 {
		b.noSpan(p.name, r.at, long(p.path))
		return
	}
	b.member(p)
}

// noFarther is a stop, or the end of a run that runs out before it.
func (s stop) noFarther(r *run) stop {
	if x := min(max(s.x, r.aft), r.fore); x < s.x-near || x > s.x+near {
		return stop{name: s.name, x: x}
	}
	return s
}

func lineKind(f *field, r *run) string {
	switch {
	case r.edgeBar() && r.kind == "formed chine":
		return "chine bar"
	case r.edgeBar() || r.hard():
		return r.kind
	case f.judged == "side":
		return "side stringer"
	case f.judged == "deck":
		return "deck stringer"
	}
	return "bottom stringer"
}

// held reports whether the spans of a run are taken as fixed at their ends.
func (b *builder) held(r *run) bool {
	if e, ok := r.rec.Ends.Get(); ok {
		return e == "fixed"
	}
	through := !r.rec.Through.Set || r.rec.Through.V
	b.assumeEnds(r, through)
	return through
}

// inMiddle reports whether a run lies on the centre line, where there is only one of it.
func (b *builder) inMiddle(f *field, r *run, x float64) bool {
	return math.Abs(f.course(x).point(r.girth(x, f.course(x).long())).Y) < near/2
}

// path is a run from stop to stop, through the stations between them.
func (b *builder) path(f *field, r *run, aft, fore stop) (path []hydrostatics.Vector, flat [][2]float64) {
	xs := append([]float64{aft.x}, b.skin.between(aft.x, fore.x, aft.lean)...)
	xs = append(xs, fore.x)
	for i, x := range xs {
		on := f.course(x)
		g := min(max(r.girth(x, on.long()), f.inner), f.outer(x))
		p := b.point(f, stop{x: x, lean: i == 0 && aft.lean}, g)
		path, flat = append(path, p), append(flat, [2]float64{p.X, f.base(x) + g})
	}
	return path, flat
}

// carries is the breadth of plate that a run carries: half way to what lies beside it, at that end of the span where it is
// greatest. A bar in the edge of a zone also carries its half of the zone beyond.
func (b *builder) carries(f *field, r *run, aft, fore stop) (breadth float64, tapers string) {
	at := func(s stop) float64 { return b.halfWays(f, r, aft, fore, s.x) }
	p, q, m := at(aft), at(fore), at(stop{x: (aft.x + fore.x) / 2})
	most := max(p, q, m)
	if math.Abs(p-q) > taken*most {
		tapers = fmt.Sprintf("; the plate it carries tapers from %.0f to %.0f mm, the greater breadth is taken", 1000*p, 1000*q)
	}
	return most, tapers
}

// halfWays is the breadth that a run carries at one station.
func (b *builder) halfWays(f *field, r *run, aft, fore stop, x float64) float64 {
	on := f.course(x)
	g := r.girth(x, on.long())
	in, out := b.nextTo(f, r, aft, fore, x)
	half := (max(g-in, 0) + max(out-g, 0)) / 2
	switch {
	case b.inMiddle(f, r, x):
		return max(out-g, 0) // half of it on either side
	case r.edgeBar():
		return half + b.beyond(f, r, aft, fore, x)
	}
	return half
}

// nextTo gives the girths of what lies inside and outside of a run.
func (b *builder) nextTo(f *field, r *run, aft, fore stop, x float64) (in, out float64) {
	on := f.course(x)
	g := r.girth(x, on.long())
	in, out = f.inner, f.outer(x)
	if f.central {
		in = -g // its own like to port
		if g < near {
			in = -f.outer(x)
		}
	}
	for _, o := range b.beside(f, aft, fore) {
		if o == r || o.side == "port" || o.side == "starboard" || r.hard() && !o.hard() {
			continue
		}
		at := o.girth(x, on.long())
		if at <= g {
			in = max(in, at)
		} else {
			out = min(out, at)
		}
		if f.central {
			in = max(in, -at)
		}
	}
	return in, out
}

// beyond is half of the first strake of the zone that meets this one at an edge bar.
func (b *builder) beyond(f *field, r *run, aft, fore stop, x float64) float64 {
	var next *field
	for i, o := range b.shellZones {
		switch {
		case o != f:
		case r.kind == "chine bar" || r.kind == "formed chine":
			if f.zone == "side" && i > 0 {
				next = b.shellZones[i-1]
			}
			if f.zone != "side" && i+1 < len(b.shellZones) {
				next = b.shellZones[i+1]
			}
		}
	}
	if next == nil {
		return 0
	}
	on := next.course(x)
	first := next.outer(x)
	for _, o := range b.beside(next, aft, fore) {
		g := o.girth(x, on.long())
		if f.zone == "side" {
			g = next.outer(x) - g
		}
		if g > near {
			first = min(first, g)
		}
	}
	return first / 2
}

// girder lays a run that frames end on: its spans go from one thing that holds it to the next.
func (b *builder) girder(f *field, r *run, hard []stop) {
	ends := []stop{}
	_, stem := b.skin.ends()
	add := func(s stop) {
		if s.x >= r.aft-near && s.x <= r.fore+near && s.x < stem+near {
			ends = append(ends, s)
		}
	}
	for _, s := range hard {
		add(s)
	}
	ends = b.withEnds(f, r, ends)
	for i := 1; i < len(ends); i++ {
		aft, fore := ends[i-1], ends[i]
		p := piece{name: r.kind + " " + r.name + " " + bay(aft, fore), kind: r.kind, primary: true, zone: f.zone, on: f.name, judged: f.judged,
			section: r.rec.Section.V, at: r.at, spaced: r.at, where: r.words() + ", " + bay(aft, fore), fixed: b.held(r), count: 2, run: r,
			plate: b.plateUnder(f, r, aft, fore)}
		if b.inMiddle(f, r, (aft.x+fore.x)/2) || r.side == "port" || r.side == "starboard" {
			p.count = 1
		}
		if r.side == "port" || r.side == "starboard" {
			p.one = r.side
		}
		p.spacing, p.tapers = b.carries(f, r, aft, fore)
		p.path, p.flat = b.path(f, r, aft, fore)
		b.member(p)
	}
}

// withEnds adds the frames at which a girder ends, where nothing firmer stands there.
func (b *builder) withEnds(f *field, r *run, ends []stop) []stop {
	for _, x := range []float64{r.aft, r.fore} {
		if slices.ContainsFunc(ends, func(s stop) bool { return math.Abs(s.x-x) < near }) {
			continue
		}
		at := stop{name: "its end", x: x}
		for _, s := range f.stops {
			if math.Abs(s.x-x) < near {
				at = s
			}
		}
		ends = append(ends, at)
	}
	slices.SortStableFunc(ends, func(p, q stop) int { return order(p.x, q.x) })
	return ends
}
