package grid

import (
	"math"

	"hullfile/engine/record"
)

// shell lays bottom, chine flats and sides.
func (b *builder) shell() {
	b.shellZones = b.shellFields()
	for _, f := range b.shellZones {
		b.field(f)
	}
}

// shellFields are the zones between keel and sheer, from below.
func (b *builder) shellFields() []*field {
	s := b.skin
	all := []*field{{name: "bottom", zone: "bottom", judged: "bottom", course: func(x float64) course { return s.at(x).bottom },
		base: func(float64) float64 { return 0 }, stops: b.stops(onBottom)}}
	if s.hull.HasOuter {
		all = append(all, &field{name: "chine flat", zone: "chine flat", judged: "bottom", course: func(x float64) course { return s.at(x).flat },
			base: func(x float64) float64 { return s.at(x).bottom.long() }, stops: b.stops(onFlat)})
	}
	all = append(all, &field{name: "side", zone: "side", judged: "side", course: func(x float64) course { return s.at(x).side },
		base: func(x float64) float64 { return s.at(x).bottom.long() + s.at(x).flat.long() }, stops: b.stops(onSide)})
	for _, f := range all {
		course := f.course
		f.outer = func(x float64) float64 { return course(x).long() }
		f.plates = b.platesOf(f.zone)
		f.runs = b.runs(f.zone)
		for _, r := range f.runs {
			r.clear(b, f)
		}
	}
	return all
}

// onFlat holds the chine flat wherever the bottom is held out to the chine.
func onFlat(f *record.Frame) float64 {
	if r := onBottom(f); math.IsInf(r, 1) {
		return r
	}
	return -1
}

// platesOf lists the plates of a zone; a chine flat without one of its own is bent from the bottom plate.
func (b *builder) platesOf(zone string) []*record.Plating {
	var out []*record.Plating
	for i := range b.rec.Platings {
		if p := &b.rec.Platings[i]; p.Zone.V == zone {
			out = append(out, p)
		}
	}
	if zone == "chine flat" && len(out) == 0 {
		for _, p := range b.platesOf("bottom") {
			if !p.Outer.Set {
				out = append(out, p)
			}
		}
	}
	return out
}

// field lays one piece of skin: its panels and what runs fore and aft on it.
func (b *builder) field(f *field) {
	b.fields = append(b.fields, f)
	b.panels(f)
	b.lengths(f)
}
