package hydrostatics

import (
	"errors"
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestSymmetricHullHeelsAlike(t *testing.T) {
	b := launch()
	rapid.Check(t, func(t *rapid.T) {
		load := Load{Mass: rapid.Float64Range(1200, 4500).Draw(t, "mass"), Density: 1025,
			Centre: Vector{rapid.Float64Range(2.2, 2.9).Draw(t, "x"), 0, rapid.Float64Range(0.4, 1).Draw(t, "z")}}
		heel := rapid.Float64Range(0.01, 1.5).Draw(t, "heel")
		s, err1 := b.Balance(load, heel, Attitude{}, false)
		p, err2 := b.Balance(load, -heel, Attitude{}, false)
		if err1 != nil || err2 != nil {
			t.Fatal(err1, err2)
		}
		if math.Abs(s.Lever+p.Lever) > 1e-6 || math.Abs(s.Trim-p.Trim) > 1e-6 {
			t.Fatalf("starboard lever %g trim %g, port lever %g trim %g", s.Lever, s.Trim, p.Lever, p.Trim)
		}
	})
}

// At rest the displaced mass is the mass, and the centres lie over each other fore and aft.
func TestRestIsRest(t *testing.T) {
	b := launch()
	rapid.Check(t, func(t *rapid.T) {
		load := Load{Mass: rapid.Float64Range(800, 4500).Draw(t, "mass"), Density: rapid.Float64Range(998, 1028).Draw(t, "density"),
			Centre: Vector{rapid.Float64Range(2.1, 3.0).Draw(t, "x"), 0, rapid.Float64Range(0.3, 1.2).Draw(t, "z")}}
		r, err := b.Balance(load, rapid.Float64Range(-3.1, 3.1).Draw(t, "heel"), Attitude{}, false)
		if err != nil {
			t.Fatal(err)
		}
		im := b.Immerse(r.Attitude)
		if math.Abs(im.Volume*load.Density/load.Mass-1) > 1e-7 {
			t.Fatalf("carries %g kg of %g kg", im.Volume*load.Density, load.Mass)
		}
		if arm := r.Along().Dot(im.Centre.Less(load.Centre)); math.Abs(arm) > 1e-5 {
			t.Fatalf("centres %g m apart fore and aft", arm)
		}
	})
}

// The lever is the slope of the energy: its area equals the rise of the centre of gravity over the centre of buoyancy
// (Moseley's dynamical stability), with free trim too, because at rest trim does no work.
func TestAreaIsEnergy(t *testing.T) {
	b := launch()
	load := Load{Mass: 2750, Centre: Vector{2.55, 0, 0.7}, Density: 1025}
	c, err := b.Lever(load, 1.2, 0.002, true, nil)
	if err != nil {
		t.Fatal(err)
	}
	head := func(r Rest) float64 { return r.Up().Dot(load.Centre.Less(r.Centre)) }
	first, last := c.Points[0], c.Points[len(c.Points)-1]
	near(t, "area against rise of G over B", c.Area(0, 1.2), head(last)-head(first), 2e-4)
}

func TestFreeTrimNeverNeedsMoreEnergy(t *testing.T) {
	b := launch()
	rapid.Check(t, func(t *rapid.T) {
		load := Load{Mass: rapid.Float64Range(1500, 4000).Draw(t, "mass"), Density: 1025,
			Centre: Vector{rapid.Float64Range(2.2, 2.8).Draw(t, "x"), 0, rapid.Float64Range(0.5, 0.9).Draw(t, "z")}}
		free, err := b.Lever(load, 1, 0.02, true, nil)
		if err != nil {
			t.Fatal(err)
		}
		held, err := b.Lever(load, 1, 0.02, false, nil)
		if err != nil {
			t.Fatal(err)
		}
		for _, h := range []float64{0.2, 0.5, 0.8, 1} {
			if f, x := free.Area(0, h), held.Area(0, h); f > x+1e-4 {
				t.Fatalf("to %.2f rad: free trim %.5f m rad, trim held %.5f m rad", h, f, x)
			}
		}
	})
}

// Shifting a mass down raises GM by the shift's share of the whole, exactly. Adding one at the keel raises it only where
// the draught is large against the beam: on a shallow hull the loss of BM outweighs the lower centre, so a deep box is used.
func TestMassLowRaisesGM(t *testing.T) {
	gm := func(b *Body, l Load) float64 {
		r, err := b.Balance(l, 0, Attitude{}, false)
		if err != nil {
			t.Fatal(err)
		}
		return r.Metacentric(l)
	}
	hull := launch()
	high := Load{Mass: 2500, Centre: Vector{2.5, 0, 0.8}, Density: 1025}
	low := Load{Mass: 2500, Centre: Vector{2.5, 0, 0.8 - 50*0.7/2500}, Density: 1025}
	near(t, "50 kg shifted down 0.7 m, but for the little that the trim changes", gm(hull, low)-gm(hull, high), 50*0.7/2500, 1e-4)

	deep := box(6, 2, 2)
	before := Load{Mass: 12300, Centre: Vector{0, 0, 0.8}, Density: 1025}
	after := Load{Mass: 12800, Centre: Vector{0, 0, (12300*0.8 + 500*0.05) / 12800}, Density: 1025}
	if b, a := gm(deep, before), gm(deep, after); !(a > b) {
		t.Errorf("GM %.4f m before, %.4f m after 500 kg were added at the keel of a deep box", b, a)
	}
}

// Two halves of a box hold what the whole holds.
func TestVolumeAddsUp(t *testing.T) {
	o := []Point{{0, 0}, {1, 0.3}, {1.2, 1}, {-1.2, 1}, {-1, 0.3}}
	whole, _ := NewBody([]Section{{0, o}, {6, o}}, 2)
	aft, _ := NewBody([]Section{{0, o}, {2.5, o}}, 2)
	fore, _ := NewBody([]Section{{2.5, o}, {6, o}}, 2)
	at := Attitude{Heel: 0.4, Trim: 0.05, Level: 0.45}
	near(t, "aft and fore half", aft.Immerse(at).Volume+fore.Immerse(at).Volume, whole.Immerse(at).Volume, 2e-3)
}

func TestSinksAndMisuse(t *testing.T) {
	b := box(2, 1, 1)
	if _, err := b.Balance(Load{Mass: 2500, Centre: Vector{0, 0, 0.5}, Density: 1000}, 0, Attitude{}, false); !errors.Is(err, ErrSinks) {
		t.Errorf("2500 kg in a box of 2 m³: %v", err)
	}
	if _, err := b.Balance(Load{Mass: math.NaN(), Density: 1000}, 0, Attitude{}, false); err == nil {
		t.Error("a mass that is no number was carried")
	}
	if _, err := NewBody([]Section{{0, []Point{{0, 0}, {1, 0}, {1, 1}}}, {0, []Point{{0, 0}, {1, 0}, {1, 1}}}}, 2); err == nil {
		t.Error("two sections at one x were taken")
	}
}
