package chart

import (
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
)

// This file names what the two views of the hull show: centres and openings first, then recesses, water and edges.

func (a sideView) labels(s *sheet, f sideField) {
	foot := f.base - float64(a.low*f.perMetre)
	s.text("g-soft", 2, 14, start, "profile")
	s.text("g-soft", 2, foot+30, start, "plan")
	a.stationNames(s, f, foot+14)
	profile := placer{bounds: box{f.from, 18, s.w - 2, foot + 2}, taken: append([]box{}, s.words...)}
	plan := placer{bounds: box{f.from, foot + 34, s.w - 2, f.middle + float64(a.half*f.perMetre) + 12}, taken: append([]box{}, s.words...)}
	a.obstacles(&profile, &plan, f)
	a.marks(s, f, &profile, &plan)
	if a.floats {
		x := f.most - (f.most-f.least)*0.02
		name(s, &profile, "g-label g-b-name", f.side(x, a.water(x)), "water")
	}
	for _, r := range a.recesses() {
		if s.slim() {
			break // the table names them
		}
		name(s, &profile, "g-label", f.side((r.Aft+r.Fore)/2, r.Sole), fit(r.ID, s.w/4))
	}
	for _, e := range a.edges() {
		if s.slim() && e != lines.Sheer && e != lines.Chine {
			continue
		}
		x := a.aft() + (a.fore()-a.aft())*[...]float64{0.5, 0.3, 0.42, 0.36, 0.62}[e]
		p := a.Section(x).At[e]
		clearly(s, &profile, f.side(x, p.Z), e.String())
		if e != lines.Keel {
			clearly(s, &plan, f.above(x, p.Y), e.String())
		}
	}
}

// name sets a name only where there is clear room near by.
func name(s *sheet, p *placer, class string, at point, text string) {
	if text == "" {
		return
	}
	if _, ring, ok := p.find(at, text); ok && ring < 4 {
		p.set(s, class, at, text)
	}
}

// clearly sets the name of an edge only where no line runs through it.
func clearly(s *sheet, p *placer, at point, text string) {
	if _, ring, ok := p.clear(at, text); ok && ring < 3 {
		p.set(s, "g-label", at, text)
	}
}

// stationNames sets the numbers of the stations in a row under the profile, as many as there is room for.
func (a sideView) stationNames(s *sheet, f sideField, y float64) {
	reach := f.from - 4
	for _, one := range a.shown() {
		text := fit(one.ID, 36)
		half := advance(text) / 2
		if x := f.at(one.X); x-half > reach && text != "" && x+half < s.w {
			s.text("g-soft", x, y, middle, text)
			reach = x + half + 5
		}
	}
}

// obstacles keeps names off the lines of the views where that can be had.
func (a sideView) obstacles(profile, plan *placer, f sideField) {
	add := func(p *placer, all []point) {
		for i := 1; i < len(all); i++ {
			p.lines = append(p.lines, segment{all[i-1], all[i]})
		}
	}
	for _, e := range a.edges() {
		add(profile, a.edge(e, func(x float64, p hydrostatics.Point) point { return f.side(x, p.Z) }))
		add(plan, a.edge(e, func(x float64, p hydrostatics.Point) point { return f.above(x, p.Y) }))
	}
	add(plan, []point{f.above(f.least, 0), f.above(f.most, 0)})
	if a.floats {
		add(profile, []point{f.side(f.least, a.water(f.least)), f.side(f.most, a.water(f.most))})
	}
	for _, r := range a.recesses() {
		add(profile, []point{f.side(r.Aft, r.Sole), f.side(r.Fore, r.Sole)})
		add(plan, []point{f.above(r.Aft, -r.Half), f.above(r.Fore, -r.Half), f.above(r.Fore, r.Half), f.above(r.Aft, r.Half)})
	}
}

// marks draws openings and centres in both views and names them, the centres first. On a phone there is no room for the
// names of openings; the table has them.
func (a sideView) marks(s *sheet, f sideField, profile, plan *placer) {
	openings := a.openings(s, f, profile, plan)
	for _, m := range append(a.centres(s, f, profile, plan), openings...) {
		name(s, m.in, "g-label", m.at, m.text)
	}
}

// mark is something drawn that a name is still to be put beside.
type mark struct {
	at   point
	text string
	in   *placer
}

// openings draws the ways in for water, each named once.
func (a sideView) openings(s *sheet, f sideField, profile, plan *placer) []mark {
	var out []mark
	for _, o := range a.Openings {
		class := "g-open"
		if o.Shut {
			class = "g-pa"
		}
		for i, p := range o.At {
			if !a.inView(p) {
				continue
			}
			at, over := f.side(p.X, p.Z), f.above(p.X, p.Y)
			if i == 0 {
				s.rect(class, around(at.x, at.y, 3))
				if !s.slim() {
					out = append(out, mark{at, fit(o.Name, s.w/3), profile})
				}
			}
			s.rect(class, around(over.x, over.y, 3))
			profile.taken, plan.taken = append(profile.taken, around(at.x, at.y, 4)), append(plan.taken, around(over.x, over.y, 4))
		}
	}
	return out
}

// centres draws the centres of buoyancy and of mass where the boat was floated.
func (a sideView) centres(s *sheet, f sideField, profile, plan *placer) []mark {
	if !a.floats {
		return nil
	}
	var out []mark
	for _, c := range []struct {
		v    hydrostatics.Vector
		sign func(x, y float64)
		text string
	}{{a.afloat.Rest.Centre, s.buoyancy, "B"}, {a.afloat.Load.Centre, func(x, y float64) { s.gravity("g-loaded", x, y) }, "G"}} {
		if !a.inView(c.v) {
			continue
		}
		for _, in := range []struct {
			at point
			p  *placer
		}{{f.side(c.v.X, c.v.Z), profile}, {f.above(c.v.X, c.v.Y), plan}} {
			c.sign(in.at.x, in.at.y)
			in.p.taken = append(in.p.taken, around(in.at.x, in.at.y, 7))
			out = append(out, mark{in.at, c.text, in.p})
		}
	}
	return out
}

// inView reports whether a point lies where the views have room for it.
func (a sideView) inView(p hydrostatics.Vector) bool {
	return p.X >= a.aft()-2 && p.X <= a.fore()+2 && p.Z >= a.low && p.Z <= a.ceiling() && p.Y >= -a.half && p.Y <= a.half
}

// buoyancy draws the sign of the centre of buoyancy: a ring with a point.
func (s *sheet) buoyancy(x, y float64) {
	s.circle("g-open", x, y, 5)
	s.circle("g-pa", x, y, 1.7)
}
