package grid

import (
	"math"
	"slices"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
)

// models lays rings and grillages for a beam model: geometry, sections and what holds them.
func (b *builder) models() {
	for _, f := range b.frames {
		if r, ok := b.ring(f); ok {
			b.out.Rings = append(b.out.Rings, r)
		}
	}
	b.grillages()
}

// ring is the half of one frame to starboard. A corner is a joint, and so is a girder under it, which holds it.
func (b *builder) ring(f *record.Frame) (Ring, bool) {
	r := Ring{Frame: f.ID, X: float64(f.X.V), Place: f.At}
	for i := range b.pieces {
		p := &b.pieces[i]
		if p.at != f.At || p.zone == "sole" || p.zone == "transom" || p.zone == "bulkhead" {
			continue
		}
		path := p.path
		if path[0].Y < -1e-9 {
			path = toStarboard(path)
		}
		from := r.joint(path[0])
		for _, v := range path[1:] {
			to := r.joint(v)
			r.Spans = append(r.Spans, p.span(from, to))
			from = to
		}
	}
	b.joints(f, &r)
	return r, len(r.Spans) > 0
}

// toStarboard keeps the half of a path that crosses the centre line.
func toStarboard(path []hydrostatics.Vector) []hydrostatics.Vector {
	var out []hydrostatics.Vector
	for i, v := range path {
		if v.Y >= -1e-9 {
			if len(out) == 0 && i > 0 && v.Y > 1e-9 {
				out = append(out, between(path[i-1], v, path[i-1].Y/(path[i-1].Y-v.Y)))
			}
			out = append(out, v)
		}
	}
	return out
}

func (p *piece) span(from, to int) Span {
	s := Span{Member: p.name, From: from, To: to, Section: p.section, Zone: p.judged, Width: p.spacing}
	if p.plate != nil && !p.off {
		s.Attached, s.Alloy = float64(p.plate.Thickness.V), p.plate.Alloy.V
	}
	return s
}

// joint gives the joint at a place, a new one where there is none.
func (r *Ring) joint(v hydrostatics.Vector) int {
	for i, j := range r.Joints {
		if distance(j.At, v) < 0.07 { // across the chine flat, which is shorter than the depth of a frame
			return i
		}
	}
	r.Joints = append(r.Joints, Joint{At: v, Fixed: true})
	return len(r.Joints) - 1
}

// joints names the joints of a ring and says how they are made.
func (b *builder) joints(f *record.Frame, r *Ring) {
	c := b.skin.at(r.X)
	deck := b.skin.deck(r.X)
	corners := []struct {
		name string
		at   hydrostatics.Vector
		made record.Val[string]
	}{
		{"keel", c.bottom.at[0], f.Keel},
		{"chine", c.bottom.point(c.bottom.long()), f.Chine},
		{"outer chine", c.side.at[0], f.Chine},
		{"sheer", c.side.point(c.side.long()), f.Sheer},
		{"deck at the centre line", deck.at[0], record.Written("fixed", f.At)},
	}
	for i := range r.Joints {
		j := &r.Joints[i]
		for _, k := range corners {
			if j.Name == "" && distance(j.At, k.at) < 0.07 {
				j.Name, j.Fixed = k.name, k.made.V == "fixed"
			}
		}
		if j.Name == "" {
			j.Name = b.girderAt(r.X, j)
		}
	}
}

// girderAt names the girder or support under a joint; what has no name is a corner of the section.
func (b *builder) girderAt(x float64, j *Joint) string {
	for _, f := range b.fields {
		for _, r := range f.runs {
			if !r.hard() && r.kind != "support" || !r.covers(x, x) {
				continue
			}
			if p := f.course(x).point(r.girth(x, f.course(x).long())); distance(p, j.At) < near {
				j.Held = r.words()
				return r.words()
			}
		}
	}
	return "corner"
}

// grillages lays the bottom between what holds it firmly: the transom, bulkheads, the stem.
func (b *builder) grillages() {
	if len(b.shellZones) == 0 {
		return
	}
	f := b.shellZones[0]
	from := 0
	for i := 1; i < len(f.stops); i++ {
		s := f.stops[i]
		if s.frame != nil && s.frame.Kind.V != "bulkhead" {
			continue
		}
		if g := b.grillage(f, f.stops[from:i+1]); len(g.Frames) > 0 && len(g.Lengths) > 0 {
			b.out.Grillages = append(b.out.Grillages, g)
		}
		from = i
	}
}

// grillage is one bay of it: frames from keel to chine, stringers from end to end, joined where they cross.
func (b *builder) grillage(f *field, stops []stop) Grillage {
	first, last := stops[0], stops[len(stops)-1]
	g := Grillage{Name: "bottom, " + first.phrase() + " to " + last.phrase()}
	for _, s := range stops[1 : len(stops)-1] {
		b.acrossGrillage(f, s, stops, &g)
	}
	for _, r := range f.runs {
		if r.rec != nil && r.rec.Section.Set && !r.edgeBar() && r.side != "port" && r.side != "starboard" {
			b.alongGrillage(f, r, stops, &g)
		}
	}
	return g
}

