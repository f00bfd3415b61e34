package chart

import (
	"fmt"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

// Arrangement draws the hull to scale from the side and from above: its edges, stations, recesses and openings, the water
// and the centres of gravity and buoyancy. frames are positions along the hull; none where they are not known.
func Arrangement(r lines.Result, frames []float64) Figure {
	const id, title = "fig-lines-plan", "Profile and plan"
	v, ok := shapeOf(r)
	if !ok {
		return blank(id, title, "The lines are not on record, or are not those of a hull.", nil)
	}
	a := sideView{shape: v, frames: frames}
	p := plate{id: id, title: title, alt: a.words(), paint: a.draw}
	return p.finished(a.note(), a.table())
}

type sideView struct {
	shape
	frames []float64
}

func (a sideView) words() string {
	words := fmt.Sprintf("Hull from x %s to %s m, %s m broad.", unit.Text(a.aft(), 2), unit.Text(a.fore(), 2), unit.Text(2*a.half, 2))
	if a.floats {
		words += fmt.Sprintf(" Loaded with %s kg it floats on a waterline of %s m with %s m of freeboard amidships; centre of gravity at x %s, z %s m.",
			unit.Text(a.afloat.Load.Mass, 0), unit.Text(a.afloat.LengthWL, 2), unit.Text(a.afloat.Freeboard[1], 2),
			unit.Text(a.afloat.Load.Centre.X, 2), unit.Text(a.afloat.Load.Centre.Z, 2))
	}
	return words
}

func (a sideView) note() string {
	note := "Both views to one scale. Thin uprights are the stations. Below the centre line the waterline and the chines are drawn to starboard only."
	if a.floats {
		note += " G, disc with a cross: centre of gravity, loaded. B, ring with a point: centre of buoyancy. The broken line is the water, loaded."
	}
	if len(a.Recesses)+len(a.Openings) > 0 {
		note += " Dashed: recesses down to their sole; open squares: lowest points of openings that do not close, filled: of those that do."
	}
	if len(a.frames) > 0 {
		note += " Short strokes at the keel: frames."
	}
	return note
}

func (a sideView) table() [][]string {
	table := [][]string{{"What", "x, m", "y, m", "z, m"}}
	add := func(what string, x, y, z float64) {
		table = append(table, []string{what, unit.Text(x, 2), unit.Text(y, 2), unit.Text(z, 3)})
	}
	if a.floats {
		g, b := a.afloat.Load.Centre, a.afloat.Rest.Centre
		add("centre of gravity, loaded", g.X, g.Y, g.Z)
		add("centre of buoyancy", b.X, b.Y, b.Z)
		add("water at its aft end", a.afloat.Aft, 0, a.water(a.afloat.Aft))
		add("water at its fore end", a.afloat.Fore, 0, a.water(a.afloat.Fore))
	}
	for _, o := range a.Openings {
		for _, p := range o.At {
			add("opening, "+o.Name, p.X, p.Y, p.Z)
		}
	}
	for _, r := range a.Recesses {
		add("recess "+r.ID+", aft end of the sole", r.Aft, r.Half, r.Sole)
		add("recess "+r.ID+", fore end of the sole", r.Fore, r.Half, r.Sole)
	}
	if len(table) == 1 {
		return nil
	}
	return cut(table)
}

// sideField lays the two views out under each other.
type sideField struct {
	ruler
	perMetre     float64
	base, middle float64 // y of z = 0 in the profile, of the centre line in the plan
}

func (f sideField) side(x, z float64) point  { return point{f.at(x), f.base - float64(z*f.perMetre)} }
func (f sideField) above(x, y float64) point { return point{f.at(x), f.middle + float64(y*f.perMetre)} }

func (a sideView) field(s *sheet) sideField {
	const edge, top, between = 26.0, 30.0, 40.0
	along := extent{}
	for _, x := range []float64{a.aft(), a.fore()} {
		along.take(x)
	}
	for _, o := range a.Openings {
		for _, p := range o.At {
			if p.X > a.aft()-2 && p.X < a.fore()+2 {
				along.take(p.X)
			}
		}
	}
	air := (along.hi - along.lo) * 0.03
	f := sideField{ruler: newTape(along.lo-air, along.hi+air, edge, s.w-2*edge)}
	f.perMetre = f.length / (f.most - f.least)
	ceiling := a.ceiling()
	if most := 320 / (ceiling - a.low); f.perMetre > most {
		f.perMetre = most
		f.length = float64(most * (f.most - f.least))
	}
	f.base = top + float64(ceiling*f.perMetre)
	foot := f.base - float64(a.low*f.perMetre)
	f.middle = foot + between + float64(a.half*f.perMetre)
	return f
}

// ceiling is the greatest height that the profile shows: that of the hull, or of an opening in what stands on it.
func (a sideView) ceiling() float64 {
	most := a.high
	for _, o := range a.Openings {
		for _, p := range o.At {
			if p.Z <= a.high+2.5 && p.X > a.aft()-2 && p.X < a.fore()+2 {
				most = max(most, p.Z)
			}
		}
	}
	return most
}

func (a sideView) draw(s *sheet) {
	f := a.field(s)
	foot := f.middle + float64(a.half*f.perMetre) + 14
	s.h = s.ruled(f.ruler, 26, foot, "forward of the transom, m")
	a.profile(s, f)
	a.plan(s, f)
	a.labels(s, f)
}

// along gives an edge as places by a projection.
func (a sideView) edge(e lines.Edge, at func(x float64, p hydrostatics.Point) point) []point {
	out := make([]point, 0, len(a.stations))
	for _, one := range a.shown() {
		out = append(out, at(one.X, one.At[e]))
	}
	return out
}

func (a sideView) profile(s *sheet, f sideField) {
	flat := func(x float64, p hydrostatics.Point) point { return f.side(x, p.Z) }
	keel, sheer := a.edge(lines.Keel, flat), a.edge(lines.Sheer, flat)
	s.shape("g-hull", append(append([]point{}, keel...), reversed(sheer)...)...)
	var uprights []segment
	for i := range keel {
		uprights = append(uprights, segment{keel[i], sheer[i]})
	}
	s.strokes("g-station", uprights)
	for _, e := range a.edges() {
		s.curve(edgeClass(e), a.edge(e, flat)...)
	}
	n := len(keel) - 1
	s.curve("g-edge", keel[0], sheer[0])
	s.curve("g-edge", keel[n], sheer[n])
	for _, x := range a.frames {
		if x >= a.aft() && x <= a.fore() {
			k := f.side(x, a.Section(x).At[lines.Keel].Z)
			s.line("g-tip", k.x, k.y, k.x, k.y+5)
		}
	}
	for _, r := range a.recesses() {
		s.shape("g-wanted", f.side(r.Aft, r.Sole), f.side(r.Aft, a.sheerZ(r.Aft)), f.side(r.Fore, a.sheerZ(r.Fore)), f.side(r.Fore, r.Sole))
	}
	if a.floats {
		from, to := f.side(f.least, a.water(f.least)), f.side(f.most, a.water(f.most))
		s.line("g-water", from.x, from.y, to.x, to.y)
	}
}

func edgeClass(e lines.Edge) string {
	if e == lines.Outer || e == lines.Knuckle {
		return "g-edge-thin"
	}
	return "g-edge"
}

func reversed(all []point) []point {
	out := make([]point, len(all))
	for i, p := range all {
		out[len(all)-1-i] = p
	}
	return out
}

func (a sideView) sheerZ(x float64) float64 { return a.Section(x).At[lines.Sheer].Z }

// recesses are those that lie in the hull.
func (a sideView) recesses() []lines.Recess {
	var out []lines.Recess
	for _, r := range a.Recesses {
		if r.Aft < r.Fore && r.Aft >= a.aft()-0.01 && r.Fore <= a.fore()+0.01 && r.Half > 0 && r.Half <= a.half && r.Sole >= a.low && r.Sole <= a.high {
			out = append(out, r)
		}
	}
	return out
}

func (a sideView) plan(s *sheet, f sideField) {
	starboard := func(x float64, p hydrostatics.Point) point { return f.above(x, p.Y) }
	port := func(x float64, p hydrostatics.Point) point { return f.above(x, -p.Y) }
	s.shape("g-hull", append(a.edge(lines.Sheer, port), reversed(a.edge(lines.Sheer, starboard))...)...)
	s.line("g-axis", f.at(f.least), f.middle, f.at(f.most), f.middle)
	var uprights []segment
	for _, one := range a.shown() {
		uprights = append(uprights, segment{f.above(one.X, 0), f.above(one.X, one.At[lines.Sheer].Y)})
	}
	s.strokes("g-station", uprights)
	for _, e := range a.edges()[1:] {
		s.curve(edgeClass(e), a.edge(e, starboard)...)
	}
	s.curve("g-edge", a.edge(lines.Sheer, port)...)
	first, last := a.stations[0], a.stations[len(a.stations)-1]
	for _, one := range []lines.Station{first, last} {
		y := one.At[lines.Sheer].Y
		s.curve("g-edge", f.above(one.X, -y), f.above(one.X, y))
	}
	for _, r := range a.recesses() {
		s.shape("g-wanted", f.above(r.Aft, -r.Half), f.above(r.Fore, -r.Half), f.above(r.Fore, r.Half), f.above(r.Aft, r.Half))
	}
	var wet []point
	for _, one := range a.shown() {
		if y, _, ok := a.wetHalf(one); ok {
			wet = append(wet, f.above(one.X, y))
		}
	}
	if len(wet) > 1 {
		if a.afloat.Fore < a.fore() && a.afloat.Fore > a.aft() {
			wet = append(wet, f.above(a.afloat.Fore, 0))
		}
		s.curve("g-water", wet...)
	}
}
