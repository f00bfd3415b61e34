package scantling_test

import (
	"fmt"
	"math"
	"testing"

	beams "hullfile/engine/beam"
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

// On a regular bottom the model of the grid is that of engine/beam, which lays fields and joints by itself.
func TestGrillageIsTheBottomOfBeams(t *testing.T) {
	r, h := whole(t), boat("C")
	g := regular(h, flatBar(h, 110, 8), flatBar(h, 50, 5))
	out := r.laid(h, g)
	m := out.Models[0]
	if !m.Solved {
		t.Fatal(m.Why)
	}
	of := func(k int) beams.Stiffness {
		s := beams.StiffnessOf(out.Members[k].Fitted, 70000, 0.33)
		s.GJ = 0
		return s
	}
	b := beams.Bottom{Fwd: 2, AtKeel: beams.Rigid, AtChine: beams.Rigid, AtBulkhead: beams.Rigid, Pressure: m.Pressure, Girth: []float64{1, 1, 1, 1, 1}}
	for i := 1; i < 4; i++ {
		b.Frames = append(b.Frames, beams.Rib{Name: fmt.Sprint("frame ", i), At: float64(i) / 2, Bar: of(i - 1)})
		b.Stringers = append(b.Stringers, beams.Rib{Name: fmt.Sprint("stringer ", i), At: float64(i) / 4, Bar: of(3)})
	}
	want, err := b.Solve()
	if err != nil {
		t.Fatal(err)
	}
	for i := range want.Frames {
		got := out.Members[i].Together[0]
		if w := math.Abs(want.Frames[i].Moment.Value); math.Abs(got.Moment-w) > 0.005*w {
			t.Errorf("frame %d: moment %v, engine/beam %v", i+1, got.Moment, w)
		}
		if w := math.Abs(want.Frames[i].Shear.Value); math.Abs(got.Shear-w) > 0.005*w {
			t.Errorf("frame %d: shear %v, engine/beam %v", i+1, got.Shear, w)
		}
		if w := want.Frames[i].Moves.Value * 1000; math.Abs(float64(got.Moves)-w) > 0.01*math.Abs(w) {
			t.Errorf("frame %d: moves %v, engine/beam %v", i+1, got.Moves, w)
		}
	}
}
