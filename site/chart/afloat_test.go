package chart

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/loading"
	"hullfile/engine/record"
	"hullfile/engine/stability"
	"hullfile/engine/unit"
)

// sampleCondition is the sample hull loaded, with its righting lever.
func sampleCondition(t testing.TB) stability.Condition {
	t.Helper()
	r := sampleLines(t)
	body, err := r.Hull.Body(false)
	if err != nil {
		t.Fatal(err)
	}
	curve, err := body.Lever(r.Afloat.Load, math.Pi, math.Pi/180, true, nil)
	if err != nil {
		t.Fatal(err)
	}
	heel, lever := curve.Greatest()
	side := stability.Side{Name: "starboard", Curve: curve, Limit: 52, Greatest: lever, GreatestA: heel * inDegrees,
		Unders: []stability.Under{{Name: "deck edge", Heel: 31}, {Name: "chine", Heel: 0}, {Name: "engine vents", Heel: 52}}, Flooding: stability.Under{Name: "engine vents", Heel: 52}}
	port := side
	port.Name = "port"
	c := &loading.Condition{ID: "loaded", Title: "loaded and ready", Mass: r.Afloat.Load.Mass, Centre: r.Afloat.Load.Centre, Floats: true}
	return stability.Condition{Loading: c, Sides: []stability.Side{side, port}, Open: &side}
}

func crewAreas() []record.CrewArea {
	a := record.CrewArea{X: wr(unit.M(1.5)), Y: wr(unit.M(0.8)), Z: wr(unit.M(0.5)), Posture: wr("standing"), Persons: wr(4)}
	b := record.CrewArea{X: wr(unit.M(3)), Y: wr(unit.M(0.6)), Z: wr(unit.M(0.8)), Posture: wr("sitting"), Persons: wr(1)}
	return []record.CrewArea{b, a}
}

// crowding puts the sample condition to rest at a heel.
func crowding(t testing.TB, degrees float64) (stability.Condition, stability.Heeling) {
	t.Helper()
	c := sampleCondition(t)
	r := sampleLines(t)
	body, err := r.Hull.Body(false)
	if err != nil {
		t.Fatal(err)
	}
	rest, err := body.Balance(r.Afloat.Load, degrees/inDegrees, r.Afloat.Rest.Attitude, false)
	if err != nil {
		t.Fatal(err)
	}
	return c, stability.Heeling{Condition: "loaded", Name: "everybody to one side", Moment: 2400, Heel: degrees, Rests: true, Least: 0.41, Attitude: rest.Attitude}
}

func TestAfloatFiguresAreSound(t *testing.T) {
	for _, heel := range []float64{0.5, 9, 30} {
		c, h := crowding(t, heel)
		for name, f := range map[string]Figure{"lever": Lever(c, "x"), "levers": Levers([]stability.Condition{c, c, c, c, {}}), "crowd": Crowd(sampleLines(t), h, c.Loading, crewAreas(), 6),
			"nobody": Crowd(sampleLines(t), h, nil, nil, 6), "shifts": Shifts(sampleShifts())} {
			sound(t, name, f)
			if f.Empty || strings.Contains(f.SVG, "could not be drawn") || strings.Contains(f.SVG, "NaN") {
				t.Errorf("%s at %v° is not drawn", name, heel)
			}
		}
	}
}

func sampleShifts() stability.Inclining {
	t := stability.Inclining{Record: &record.HeelTest{}, GM: 0.84, Line: stability.Line{Slope: 2200, N: 4, OK: true}}
	for _, m := range []float64{-72, 0, 72, 144} {
		t.Shifts = append(t.Shifts, stability.Shift{Record: &record.Shift{}, Moment: m, Tangent: m / 2200, Known: true})
	}
	return t
}

func TestNothingAfloatToDraw(t *testing.T) {
	_, h := crowding(t, 9)
	never, wild := h, h
	never.Rests = false
	wild.Attitude.Level = math.NaN()
	for name, f := range map[string]Figure{"lever": Lever(stability.Condition{}, "x"), "levers": Levers(nil), "never": Crowd(sampleLines(t), never, nil, nil, 0),
		"wild": Crowd(sampleLines(t), wild, nil, nil, 0), "no lines": Crowd(linesOf(nil), h, nil, nil, 0), "shifts": Shifts(stability.Inclining{})} {
		sound(t, name, f)
		if !f.Empty {
			t.Errorf("%s: not empty: %s", name, f.Alt)
		}
	}
}

// The section is drawn at its heel: the centre line stands off the upright by that angle, to the right.
func TestTheSectionIsHeeled(t *testing.T) {
	c, h := crowding(t, 14)
	all, err := drawingsOf(Crowd(sampleLines(t), h, c.Loading, crewAreas(), 6).SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		keel, top := d.of["g-lead"][0], d.of["g-lead"][1]
		got := math.Atan2(top.x-keel.x, keel.y-top.y) * inDegrees
		if math.Abs(got-14) > 0.5 {
			t.Errorf("%v wide: the centre line leans by %v°, want 14° to starboard", d.width, got)
		}
		water := d.of["g-water"]
		if water[0].y != water[1].y {
			t.Errorf("%v wide: the water is not level", d.width)
		}
	}
}

// People fill the widest place first, as the moment is reckoned; who finds no room stands there too.
func TestPeopleFillTheWidestPlaceFirst(t *testing.T) {
	for _, row := range []struct{ n, first, second int }{{0, 0, 0}, {3, 3, 0}, {5, 4, 1}, {7, 6, 1}} {
		got := [2]int{}
		for i, p := range crowdOf(crewAreas(), row.n) {
			got[i] = p.persons
		}
		if got != [2]int{row.first, row.second} {
			t.Errorf("%d persons: %v, want %d and %d", row.n, got, row.first, row.second)
		}
	}
	if p := crowdOf(crewAreas(), 1); len(p) != 1 || math.Abs(p[0].y-0.6) > 1e-12 {
		t.Errorf("%+v, want one place 0.6 m off the centre line", p)
	}
}

// The shaded area ends at the axis and not under it, though the curve goes on below.
func TestTheAreaEndsAtNought(t *testing.T) {
	c := sampleCondition(t)
	all, err := drawingsOf(Lever(c, "x").SVG)
	if err != nil {
		t.Fatal(err)
	}
	for _, d := range all {
		foot, curve := 0.0, 0.0
		for _, p := range d.of["g-area"] {
			foot = max(foot, p.y)
		}
		for _, p := range d.of["g-a"] {
			curve = max(curve, p.y)
		}
		if foot >= curve-1 {
			t.Errorf("%v wide: the area reaches down to %v, the curve to %v", d.width, foot, curve)
		}
	}
}

func TestHostileAfloat(t *testing.T) {
	c, h := crowding(t, 9)
	c.Loading.ID, c.Loading.Title, h.Name, h.Condition = hostile, hostile, hostile, hostile
	for i := range c.Sides {
		c.Sides[i].Name, c.Sides[i].Flooding.Name = hostile, hostile
	}
	s := sampleShifts()
	s.Record.ID = hostile
	for name, f := range map[string]Figure{"lever": Lever(c, "x"), "levers": Levers([]stability.Condition{c}), "crowd": Crowd(sampleLines(t), h, c.Loading, crewAreas(), 6), "shifts": Shifts(s)} {
		sound(t, name, f)
		if strings.Contains(f.SVG, "<script") || strings.Contains(f.SVG, "<x ") {
			t.Errorf("%s lets markup through", name)
		}
	}
}
