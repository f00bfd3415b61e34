package grid

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// least is the smallest piece of a face that counts as a panel of its own, m².
const least = 0.002

// facePanels lays the panels of a face: columns between uprights, rows between what lies level, and again columns where
// an upright stands in one row only.
func (b *builder) facePanels(f *face) {
	var cells []column
	for _, c := range f.columns(f.outline, true) {
		for _, r := range f.rows(c) {
			cells = append(cells, f.columns(r.poly, r.across)...)
		}
	}
	number := 0
	for _, c := range cells {
		if len(c.poly) < 3 || area(c.poly) < least {
			continue
		}
		number++
		b.facePanel(f, c, number, len(cells) == 1)
	}
}

func (b *builder) facePanel(f *face, c column, number int, only bool) {
	inner, outer, low, high := box(c.poly)
	p := b.facePlate(f, c)
	m := measure{area: area(c.poly) * f.slope()}
	b.bareFace(f, m.area, p != nil)
	if p == nil {
		return
	}
	name := f.name
	if !only {
		name = fmt.Sprintf("%s panel %d", f.name, number)
	}
	breadth, height, count := outer-inner, (high-low)*f.slope(), 2
	if c.across {
		breadth, count = 2*outer, 1
	}
	at := p.At
	if f.at.Known() {
		at = f.at
	}
	edge := f.edgePlace(inner, outer, at)
	middle := point{Y: (inner + outer) / 2, Z: (low + high) / 2}
	where := f.whereabouts(c)
	if m.area < 0.9*(outer-inner)*height {
		where += "; its sides are those of the rectangle round it"
	}
	rec := record.Panel{Entry: record.Entry{ID: name, At: p.At}, Zone: record.Written(f.zone, p.Zone.At), Where: record.Written(where, at),
		X:     record.Written(b.fromAftEnd(f.vector(middle).X), at),
		Short: record.Written(mm(min(breadth, height)), edge), Long: record.Written(mm(max(breadth, height)), edge),
		Thickness: p.Thickness, Alloy: p.Alloy, Edges: p.Edges, Lot: p.Lot, Document: p.Document, Count: record.Written(count, at)}
	if !rec.Edges.Set {
		rec.Edges = record.Written("welded", p.At)
	}
	if f.zone == "bulkhead" {
		rec.Head = record.Written(metres(f.top-low-(high-low)/3), at)
	}
	b.heights(&rec.Z, &rec.HullTop, middle.Z, f.x, at)
	l := laidPanel{rec: rec, names: []string{name}, plate: f.plateKey(p)}
	f.measured(&m, c)
	b.drawFace(f, &l, &m, c.across)
	b.laid = append(b.laid, l)
}

// whereabouts says in words where on the face a panel lies.
func (f *face) whereabouts(c column) string {
	inner, outer, low, high := box(c.poly)
	if c.across {
		return fmt.Sprintf("%s, across the centre line, to %.2f m on both sides, %.2f to %.2f m above the base line", f.name, outer, low, high)
	}
	return fmt.Sprintf("%s, %.2f to %.2f m from the centre line, %.2f to %.2f m above the base line", f.name, inner, outer, low, high)
}

// measured puts the corners of a panel into its measure; one across the centre line has those of the other side too.
func (f *face) measured(m *measure, c column) {
	for _, q := range c.poly {
		m.corners = append(m.corners, f.vector(q))
		m.flat = append(m.flat, [2]float64{q.Y, f.up(q.Z)})
	}
	if c.across {
		for i := len(c.poly) - 1; i >= 0; i-- {
			q := c.poly[i]
			if q.Y < 1e-9 {
				continue
			}
			m.corners = append(m.corners, mirrored(f.vector(q)))
			m.flat = append(m.flat, [2]float64{-q.Y, f.up(q.Z)})
		}
		m.area *= 2
	}
}

// drawFace adds the patches of a panel of a face.
func (b *builder) drawFace(f *face, l *laidPanel, m *measure, across bool) {
	p := Patch{ID: l.names[0], Plate: l.plate, Zone: f.zone, On: f.name, Corners: m.corners, Flat: m.flat, Area: m.area}
	l.patches = append(l.patches, len(b.out.Patches))
	b.out.Patches = append(b.out.Patches, p)
	if !across {
		l.patches = append(l.patches, len(b.out.Patches))
		b.out.Patches = append(b.out.Patches, p.toPort())
	}
}

// facePlate is the plate at the middle of a panel of a face.
func (b *builder) facePlate(f *face, c column) *record.Plating {
	inner, outer, _, _ := box(c.poly)
	mid := (inner + outer) / 2
	var thin *record.Plating
	for _, p := range f.plates {
		if mid >= float64(p.Inner.V)-1e-6 && (!p.Outer.Set || mid <= float64(p.Outer.V)+1e-6) && (thin == nil || p.Thickness.V < thin.Thickness.V) {
			thin = p
		}
	}
	return thin
}

// edgePlace is the record line of an upright at the edge of a panel.
func (f *face) edgePlace(inner, outer float64, else_ finding.Place) finding.Place {
	for i := range f.bars {
		if s := &f.bars[i]; !s.level && (s.at > outer-near && s.at < outer+near || s.at > inner-near && s.at < inner+near) {
			return s.place
		}
	}
	return else_
}

// plateKey names the plate of a face: by its plating, or a bulkhead by its own name.
func (f *face) plateKey(p *record.Plating) string {
	if f.plate != nil {
		return f.name
	}
	return p.ID
}
