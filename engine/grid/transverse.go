package grid

import (
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// part of a frame on one field: from where to where, and how it is held.
type limb struct {
	kind, label string // as in record.Member; what its name begins with
	section     record.Val[string]
	from, to    float64 // girth on the field
	fixed       bool    // both ends
	breaks      []float64
}

// transverse lays the frames: floor and bottom frame, side frame, deck and sole beams.
func (b *builder) transverse() {
	for _, f := range b.frames {
		if bare(f) && f.Kind.V != "bulkhead" {
			b.unnamed = append(b.unnamed, f)
		}
		for _, on := range b.fields {
			for _, l := range b.limbs(f, on) {
				b.limb(f, on, l)
			}
		}
	}
}

// limbs gives the parts of a frame on one field.
func (b *builder) limbs(f *record.Frame, on *field) []limb {
	x := float64(f.X.V)
	if on.one != nil && (x < on.stops[0].x-near || x > on.stops[len(on.stops)-1].x+near) {
		return nil
	}
	kind := "frame"
	if f.Kind.V == "web frame" {
		kind = "web frame"
	}
	edge := on.outer(x)
	switch on.zone {
	case "bottom":
		return b.bottomLimbs(f, kind, edge)
	case "side":
		return []limb{{kind: "side frame", label: "side " + kind, section: f.Side, to: limit(edge, f.SideTo), fixed: fixed(f.Chine, f.Sheer)}}
	case "deck":
		return []limb{{kind: "deck beam", label: "deck beam", section: f.Deck, from: on.inner, to: edge, fixed: fixed(f.Sheer, f.Sheer)}}
	case "sole":
		return []limb{{kind: "deck beam", label: "sole beam", section: f.Sole, from: on.inner, to: edge}}
	}
	return nil
}

// bottomLimbs are the floor and the bottom frame outside it.
func (b *builder) bottomLimbs(f *record.Frame, kind string, edge float64) []limb {
	var out []limb
	from := 0.0
	if f.Floor.Set {
		to := edge
		if v, ok := f.FloorOut.Get(); ok {
			to = min(float64(v), edge)
		}
		out = append(out, limb{kind: "floor", label: "floor", section: f.Floor, to: to, fixed: fixed(f.Keel, f.Chine)})
		from = to
	}
	if from < edge-near {
		out = append(out, limb{kind: "bottom frame", label: "bottom " + kind, section: f.Bottom, from: from, to: limit(edge, f.BottomTo), fixed: fixed(f.Keel, f.Chine)})
	}
	return out
}

func limit(edge float64, to valM) float64 {
	if v, ok := to.Get(); ok {
		return min(edge, float64(v))
	}
	return edge
}

// fixed reports whether both joints of a limb are made so that moments pass.
func fixed(a, b record.Val[string]) bool { return a.V == "fixed" && b.V == "fixed" }

// limb lays one part of a frame, broken where a girder or a support holds it.
func (b *builder) limb(f *record.Frame, on *field, l limb) {
	if !l.section.Set || l.to <= l.from {
		return
	}
	x := float64(f.X.V)
	b.breaks(f, on, &l)
	ends := slices.Concat([]float64{l.from}, l.breaks, []float64{l.to})
	across := on.central && l.from < near && !b.middleHeld(on, x) && !slices.ContainsFunc(b.pillarsUnder(f, on), func(y float64) bool { return y < near })
	for i := 1; i < len(ends); i++ {
		b.limbPiece(f, on, l, ends[i-1], ends[i], i, len(ends) == 2, across && i == 1)
	}
}

// breaks lists the girths at which something under a frame holds it.
func (b *builder) breaks(f *record.Frame, on *field, l *limb) {
	x := float64(f.X.V)
	long := on.course(x).long()
	for _, r := range on.runs {
		g := r.girth(x, long)
		holds := r.hard() || r.kind == "support"
		if holds && r.covers(x, x) && r.side != "port" && r.side != "starboard" && g > l.from+near && g < l.to-near {
			l.breaks = append(l.breaks, g)
		}
	}
	for _, y := range b.pillarsUnder(f, on) {
		if y > l.from+near && y < l.to-near {
			l.breaks = append(l.breaks, y)
		}
	}
	slices.Sort(l.breaks)
}

// middleHeld reports whether something on the centre line holds a beam up.
func (b *builder) middleHeld(on *field, x float64) bool {
	return slices.ContainsFunc(on.runs, func(r *run) bool {
		return (r.hard() || r.kind == "support") && r.covers(x, x) && r.girth(x, on.course(x).long()) < near
	})
}

func (b *builder) limbPiece(f *record.Frame, on *field, l limb, from, to float64, nth int, only, across bool) {
	x := float64(f.X.V)
	c := on.course(x)
	p := piece{kind: l.kind, zone: on.zone, on: on.name, judged: on.judged, section: l.section.V, at: f.At, spaced: f.X.At, count: 2, off: f.On.V && on.judged != "deck"}
	if f.Kind.V == "web frame" && l.kind != "deck beam" {
		p.kind = "web frame"
	}
	p.name = l.label + " " + f.ID
	if on.one != nil {
		p.name += " " + on.one.ID
	}
	p.where = l.label + " " + f.ID + ", " + on.limbEnds(l, from, to, across)
	switch {
	case only:
	case len(l.breaks) == 1 && on.judged != "deck":
		p.name += " " + on.limbEnds(l, from, to, across)
	default:
		p.name += [...]string{" inner part", " second part", " third part", " outer part"}[min(nth-1, 3)]
	}
	p.fixed = l.fixed || !only && l.kind != "deck beam"
	p.primary = b.carriesMembers(on, x, from, to)
	p.spacing = b.frameSpacing(on, x, (from+to)/2)
	p.plate = b.plateBeside(on, x, from, to)
	start := from
	if across {
		start, p.count = -to, 1
	}
	p.path, p.flat = limbPath(c, start, to, on.base(x))
	if long(p.path) < 0.01 {
		b.noSpan(p.name, f.At, long(p.path))
		return
	}
	b.member(p)
}

// limbEnds says in words from where to where a part of a frame reaches.
func (f *field) limbEnds(l limb, from, to float64, across bool) string {
	inner, outer := f.edgeWords(-1), f.edgeWords(1)
	if from > l.from || l.kind == "bottom frame" && l.from > 0 {
		inner = "girder"
		if from == l.from {
			inner = "floor"
		}
		if l.kind == "deck beam" {
			inner = "support"
		}
	}
	if to < l.to {
		outer = "girder"
		if l.kind == "deck beam" {
			outer = "support"
		}
	}
	if across {
		return outer + " to " + outer
	}
	return inner + " to " + outer
}

// limbPath goes along a frame through the corners of its course; a girth below nought is to port.
func limbPath(c course, from, to, base float64) (path []hydrostatics.Vector, flat [][2]float64) {
	point := func(g float64) {
		p := c.point(math.Abs(g))
		if g < 0 {
			p = mirrored(p)
		}
		path, flat = append(path, p), append(flat, [2]float64{p.X, base + g})
	}
	point(from)
	if from < 0 {
		for i := len(c.girth) - 1; i > 0; i-- {
			if g := -c.girth[i]; g > from+1e-9 {
				point(g)
			}
		}
		point(0)
	}
	for _, g := range c.girth {
		if g > max(from, 0)+1e-9 && g < to-1e-9 {
			point(g)
		}
	}
	point(to)
	return path, flat
}

// carriesMembers reports whether stringers end on, or run over, a part of a frame.
func (b *builder) carriesMembers(on *field, x, from, to float64) bool {
	long := on.course(x).long()
	return slices.ContainsFunc(on.runs, func(r *run) bool {
		g := r.girth(x, long)
		return !r.hard() && !r.edgeBar() && r.kind != "support" && r.aft <= x+near && r.fore >= x-near && g > from+near/2 && g < to-near/2
	})
}

// frameSpacing is half way to what holds the zone aft and forward of a frame, along the plate.
func (b *builder) frameSpacing(on *field, x, girth float64) float64 {
	aft, fore := on.stops[0], on.stops[len(on.stops)-1]
	for _, s := range on.stops {
		if s.x < x-near && s.reach >= girth-near {
			aft = s
		}
		if s.x > x+near && s.reach >= girth-near && s.x < fore.x {
			fore = s
		}
	}
	share := 0.0
	if long := on.course(x).long(); long > 0 {
		share = girth / long
	}
	at := func(s stop) hydrostatics.Vector { return b.point(on, s, share*on.course(s.x).long()) }
	here := on.course(x).point(girth)
	sum := 0.0
	if aft.x < x-near {
		sum += distance(at(aft), here)
	}
	if fore.x > x+near {
		sum += distance(here, at(fore))
	}
	return sum / 2
}

// plateBeside is the plate that a frame stands on, the thinner where one ends at it.
func (b *builder) plateBeside(on *field, x, from, to float64) *record.Plating {
	var thin *record.Plating
	for _, dx := range []float64{-0.02, 0.02} {
		for _, t := range []float64{0.1, 0.5, 0.9} {
			p := b.plateAt(on, x+dx, from+float64(t*(to-from)))
			if p != nil && (thin == nil || p.Thickness.V < thin.Thickness.V) {
				thin = p
			}
		}
	}
	return thin
}

// plateUnder is the plate that a run lies on between two stops, the thinner where there are two.
func (b *builder) plateUnder(f *field, r *run, aft, fore stop) *record.Plating {
	var thin *record.Plating
	for _, t := range []float64{0.05, 0.5, 0.95} {
		x := aft.x + float64(t*(fore.x-aft.x))
		on := f.course(x)
		g := min(max(r.girth(x, on.long()), f.inner), f.outer(x))
		for _, dg := range []float64{-0.005, 0.005} {
			p := b.plateAt(f, x, min(max(g+dg, f.inner), f.outer(x)))
			if p != nil && (thin == nil || p.Thickness.V < thin.Thickness.V) {
				thin = p
			}
		}
	}
	return thin
}

// where a frame is on record.
func framePlaces(all []*record.Frame) []finding.Place {
	var out []finding.Place
	for _, f := range all {
		out = append(out, f.At)
	}
	return out
}
