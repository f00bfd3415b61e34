package hydrostatics

import (
	"math"
	"testing"
)

const deg = math.Pi / 180

func box(l, b, d float64) *Body {
	o := []Point{{0, 0}, {b / 2, 0}, {b / 2, d}, {-b / 2, d}, {-b / 2, 0}}
	body, err := NewBody([]Section{{-l / 2, o}, {l / 2, o}}, 2)
	if err != nil {
		panic(err)
	}
	return body
}

// wedge is a prism of V section with dry chines.
func wedge(l, rise, half float64) *Body {
	z := half * math.Tan(rise)
	o := []Point{{0, 0}, {half, z}, {half, z + 1}, {-half, z + 1}, {-half, z}}
	body, err := NewBody([]Section{{-l / 2, o}, {l / 2, o}}, 2)
	if err != nil {
		panic(err)
	}
	return body
}

// plate is the hard-chine prism of which a table of levers was reckoned independently.
func plate() *Body {
	o := []Point{{0, 0}, {0.95, 0.308674}, {1.10, 0.85}, {-1.10, 0.85}, {-0.95, 0.308674}}
	body, err := NewBody([]Section{{0, o}, {6, o}}, 2)
	if err != nil {
		panic(err)
	}
	return body
}

func wigley(l, b, t float64, stations, lines int) *Body {
	var s []Section
	for i := 0; i <= stations; i++ {
		x := l * (float64(i)/float64(stations) - 0.5)
		half := func(z float64) float64 {
			return b / 2 * (1 - 4*x*x/(l*l)) * (1 - (z/t)*(z/t))
		}
		var side []Point
		for k := 0; k <= lines; k++ {
			z := -t + t*float64(k)/float64(lines)
			side = append(side, Point{half(z), z})
		}
		side = append(side, Point{half(0), 1})
		o := append([]Point{}, side...)
		for k := len(side) - 1; k >= 0; k-- {
			o = append(o, Point{-side[k].Y, side[k].Z})
		}
		s = append(s, Section{x, o})
	}
	body, err := NewBody(s, 2)
	if err != nil {
		panic(err)
	}
	return body
}

// Closed forms of classical hydrostatics; the numbers were reckoned from them independently of this package.
func TestClosedForms(t *testing.T) {
	rows := []struct {
		where          string
		body           *Body
		level          float64
		v, kb, bm, bml float64
		tol            float64
	}{
		{"box L 12 B 12 T 4: V = LBT, KB = T/2, BM = B²/12T, BML = L²/12T", box(12, 12, 8), 4, 576, 2, 3, 3, 1e-9},
		{"V prism, deadrise 18°, T 0.30, L 6: V = LT²/tan β, KB = 2T/3, BM = bw²/6T, BML = L²/6T", wedge(6, 18*deg, 2), 0.30, 1.661949, 0.2, 1.894427, 20, 1e-6},
		{"Wigley hull L 6 B 0.6 T 0.375: V = 4/9 LBT, KB = 5/8 T, BM = 3/35 B²/T, BML = 3/40 L²/T", wigley(6, 0.6, 0.375, 40, 120), 0, 0.6, 0.234375 - 0.375, 0.0822857, 7.2, 5e-4},
	}
	for _, r := range rows {
		im := r.body.Immerse(Attitude{Level: r.level})
		near(t, r.where+": V", im.Volume, r.v, r.tol)
		near(t, r.where+": KB", im.Centre.Z, r.kb, r.tol)
		near(t, r.where+": BM", im.SecondT/im.Volume, r.bm, r.tol*2)
		near(t, r.where+": BML", im.SecondL/im.Volume, r.bml, r.tol*20)
	}
	w := wigley(6, 0.6, 0.375, 40, 120)
	skin := w.Wetted(Attitude{}, func(e int) bool { return e != 121 })
	near(t, "Wigley hull: wetted surface by independent integration", skin, 5.3565, 2e-3)
	near(t, "Wigley hull: water plane 2/3 LB, less what 40 straight chords cut off", w.Immerse(Attitude{}).Plane, 2.4, 2e-3)
}

