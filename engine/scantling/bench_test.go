package scantling_test

import (
	"fmt"
	"testing"

	"hullfile/engine/record"
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
