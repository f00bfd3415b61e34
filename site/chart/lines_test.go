package chart

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
)

// sampleHull is an invented hard-chine hull of 7 m with a chine flat, a cockpit and two openings.
func sampleHull() *lines.Hull {
	h := &lines.Hull{Camber: 0.03, HasOuter: true}
	for i := range 15 {
		x := float64(i) / 2
		run := math.Max(0, x-3) / 4
		s := lines.Station{X: x, ID: fmt.Sprint(i)}
		s.At[lines.Keel] = hydrostatics.Point{Z: run * run * 1.0}
		s.At[lines.Chine] = hydrostatics.Point{Y: 1.0 - 0.98*run*run, Z: 0.3 + 0.74*run*run}
		s.At[lines.Outer] = hydrostatics.Point{Y: s.At[lines.Chine].Y + 0.05, Z: s.At[lines.Chine].Z - 0.004}
		s.At[lines.Knuckle] = s.At[lines.Outer]
		s.At[lines.Sheer] = hydrostatics.Point{Y: 1.2 - 1.1*run*run*run, Z: 1.1 + 0.05*x}
		h.Stations = append(h.Stations, s)
	}
	h.Recesses = []lines.Recess{{ID: "cockpit", Aft: 0.5, Fore: 3, Half: 0.8, Sole: 0.5}}
	h.Openings = []lines.Opening{{Name: "engine vents", At: []hydrostatics.Vector{{X: 0.4, Y: 1.1, Z: 0.95}, {X: 0.4, Y: -1.1, Z: 0.95}}},
		{Name: "forehatch", Shut: true, At: []hydrostatics.Vector{{X: 5.5, Z: 1.3}}}}
	return h
}

// sampleLines is that hull afloat with 2 600 kg.
func sampleLines(t testing.TB) lines.Result {
	t.Helper()
	r := lines.Result{Hull: sampleHull(), Sound: true}
	var err error
	r.Afloat, err = r.Hull.Float(hydrostatics.Load{Mass: 2600, Density: 1025, Centre: hydrostatics.Vector{X: 2.5, Z: 0.9}})
	if err != nil {
		t.Fatal(err)
	}
	if r.Form, err = r.Hull.Form(1025); err != nil {
		t.Fatal(err)
	}
	r.HasAfloat = true
	return r
}

func linesFigures(r lines.Result) map[string]Figure {
	return map[string]Figure{"body plan": BodyPlan(r), "views": Arrangement(r, []float64{0.5, 1, 1.5, 99}), "isometric": Isometric(r), "mass": FormMass(r), "centres": FormCentres(r)}
}

func TestLinesAreSound(t *testing.T) {
	for name, f := range linesFigures(sampleLines(t)) {
		sound(t, name, f)
		if f.Empty || strings.Contains(f.SVG, "could not be drawn") {
			t.Errorf("%s is not drawn", name)
		}
	}
}

// span gives the width and the height that the places of some classes take.
func (d *picture) span(classes ...string) (w, h float64) {
	x, y := extent{}, extent{}
	for _, c := range classes {
		for _, p := range d.of[c] {
			x.take(p.x)
			y.take(p.y)
		}
	}
	return x.hi - x.lo, y.hi - y.lo
}

