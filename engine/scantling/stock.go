package scantling

import (
	"slices"
	"sort"

	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// platesOf are the thicknesses of plate of an alloy that the yard has in its stock, thin first.
func (j *judge) platesOf(p *Panel) []unit.MM {
	var out []unit.MM
	if j.in.Yard == nil {
		return nil
	}
	for _, plate := range j.in.Yard.StockedPlates() {
		if plate.Alloy == p.Record.Alloy.V {
			out = append(out, plate.Thickness)
		}
	}
	return out
}

// barsOf are the sections that the yard keeps in stock, light first. Without any there is only the one that is fitted.
func (j *judge) barsOf(b *zoneBuild) []*bar {
	var out []*bar
	for i := range j.hull.Sections {
		s := &j.hull.Sections[i]
		one := j.bars.found[s.ID]
		if one != nil && one.values != nil && s.Stock.V && b.suits(one) {
			out = append(out, one)
		}
	}
	if len(out) == 0 && len(b.members) > 0 {
		out = append(out, b.members[0].bar)
	}
	sort.SliceStable(out, func(i, k int) bool { return out[i].area() < out[k].area() })
	return out
}

// suits reports whether a bar is of a kind that is used in the zone, or a flat bar: a pipe from the rack is no stringer.
func (b *zoneBuild) suits(one *bar) bool {
	kind := one.alone.Shape.Kind
	return kind == section.FlatBar || slices.ContainsFunc(b.members, func(l laid) bool { return l.bar.alone.Shape.Kind == kind })
}

// area is the metal of a bar without plating, mm².
func (b *bar) area() float64 {
	f, err := b.with(0, 0)
	if err != nil {
		return 0
	}
	return 100 * float64(f.props.Bar)
}

func (b *bar) density(r *rule) float64 {
	of, _ := r.metals.of(b.record.Alloy, unit.MM(b.thickness()), b.form())
	if of == nil {
		return 0
	}
	d, _ := of.Lookup("alloy.density_kg_m3")
	return d.Number
}
