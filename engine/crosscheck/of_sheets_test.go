package crosscheck

import (
	"math"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// cutTo gives part P1 a length, and its lot sheets of 6 by 1.5 m.
func cutTo(long float64) func(*record.Yard, *record.Hull) {
	return func(y *record.Yard, h *record.Hull) {
		h.Parts[0].Length, h.Parts[0].Width = put(unit.M(long)), put(unit.M(0.06))
		y.Stock.Lots[0].Length, y.Stock.Lots[0].Width = put(unit.MM(6000)), put(unit.MM(1500))
	}
}

// The condition is held against turning the part on the sheet by small steps; own arithmetic.
func TestWhatLiesOnASheet(t *testing.T) {
	for _, r := range [][2]float64{
		{6000, 1500}, {1500, 6000}, {6000.4, 1500.4}, {6002, 1500}, {2000, 1600}, {6050, 200}, {6100, 60}, {6120, 60}, {6160, 60}, {6184, 1},
		{6200, 1}, {6900, 1120}, {3000, 3000}, {5000, 1000},
	} {
		if got, want := lies(r[0], r[1], 6000, 1500), turned(r[0]-0.5, r[1]-0.5); got != want {
			t.Errorf("%g × %g mm: %t, turned %t", r[0], r[1], got, want)
		}
	}
}

// turned tries every angle.
func turned(long, wide float64) bool {
	const steps = 20000
	for i := range steps + 1 {
		s, c := math.Sincos(float64(i) * math.Pi / 2 / steps)
		if long*c+wide*s <= 6000+1e-6 && long*s+wide*c <= 1500+1e-6 {
			return true
		}
	}
	return false
}
