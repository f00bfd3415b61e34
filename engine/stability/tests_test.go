package stability

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func shift(id string, kg unit.KG, m unit.M, mm unit.MM) record.Shift {
	return record.Shift{Entry: record.Entry{ID: id, At: finding.Place{File: "hull.toml", Line: 30}}, Weight: set(kg), Distance: set(m), Pendulum: set(unit.MM(1500)), Deflection: set(mm)}
}

func heelTest(shifts ...record.Shift) record.HeelTest {
	return record.HeelTest{Entry: record.Entry{ID: "H1", At: finding.Place{File: "hull.toml", Line: 28}}, Allowed: set(unit.MM(40)), Shifts: shifts}
}

// Inclining example, reckoned independently: 1620 kg, 40 kg over 1.8 m, pendulum 1.5 m, deflection 51.5 mm: GM 1.2945 m,
// heel 1.966 degrees.
func TestIncliningExample(t *testing.T) {
	h := boat()
	test := heelTest(shift("1", 40, 1.8, 51.5))
	test.Mass = set(unit.KG(1620))
	h.HeelTests = []record.HeelTest{test}
	r := assess(t, h, prism())
	i := r.Inclinings[0]
	near(t, "GM", i.GM, 1.2945, 5e-5)
	near(t, "heel", i.Shifts[0].Heel, 1.966, 5e-4)
	gm, ok := i.Shifts[0].Working.Value("GM_S")
	if !ok {
		t.Fatal("no working of the shift")
	}
	near(t, "GM of the one shift", gm, 1.2945, 5e-5)
}

// A test made from the reckoned lever gives the reckoned centre back; one with the centre 0.1 m higher is a contradiction.
func TestIncliningAgainstWeights(t *testing.T) {
	rows := []struct {
		raised float64
		want   finding.Standing
	}{{0, finding.Met}, {0.1, finding.Short}}
	for _, row := range rows {
		h, l := boat(), prism()
		h.Weights[0].Mass, h.Weights[0].Z = set(unit.KG(1500)), set(unit.M(0.55))
		body, err := l.Body(false)
		if err != nil {
			t.Fatal(err)
		}
		load := hydrostatics.Load{Mass: 1500, Centre: hydrostatics.Vector{X: 3, Z: 0.55 + row.raised}, Density: 1025}
		var shifts []record.Shift
		for k, kg := range []unit.KG{-10, 10, 20, -20} {
			shifts = append(shifts, shift(string(rune('1'+k)), max(kg, -kg), unit.M(math.Copysign(1.5, float64(kg))), deflection(t, body, load, float64(kg)*1.5)))
		}
		h.HeelTests = []record.HeelTest{heelTest(shifts...)}
		r := assess(t, h, l)
		c := check(t, r, "inclining-centre", "heel_test H1")
		if c.Standing != row.want {
			t.Errorf("centre raised %.2f m: %s: %s", row.raised, c.Standing, c.Says)
		}
		told := false
		for _, f := range r.Findings {
			told = told || f.Kind == finding.Contradiction && f.Rule == "inclining-centre"
		}
		if told != (row.want == finding.Short) {
			t.Errorf("centre raised %.2f m: told as a contradiction %v", row.raised, told)
		}
		if i := r.Inclinings[0]; !(i.GMWithin > 0 && i.GMWithin < 0.1) {
			t.Errorf("four shifts give an interval of ± %.4f m", i.GMWithin)
		}
	}
}

// deflection is that of a pendulum of 1.5 m under a moment on the body, mm.
func deflection(t *testing.T, body *hydrostatics.Body, load hydrostatics.Load, moment float64) unit.MM {
	t.Helper()
	side := math.Copysign(1, moment)
	c, err := body.Lever(load, side*10*degree, 0.1*degree, true, nil)
	if err != nil {
		t.Fatal(err)
	}
	for i := range c.Points {
		c.Points[i].Heel, c.Points[i].Lever = side*c.Points[i].Heel, side*c.Points[i].Lever
	}
	heel, ok := c.Meets(func(h float64) float64 { return math.Abs(moment) / load.Mass * math.Cos(h) })
	if !ok {
		t.Fatal("the moment is not balanced")
	}
	return unit.MM(side * 1500 * math.Tan(heel))
}