// TestLinesAreToScale reads the drawings back: breadth and height stand in the proportion of the hull, and the figures under
// the sections stand where they say.
func TestLinesAreToScale(t *testing.T) {
	r := sampleLines(t)
	last := r.Hull.Stations[14]
	body, err := drawingsOf(BodyPlan(r).SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range body {
		w, h := d.span("g-section")
		perMetre := w / (r.Hull.Stations[6].At[lines.Sheer].Y + r.Hull.Stations[7].At[lines.Sheer].Y) // sheer to sheer
		if want := last.At[lines.Sheer].Z * perMetre; math.Abs(h-want) > 0.3 {
			t.Errorf("body plan %v wide: %v high, %v at the scale of its breadth", d.width, h, want)
		}
		const half = 0.5
		var at []float64 // middles of the figures of half a metre, to both sides, in the lowest row that has them
		low := 0.0
		for _, text := range d.texts {
			if text.body == "0.5" && text.box.bottom > low+1 {
				at, low = nil, text.box.bottom
			}
			if text.body == "0.5" && math.Abs(text.box.bottom-low) < 1 {
				at = append(at, (text.box.left+text.box.right)/2)
			}
		}
		if len(at) != 2 || math.Abs(math.Abs(at[1]-at[0])-2*half*perMetre) > 0.5 {
			t.Errorf("body plan %v wide: half a metre of breadth stands at %v, %v apart at the scale of the sections", d.width, at, 2*half*perMetre)
		}
	}
	views, err := drawingsOf(Arrangement(r, nil).SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range views {
		w, h := d.span("g-hull")
		between := 40.0 // from the lowest point of the profile to the sheer in the plan
		perMetre := w / 7
		if want := (last.At[lines.Sheer].Z+2.4)*perMetre + between; math.Abs(h-want) > 0.5 {
			t.Errorf("views %v wide: %v high, %v at the scale of their length", d.width, h, want)
		}
	}
}

// The water stands in the profile where the draught says.
func TestTheWaterStandsAtItsHeight(t *testing.T) {
	r := sampleLines(t)
	views, err := drawingsOf(Arrangement(r, nil).SVG)
	if err != nil {
		t.Fatal(err)
	}
	d := views[0]
	w, _ := d.span("g-hull")
	water, keel := d.of["g-water"], d.of["g-edge"]
	slope := (water[1].y - water[0].y) / (water[1].x - water[0].x)
	at := water[0].y + slope*(keel[0].x-water[0].x)
	if got, want := (keel[0].y-at)/(w/7), lines.Surface(r.Afloat.Rest.Attitude, 0); math.Abs(got-want) > 0.005 {
		t.Errorf("the water stands %v m over the keel at the aft end, want %v", got, want)
	}
}

func TestLinesThatAreNoHull(t *testing.T) {
	nan := math.NaN()
	one := sampleHull()
	one.Stations = one.Stations[:1]
	flat, wild, mixed, many := sampleHull(), sampleHull(), sampleHull(), sampleHull()
	for i := range flat.Stations {
		flat.Stations[i].X = 1.5
		wild.Stations[i].At[lines.Sheer].Y = nan
	}
	mixed.Stations[3].At[lines.Chine].Z = math.Inf(1)
	mixed.Recesses = append(mixed.Recesses, lines.Recess{ID: "outside", Aft: -90, Fore: 900, Half: 3}, lines.Recess{ID: "nothing", Aft: nan, Fore: nan})
	mixed.Openings = append(mixed.Openings, lines.Opening{Name: "far", At: []hydrostatics.Vector{{X: nan, Y: 5, Z: 900}, {X: 2, Y: nan, Z: 1}}})
	for i := range 200 {
		s := many.Section(float64(i) * 0.035)
		s.X, s.ID = float64(i)*0.035, fmt.Sprint("station number ", i)
		many.Stations = append(many.Stations, s)
	}
	for _, row := range []struct {
		name  string
		hull  *lines.Hull
		empty bool
	}{{"nothing", nil, true}, {"no station", &lines.Hull{}, true}, {"one station", one, true}, {"all at one place", flat, true},
		{"no numbers", wild, true}, {"some of it", mixed, false}, {"very many stations", many, false}} {
		r := lines.Result{Hull: row.hull}
		for name, f := range map[string]Figure{"body plan": BodyPlan(r), "views": Arrangement(r, []float64{nan}), "isometric": Isometric(r)} {
			sound(t, row.name+", "+name, f)
			if f.Empty != row.empty || strings.Contains(f.SVG, "NaN") || strings.Contains(f.SVG, "could not be drawn") {
				t.Errorf("%s, %s: empty %v, want %v", row.name, name, f.Empty, row.empty)
			}
		}
	}
}

func TestHostileLines(t *testing.T) {
	r := sampleLines(t)
	for i := range r.Hull.Stations {
		r.Hull.Stations[i].ID = hostile
	}
	r.Hull.Recesses[0].ID, r.Hull.Openings[0].Name, r.Hull.Openings[1].Name = hostile, hostile, hostile
	for name, f := range linesFigures(r) {
		sound(t, name, f)
		if strings.Contains(f.SVG, "<script") || strings.Contains(f.SVG, "<x ") {
			t.Errorf("%s lets markup through", name)
		}
	}
}

func BenchmarkLines(b *testing.B) {
	r := sampleLines(b)
	for b.Loop() {
		linesFigures(r)
	}
}

func linesOf(h *lines.Hull) lines.Result { return lines.Result{Hull: h} }
