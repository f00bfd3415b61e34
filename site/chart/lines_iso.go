package chart

import (
	"math"
	"sort"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/unit"
)

// Isometric draws the hull as it is seen from aft, from starboard and from above, all three axes to one scale.
func Isometric(r lines.Result) Figure {
	const id, title = "fig-isometric", "The hull in isometric view"
	v, ok := shapeOf(r)
	if !ok {
		return blank(id, title, "The lines are not on record, or are not those of a hull.", nil)
	}
	i := isometric{v}
	alt := "The hull seen from aft, starboard and above: " + unit.Text(i.fore()-i.aft(), 2) + " m long, " + unit.Text(2*i.half, 2) + " m broad, " +
		unit.Text(i.high-i.low, 2) + " m from the lowest to the highest point."
	note := "Isometric: lengths along the three axes are to one scale. Plates run straight from station to station; the deck is drawn closed over the sheer."
	if i.floats {
		note += " The broken line is the water, loaded."
	}
	return plate{id: id, title: title, alt: alt, paint: i.draw}.finished(note, nil)
}

type isometric struct{ shape }

// facet is one piece of plate, seen from the eye.
type facet struct {
	class  string
	points []point
	near   float64 // how near the eye its middle lies
}

// isoField is a projection laid on a sheet.
type isoField struct{ x0, y0, perMetre float64 }

// at projects: forward goes right and up, starboard right and down, height up.
func (f isoField) at(v hydrostatics.Vector) point {
	const c, s = 0.8660254037844386, 0.5
	return point{f.x0 + float64(f.perMetre*c*(v.X+v.Y)), f.y0 - f.perMetre*(float64(s*(v.X-v.Y))+v.Z)}
}

func (i isometric) field(s *sheet) isoField {
	raw := isoField{perMetre: 1}
	x, y := extent{}, extent{}
	for _, one := range i.stations {
		for _, v := range append(i.ring(one, 1), i.ring(one, -1)...) {
			p := raw.at(v)
			x.take(p.x)
			y.take(p.y)
		}
	}
	const edge, tallest = 12.0, 470.0
	f := isoField{perMetre: min((s.w-2*edge)/(x.hi-x.lo), tallest/(y.hi-y.lo))}
	f.x0 = edge - float64(f.perMetre*x.lo) + (s.w-2*edge-float64(f.perMetre*(x.hi-x.lo)))/2
	f.y0 = edge - float64(f.perMetre*y.lo)
	s.h = 2*edge + float64(f.perMetre*(y.hi-y.lo))
	return f
}

const deckParts = 2

// ring gives the half section and the deck of a station as points of the hull, to the given side.
func (i isometric) ring(one lines.Station, side float64) []hydrostatics.Vector {
	all := make([]hydrostatics.Vector, 0, 12)
	for _, e := range i.edges() {
		all = append(all, hydrostatics.Vector{X: one.X, Y: side * one.At[e].Y, Z: one.At[e].Z})
	}
	deck := i.Deck(one, deckParts)
	for k := deckParts - 1; k >= 0; k-- {
		all = append(all, hydrostatics.Vector{X: one.X, Y: side * deck[k].Y, Z: deck[k].Z})
	}
	return all
}

// facets gives all plates, the farthest first.
func (i isometric) facets(f isoField) []facet {
	var out []facet
	all := i.shown()
	sheer := len(i.edges()) - 1
	for _, side := range []float64{-1, 1} {
		for k := 1; k < len(all); k++ {
			p, q := i.ring(all[k-1], side), i.ring(all[k], side)
			for e := 1; e < len(p); e++ {
				class := "g-side"
				switch {
				case e == 1:
					class = "g-bottom"
				case e > sheer:
					class = "g-deck"
				}
				out = append(out, f.facet(class, p[e-1], p[e], q[e], q[e-1]))
			}
		}
	}
	for _, one := range []lines.Station{all[0], all[len(all)-1]} {
		left := i.ring(one, -1)
		end := append([]hydrostatics.Vector{}, i.ring(one, 1)...)
		for k := len(left) - 2; k > 0; k-- {
			end = append(end, left[k])
		}
		out = append(out, f.facet("g-end", end...))
	}
	sort.SliceStable(out, func(a, b int) bool { return out[a].near < out[b].near })
	return out
}

func (f isoField) facet(class string, corners ...hydrostatics.Vector) facet {
	out := facet{class: class}
	for _, v := range corners {
		out.points = append(out.points, f.at(v))
		out.near += (v.Y + v.Z - v.X) / float64(len(corners))
	}
	return out
}

func (i isometric) draw(s *sheet) {
	f := i.field(s)
	for _, one := range i.facets(f) {
		s.shape(one.class, one.points...)
	}
	i.outlines(s, f)
	i.water(s, f)
	i.axes(s, f)
}

// outlines goes over the edges that are seen: chine and sheer to starboard, the sheer to port, and the aft end.
func (i isometric) outlines(s *sheet, f isoField) {
	edge := func(e lines.Edge, side float64) {
		var all []point
		for _, one := range i.shown() {
			all = append(all, f.at(hydrostatics.Vector{X: one.X, Y: side * one.At[e].Y, Z: one.At[e].Z}))
		}
		s.curve("g-edge", all...)
	}
	edge(lines.Chine, 1)
	edge(lines.Sheer, 1)
	edge(lines.Sheer, -1)
	for _, r := range (sideView{shape: i.shape}).recesses() {
		rim := func(x, y float64) point {
			at := i.Section(x)
			z := at.At[lines.Sheer].Z
			if b := at.At[lines.Sheer].Y; b > 0 {
				z += i.Camber * (1 - math.Min(1, y*y/(b*b)))
			}
			return f.at(hydrostatics.Vector{X: x, Y: y, Z: z})
		}
		s.shape("g-wanted", rim(r.Aft, -r.Half), rim(r.Fore, -r.Half), rim(r.Fore, r.Half), rim(r.Aft, r.Half))
	}
}

// water draws where the water meets the starboard side and the aft end.
func (i isometric) water(s *sheet, f isoField) {
	var all []point
	for k, one := range i.shown() {
		y, z, ok := i.wetHalf(one)
		if !ok {
			continue
		}
		if k == 0 {
			all = append(all, f.at(hydrostatics.Vector{X: one.X, Y: -y, Z: z}))
		}
		all = append(all, f.at(hydrostatics.Vector{X: one.X, Y: y, Z: z}))
	}
	if len(all) > 1 {
		s.curve("g-water", all...)
	}
}

// axes draws a length of each axis at the lower right, where no hull is.
func (i isometric) axes(s *sheet, f isoField) {
	length := 1.0
	for _, l := range roundLengths {
		if float64(l*f.perMetre) <= max(44, s.w/9) {
			length = l
			break
		}
	}
	reach := float64(length * f.perMetre)
	o := isoField{s.w - 12 - advance("starboard") - 0.87*reach, s.h - 14 - reach/2, f.perMetre}
	for _, axis := range []struct {
		v    hydrostatics.Vector
		name string
	}{{hydrostatics.Vector{X: length}, "forward"}, {hydrostatics.Vector{Y: length}, "starboard"}, {hydrostatics.Vector{Z: length}, unit.Plain(length) + " m up"}} {
		end := o.at(axis.v)
		s.line("g-tip", o.x0, o.y0, end.x, end.y)
		if axis.v.Z > 0 {
			s.text("g-text", end.x-2, end.y-6, start, axis.name)
			continue
		}
		s.text("g-text", end.x+5, end.y+3, start, axis.name)
	}
}