// The line through exact points is exact, has no width, and with noise its interval holds the truth.
func TestFit(t *testing.T) {
	l := Fit([]float64{-60, -30, 30, 60}, []float64{-0.03 + 0.001, -0.015 + 0.001, 0.015 + 0.001, 0.03 + 0.001})
	near(t, "own arithmetic: 60 / 0.03", l.Slope, 2000, 1e-6)
	near(t, "own arithmetic: start", l.Start, 0.001, 1e-12)
	near(t, "no scatter", l.Within, 0, 1e-6)
	for _, bad := range [][2][]float64{{nil, nil}, {{50}, {0}}, {{50, 50}, {0.01, 0.02}}, {{0}, {0.1}}} {
		if l := Fit(bad[0], bad[1]); l.OK {
			t.Errorf("%v gives a line: %+v", bad, l)
		}
	}
}

func TestHeelThatCannotBe(t *testing.T) {
	rows := []struct {
		rule string
		s    record.Shift
	}{
		{"heel-without-weight", shift("1", 0, 1.8, 40)},
		{"heel-without-weight", shift("1", 40, 0, 40)},
		{"heel-wrong-side", shift("1", 40, 1.8, -51)},
	}
	for _, row := range rows {
		h := boat()
		h.HeelTests = []record.HeelTest{heelTest(row.s)}
		found := false
		for _, f := range assess(t, h, prism()).Findings {
			found = found || f.Rule == row.rule && f.Kind == finding.Contradiction
		}
		if !found {
			t.Errorf("%s is not found", row.rule)
		}
	}
	h := boat()
	h.OffsetTests = []record.OffsetTest{{Entry: record.Entry{ID: "O1", At: finding.Place{File: "hull.toml", Line: 5}}, Side: set("port"), Persons: set(4), Weight: set(unit.KG(0)), Arm: set(unit.M(0.7)), Angle: set(unit.Deg(8))}}
	found := false
	for _, f := range assess(t, h, prism()).Findings {
		found = found || f.Rule == "heel-without-weight" && f.Subject == "offset_test O1"
	}
	if !found {
		t.Error("heel of an offset test without weight is not found")
	}
}

// Freeboards taken off a body afloat give back mass and attitude, whatever these are.
func TestFreeboardsGiveTheMassBack(t *testing.T) {
	l := prism()
	body, err := l.Body(false)
	if err != nil {
		t.Fatal(err)
	}
	rapid.Check(t, func(rt *rapid.T) {
		load := hydrostatics.Load{Mass: rapid.Float64Range(900, 2500).Draw(rt, "mass"), Density: 1025,
			Centre: hydrostatics.Vector{X: rapid.Float64Range(2.8, 3.2).Draw(rt, "x"), Z: 0.5}}
		r, err := body.Balance(load, rapid.Float64Range(-0.05, 0.05).Draw(rt, "heel"), hydrostatics.Attitude{}, false)
		if err != nil {
			rt.Fatal(err)
		}
		var points []hydrostatics.Vector
		for _, x := range []float64{0.5, 3, 5.5} {
			for _, y := range []float64{1.1, -1.1} {
				p := hydrostatics.Vector{X: x, Y: y, Z: 0.85}
				p.Z -= r.Height(p) / r.Up().Z // along the boat's own vertical
				points = append(points, p)
			}
		}
		pl := FitPlane(points)
		got := body.Immerse(pl.attitude())
		if !pl.OK || math.Abs(got.Volume*1025/load.Mass-1) > 1e-6 {
			rt.Fatalf("%.3f kg of %.3f kg", got.Volume*1025, load.Mass)
		}
		if at := pl.attitude(); math.Abs(at.Heel-r.Heel) > 1e-9 || math.Abs(at.Trim-r.Trim) > 1e-9 {
			rt.Fatalf("heel %g of %g, trim %g of %g", at.Heel, r.Heel, at.Trim, r.Trim)
		}
	})
}

