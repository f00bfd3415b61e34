package scantling

import (
	"math"
	"slices"
	"sort"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// parts of the spacing of today at which lighter plate and bar are sought.
var parts = []float64{0.75, 1, 1.25, 1.5}

// zoneBuild is one zone on its way to a lighter build: what lies in it, laid once.
type zoneBuild struct {
	j       *judge
	rule    *rule
	panels  []laid
	members []laid
	sides   [][2]float64 // of each panel, short and long
	areas   []float64    // m², both sides
	lengths []float64    // m, both sides
	plates  []unit.MM    // of stock, thin first
	bars    []*bar       // of stock, light first
	density float64      // of the plate
	out     *Result
	asked   record.Member // a member on another bar and plate, from question to question
}

// builds gives the zone as it is, then the lightest plate and bar of the yard's stock at each spacing, lightest first. It needs
// plates in stock; without bars in stock the bars stay as they are. Where something of the zone is not shown, nothing
// is proposed; nor for the transom, whose plate and bars carry the engines besides.
func (j *judge) builds(out *Result, q *WhatIf) []Build {
	if q.Zone == "transom" {
		return nil
	}
	b, ok := j.zoneBuild(out, q)
	if !ok {
		return nil
	}
	now := b.asBuilt(q)
	var found []Build
	for _, part := range parts {
		if part != 1 && len(b.members) == 0 {
			continue
		}
		if one, ok := b.lightest(part); ok {
			one.Spacing = unit.MM(settled(float64(q.Spacing) * part))
			one.Saved, one.Spared = unit.KG(settled(float64(now.Mass-one.Mass))), unit.M(settled(float64(now.Weld-one.Weld)))
			found = append(found, one)
		}
	}
	sort.SliceStable(found, func(i, k int) bool { return found[i].Mass < found[k].Mass })
	return append([]Build{now}, found...)
}

func (j *judge) zoneBuild(out *Result, q *WhatIf) (*zoneBuild, bool) {
	b := &zoneBuild{j: j, rule: j.governing(), out: out}
	ref := &out.Panels[q.Panel]
	for i := range out.Panels {
		p := &out.Panels[i]
		if p.Record.Zone.V != q.Zone {
			continue
		}
		l, ok := b.rule.layPanel(i, p)
		if !ok || p.Standing == finding.NotShown || p.Record.Alloy.V != ref.Record.Alloy.V {
			return nil, false
		}
		l.margin = p.Margin
		short, long := float64(p.Record.Short.V), float64(p.Record.Long.V)
		b.panels, b.sides = append(b.panels, l), append(b.sides, [2]float64{short, long})
		b.areas = append(b.areas, short*long*1e-6*float64(p.Count))
	}
	for i := range out.Members {
		m := &out.Members[i]
		if m.Record.Zone.V != q.Zone || m.Scope != "stiffener" {
			continue
		}
		l, ok := b.rule.layMember(i, m, j.bars)
		if !ok || m.Standing == finding.NotShown {
			return nil, false
		}
		l.margin = m.Margin
		b.members = append(b.members, l)
		b.lengths = append(b.lengths, float64(m.Record.Span.V)*1e-3*float64(m.Count))
	}
	b.plates, b.bars = j.platesOf(ref), j.barsOf(b)
	if of, _ := b.rule.metals.of(ref.Record.Alloy, ref.Fitted, "plate"); of != nil {
		d, _ := of.Lookup("alloy.density_kg_m3")
		b.density = d.Number
	}
	return b, len(b.plates) > 0 && b.density > 0
}

// asBuilt sums the zone as it is.
func (b *zoneBuild) asBuilt(q *WhatIf) Build {
	now := Build{Part: 1, Spacing: q.Spacing, Meets: true}
	mass, length := 0.0, 0.0
	for i := range b.panels {
		p := &b.out.Panels[b.panels[i].panel]
		mass += float64(b.areas[i] * float64(p.Fitted) * 1e-3 * b.density)
		now.Meets = now.Meets && p.Standing == finding.Met
		if i == 0 {
			now.Plate = p.Fitted
		} else if now.Plate != p.Fitted {
			now.Plate = 0
		}
	}
	for i := range b.members {
		one := b.members[i].bar
		mass += float64(b.lengths[i] * one.area() * 1e-6 * one.density(b.rule))
		length += b.lengths[i]
		now.Meets = now.Meets && b.out.Members[b.members[i].member].Standing == finding.Met
		if i == 0 {
			now.Section = one.record.ID
		} else if now.Section != one.record.ID {
			now.Section = ""
		}
	}
	now.Mass, now.Weld = unit.KG(settled(mass)), unit.M(settled(2*length))
	return now
}

// lightest finds the thinnest plate and then the lightest bar on it that meet at a part of the spacing of today.
func (b *zoneBuild) lightest(part float64) (Build, bool) {
	plate, ok := b.plate(part)
	if !ok {
		return Build{}, false
	}
	out := Build{Plate: plate, Part: part, Meets: true}
	area, length := 0.0, 0.0
	for _, a := range b.areas {
		area += a
	}
	for _, l := range b.lengths {
		length += l / part
	}
	mass := area * float64(plate) * 1e-3 * b.density
	if len(b.members) > 0 {
		one := b.bar(part, plate)
		if one == nil {
			return Build{}, false
		}
		out.Section = one.record.ID
		mass += float64(length * one.area() * 1e-6 * one.density(b.rule))
	}
	out.Mass, out.Weld = unit.KG(settled(mass)), unit.M(settled(2*length))
	return out, true
}

// plate is the thinnest plate of stock that every panel is met with.
func (b *zoneBuild) plate(part float64) (unit.MM, bool) {
	from := 0
	for i := range b.panels {
		l, side := &b.panels[i], b.sides[i]
		for ; from < len(b.plates); from++ {
			if b.plateMeets(l, side, part, b.plates[from]) {
				break
			}
		}
		if from == len(b.plates) {
			return 0, false
		}
	}
	return b.plates[from], true
}

func (b *zoneBuild) plateMeets(l *laid, side [2]float64, part float64, thick unit.MM) bool {
	rec := b.out.Panels[l.panel].Record
	spacing := side[0] * part
	if !b.rule.metals.same(rec.Alloy, rec.Thickness.V, thick) {
		other := *rec
		other.Thickness.V, other.Short.V, other.Long.V = thick, unit.MM(math.Min(spacing, side[1])), unit.MM(math.Max(spacing, side[1]))
		p := b.rule.panel(&other, true, false)
		return p.Standing == finding.Met
	}
	l.set("panel.short_side_mm", math.Min(spacing, side[1]))
	l.set("panel.long_side_mm", math.Max(spacing, side[1]))
	needed, _, ok := b.rule.neededBy(l)
	return ok && needed <= float64(thick)
}

// bar is the lightest bar of stock that carries every secondary member on a plate.
func (b *zoneBuild) bar(part float64, plate unit.MM) *bar {
	order := make([]int, len(b.members))
	for i := range order {
		order[i] = i
	}
	sort.SliceStable(order, func(x, y int) bool { return b.members[order[x]].margin < b.members[order[y]].margin })
	for _, one := range b.bars {
		if !slices.ContainsFunc(order, func(i int) bool { return !b.carries(&b.members[i], one, part, plate) }) {
			return one
		}
	}
	return nil
}

func (b *zoneBuild) carries(l *laid, one *bar, part float64, plate unit.MM) bool {
	m := &b.out.Members[l.member]
	rec := &b.asked
	*rec = *m.Record
	if rec.Attached.V > 0 {
		rec.Attached.V = plate
	}
	rec.Spacing.V = unit.MM(float64(rec.Spacing.V) * part)
	other, ok := b.rule.layOn(l.member, rec, m.Count, one)
	if !ok {
		return false
	}
	margin, shown := b.rule.room(&other)
	return shown && margin >= 1
}