// Textbook box (Ship Stability for Masters and Mates, example 2: 12 m square box, draught 4 m, KG 4 m; GM sin 5° = 0.0872),
// with exact levers reckoned independently; the wall-sided formula is far off beyond the deck edge.
func TestBoxLevers(t *testing.T) {
	b := box(12, 12, 8)
	load := Load{Mass: 576 * 1025, Centre: Vector{0, 0, 4}, Density: 1025}
	c, err := b.Lever(load, 90*deg, 1*deg, true, nil)
	if err != nil || len(c.Failed) > 0 {
		t.Fatal(err, c.Failed)
	}
	rows := []struct{ heel, gz float64 }{
		{5, .08816}, {10, .18175}, {20, .40998}, {25, .56046}, {30, .75000}, {40, 1.13365}, {60, .98148}, {80, .36419}, {90, 0},
	}
	for _, r := range rows {
		gz, ok := c.At(r.heel * deg)
		if !ok {
			t.Fatalf("no lever at %g°", r.heel)
		}
		near(t, "box lever", gz, r.gz, 1e-5)
	}
	near(t, "GM = KB + BM - KG = 1", c.Points[0].Metacentric(load), 1, 1e-6)
}

// Table of the hard-chine prism, W 1500 kg, KG 0.55 m, reckoned independently.
func TestPlatePrism(t *testing.T) {
	b := plate()
	load := Load{Mass: 1500, Centre: Vector{3, 0, 0.55}, Density: 1025}
	edge := Watch{"gunwale", []Vector{{0, 1.10, 0.85}, {6, 1.10, 0.85}}}
	c, err := b.Lever(load, 60*deg, 1*deg, true, []Watch{edge})
	if err != nil || len(c.Failed) > 0 {
		t.Fatal(err, c.Failed)
	}
	up := c.Points[0]
	near(t, "draught", up.Level, .281511, 1e-5)
	near(t, "KB", up.Centre.Z, .187674, 1e-5)
	near(t, "BM", up.SecondT/up.Volume, 1.777677, 1e-4)
	near(t, "GM", up.Metacentric(load), 1.415351, 1e-4)
	rows := []struct{ heel, gz float64 }{
		{5, .11541}, {10, .19868}, {15, .26077}, {20, .30950}, {25, .34976}, {30, .38512}, {40, .44838}, {50, .43132},
	}
	for _, r := range rows {
		gz, _ := c.At(r.heel * deg)
		near(t, "prism lever", gz, r.gz, 1e-5)
	}
	near(t, "area 0 to 30°", c.Area(0, 30*deg), .125181, 5e-5)
	near(t, "area 0 to 40°", c.Area(0, 40*deg), .198223, 5e-5)
	near(t, "area 30 to 40°", c.Area(30*deg, 40*deg), .073042, 5e-5)
	near(t, "gunwale immersion", c.Unders[0].Heel/deg, 37.11, 0.01)
	crew := func(h float64) float64 { return 180.0 / 1500 * math.Cos(h) }
	heel, ok := c.Meets(crew)
	if !ok {
		t.Fatal("four people to one side find no heel")
	}
	near(t, "four people 0.6 m off centre", heel/deg, 5.211, 0.02)
	wind := func(float64) float64 { return 603.17 / 9.80665 / 1500 }
	heel, _ = c.Meets(wind)
	near(t, "wind moment 603.17 N m", heel/deg, 1.651, 0.01)
}

// Ship Stability for Masters and Mates, example 1: 6000 t, KB 3, KM 6, KG 5.5; GZ at 25° is 0.35 m by the wall-sided
// formula. A box of BM 3 with wall sides to beyond that heel must give the same.
func TestWallSidedExample(t *testing.T) {
	b := box(50, 12*math.Sqrt(1.5), 40)
	draught := 6.0
	load := Load{Mass: 50 * 12 * math.Sqrt(1.5) * draught * 1025, Centre: Vector{0, 0, 5.5}, Density: 1025}
	r, err := b.Balance(load, 25*deg, Attitude{}, false)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "KB 3, BM 3", r.SecondT/r.Volume, 3/math.Pow(math.Cos(25*deg), 3), 1e-6)
	near(t, "GZ at 25°, printed 0.35", r.Lever, 0.35, 0.005)
	near(t, "GZ at 25°, reckoned 0.349", r.Lever, 0.3491, 5e-4)
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f within %g", what, got, want, tol)
	}
}
