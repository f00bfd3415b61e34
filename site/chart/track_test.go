package chart

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/tracklog"
)

// leg is a straight leg of a point a second at 10 m/s on a heading.
func straight(lat, lon, heading float64, n int) []tracklog.Point {
	const perDegree = 6371008.8 * math.Pi / 180
	var all []tracklog.Point
	sin, cos := math.Sincos(heading * math.Pi / 180)
	for i := range n {
		way := 10 * float64(i)
		all = append(all, tracklog.Point{Time: 1772529240 + float64(i), Lat: lat + way*cos/perDegree, Lon: lon + way*sin/perDegree/math.Cos(lat*math.Pi/180), Speed: 19.4, Toward: heading, RPM: 4000, Fuel: math.NaN(), Trim: math.NaN()})
	}
	return all
}

func TestTrackHasOneScale(t *testing.T) {
	f := Track(TrackSpec{ID: "fig-track", Title: "Track", Stream: Stream{0.4, 64, true}, Legs: []Leg{
		{Name: "run 1", Points: straight(47, -20, 0, 101), Main: true}, {Name: "run 2", Points: straight(47, -20, 90, 101)},
	}})
	if f.Empty || !strings.Contains(f.SVG, "stream 0.40 kn towards 064°") || !strings.Contains(f.SVG, ">N<") {
		t.Fatalf("%s", f.SVG)
	}
	d := newTrack(TrackSpec{Legs: []Leg{{Points: straight(47, -20, 0, 101)}, {Points: straight(47, -20, 90, 101)}}})
	for _, w := range []float64{wide, narrow} {
		field := d.field(newSheet(w, 0))
		north, east := field.at(point{0, 1000}), field.at(point{1000, 0})
		origin := field.at(point{0, 0})
		if up, right := origin.y-north.y, east.x-origin.x; math.Abs(up-right) > 1e-6 || up < 50 {
			t.Errorf("a kilometre is %v up and %v to the right", up, right)
		}
		if east.x > w || north.y < 44 {
			t.Errorf("off the sheet: %v %v", east, north)
		}
	}
	want := []string{"run 1", "09:14:00", "09:15:40", "47°00.000′N 020°00.000′W", "47°00.540′N 020°00.000′W", "1 000", "000"}
	for i, cell := range f.Table[1] {
		if strings.ReplaceAll(cell, "\u00a0", " ") != want[i] {
			t.Errorf("table: %q, want %q", cell, want[i])
		}
	}
}

func TestAGapIsNotDrawn(t *testing.T) {
	points := straight(47, -20, 64, 60)
	points[30].Break = true
	d := newTrack(TrackSpec{Legs: []Leg{{Points: points}}})
	if len(d.legs[0]) != 2 || len(d.legs[0][0]) != 30 {
		t.Errorf("%d pieces", len(d.legs[0]))
	}
	var s Spec
	s.trace(Trace{Name: "Speed", Points: points, Of: func(p *tracklog.Point) float64 { return p.Speed }}, points[0].Time, 1)
	if len(s.Lines) != 2 || s.Lines[1].Name != "" {
		t.Errorf("%d lines", len(s.Lines))
	}
}

func TestTrackWithoutPlaces(t *testing.T) {
	none := []tracklog.Point{{Lat: math.NaN(), Lon: math.NaN()}}
	for _, legs := range [][]Leg{nil, {{Name: "x"}}, {{Name: "<x>", Points: none}}} {
		if f := Track(TrackSpec{ID: "fig", Title: "<t>", Legs: legs}); !f.Empty || strings.Contains(f.SVG, "<t>") {
			t.Errorf("%v: %s", legs, f.SVG)
		}
	}
	if f := Track(TrackSpec{ID: "fig", Title: "t", Legs: []Leg{{Name: "</svg>", Points: straight(89.9, 179.99, 45, 50), Main: true}}}); f.Empty || strings.Contains(f.SVG, "</svg></text>") {
		t.Error("hostile name, near the pole and the date line")
	}
}

func TestHistoryShadesItsBands(t *testing.T) {
	points := straight(47, -20, 64, 90)
	f := Over(History{
		ID: "fig-h", Title: "Speed over time", Zero: points[0].Time, Bands: []Band{{points[10].Time, points[70].Time, "run 1"}},
		Traces: []Trace{
			{Name: "Speed", Unit: "kn", Points: points, Of: func(p *tracklog.Point) float64 { return p.Speed }, Decimals: 1},
			{Name: "Engine speed", Unit: "rpm", Points: points, Of: func(p *tracklog.Point) float64 { return p.RPM }, Right: true},
		},
	})
	if f.Empty || strings.Count(f.SVG, `class="g-area"`) != 2 || !strings.Contains(f.SVG, "run 1") || !strings.Contains(f.SVG, "Time from 09:14:00 UTC, s") {
		t.Errorf("%s", f.SVG)
	}
	if len(f.Table) != 91 || f.Table[1][1] != "19.4" || f.Table[0][2] != "Engine speed, rpm" {
		t.Errorf("%v", f.Table[:2])
	}
	empty := Over(History{ID: "fig-h", Title: "x", Why: "nothing"})
	if !empty.Empty {
		t.Error("an empty history is drawn")
	}
}
