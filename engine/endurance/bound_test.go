package endurance

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

// Test-length factors T/MTBF, recomputed exactly by chi-square: rows r, columns 50 60 75 80 90 95 %.
func TestFactors(t *testing.T) {
	levels := []float64{.50, .60, .75, .80, .90, .95}
	rows := map[int][]float64{
		0:  {.693, .916, 1.386, 1.609, 2.303, 2.996},
		1:  {1.678, 2.022, 2.693, 2.994, 3.890, 4.744},
		2:  {2.674, 3.105, 3.920, 4.279, 5.322, 6.296},
		3:  {3.672, 4.175, 5.109, 5.515, 6.681, 7.754},
		5:  {5.670, 6.292, 7.423, 7.906, 9.275, 10.513},
		10: {10.669, 11.515, 13.020, 13.651, 15.407, 16.962},
	}
	for r, want := range rows {
		for i, c := range levels {
			got, err := Factor(r, c)
			if err != nil {
				t.Fatal(err)
			}
			near(t, "factor", got, want[i], 0.0006)
		}
	}
}

// NIST/SEMATECH e-Handbook 8.4.5.1: with zero failures the lower bound is T/(-ln alpha).
func TestNoFailure(t *testing.T) {
	got, _, err := MeanTime(350, 0, 0.9)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "350 h, none failed, 90 %", got, 350/-math.Log(0.1), 1e-9)
	near(t, "the same in hours", got, 152.0, 0.05)
}

// One boat, 350 h, no crack, 90 % confidence; 500 h wanted. Reckoned independently.
func TestOneBoat(t *testing.T) {
	rows := []struct{ slope, scale, r500, r350, r100, b10 float64 }{
		{1, 152, .037, .10, .518, 16}, {2, 231, .009, .10, .829, 75}, {3, 265, .001, .10, .948, 125},
	}
	for _, r := range rows {
		w := Weibull{Slope: r.slope, Confidence: 0.9, Runs: []float64{350}}
		scale, err := w.Scale()
		if err != nil {
			t.Fatal(err)
		}
		near(t, "characteristic life", scale, r.scale, 0.6)
		for hours, want := range map[float64]float64{500: r.r500, 350: r.r350, 100: r.r100} {
			got, _ := w.Reliability(hours)
			near(t, "reliability", got, want, 0.0006)
		}
		life, _ := w.Life(0.9)
		near(t, "life that one in ten does not reach", life, r.b10, 0.6)
	}
	for slope, want := range map[float64]float64{1: 10927, 2: 2337, 3: 1398} {
		got, err := Needed(500, 0.9, 0.9, slope, 1)
		if err != nil {
			t.Fatal(err)
		}
		near(t, "hours needed on one boat", got, want, 0.6)
	}
}

// Nicholls and Lein, RIAC: a design life of 1000 h at reliability 0.90 needs 1533 h each, with five boats, slope 1.5 and
// the classic -ln(1-C) = 1. ReliaGrowR vignette: 0.9, 500 h, confidence 0.9, 20 boats, slope 1: 546.36 h.
func TestPublishedPlans(t *testing.T) {
	got, err := Needed(1000, 0.90, 1-1/math.E, 1.5, 5)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "RIAC example, printed 1533 h", got, 1533.09, 0.01)
	got, err = Needed(500, 0.9, 0.9, 1, 20)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "general reliability package, printed 546.36 h", got, 546.36, 0.005)
}

// Success run: boats that must run without failure, 90 and 95 % confidence, reckoned independently.
func TestSuccessRun(t *testing.T) {
	rows := []struct {
		r, c float64
		n    int
	}{{.9, .9, 22}, {.9, .95, 29}, {.95, .9, 45}, {.95, .95, 59}, {.99, .9, 230}, {.99, .95, 299}, {.8, .9, 11}, {.8, .95, 14}}
	for _, row := range rows {
		if n, err := Boats(row.r, row.c); err != nil || n != row.n {
			t.Errorf("R %g at %g: %d boats (%v), want %d", row.r, row.c, n, err, row.n)
		}
	}
}

// With failures and slope 1 the scale is the bound on the mean time; a failure never raises any bound.
func TestFailuresCount(t *testing.T) {
	runs := []float64{350, 120, 80}
	for failed := range 3 {
		w := Weibull{Slope: 1, Confidence: 0.9, Runs: runs, Failed: failed}
		got, err := w.Scale()
		if err != nil {
			t.Fatal(err)
		}
		want, _, _ := MeanTime(550, failed, 0.9)
		near(t, "scale with slope 1", got, want, 1e-9*want)
		w.Slope = 2.5
		before, _ := w.Reliability(300)
		w.Failed++
		if after, _ := w.Reliability(300); after >= before {
			t.Errorf("%d failures show %g, one fewer %g", w.Failed, after, before)
		}
	}
}

func TestHarsher(t *testing.T) {
	got, err := Harsher(350, 1.5, 3)
	if err != nil {
		t.Fatal(err)
	}
	near(t, "350 h at 1.5 times the acceleration, own arithmetic", got, 1181.25, 1e-9)
}

// Whatever the slope, one boat that runs its whole life without failure shows no more than 1-C; more boats never show less.
func TestNeverMoreThanTheArithmetic(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		slope := rapid.Float64Range(0.5, 5).Draw(t, "slope")
		conf := rapid.Float64Range(0.5, 0.99).Draw(t, "confidence")
		hours := rapid.Float64Range(10, 5000).Draw(t, "hours")
		one, err := Weibull{Slope: slope, Confidence: conf, Runs: []float64{hours}}.Reliability(hours)
		if err != nil {
			t.Fatal(err)
		}
		if math.Abs(one-(1-conf)) > 1e-9 {
			t.Fatalf("one boat shows %g at its own hours, want %g", one, 1-conf)
		}
		two, _ := Weibull{Slope: slope, Confidence: conf, Runs: []float64{hours, hours / 2}}.Reliability(hours)
		if two < one {
			t.Fatalf("two boats show %g, one shows %g", two, one)
		}
	})
}

func TestRefusesWhatCannotBe(t *testing.T) {
	if _, _, err := MeanTime(-1, 0, 0.9); err == nil {
		t.Error("hours below zero taken")
	}
	if _, err := Factor(-1, 0.9); err == nil {
		t.Error("failures below zero taken")
	}
	if _, err := Factor(0, 1); err == nil {
		t.Error("full confidence taken")
	}
	if _, err := (Weibull{Slope: 2, Confidence: 0.9}).Scale(); err == nil {
		t.Error("no hours taken")
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tol)
	}
}
