package section

import (
	"math"
	"testing"

	"hullfile/engine/unit"
)

func mm(v float64) unit.MM { return unit.MM(v) }

func ratioOf(v float64) unit.Ratio { return unit.Ratio(v) }

// must gives the section of a shape that a test knows to be possible.
func must(t testing.TB, s Shape) Section {
	t.Helper()
	sec, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return sec
}

func TestFlatBarOnPlate(t *testing.T) {
	const where = "own arithmetic: (1200·3 + 250·31)/1450, FB 50x5 on 200x6"
	s, err := must(t, Shape{Kind: FlatBar, Height: 50, Web: 5}).With(6, 200)
	if err != nil {
		t.Fatal(err)
	}
	p := s.Properties()
	for _, row := range []struct {
		what           string
		got, want, tol float64
	}{
		{"area, cm2", float64(p.Area), 14.50, 1e-9}, {"neutral axis, mm", float64(p.Neutral), 7.8276, 5e-5}, {"I, cm4", float64(p.I), 21.79, 5e-3},
		{"modulus to the free edge, cm3", float64(p.AtEdge), 4.52, 5e-3}, {"web, cm2", float64(p.Web), 2.50, 1e-9},
	} {
		if !(math.Abs(row.got-row.want) <= row.tol) {
			t.Errorf("%s: %s %.5f, want %.5f", where, row.what, row.got, row.want)
		}
	}
}

// row is one figure of a section with the value it should have.
type row struct {
	what      string
	got, want float64
}

// hold compares figures within a part of a million.
func hold(t *testing.T, where string, rows ...row) {
	t.Helper()
	for _, r := range rows {
		if !(math.Abs(r.got-r.want) <= 1e-6*math.Max(1e-3, math.Abs(r.want))) {
			t.Errorf("%s: %s %.8g, want %.8g", where, r.what, r.got, r.want)
		}
	}
}

// Handbook formulas for whole sections, each written as it stands in any book on strength of materials, against sums of parts.
func TestClosedFormulas(t *testing.T) {
	pipe := must(t, Shape{Kind: Pipe, Diameter: 60, Wall: 4}).Properties()
	d, i := 60.0, 52.0
	hold(t, "pipe: A = π(D²-d²)/4, I = π(D⁴-d⁴)/64, W = 2I/D, J = 2I",
		row{"A", float64(pipe.Area), math.Pi / 4 * (d*d - i*i) / 100},
		row{"I", float64(pipe.I), math.Pi / 64 * (math.Pow(d, 4) - math.Pow(i, 4)) / 1e4},
		row{"upright", float64(pipe.Upright), math.Pi / 64 * (math.Pow(d, 4) - math.Pow(i, 4)) / 1e4},
		row{"W at the foot", float64(pipe.AtPlate), math.Pi / 32 * (math.Pow(d, 4) - math.Pow(i, 4)) / d / 1e3},
		row{"J", float64(pipe.Torsion), math.Pi / 32 * (math.Pow(d, 4) - math.Pow(i, 4)) / 1e4},
		row{"neutral axis", float64(pipe.Neutral), 30}, row{"paint", float64(pipe.Paint), math.Pi * 0.06},
		row{"peak of shear, I t/S with S = (D³-d³)/12", float64(pipe.Peak), math.Pi / 64 * (math.Pow(d, 4) - math.Pow(i, 4)) * 8 / ((d*d*d - i*i*i) / 12) / 100})

	box := must(t, Shape{Kind: Box, Height: 80, Web: 4, Flange: 50, FlangeThickness: 5}).Properties()
	hold(t, "box: A = BH-bh, I = (BH³-bh³)/12, J = 2 t t1 a² b²/(a t + b t1) of Bredt on middle lines",
		row{"A", float64(box.Area), (50*80 - 42*70) / 100.0},
		row{"I", float64(box.I), (50*math.Pow(80, 3) - 42*math.Pow(70, 3)) / 12 / 1e4},
		row{"upright", float64(box.Upright), (80*math.Pow(50, 3) - 70*math.Pow(42, 3)) / 12 / 1e4},
		row{"web", float64(box.Web), 2 * 4 * 70 / 100.0},
		row{"J", float64(box.Torsion), 2 * 5 * 4 * math.Pow(46, 2) * math.Pow(75, 2) / (46*4 + 75*5) / 1e4},
		row{"product", float64(box.Product), 0}, row{"paint", float64(box.Paint), 0.26})

	tee := must(t, Shape{Kind: Tee, Height: 100, Web: 6, Flange: 60, FlangeThickness: 8}).Properties()
	c := (6*100*50.0 + 54*8*96.0) / (6*100 + 54*8) // whole web and the flange beside it
	hold(t, "tee: rectangles cut otherwise, b h³/3 about the foot less A c²",
		row{"neutral axis", float64(tee.Neutral), c},
		row{"I", float64(tee.I), (6*1e6/3 + 54*(1e6-math.Pow(92, 3))/3 - (600+432)*c*c) / 1e4},
		row{"upright", float64(tee.Upright), (92*216 + 8*math.Pow(60, 3)) / 12 / 1e4},
		row{"J", float64(tee.Torsion), (92*216 + 60*512) / 3.0 / 1e4},
		row{"W to the edge", float64(tee.AtEdge), (6*1e6/3 + 54*(1e6-math.Pow(92, 3))/3 - (600+432)*c*c) / (100 - c) / 1e3})

	bar := must(t, Shape{Kind: FlatBar, Height: 80, Web: 8}).Properties()
	hold(t, "flat bar alone: W = t h²/6, greatest shear stress 1.5 V/A, mass of 2660 kg/m3",
		row{"W", float64(bar.AtEdge), 8 * 80 * 80 / 6.0 / 1e3}, row{"peak", float64(bar.Peak), 6.4 / 1.5}, row{"mass", float64(bar.Mass(2660)), 1.7024})
}

