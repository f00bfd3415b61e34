package lines

import (
	"math"
	"testing"

	"hullfile/engine/hydrostatics"
)

// The prism on an even keel: dry chines up to 0.308674 m, then the flared side. Own arithmetic.
func TestFormOfThePrism(t *testing.T) {
	rows, err := prism().Form(1025)
	if err != nil {
		t.Fatal(err)
	}
	if len(rows) != 16 || rows[0].Level < 0.05-1e-9 || rows[0].Level > 0.05+1e-9 {
		t.Fatalf("%d rows from %v, want 16 from 0.05 m", len(rows), rows[0].Level)
	}
	f := rows[3] // 0.20 m, a wedge
	rise := math.Tan(18 * math.Pi / 180)
	half := 0.2 / rise
	near(t, "volume, own arithmetic", f.Volume, 6*0.2*half, 1e-4)
	near(t, "mass", f.Mass, 1025*6*0.2*half, 0.1)
	near(t, "centre of buoyancy at two thirds of the draught", f.KB, 2.0/3*0.2, 1e-5)
	near(t, "centre of buoyancy", f.LCB, 3, 1e-6)
	near(t, "water plane", f.Plane, 6*2*half, 1e-4)
	near(t, "centre of the water plane", f.LCF, 3, 1e-6)
	near(t, "BM = I / V = l (2b)³ / 12 V", f.BM, 6*math.Pow(2*half, 3)/12/(6*0.2*half), 1e-4)
	near(t, "BML = b l³ / 12 V", f.BML, 2*half*216/12/(6*0.2*half), 1e-3)
	near(t, "to sink a centimetre", f.PerCM, 6*2*half*1025/100, 1e-2)
	near(t, "to trim a centimetre", f.TrimCM, f.Mass*f.BML/(100*6), 1e-6)
	near(t, "wetted skin: two bottoms and two ends", f.Wetted, 2*6*0.2/math.Sin(18*math.Pi/180)+2*0.2*half, 1e-3)
}

// What the table says at a draught is what the hull displaces when it floats there.
func TestFormAgreesWithFloating(t *testing.T) {
	h := prism()
	rows, err := h.Form(1025)
	if err != nil {
		t.Fatal(err)
	}
	for _, f := range rows {
		a, err := h.Float(hydrostatics.Load{Mass: f.Mass, Centre: hydrostatics.Vector{X: f.LCB, Z: 0.3}, Density: 1025})
		if err != nil {
			t.Fatal(err)
		}
		near(t, "draught", a.Draught, f.Level, 1e-5)
		near(t, "GM", a.GM, f.KB+f.BM-0.3, 1e-4)
		near(t, "wetted surface", a.Wetted, f.Wetted, 1e-3)
	}
}

// The breadth read off a section is that of its edges.
func TestBreadthAtAHeight(t *testing.T) {
	s := prism().Stations[0]
	for _, row := range []struct {
		z, y float64
		ok   bool
	}{{-0.01, 0, false}, {0, 0, true}, {0.154337, 0.475, true}, {0.308674, 0.95, true}, {0.85, 1.10, true}, {0.86, 0, false}} {
		y, ok := s.Breadth(row.z)
		if ok != row.ok {
			t.Errorf("at z %v: %v, want %v", row.z, ok, row.ok)
		}
		near(t, "half breadth", y, row.y, 1e-6)
	}
}
