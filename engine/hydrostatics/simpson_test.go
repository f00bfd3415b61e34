package hydrostatics

import (
	"math"
	"testing"
)

func TestSimpsonTextbook(t *testing.T) {
	rows := []struct {
		where     string
		ordinates []float64
		spacing   float64
		sides     float64
		want, tol float64
	}{
		{"Ship Stability for Masters and Mates, p. 86: ship of 120 m, half ordinates, printed 1207 m²",
			[]float64{0, 3.7, 5.9, 7.6, 7.5, 4.6, 0.1}, 20, 2, 1206.67, 0.005},
		{"waterplane of a marine engineering text: ordinates 12 m apart, 1483.2 m²",
			[]float64{1.2, 9.6, 13.2, 15.0, 15.3, 15.6, 15.6, 14.7, 12.9, 9.0, 0}, 12, 1, 1483.2, 1e-6},
		{"own arithmetic: x³ from 0 to 3 by the second rule alone, 81/4", []float64{0, 1, 8, 27}, 1, 1, 20.25, 1e-12},
		{"own arithmetic: x³ from 0 to 5, both rules, 625/4", []float64{0, 1, 8, 27, 64, 125}, 1, 1, 156.25, 1e-12},
		{"own arithmetic: one interval", []float64{2, 4}, 3, 1, 9, 1e-12},
	}
	for _, r := range rows {
		near(t, r.where, r.sides*Simpson(r.ordinates, r.spacing), r.want, r.tol)
	}
	near(t, "tonnes for a centimetre, printed 12.37", 2*Simpson(rows[0].ordinates, 20)*1.025/100, 12.37, 0.005)
}

// The area under a curve at even steps is that of the sine it follows, closer than by trapeziums.
func TestAreaOfACurve(t *testing.T) {
	var c Curve
	for k := 0; k <= 40; k++ {
		h := float64(k) * 2 * deg
		c.Points = append(c.Points, Rest{Attitude: Attitude{Heel: h}, Lever: math.Sin(h)})
	}
	near(t, "sine from 0 to 40°", c.Area(0, 40*deg), 1-math.Cos(40*deg), 1e-7)
	near(t, "sine from 10 to 35.5°, ends between points", c.Area(10*deg, 35.5*deg), math.Cos(10*deg)-math.Cos(35.5*deg), 1e-4)
}