// A rolled bulb flat by the approximation, against areas that makers print for sizes of EN 10067; read in a public table.
func TestBulbApproximation(t *testing.T) {
	for _, r := range []struct{ h, t, cm2 float64 }{
		{120, 6, 9.31}, {120, 8, 11.7}, {140, 7, 12.4}, {160, 8, 16.2}, {180, 8, 18.9}, {200, 10, 25.6},
	} {
		s := must(t, Shape{Kind: Bulb, Height: mm(r.h), Web: mm(r.t)})
		got := float64(s.Properties().Area)
		if math.Abs(got-r.cm2) > 0.02*r.cm2 {
			t.Errorf("bulb flat %v x %v: %.2f cm2, published %.2f; the approximation promises 2 %%", r.h, r.t, got, r.cm2)
		}
		if len(s.Says) != 1 {
			t.Errorf("bulb flat %v x %v does not say that it is approximated", r.h, r.t)
		}
	}
}

// The maker's area and centroid come back, whatever lies between.
func TestBulbOfTheMaker(t *testing.T) {
	p := must(t, Shape{Kind: Bulb, Height: 120, Web: 6, Area: 931, Centroid: 72}).Properties()
	hold(t, "own arithmetic: what was entered", row{"A", float64(p.Area), 9.31}, row{"centroid", float64(p.Neutral), 72}, row{"depth", float64(p.Depth), 120})
}

// A top hat with upright webs is three rectangles and two feet.
func TestTopHat(t *testing.T) {
	s := must(t, Shape{Kind: TopHat, Height: 60, Web: 4, Flange: 50, FlangeThickness: 5, Foot: 25, FootThickness: 4})
	p := s.Properties()
	area := 2*4*55 + 50*5 + 2*25*4.0
	z := (2*4*55*27.5 + 250*57.5 + 200*2) / area
	i := 2*4*math.Pow(55, 3)/12 + 440*math.Pow(27.5-z, 2) + 50*125/12.0 + 250*math.Pow(57.5-z, 2) + 2*25*64/12.0 + 200*math.Pow(2-z, 2)
	hold(t, "own arithmetic: rectangles", row{"A", float64(p.Area), area / 100}, row{"neutral", float64(p.Neutral), z}, row{"I", float64(p.I), i / 1e4},
		row{"web", float64(p.Web), 4.4}, row{"outline", float64(p.Paint), (50 + 2*5 + 2*51 + 2*25 + 2*4 + 2*55 + 42 + 2*29) / 1000.0})
	on, err := s.With(6, 300)
	if err != nil {
		t.Fatal(err)
	}
	q := on.Properties()
	rise := 60 - 2.5 + 3.0
	hold(t, "Bredt: cell between crown, webs and plating", row{"J", float64(q.Torsion), 4 * math.Pow(46*rise, 2) / (46/5.0 + 46/6.0 + 2*rise/4) / 1e4},
		row{"paint", float64(q.Paint), (50 + 2*5 + 2*51 + 2*25 + 2*4) / 1000.0})
}

// A leaning web: area by its own thickness times its length.
func TestLeaningTopHat(t *testing.T) {
	s := must(t, Shape{Kind: TopHat, Height: 65, Web: 3, Flange: 40, FlangeThickness: 5, Base: 130})
	p := s.Properties()
	side := math.Hypot(60, 45)
	hold(t, "own arithmetic: thickness times length of the slope", row{"A", float64(p.Area), (2*3*side + 40*5) / 100}, row{"shear area", float64(p.Web), 2 * 3 * 60 / 100.0},
		row{"product", float64(p.Product), 0})
}
