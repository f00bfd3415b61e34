package weight

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// metresPerMM turns a thickness into metres; squared, it turns a section.
const metresPerMM = 1e-3

// way is one way in which the record gives the mass of one item.
type way struct {
	name   string
	each   float64 // kg
	text   string  // "4.32 m² × 6.0 mm × 2 660 kg/m³"
	source string
	basis  finding.Basis
}

// reckoned is an item with all the ways in which its mass could be known.
type reckoned struct {
	ways  []way    // the first one governs
	lacks []string // record keys that would complete a way, where there is none
}

// reckon turns a record into an item. The written mass governs over what plate or profile would give, because it is
// what somebody put down as the mass; a difference is a finding, not a silent choice.
func reckon(rec *record.Weight, alloys *material.Table) (Item, reckoned) {
	it := Item{
		Record: rec, Count: 1,
		HasX: rec.X.Set, HasY: rec.Y.Set, HasZ: rec.Z.Set,
	}
	if rec.Count.Set {
		it.Count = rec.Count.V
	}
	r := waysOf(rec, alloys)
	if len(r.ways) == 0 {
		it.Working = "no mass: " + keys(r.lacks) + " not written"
		return it, r
	}
	it.take(r.ways[0])
	return it, r
}

// take fills in the mass by one way, with count, margin and working. The margin is added to what it is a part of, also
// for something taken out: not knowing makes the boat heavier, never lighter.
func (it *Item) take(w way) {
	count := float64(it.Count)
	bare := float64(w.each * count)
	margin := math.Abs(bare) * float64(it.Record.Margin.V) / 100
	it.HasMass = true
	it.Each, it.Margin, it.Mass = unit.KG(w.each), unit.KG(margin), unit.KG(bare+margin)
	it.Source, it.Basis = w.source, w.basis
	it.Working = w.text
	if it.Count > 1 {
		it.Working = fmt.Sprintf("%d × %s", it.Count, w.text)
	}
	if w.name != written || it.Count > 1 {
		it.Working += " = " + unit.Text(bare, 1) + " kg"
	}
	if margin > 0 {
		it.Working += fmt.Sprintf("; margin %s %% = %s kg; together %s kg", unit.Text(it.Record.Margin.V, 1), unit.Text(margin, 1), unit.Text(it.Mass, 1))
	}
}

// OnRecord is the source of a mass that needs no density of an alloy.
const OnRecord = "record"

// The ways by name.
const (
	written = "written mass"
	plate   = "plate"
	profile = "profile"
	line    = "mass of a metre"
)

// waysOf collects the ways in which the record gives a mass.
func waysOf(rec *record.Weight, alloys *material.Table) reckoned {
	var r reckoned
	if m, ok := rec.Mass.Get(); ok {
		r.ways = append(r.ways, way{name: written, each: float64(m), text: unit.Text(m, 1) + " kg", basis: finding.Yard, source: OnRecord})
	}
	d, known := densityOf(rec, alloys)
	r.plate(rec, d, known)
	r.profile(rec, d, known)
	if len(r.ways) == 0 && len(r.lacks) == 0 {
		r.lacks = []string{"mass_kg"}
	}
	return r
}

// plate takes area, thickness and density.
func (r *reckoned) plate(rec *record.Weight, d density, known bool) {
	if !rec.Area.Set {
		return
	}
	if lacks := lacking(missing{"thickness_mm", rec.Thickness.Set}, missing{"alloy or density_kg_m3", known}); len(lacks) > 0 {
		r.lacks = append(r.lacks, lacks...)
		return
	}
	area, thickness := float64(rec.Area.V), float64(rec.Thickness.V)*metresPerMM
	r.ways = append(r.ways, way{
		name: plate, each: area * thickness * float64(d.value), source: d.source, basis: d.basis,
		text: fmt.Sprintf("%s m² × %s mm × %s", unit.Text(area, 2), unit.Text(rec.Thickness.V, 1), d.text),
	})
}

// profile takes length with the mass of a metre, and length with section and density.
func (r *reckoned) profile(rec *record.Weight, d density, known bool) {
	if !rec.Length.Set {
		return
	}
	length := float64(rec.Length.V)
	if rec.LineMass.Set {
		r.ways = append(r.ways, way{
			name: line, each: length * float64(rec.LineMass.V), source: OnRecord, basis: finding.Yard,
			text: fmt.Sprintf("%s m × %s kg/m", unit.Text(length, 2), unit.Text(rec.LineMass.V, 2)),
		})
	}
	lacks := lacking(missing{"section_mm2 or line_mass_kg_m", rec.Section.Set}, missing{"alloy or density_kg_m3", known})
	if len(lacks) > 0 {
		if !rec.LineMass.Set {
			r.lacks = append(r.lacks, lacks...)
		}
		return
	}
	section := float64(rec.Section.V) * metresPerMM * metresPerMM
	r.ways = append(r.ways, way{
		name: profile, each: length * section * float64(d.value), source: d.source, basis: d.basis,
		text: fmt.Sprintf("%s m × %s mm² × %s", unit.Text(length, 2), unit.Text(rec.Section.V, 0), d.text),
	})
}

// missing is a key and whether it was written after all.
type missing struct {
	key string
	set bool
}

// lacking names the keys that were not written.
func lacking(all ...missing) []string {
	var keys []string
	for _, m := range all {
		if !m.set {
			keys = append(keys, m.key)
		}
	}
	return keys
}
