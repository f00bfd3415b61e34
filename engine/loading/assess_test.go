package loading

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// prism is the hard-chine prism of 6 m whose hydrostatics were reckoned independently.
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

func item(id, group string, load bool, mass unit.KG, x, y, z unit.M) record.Weight {
	return record.Weight{Entry: record.Entry{ID: id, At: finding.Place{File: "weights.csv", Line: 2}}, Name: set(id), Group: set(group),
		Load: set(load), Basis: set("weighed"), Mass: set(mass), X: set(x), Y: set(y), Z: set(z)}
}

// boat is 1100 kg of light craft at x 3.0, z 0.5, four people, 100 kg of petrol and 50 kg of stores.
func boat() *record.Hull {
	h := &record.Hull{}
	h.Weights = []record.Weight{
		item("hull", "plating", false, 1100, 3, 0, 0.5),
		item("crew", "people", true, 300, 2.5, 0, 1.1),
		item("petrol", "fuel and water", true, 111, 1.5, 0, 0.25),
		item("gear", "stores", true, 50, 4, 0, 0.6),
	}
	h.Boat.Persons, h.Boat.LengthHull = set(4), set(unit.M(6))
	h.Tanks = []record.Tank{{Entry: record.Entry{ID: "T1"}, Contents: set("fuel"), Volume: set(unit.Litre(150)), Density: set(unit.KGPerM3(740)),
		X: set(unit.M(1.5)), Y: set(unit.M(0)), Z: set(unit.M(0.25)), Length: set(unit.M(1.2)), Breadth: set(unit.M(0.9)), Fixed: set(true), Weight: set("petrol")}}
	return h
}

func assess(h *record.Hull, l *lines.Hull) Result { return Assess(h, weight.Assess(h, nil), l) }

func TestLoadItemsAreNotCountedTwice(t *testing.T) {
	r := assess(boat(), prism())
	c, ok := r.Find("loaded ready")
	if !ok || !c.Whole {
		t.Fatalf("not whole: %+v", r.Conditions)
	}
	near(t, "own arithmetic: 1100 + 4 × 75 + 0.95 × 111 + 50", c.Mass, 1100+300+0.95*111+50, 1e-9)
	near(t, "own arithmetic: centre fore and aft", c.Centre.X, (1100*3+300*2.5+0.95*111*1.5+50*4)/c.Mass, 1e-9)
	a, _ := r.Find("arrival")
	near(t, "own arithmetic: arrival", a.Mass, 1100+300+0.10*111+5, 1e-9)
	l, _ := r.Find("light craft")
	near(t, "light craft", l.Mass, 1100, 1e-9)
	o, _ := r.Find("minimum operating")
	near(t, "minimum operating: one person", o.Mass, 1175, 1e-9)
	if !c.Floats || len(r.Checks) == 0 || r.Checks[0].Standing != finding.Met {
		t.Errorf("%+v", r.Checks)
	}
}

// Free surface of a tank of petrol: l 1.2 m, b 0.9 m, 740 kg/m³, 1500 kg: 0.0360 m (reckoned independently).
func TestFreeSurface(t *testing.T) {
	near(t, "GG' = ρ l b³ / 12 Δ", FreeSurface(1.2, 0.9, 1, 740, 1500), 0.0360, 5e-5)
	near(t, "two halves side by side: a quarter", FreeSurface(1.2, 0.45, 2, 740, 1500), 0.0360/4, 5e-5)
	r := assess(boat(), prism())
	c, _ := r.Find("loaded ready")
	near(t, "GM with and without", c.GM-c.GMFluid, FreeSurface(1.2, 0.9, 1, 740, c.Mass), 1e-12)
	if len(c.Surfaces) != 1 || !c.Surfaces[0].Known {
		t.Errorf("%+v", c.Surfaces)
	}
}

func TestFloatsAsTheTableSays(t *testing.T) {
	h := boat()
	h.Weights = []record.Weight{item("all", "plating", false, 1500, 3, 0, 0.55)}
	h.Tanks = nil
	r := assess(h, prism())
	c, _ := r.Find("light craft")
	near(t, "draught, independent table", c.Afloat.Draught, 0.281511, 1e-5)
	near(t, "GM, independent table", c.GM, 1.415351, 1e-4)
	near(t, "upright", c.Heel, 0, 1e-6)
	near(t, "least freeboard", c.Least, 0.85-0.281511, 1e-4)
}

// 180 kg m off centre heel the prism of 1500 kg by 5.211 degrees (reckoned independently).
func TestHeelIsSolved(t *testing.T) {
	h := boat()
	h.Tanks = nil
	for _, y := range []unit.M{0.12, -0.12} {
		h.Weights = []record.Weight{item("all", "plating", false, 1500, 3, y, 0.55)}
		r := assess(h, prism())
		c, _ := r.Find("light craft")
		near(t, "heel by 180 kg m", c.Heel, math.Copysign(5.211, float64(y)), 0.01)
	}
}

