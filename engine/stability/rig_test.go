package stability

import (
	"math"
	"os"
	"strconv"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// prism is the hard-chine prism of 6 m whose hydrostatics and levers were reckoned independently.
func prism() *lines.Hull {
	h := &lines.Hull{}
	for i, x := range []float64{0, 1.5, 3, 4.5, 6} {
		s := lines.Station{X: x, ID: strconv.Itoa(i), Place: finding.Place{File: "lines.csv", Line: i + 2}}
		s.At[lines.Chine] = hydrostatics.Point{Y: 0.95, Z: 0.308674}
		s.At[lines.Outer], s.At[lines.Knuckle] = s.At[lines.Chine], s.At[lines.Chine]
		s.At[lines.Sheer] = hydrostatics.Point{Y: 1.10, Z: 0.85}
		h.Stations = append(h.Stations, s)
	}
	return h
}

func set[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hull.toml", Line: 1})
}

func item(id, group string, load bool, kg unit.KG, x, y, z unit.M) record.Weight {
	return record.Weight{Entry: record.Entry{ID: id, At: finding.Place{File: "weights.csv", Line: 2}}, Name: set(id), Group: set(group),
		Load: set(load), Basis: set("weighed"), Mass: set(kg), X: set(x), Y: set(y), Z: set(z)}
}

// boat is the prism with 1200 kg of light craft and four people of 75 kg, so that it weighs 1500 kg with its centre at
// 0.55 m; each person can stand 0.8 m off the centre line, 0.6 m counted.
func boat() *record.Hull {
	h := &record.Hull{}
	h.Weights = []record.Weight{item("hull", "plating", false, 1200, 3, 0, 0.4)}
	h.Boat.Persons, h.Boat.LengthHull, h.Boat.BeamHull, h.Boat.Category = set(4), set(unit.M(6)), set(unit.M(2.2)), set("C")
	h.CrewAreas = []record.CrewArea{{Entry: record.Entry{ID: "cockpit", At: finding.Place{File: "hull.toml", Line: 9}}, X: set(unit.M(3)), Y: set(unit.M(0.8)),
		Z: set(unit.M(0.15)), Posture: set("standing"), Persons: set(4)}}
	h.Lines.Sides = set("fully decked")
	return h
}

func library(t testing.TB) *method.Library {
	t.Helper()
	lib, err := method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
	if err != nil {
		t.Fatal(err)
	}
	return lib
}

func assess(t testing.TB, h *record.Hull, l *lines.Hull) Result {
	t.Helper()
	w := weight.Assess(h, nil)
	r := Assess(h, w, l, loading.Assess(h, w, l), library(t))
	for _, c := range r.Checks {
		sane(t, c)
	}
	for _, f := range r.Findings {
		if strings.Contains(f.Says, "NaN") || strings.Contains(f.Says, "–") {
			t.Errorf("no number in %q", f.Says)
		}
	}
	return r
}

// sane holds every check to what a reader may expect of it.
func sane(t testing.TB, c finding.Check) {
	t.Helper()
	for _, s := range []string{c.Says, c.Has, c.Needed} {
		if strings.Contains(s, "NaN") || strings.Contains(s, "–") {
			t.Errorf("%s: no number in %q", c.Rule, s)
		}
	}
	if c.Says == "" || c.Asks == "" || len(c.Places) == 0 {
		t.Errorf("%s of %s says too little: %+v", c.Rule, c.Subject, c)
	}
	if c.Standing != finding.Met && c.Settle == "" {
		t.Errorf("%s is %s and says not what would settle it", c.Rule, c.Standing)
	}
	if c.Basis == "" && c.Standing == finding.Met {
		t.Errorf("%s is met on no basis", c.Rule)
	}
}

func check(t testing.TB, r Result, rule, subject string) finding.Check {
	t.Helper()
	for _, c := range r.Checks {
		if c.Rule == rule && (subject == "" || c.Subject == subject) {
			return c
		}
	}
	var all []string
	for _, c := range r.Checks {
		all = append(all, c.Rule+" "+c.Subject)
	}
	t.Fatalf("no check %s of %q among %s", rule, subject, strings.Join(all, "; "))
	return finding.Check{}
}

func near(t testing.TB, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f within %g", what, got, want, tol)
	}
}
