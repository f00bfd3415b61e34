package grid

import (
	"fmt"

	"hullfile/engine/record"
)

// tanks lays the plating of tanks that are built of plate, each as a box of its volume over its free surface. A pair of
// sides that are alike share one record.
func (b *builder) tanks() {
	for i := range b.rec.Tanks {
		t := &b.rec.Tanks[i]
		if !t.Plate.Set || !t.Alloy.Set {
			continue
		}
		long, broad := float64(t.Length.V), float64(t.Breadth.V)
		if !t.Length.Set || !t.Breadth.Set || !t.Overflow.Set {
			b.out.Findings = append(b.out.Findings, gap("tank-plating", "tank "+t.ID, "the plating of tank "+t.ID+" is on record, but not its length, breadth and overflow, so it is not judged",
				"write surface_length_m, surface_breadth_m and overflow_z_m", t.At))
			continue
		}
		if n, ok := t.Parts.Get(); ok {
			broad *= float64(n)
		}
		high := float64(t.Volume.V) / 1000 / long / broad
		bay := long
		if v, ok := t.Baffles.Get(); ok {
			bay = min(long, float64(v)/1000)
		}
		part := broad
		if n, ok := t.Parts.Get(); ok {
			part /= float64(n)
		}
		foot := float64(t.Z.V) - high/2
		b.tankSide(t, "bottom", bay, part, foot, 1)
		b.tankSide(t, "top", bay, part, foot+high, 1)
		b.tankSide(t, "sides", bay, high, foot+high/3, 2)
		b.tankSide(t, "ends", part, high, foot+high/3, 2)
		b.out.Assumptions = append(b.out.Assumptions, tankAssumption(t, high))
	}
}

// tankSide is one side of a tank, or a pair of them, with the head from the given height up to the overflow.
func (b *builder) tankSide(t *record.Tank, side string, p, q, from float64, count int) {
	name := "tank " + t.ID + " " + side
	head := float64(t.Overflow.V) - from
	rec := record.Panel{Entry: record.Entry{ID: name, At: t.At}, Zone: record.Written("tank", t.At),
		Where: record.Written(fmt.Sprintf("tank %s, %s, %.0f x %.0f mm between baffles and edges", t.ID, side, 1000*p, 1000*q), t.At),
		X:     record.Written(b.fromAftEnd(float64(t.X.V)), t.X.At),
		Short: record.Written(mm(min(p, q)), t.Breadth.At), Long: record.Written(mm(max(p, q)), t.Length.At),
		Thickness: t.Plate, Alloy: t.Alloy, Edges: record.Written("welded", t.Plate.At), Count: record.Written(count, t.At)}
	if head > 0 {
		rec.Head = record.Written(metres(head), t.Overflow.At)
	}
	if b.out.HasWaterline {
		rec.Z = record.Written(metres(from-b.out.Waterline), t.Z.At)
	}
	b.laid = append(b.laid, laidPanel{rec: rec, names: []string{name}})
}
