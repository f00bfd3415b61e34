package planing

import (
	"io/fs"
	"math"
	"os"
	"testing"

	"hullfile/engine/method"
)

const (
	foot  = 0.3048
	pound = 4.4482216152605 // N
)

func sheet(t testing.TB) *method.Sheet {
	t.Helper()
	text, err := fs.ReadFile(os.DirFS("../../content/methods"), "savitsky-1964.toml")
	if err != nil {
		t.Fatal(err)
	}
	s, err := method.Load("savitsky-1964.toml", text)
	if err != nil {
		t.Fatal(err)
	}
	return s
}

// example is the boat of Savitsky 1964, tables 1 and 2, in SI. The paper takes 1.69 ft/s for a knot and 32.2 ft/s² for g.
// density is in lb s²/ft⁴ and viscosity in ft²/s.
func example(density, viscosity float64) Hull {
	return Hull{
		Speed: 40 * 1.6878 * foot, Beam: 14 * foot, Deadrise: 10, Weight: 60000 * pound,
		LCG: 29 * foot, VCG: 2 * foot, Thrust: 4, ThrustArm: 0.5 * foot,
		Density: density * pound / math.Pow(foot, 4), Viscosity: viscosity * foot * foot, Gravity: 32.2 * foot, Roughness: 0.0004,
	}
}

// Savitsky 1964, table 1: printed trim 2.3°, drag 9095 lb, effective power 1115 hp. The printed friction rests on a water
// density near 1.99 while the lift coefficient rests on 1.94, and chart readings enter: so trim within 0.1° and drag
// within 3 %. The exact solutions of the paper's equations (reckoned independently) are held more closely.
func TestSavitskyExample(t *testing.T) {
	s := sheet(t)
	rows := []struct {
		where                  string
		density, viscosity     float64
		short                  bool
		trim, wetted, drag     float64
		tolTrim, tolWet, tolLb float64
	}{
		{"table 1 as printed, sea water", 1.9905, 1.279e-5, false, 2.3, 3.44, 9095, 0.1, 0.02, 0.03 * 9095},
		// the paper reads lambda off a chart; 0.03 is a hair of that chart
		{"table 2, short form, as printed", 1.9905, 1.279e-5, true, 2.23, 3.45, 9010, 0.02, 0.03, 0.03 * 9010},
		{"equations solved independently, fresh water", 1.94, 1.0e-5, false, 2.263, 3.439, 8850, 0.002, 0.004, 12},
		{"equations solved independently, sea water", 1.9905, 1.279e-5, false, 2.215, 3.440, 9152, 0.002, 0.004, 12},
		{"short form solved independently, sea water", 1.9905, 1.279e-5, true, 2.225, 3.44, 9137, 0.002, 0.02, 12},
	}
	for _, r := range rows {
		h := example(r.density, r.viscosity)
		h.Short = r.short
		got, err := Solve(s, h)
		if err != nil {
			t.Fatalf("%s: %v", r.where, err)
		}
		near(t, r.where+": trim", got.Trim, r.trim, r.tolTrim)
		near(t, r.where+": wetted length", got.Wetted, r.wetted, r.tolWet)
		near(t, r.where+": drag, lb", got.Drag/pound, r.drag, r.tolLb)
		near(t, r.where+": power is drag times speed, hp", got.Power/pound/foot/550, got.Drag/pound*h.Speed/foot/550, 1e-6)
	}
	got, _ := Solve(s, example(1.9905, 1.279e-5))
	near(t, "table 1: effective power, printed 1115 hp", got.Power/pound/foot/550, 1115, 0.03*1115)
}

// Savitsky 1964, table 1, rows 7 and 17 at the printed trims and wetted lengths: Cf .00174 .00184 .00192 and Cp; friction
// uses the printed Reynolds numbers' viscosity of 1.0e-5 ft²/s.
func TestSavitskyRows(t *testing.T) {
	s := sheet(t)
	rows := []struct{ tau, lambda, cf, cp float64 }{
		{2, 3.85, .00174, .582}, {3, 2.60, .00184, .652}, {4, 1.86, .00192, .693},
	}
	for _, r := range rows {
		g := example(1.94, 1.0e-5).given()
		g["planing.trim_deg"] = method.Quantity{Number: r.tau, Unit: "°"}
		g["planing.wetted_ratio"] = method.Quantity{Number: r.lambda}
		w, err := s.Evaluate("hull", g, nil)
		if err != nil {
			t.Fatal(err)
		}
		cf, _ := w.Value("C_f")
		cp, _ := w.Value("C_p")
		near(t, "row 7, Cf", cf, r.cf, 0.6e-5)
		near(t, "row 17, Cp", cp, r.cp, 0.004)
	}
}

func BenchmarkSolve(b *testing.B) {
	s := sheet(b)
	h := example(1.9905, 1.279e-5)
	b.ReportAllocs()
	for b.Loop() {
		if _, err := Solve(s, h); err != nil {
			b.Fatal(err)
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tol)
	}
}