// acrossGrillage lays one frame of a grillage, from joint to joint.
func (b *builder) acrossGrillage(f *field, s stop, stops []stop, g *Grillage) {
	on := f.course(s.x)
	type at struct {
		girth      float64
		name, held string
	}
	cuts := []at{{0, "keel", "keel"}}
	for _, r := range f.runs {
		q := r.girth(s.x, on.long())
		if r.rec != nil && r.rec.Section.Set && !r.edgeBar() && r.aft <= s.x+near && r.fore >= s.x-near && q > near && q < min(on.long()-near, s.reach+near) && r.side != "port" && r.side != "starboard" {
			cuts = append(cuts, at{q, r.words(), ""})
		}
	}
	slices.SortStableFunc(cuts[1:], func(p, q at) int { return order(p.girth, q.girth) })
	if s.reach >= on.long()-near {
		cuts = append(cuts, at{on.long(), "chine", "chine"})
	}
	for i := 1; i < len(cuts); i++ {
		p := b.pieceAt(s.frame, (cuts[i-1].girth+cuts[i].girth)/2, on)
		if p == nil {
			continue
		}
		from := g.joint(on.point(cuts[i-1].girth), cuts[i-1].name, cuts[i-1].held, heldFirmly(s.frame, cuts[i-1].held))
		to := g.joint(on.point(cuts[i].girth), cuts[i].name, cuts[i].held, heldFirmly(s.frame, cuts[i].held))
		g.Frames = append(g.Frames, p.span(from, to))
	}
}

// heldFirmly reports whether a frame's end passes moments; inside it runs on.
func heldFirmly(f *record.Frame, held string) bool {
	switch held {
	case "keel":
		return f.Keel.V == "fixed"
	case "chine":
		return f.Chine.V == "fixed"
	}
	return true
}

// pieceAt is the part of a frame on the bottom at a girth.
func (b *builder) pieceAt(f *record.Frame, girth float64, on course) *piece {
	here := on.point(girth)
	for i := range b.pieces {
		p := &b.pieces[i]
		if p.at == f.At && p.zone == "bottom" && offPath(p.path, here) < near {
			return p
		}
	}
	return nil
}

func offPath(path []hydrostatics.Vector, v hydrostatics.Vector) float64 {
	least := math.Inf(1)
	for i := 1; i < len(path); i++ {
		p, q := path[i-1], path[i]
		d, w := q.Less(p), v.Less(p)
		t := min(max(w.Dot(d)/max(d.Dot(d), 1e-12), 0), 1)
		least = min(least, distance(between(p, q, t), v))
	}
	return least
}

// alongGrillage lays one stringer or girder of a grillage.
func (b *builder) alongGrillage(f *field, r *run, stops []stop, g *Grillage) {
	for i := 1; i < len(stops); i++ {
		aft, fore := stops[i-1], stops[i]
		on, to := f.course(aft.x), f.course(fore.x)
		p, q := r.girth(aft.x, on.long()), r.girth(fore.x, to.long())
		if !f.through(r, aft.x, fore.x) || p <= near || q <= near || p >= on.long()-near || q >= to.long()-near {
			continue
		}
		width := b.halfWays(f, r, aft, fore, (aft.x+fore.x)/2)
		s := Span{Member: b.nameOf(r, aft, fore), Section: r.rec.Section.V, Zone: f.judged, Width: width}
		if plate := b.plateUnder(f, r, aft, fore); plate != nil {
			s.Attached, s.Alloy = float64(plate.Thickness.V), plate.Alloy.V
		}
		s.From = g.joint(on.point(p), r.words(), end(i == 1, aft), b.held(r))
		s.To = g.joint(to.point(q), r.words(), end(i == len(stops)-1, fore), b.held(r))
		g.Lengths = append(g.Lengths, s)
	}
}

func end(at bool, s stop) string {
	if at {
		return s.phrase()
	}
	return ""
}

// nameOf is the member of the grid that a run is in a bay.
func (b *builder) nameOf(r *run, aft, fore stop) string {
	mid := (aft.x + fore.x) / 2
	for i := range b.pieces {
		p := &b.pieces[i]
		if p.run == r && p.path[0].X < mid && p.path[len(p.path)-1].X > mid {
			return p.name
		}
	}
	return ""
}

// joint gives the joint at a place of a grillage, a new one where there is none.
func (g *Grillage) joint(v hydrostatics.Vector, name, held string, fixed bool) int {
	for i := range g.Joints {
		if j := &g.Joints[i]; distance(j.At, v) < 0.01 {
			if j.Held == "" {
				j.Held = held
			}
			return i
		}
	}
	g.Joints = append(g.Joints, Joint{Name: name, At: v, Held: held, Fixed: fixed})
	return len(g.Joints) - 1
}
