package scantling_test

import (
	"fmt"
	"testing"

	"hullfile/engine/grid"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// manyPanels is a hull with so many panels of every zone, no two alike.
func manyPanels(n int) *record.Hull {
	h := boat("C")
	for i := range n {
		p := side(fmt.Sprintf("P%d", i), 4)
		p.Zone = put([]string{"bottom", "side", "transom", "deck"}[i%4], 21)
		p.Short = put(unit.MM(180+i%90), 23)
		h.Panels = append(h.Panels, p)
	}
	return h
}

// wholeBoat is a hull with as many panels and members as the grid of a boat of 7.4 m gives, no two alike, judged by four
// sheets, with plates and bars in stock.
func wholeBoat() scantling.Input {
	h, y := practiceBoat(), &record.Yard{}
	bar, web := flatBar(h, 60, 6), flatBar(h, 120, 10)
	h.Sections[0].Stock, h.Sections[1].Stock = put(true, 44), put(true, 44)
	for _, t := range []unit.MM{3, 4, 5, 6, 8} {
		y.Stock.Lots = append(y.Stock.Lots, record.Lot{Kind: put("plate", 1), Alloy: put("5083-H116", 2), Thickness: put(t, 3)})
	}
	h.Joints = []record.Joint{{Procedure: put("P1", 5)}}
	y.Welding.Procedures = []record.Procedure{{Entry: record.Entry{ID: "P1"}, Fillers: put([]string{"S Al 5183"}, 3)}}
	in := scantling.Input{Yard: y, Hull: h, Grid: &grid.Result{}}
	zones := []string{"bottom", "side", "deck", "transom"}
	for i := range 260 {
		p := side(fmt.Sprintf("p %d", i), 6)
		p.Zone, p.X, p.Deadrise, p.Z = put(zones[i%4], 21), put(unit.M(float64(i)*0.025), 22), put(unit.Deg(19), 23), put(unit.M(0.1+0.002*float64(i)), 24)
		p.Short, p.Count = put(unit.MM(150+float64(i)/4), 23), put(2, 30)
		in.Grid.Panels = append(in.Grid.Panels, p)
	}
	for i := range 240 {
		m := stringer(fmt.Sprintf("m %d", i), bar)
		if i%5 == 4 {
			m = frame(fmt.Sprintf("f %d", i), web)
		}
		m.Zone, m.X, m.Z, m.Count = put(zones[i%3], 53), put(unit.M(float64(i)*0.026), 54), put(unit.M(0.1+0.002*float64(i)), 55), put(2, 60)
		in.Grid.Members = append(in.Grid.Members, m)
	}
	return in
}

func BenchmarkAssess(b *testing.B) {
	for _, n := range []int{20, 500} {
		b.Run(fmt.Sprintf("%d panels", n), func(b *testing.B) {
			r, h := shipped(b), manyPanels(n)
			b.ReportAllocs()
			for b.Loop() {
				if out := r.assess(h); len(out.Panels) != n {
					b.Fatal("panels were lost")
				}
			}
		})
	}
}

// The whole structure of a boat: 500 panels and members, four sheets, curves, headrooms and lighter builds.
func BenchmarkWholeBoat(b *testing.B) {
	r, in := whole(b), wholeBoat()
	in.Library, in.Alloys = r.lib, r.alloys
	b.ReportAllocs()
	for b.Loop() {
		out := scantling.Assess(in)
		if len(out.Panels)+len(out.Members) != 500 || len(out.Rules) != 4 || len(out.Headrooms) != 8 {
			b.Fatal("something was lost")
		}
	}
}