// A centre so high that GM is below nought: the boat lolls, and the result says so.
func TestLollIsAShortfall(t *testing.T) {
	h := boat()
	h.Tanks = nil
	h.Weights = []record.Weight{item("all", "plating", false, 1500, 3, 0, 2.05)}
	r := assess(h, prism())
	c, _ := r.Find("light craft")
	if !c.Floats && c.Why == "" {
		t.Fatal("no reason given")
	}
	found := false
	for _, f := range r.Findings {
		found = found || f.Subject == "condition light" && (f.Rule == "condition-gm" || f.Rule == "condition-rest")
	}
	if !found {
		t.Errorf("a boat that does not stay upright is not told: %v", r.Findings)
	}
}

func TestWhatCannotBe(t *testing.T) {
	rows := []struct {
		rule   string
		kind   finding.Kind
		change func(*record.Hull, *lines.Hull)
	}{
		{"condition-sinks", finding.Contradiction, func(h *record.Hull, _ *lines.Hull) { h.Weights[0].Mass = set(unit.KG(20000)) }},
		{"tank-outside", finding.Contradiction, func(h *record.Hull, _ *lines.Hull) { h.Tanks[0].Y = set(unit.M(1.6)) }},
		{"tank-weight", finding.Contradiction, func(h *record.Hull, _ *lines.Hull) { h.Tanks[0].Weight = set("hull") }},
		{"tank-weight", finding.Doubt, func(h *record.Hull, _ *lines.Hull) { h.Tanks[0].Weight = record.Val[string]{} }},
		{"free-surface", finding.Doubt, func(h *record.Hull, _ *lines.Hull) { h.Tanks[0].Length = record.Val[unit.M]{} }},
		{"opening-under-water", finding.Contradiction, func(_ *record.Hull, l *lines.Hull) {
			l.Openings = []lines.Opening{{ID: "o", Name: "vent", At: []hydrostatics.Vector{{X: 1, Y: 0.5, Z: 0.2}}}}
		}},
		{"recess-drains", finding.Contradiction, func(_ *record.Hull, l *lines.Hull) {
			l.Recesses = []lines.Recess{{ID: "cockpit", Aft: 1, Fore: 3, Half: 0.7, Sole: 0.2, Drains: true}}
		}},
		{"crew-room", finding.Contradiction, func(h *record.Hull, _ *lines.Hull) {
			h.CrewAreas = []record.CrewArea{{X: set(unit.M(2)), Y: set(unit.M(0.8)), Z: set(unit.M(0.4)), Posture: set("sitting"), Persons: set(3)}}
		}},
	}
	for _, r := range rows {
		h, l := boat(), prism()
		for _, f := range assess(h, l).Findings {
			if f.Rule == r.rule {
				t.Fatalf("%s on a sound boat: %s", r.rule, f.Says)
			}
		}
		r.change(h, l)
		found := false
		for _, f := range assess(h, l).Findings {
			found = found || f.Rule == r.rule && f.Kind == r.kind
			if strings.Contains(f.Says, "NaN") || strings.Contains(f.Says, "Inf") {
				t.Errorf("no number: %s", f.Says)
			}
		}
		if !found {
			t.Errorf("%s is not found", r.rule)
		}
	}
}

func TestMissingIsNeverMet(t *testing.T) {
	h := boat()
	h.Boat.Persons = record.Val[int]{}
	r := assess(h, prism())
	c, _ := r.Find("loaded ready")
	if c.Whole || c.Floats || r.Checks[0].Standing != finding.NotShown {
		t.Errorf("persons unknown, yet %+v", r.Checks[0])
	}
	h = boat()
	h.Weights[0].Z = record.Val[unit.M]{}
	if r := assess(h, prism()); r.Checks[0].Standing != finding.NotShown || !strings.Contains(r.Checks[0].Says, "hull") {
		t.Errorf("no height of the hull, yet %+v", r.Checks[0])
	}
}

// A condition that the yard writes takes the place of the derived one.
func TestWrittenConditionReplacesDerived(t *testing.T) {
	h := boat()
	h.Conditions = []record.Condition{{Entry: record.Entry{ID: "work"}, Title: set("working load"), Kind: set("loaded ready"), Persons: set(2),
		Tanks: set(unit.Percent(100)), Stores: set(unit.Percent(0)), Extra: set(unit.KG(200)), X: set(unit.M(2)), Y: set(unit.M(0)), Z: set(unit.M(0.7))}}
	r := assess(h, prism())
	c, _ := r.Find("loaded ready")
	if c.ID != "work" || len(r.Conditions) != 4 {
		t.Fatalf("%d conditions, loaded is %s", len(r.Conditions), c.ID)
	}
	near(t, "own arithmetic: 1100 + 150 + 111 + 200", c.Mass, 1100+150+111+200, 1e-9)
	if len(c.Surfaces) != 0 {
		t.Error("a full tank has a free surface")
	}
}

func TestPlacesSharePeople(t *testing.T) {
	areas := []record.CrewArea{{Persons: set(2)}, {Persons: set(4)}}
	for _, r := range []struct {
		n    int
		want [2]float64
	}{{1, [2]float64{1, 0}}, {3, [2]float64{2, 1}}, {6, [2]float64{2, 4}}, {9, [2]float64{3, 6}}} {
		got := Places(areas, r.n)
		if got[0] != r.want[0] || got[1] != r.want[1] {
			t.Errorf("own arithmetic: %d persons shared %v, want %v", r.n, got, r.want)
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f within %g", what, got, want, tol)
	}
}
