package hydrostatics

import (
	"math"
	"testing"
)

// A box on an even keel: everything follows from length, breadth and draught. Classical hydrostatics, own arithmetic.
func TestFormOfABox(t *testing.T) {
	const l, w, d, rho = 6.0, 2.0, 1.0, 1025.0
	rows := box(l, w, d).Form(Levels(0, 1, 0.25), rho, func(e int) bool { return e != 2 })
	if len(rows) != 3 {
		t.Fatalf("%d rows, want 3", len(rows))
	}
	for i, f := range rows {
		draught := 0.25 * float64(i+1)
		for _, c := range []struct {
			what      string
			got, want float64
		}{{"level", f.Level, draught}, {"volume", f.Volume, l * w * draught}, {"mass", f.Mass, rho * l * w * draught}, {"KB", f.KB, draught / 2}, {"LCB", f.LCB, 0},
			{"plane", f.Plane, l * w}, {"LCF", f.LCF, 0}, {"BM", f.BM, w * w / (12 * draught)}, {"BML", f.BML, l * l / (12 * draught)}, {"length", f.Length, l},
			{"per cm", f.PerCM, l * w * rho / 100}, {"trim", f.TrimCM, rho * w * l * l / 1200}, {"wetted", f.Wetted, l*w + 2*draught*(l+w)}} {
			if math.Abs(c.got-c.want) > 1e-6*math.Max(1, math.Abs(c.want)) {
				t.Errorf("at %v m: %s %v, want %v", draught, c.what, c.got, c.want)
			}
		}
	}
}

func TestFormWhollyUnderWater(t *testing.T) {
	rows := box(6, 2, 1).Form([]float64{-1, 2}, 1000, func(int) bool { return true })
	if len(rows) != 1 || !rows[0].Overflow || math.Abs(rows[0].Volume-12) > 1e-9 || rows[0].BM != 0 {
		t.Errorf("%+v, want one row without a water plane", rows)
	}
}

func TestLevels(t *testing.T) {
	for _, row := range []struct {
		low, high, step float64
		n               int
	}{{0, 1, 0.25, 3}, {0.01, 0.11, 0.05, 2}, {1, 0, 0.1, 0}, {0, 1, 0, 0}, {0, 1, math.NaN(), 0}, {0, math.Inf(1), 0.1, 0}, {math.NaN(), 1, 0.1, 0}} {
		if got := Levels(row.low, row.high, row.step); len(got) != row.n {
			t.Errorf("Levels(%v, %v, %v) gives %v, want %d", row.low, row.high, row.step, got, row.n)
		}
	}
}
