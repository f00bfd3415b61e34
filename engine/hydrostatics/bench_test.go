package hydrostatics

import (
	"math"
	"testing"
)

// launch is a hard-chine hull of 40 stations with a raked stem, of our own making, for speed and for properties.
func launch() *Body {
	var s []Section
	for i := 0; i <= 39; i++ {
		x := 7.2 * float64(i) / 39
		f := math.Max(0, (x-3.6)/3.6)
		chine := 1.02 * (1 - 0.97*math.Pow(f, 2.4))
		keel := 0.62 * math.Pow(f, 3)
		rise := math.Tan((18 + 26*f*f) * deg)
		sheer := 1.22*(1-0.93*math.Pow(f, 3)) + 0.01
		top := 0.95 + 0.25*f
		cz := math.Min(keel+chine*rise, top-0.1)
		o := []Point{{0, keel}, {chine - 0.06*chine, cz}, {chine, cz}, {sheer, top}, {0, top + 0.05}}
		o = append(o, Point{-sheer, top}, Point{-chine, cz}, Point{-chine + 0.06*chine, cz})
		s = append(s, Section{x, o})
	}
	b, err := NewBody(s, 2)
	if err != nil {
		panic(err)
	}
	return b
}

func BenchmarkSixCurves(b *testing.B) {
	hull := launch()
	b.ReportAllocs()
	for b.Loop() {
		for k := 0; k < 6; k++ {
			load := Load{Mass: 2000 + 250*float64(k), Centre: Vector{2.55, 0, 0.75}, Density: 1025}
			c, err := hull.Lever(load, math.Pi, deg, true, nil)
			if err != nil || len(c.Failed) > 0 {
				b.Fatal(err, len(c.Failed))
			}
		}
	}
}

func BenchmarkImmerse(b *testing.B) {
	hull := launch()
	for b.Loop() {
		hull.Immerse(Attitude{Heel: 0.3, Trim: 0.02, Level: 0.3})
	}
}