func TestFreeboardsAgainstWeights(t *testing.T) {
	for _, row := range []struct {
		mm   unit.MM
		want finding.Standing
	}{{598.2, finding.Met}, {560, finding.Short}} { // own arithmetic: 1200 kg draw √(0.1951 m² × tan 18°) = 251.8 mm
		h := boat()
		f := record.FreeboardTest{Entry: record.Entry{ID: "F1", At: finding.Place{File: "hull.toml", Line: 40}}, Density: set(unit.KGPerM3(1025)), Allowed: set(unit.Percent(4))}
		for _, x := range []unit.M{0.5, 5.5} {
			for _, y := range []unit.M{1.1, -1.1} {
				f.Points = append(f.Points, record.FreeboardPoint{X: set(x), Y: set(y), Freeboard: set(row.mm)})
			}
		}
		h.Freeboards = []record.FreeboardTest{f}
		r := assess(t, h, prism())
		c := check(t, r, "freeboard-mass", "freeboard F1")
		if c.Standing != row.want {
			t.Errorf("freeboards of %g mm: %s: %s", row.mm, c.Standing, c.Says)
		}
		if got := r.Freeboards[0].Reckoned; math.Abs(got-1200) > 1e-6 {
			t.Errorf("the items on board are %v kg in the result, want 1200", got)
		}
	}
}

func TestOffsetTest(t *testing.T) {
	h, l := boat(), prism()
	l.Openings = []lines.Opening{{ID: "hatch", Name: "hatch", At: []hydrostatics.Vector{{X: 3, Z: 0.95}}}}
	test := record.OffsetTest{Entry: record.Entry{ID: "O1", At: finding.Place{File: "hull.toml", Line: 5}}, Side: set("port"), Persons: set(4), Weight: set(unit.KG(300)), Arm: set(unit.M(0.6)),
		Angle: set(unit.Deg(5.4)), Allowed: set(unit.Deg(1))}
	h.OffsetTests = []record.OffsetTest{test}
	r := assess(t, h, l)
	if c := check(t, r, "offset-test", ""); c.Standing != finding.Met || !strings.Contains(c.Needed, "19.7") {
		t.Errorf("%s %s %s", c.Standing, c.Has, c.Needed)
	}
	if c := check(t, r, "offset-test-agrees", ""); c.Standing != finding.Met || !strings.Contains(c.Says, "5.2° reckoned") {
		t.Errorf("%s: %s", c.Standing, c.Says)
	}
	h.OffsetTests[0].Angle = set(unit.Deg(9))
	if c := check(t, assess(t, h, l), "offset-test-agrees", ""); c.Standing != finding.Short {
		t.Errorf("9° read, 5.2 reckoned: %s", c.Standing)
	}
}

func TestSwampTests(t *testing.T) {
	rows := []struct {
		name   string
		change func(*record.SwampTest)
		want   finding.Standing
	}{
		{"as it should be", func(*record.SwampTest) {}, finding.Met},
		{"sank", func(s *record.SwampTest) { s.Afloat = set(false) }, finding.Short},
		{"heeled too far", func(s *record.SwampTest) { s.Heel = set(unit.Deg(45)) }, finding.Short},
		{"too little of the gunwale showed", func(s *record.SwampTest) { s.Periphery = set(unit.Percent(60)) }, finding.Short},
		{"heel not read", func(s *record.SwampTest) { s.Heel = record.Val[unit.Deg]{} }, finding.NotShown},
		{"basic only, part 1", func(s *record.SwampTest) { s.Kind = set("basic") }, finding.Short},
	}
	for _, row := range rows {
		h := boat()
		h.Lines.Sides = set("open")
		h.Buoyancy = []record.Buoyancy{foam(500, 0.8, 0.6)}
		s := record.SwampTest{Entry: record.Entry{ID: "S1", At: finding.Place{File: "hull.toml", Line: 50}}, Kind: set("level"), Weights: set(unit.KG(240)), Afloat: set(true),
			Heel: set(unit.Deg(18)), Periphery: set(unit.Percent(80))}
		row.change(&s)
		h.SwampTests = []record.SwampTest{s}
		if c := check(t, assess(t, h, prism()), "flotation-test", "swamp_test S1"); c.Standing != row.want {
			t.Errorf("%s: %s: %s", row.name, c.Standing, c.Says)
		}
	}
	h := boat()
	h.Lines.Sides = set("open")
	h.Buoyancy = []record.Buoyancy{foam(500, 0.8, 0.6)}
	if c := check(t, assess(t, h, prism()), "flotation-test", "boat"); c.Standing != finding.NotShown {
		t.Errorf("no test, yet %s", c.Standing)
	}
}
