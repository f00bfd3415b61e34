package scantling_test

import (
	"fmt"
	"math"
	"testing"

	"hullfile/engine/grid"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// regular is a bottom of 1 m between bulkheads 2 m apart: frames every 0.5 m, stringers every 0.25 m, all fixed at their ends.
func regular(h *record.Hull, bar, thin string) *grid.Result {
	g, b := &grid.Result{Derived: true}, grid.Grillage{Name: "bottom"}
	at := map[[2]int]int{}
	joint := func(i, j int) int {
		key := [2]int{i, j}
		if n, there := at[key]; there {
			return n
		}
		held := map[bool]string{true: "keel"}[j == 0]
		switch {
		case i == 0 || i == 4:
			held = "bulkhead"
		case j == 4:
			held = "chine"
		}
		name := fmt.Sprintf("line %d", j)
		if j == 0 {
			name = "keel"
		}
		at[key] = len(b.Joints)
		b.Joints = append(b.Joints, grid.Joint{Name: name, At: vec(float64(i)/2, float64(j)/4, 0), Held: held, Fixed: true})
		return at[key]
	}
	for i := 1; i < 4; i++ {
		m := frame(fmt.Sprintf("frame %d", i), bar)
		m.Span, m.Spacing = put(unit.MM(1000), 57), put(unit.MM(500), 58)
		g.Members = append(g.Members, m)
		for j := range 4 {
			b.Frames = append(b.Frames, grid.Span{Member: m.ID, From: joint(i, j), To: joint(i, j+1), Section: bar, Attached: 6, Zone: "bottom", Width: 0.5})
		}
	}
	s := stringer("stringers", thin)
	s.Spacing = put(unit.MM(250), 58)
	g.Members = append(g.Members, s)
	for j := 1; j < 4; j++ {
		for i := range 4 {
			b.Lengths = append(b.Lengths, grid.Span{Member: s.ID, From: joint(i, j), To: joint(i+1, j), Section: thin, Attached: 6, Zone: "bottom", Width: 0.25})
		}
	}
	g.Grillages = []grid.Grillage{b}
	return g
}

// Every field of plating hands its load to its four edges by the lines that halve its corners: of a field of 0.5 by 0.25 m a
// short edge gets a triangle, 0.25²/4, and a long one the rest of its half. What lies along keel, chine and bulkheads goes
// into these at once; all else comes back as reactions. Own arithmetic.
func TestGrillageCarriesItsFields(t *testing.T) {
	r, h := whole(t), boat("C")
	out := r.laid(h, regular(h, flatBar(h, 110, 8), flatBar(h, 50, 5)))
	m := out.Models[0]
	if !m.Solved {
		t.Fatal(m.Why)
	}
	const short, long = 0.25 * 0.25 / 4, (0.5*0.25 - 2*0.25*0.25/4) / 2
	held := 0.0
	for _, one := range m.Reactions {
		held += one.Force[0]
	}
	close2(t, "what supports hold", math.Abs(held), m.Pressure*(2-8*long-8*short), 1e-9)
	for i := range 3 {
		most := 0.0
		for _, bar := range m.Bars {
			for _, p := range bar.At {
				if bar.Judged == out.Members[i].Record.ID {
					most = max(most, math.Abs(p.Moment))
				}
			}
		}
		close2(t, fmt.Sprintf("frame %d carries the greatest moment of its stretches", i+1), out.Members[i].Together[0].Moment, most, 1e-9)
	}
	close2(t, "the outer frames are alike", out.Members[0].Together[0].Moment, out.Members[2].Together[0].Moment, 1e-9)
}
