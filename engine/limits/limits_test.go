package limits

import (
	"math"
	"os"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

func library(t testing.TB) *method.Library {
	t.Helper()
	lib, err := method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func hull(length, beam, deadrise, mass, speed float64) *record.Hull {
	h := &record.Hull{Number: "X-1"}
	h.Boat.LengthWL = record.Val[unit.M]{V: unit.M(length), Set: true}
	h.Boat.BeamChine = record.Val[unit.M]{V: unit.M(beam), Set: true}
	h.Boat.Deadrise = record.Val[unit.Deg]{V: unit.Deg(deadrise), Set: true}
	h.Boat.LoadedMass = record.Val[unit.KG]{V: unit.KG(mass), Set: true}
	h.Boat.Speed = record.Val[unit.Knot]{V: unit.Knot(speed), Set: true}
	h.Boat.Category = record.Val[string]{V: "C", Set: true}
	h.Comfort.Level = record.Val[unit.G]{V: 1.5, Set: true}
	return h
}

// A boat of 1800 kg, L 6.3 m, b 2.1 m, deadrise 18°, trim 4°, 25 kn, reckoned independently from the recalled formula in
// feet and pounds: highest tenth 5.65 g in 0.5 m and 3.98 g in 0.3 m, the latter outside the range of H/b.
func TestTenthOfASmallBoat(t *testing.T) {
	r := Assess(Input{Hull: hull(6.3, 2.1, 18, 1800, 30), Library: library(t)})
	for height, want := range map[float64]float64{0.5: 5.65, 0.3: 3.98} {
		got, outside, ok := r.Model.Tenth(25, height)
		if !ok || math.Abs(got-want) > 0.02 {
			t.Errorf("in %g m: %g g, want %g", height, got, want)
		}
		if height == 0.3 && !outside {
			t.Errorf("in %g m: H/b 0.14 passes as inside the range", height)
		}
	}
}

// The limit is the formula turned round: at the height of the curve the level is reached, and never before.
func TestLimitIsWhereTheLevelIsReached(t *testing.T) {
	lib := library(t)
	rapid.Check(t, func(t *rapid.T) {
		h := hull(rapid.Float64Range(4, 9).Draw(t, "length"), rapid.Float64Range(1.5, 2.8).Draw(t, "beam"),
			rapid.Float64Range(5, 28).Draw(t, "deadrise"), rapid.Float64Range(800, 5000).Draw(t, "mass"), rapid.Float64Range(22, 45).Draw(t, "speed"))
		h.Comfort.Level.V = unit.G(rapid.Float64Range(0.7, 4).Draw(t, "level"))
		r := Assess(Input{Hull: h, Library: lib})
		if len(r.Levels) != 1 || len(r.Levels[0].Curve) == 0 {
			t.Fatalf("no curve: %s", r.Why)
		}
		for _, p := range r.Levels[0].Curve {
			if p.Height == 0 {
				continue
			}
			g, _, ok := r.Model.Tenth(p.Knots, p.Height)
			if !ok || math.Abs(g-r.Levels[0].G) > 1e-9 {
				t.Fatalf("at %g kn in %g m: %g g, level %g", p.Knots, p.Height, g, r.Levels[0].G)
			}
		}
		for _, row := range r.Card {
			l := row.Limits[0]
			if l.Slow || l.Any {
				continue
			}
			if g, _, _ := r.Model.Tenth(l.Knots, row.Height); g > r.Levels[0].G+1e-9 {
				t.Fatalf("the card allows %g kn in %g m, which gives %g g", l.Knots, row.Height, g)
			}
			if g, _, _ := r.Model.Tenth(l.Knots+1, row.Height); g <= r.Levels[0].G-1e-9 {
				t.Fatalf("the card stops at %g kn in %g m though a knot more gives %g g", l.Knots, row.Height, g)
			}
		}
	})
}

// A boat that runs faster than its structure is reckoned for is not told to: own arithmetic, flat water, 25.6 kn stated and 32 kn on
// trial.
func TestCardEndsWithTheSpeedOfTheStructure(t *testing.T) {
	h := hull(6.3, 2.1, 18, 1800, 25.6)
	h.Comfort.Level.V = 6
	fast := trial.Trial{Record: &record.Trial{}, Settings: []trial.Setting{{}}}
	fast.Settings[0].Speed.Value = 32
	r := Assess(Input{Hull: h, Library: library(t), Trials: []trial.Trial{fast}})
	if r.To != 32 {
		t.Fatalf("reckoned to %g kn", r.To)
	}
	if l := r.Card[0].Limits[0]; l.Knots != 25 || !l.Any {
		t.Errorf("in %g m: %+v, want 25 kn", r.Card[0].Height, l)
	}
}

func TestNothingWithoutPrincipalData(t *testing.T) {
	h := hull(6.3, 2.1, 18, 1800, 30)
	h.Boat.Deadrise = record.Val[unit.Deg]{}
	if r := Assess(Input{Hull: h, Library: library(t)}); r.Why == "" || len(r.Levels) > 0 {
		t.Error("limits without a deadrise")
	}
	h = hull(6.3, 2.1, 18, 1800, 30)
	h.Comfort = record.Comfort{}
	if r := Assess(Input{Hull: h, Library: library(t)}); r.Why == "" || r.Model == nil {
		t.Error("limits without any level, or no model for the hours")
	}
}

func BenchmarkAssess(b *testing.B) {
	in := Input{Hull: hull(6.3, 2.1, 18, 1800, 34), Library: library(b)}
	b.ReportAllocs()
	for b.Loop() {
		if r := Assess(in); r.Why != "" {
			b.Fatal(r.Why)
		}
	}
}
