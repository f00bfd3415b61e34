package grid

import (
	"math"
	"slices"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
)

// decks lays decks and soles, each plate by itself: its ends and its edges are held by what it ends at.
func (b *builder) decks() {
	for i := range b.rec.Platings {
		p := &b.rec.Platings[i]
		switch p.Zone.V {
		case "deck":
			b.field(b.deckField(p))
		case "sole":
			if f := b.soleField(p); f != nil {
				b.field(f)
			}
		}
	}
}

// deckField is one plate of the deck. Inside its inner edge there is an opening: a cockpit, a house.
func (b *builder) deckField(p *record.Plating) *field {
	f := &field{name: "deck " + p.ID, zone: "deck", judged: "deck", course: b.skin.deck, base: func(float64) float64 { return 0 },
		inner: float64(p.Inner.V), one: p, at: p.At}
	f.central = f.inner < near
	f.outer = func(x float64) float64 {
		edge := b.skin.deck(x).long()
		if v, ok := p.Outer.Get(); ok {
			edge = min(edge, float64(v))
		}
		return max(edge, f.inner)
	}
	b.bays(f, p, onDeck)
	f.runs = slices.DeleteFunc(b.runs("deck"), func(r *run) bool { return !r.touches(f.stops[0].x, f.stops[len(f.stops)-1].x) })
	return f
}

// soleField is one sole: level, from the centre line to the side of its recess, or to the skin.
func (b *builder) soleField(p *record.Plating) *field {
	recess := b.recessOf(p)
	z, written := p.Z.Get()
	if !written && recess == nil {
		b.soleUnplaced(p)
		return nil
	}
	level := float64(z)
	if !written {
		level = recess.Sole
	}
	f := &field{name: "sole " + p.ID, zone: "sole", judged: "deck", base: func(float64) float64 { return 0 }, inner: float64(p.Inner.V), one: p, level: level, at: p.At}
	f.central = f.inner < near
	known := map[float64]course{}
	f.course = func(x float64) course {
		c, done := known[x]
		if !done {
			half, _ := b.skin.at(x).station.Breadth(level)
			c = newCourse([]hydrostatics.Vector{{X: x, Z: level}, {X: x, Y: half, Z: level}})
			known[x] = c
		}
		return c
	}
	f.outer = func(x float64) float64 {
		edge := f.course(x).long()
		if recess != nil {
			edge = min(edge, recess.Half)
		}
		if v, ok := p.Outer.Get(); ok {
			edge = min(edge, float64(v))
		}
		return max(edge, f.inner)
	}
	b.bays(f, p, onSole)
	f.runs = slices.DeleteFunc(b.runs("sole"), func(r *run) bool { return r.hasZ && math.Abs(r.z-level) > near })
	return f
}

// bays gives a deck or sole its stops: its own ends, and the frames between them that hold it.
func (b *builder) bays(f *field, p *record.Plating, reach func(*record.Frame) float64) {
	aft, fore := b.extent(p.Aft, p.Fore)
	first, last := stop{name: "aft end", x: aft, reach: math.Inf(1)}, stop{name: "fore end", x: fore, reach: math.Inf(1)}
	f.stops = []stop{first}
	for _, s := range b.stops(reach) {
		switch {
		case math.Abs(s.x-aft) < near:
			s.x, s.lean = aft, false
			f.stops[0] = s
		case math.Abs(s.x-fore) < near:
			s.x = fore
			last = s
		case s.frame != nil && s.x > aft && s.x < fore:
			f.stops = append(f.stops, s)
		}
	}
	f.stops = append(f.stops, last)
}

// recessOf is the recess whose sole a plate is: the one that lies over its middle.
func (b *builder) recessOf(p *record.Plating) *lines.Recess {
	aft, fore := b.extent(p.Aft, p.Fore)
	mid := (aft + fore) / 2
	for i := range b.skin.hull.Recesses {
		r := &b.skin.hull.Recesses[i]
		if r.Aft <= mid && mid <= r.Fore && (!p.Z.Set || math.Abs(float64(p.Z.V)-r.Sole) < near) {
			return r
		}
	}
	return nil
}
