package section

import (
	"math"
	"strings"
	"testing"
)

func TestSlender(t *testing.T) {
	const young = 70000
	for _, row := range []struct {
		where string
		shape Shape
		want  []float64
	}{
		{"flat bar, free edge, own arithmetic 0.38·70000·0.1²", Shape{Kind: FlatBar, Height: 50, Web: 5}, []float64{266}},
		{"class rules Sec 10 E300, web 3.8 E (t/h)², flange 0.38 E (t/b)² with half width for a tee", Shape{Kind: Tee, Height: 88, Web: 4, Flange: 60, FlangeThickness: 8}, []float64{3.8 * 70000 * 16 / 6400, 0.38 * 70000 * 64 / 900}},
		{"the same, angle: outstand from the middle of the web", Shape{Kind: Angle, Height: 88, Web: 4, Flange: 52, FlangeThickness: 8}, []float64{3.8 * 70000 * 16 / 6400, 0.38 * 70000 * 64 / 2500}},
		{"bulb of the maker holds its web", Shape{Kind: Bulb, Height: 120, Web: 6, Area: 931, Centroid: 72}, []float64{3.8 * 70000 / 400}},
		{"box: two sides, top held on both edges", Shape{Kind: Box, Height: 80, Web: 4, Flange: 54, FlangeThickness: 5}, []float64{3.8 * 70000 * 16 / 4900, 3.8 * 70000 * 16 / 4900, 3.62 * 70000 * 0.01}},
		{"pipe", Shape{Kind: Pipe, Diameter: 60, Wall: 4}, []float64{0.605 * 70000 * 4 / 28}},
	} {
		rows := must(t, row.shape).Slender(young)
		var got []float64
		for _, r := range rows {
			got = append(got, float64(r.Elastic))
		}
		if len(got) != len(row.want) {
			t.Errorf("%s: %v, want %v", row.where, got, row.want)
			continue
		}
		for i := range got {
			if math.Abs(got[i]-row.want[i]) > 1e-9*row.want[i] {
				t.Errorf("%s: %v, want %v", row.where, got, row.want)
			}
			if r := rows[i]; !strings.Contains(r.Formula, "E") || r.Source == "" || r.Basis == "" {
				t.Errorf("%s: no formula, source or basis: %+v", row.where, r)
			}
		}
	}
}

// The formula of Lag, derived again by numbers: Airy's function f(y) sin(a x) with f = A cosh a y + B a y sinh a y, no
// movement across at the stiffener, and the breadth that with the strain of the stiffener carries the same force.
func TestLagAgainstAiry(t *testing.T) {
	for _, row := range []struct{ s, l, nu float64 }{{200, 500, 0.33}, {200, 1000, 0.3}, {500, 500, 0.3}, {900, 400, 0.3}, {2000, 300, 0.25}} {
		a, b := math.Pi/row.l, row.s/2
		x := a * b
		// f, its integral and its first two derivatives at the stiffener, for A alone and for B alone
		F := [2]float64{math.Sinh(x) / a, (x*math.Cosh(x) - math.Sinh(x)) / a}
		f := [2]float64{math.Cosh(x), x * math.Sinh(x)}
		f1 := [2]float64{a * math.Sinh(x), a * (math.Sinh(x) + x*math.Cosh(x))}
		f2 := [2]float64{a * a * math.Cosh(x), a * a * (2*math.Cosh(x) + x*math.Sinh(x))}
		B := -(a*a*F[0] + row.nu*f1[0]) / (a*a*F[1] + row.nu*f1[1])
		strain := f2[0] + B*f2[1] + row.nu*a*a*(f[0]+B*f[1])
		want := math.Min(row.s, 2*(f1[0]+B*f1[1])/strain)
		got, err := Lag(mm(row.s), mm(row.l), ratioOf(row.nu))
		if err != nil || math.Abs(float64(got)-want) > 1e-6*want {
			t.Errorf("spacing %v, length %v: %v (%v), want %v", row.s, row.l, got, err, want)
		}
	}
	wide, err := Lag(1e6, 1000, 0.3)
	if want := 363.0; err != nil || math.Abs(float64(wide)-want) > 1 {
		t.Errorf("Timoshenko and Goodier, recalled: 0.363 of the length; got %v", wide)
	}
	if _, err := Lag(0, mm(math.Inf(1)), 0.7); err == nil || strings.Count(err.Error(), "\n") != 2 {
		t.Errorf("%v, want three faults", err)
	}
}

func BenchmarkFittedAndSoftened(b *testing.B) {
	shape := Shape{Kind: Tee, Height: 120, Web: 6, Flange: 60, FlangeThickness: 8, Joined: true}
	b.ReportAllocs()
	for b.Loop() {
		s := must(b, shape)
		on, err := s.With(6, 360)
		if err != nil {
			b.Fatal(err)
		}
		on.Properties()
		soft, err := on.Heated(dwight)
		if err != nil {
			b.Fatal(err)
		}
		soft.Properties()
		on.Slender(70000)
	}
}

func BenchmarkFittedFlatBar(b *testing.B) {
	b.ReportAllocs()
	for b.Loop() {
		on, err := must(b, Shape{Kind: FlatBar, Height: 50, Web: 5}).With(6, 200)
		if err != nil {
			b.Fatal(err)
		}
		on.Properties()
	}
}
