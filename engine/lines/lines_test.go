package lines

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
)

// prism is the hard-chine prism of 6 m whose hydrostatics were reckoned independently (deadrise 18°, chine 0.95 m, gunwale
// 1.10 m at 0.85 m).
func prism() *Hull {
	h := &Hull{}
	for i, x := range []float64{0, 1.5, 3, 4.5, 6} {
		s := Station{X: x, ID: strconv.Itoa(i), Place: finding.Place{File: "lines.csv", Line: i + 2}}
		s.At[Chine] = hydrostatics.Point{Y: 0.95, Z: 0.308674}
		s.At[Outer], s.At[Knuckle] = s.At[Chine], s.At[Chine]
		s.At[Sheer] = hydrostatics.Point{Y: 1.10, Z: 0.85}
		h.Stations = append(h.Stations, s)
	}
	return h
}

func load() hydrostatics.Load {
	return hydrostatics.Load{Mass: 1500, Centre: hydrostatics.Vector{X: 3, Z: 0.55}, Density: 1025}
}

func TestPrismAfloat(t *testing.T) {
	a, err := prism().Float(load())
	if err != nil {
		t.Fatal(err)
	}
	near(t, "draught, independent table", a.Draught, 0.281511, 1e-5)
	near(t, "GM, independent table", a.GM, 1.415351, 1e-4)
	near(t, "waterline", a.LengthWL, 6, 1e-9)
	near(t, "beam at the chine", a.BeamChine, 1.9, 1e-9)
	near(t, "deadrise", a.Deadrise, 18, 1e-3)
	near(t, "beam of the waterline, 2 T / tan 18°", a.BeamWL, 2*0.281511/math.Tan(18*math.Pi/180), 1e-4)
	near(t, "freeboard", a.Freeboard[1], 0.85-0.281511, 1e-5)
	slope := 0.281511 / math.Sin(18*math.Pi/180)
	near(t, "wetted skin, own arithmetic: two bottoms and two ends", a.Wetted, 2*6*slope+2*1500/1025.0/6, 1e-3)
	section := 0.95*0.308674 + (0.95+1.10)*(0.85-0.308674)
	near(t, "reserve of buoyancy, own arithmetic: the whole prism less what 1500 kg displace", a.Reserve, 6*section-1500/1025.0, 1e-6)
	near(t, "windage, own arithmetic", a.Windage, 6*(0.85-0.281511), 1e-4)
}

func TestPrismSkins(t *testing.T) {
	bottom := math.Hypot(0.95, 0.308674)
	side := math.Hypot(0.15, 0.85-0.308674)
	want := map[string]float64{"bottom": 2 * 6 * bottom, "side": 2 * 6 * side, "deck": 2 * 6 * 1.10,
		"transom": 0.95*0.308674 + (0.95+1.10)*(0.85-0.308674)}
	got := prism().Skins()
	if len(got) != len(want) {
		t.Fatalf("%d zones, want %d: %v", len(got), len(want), got)
	}
	for _, s := range got {
		near(t, s.Zone+" area, own arithmetic", s.Area, want[s.Zone], 1e-9)
		if s.Zone != "transom" {
			near(t, s.Zone+" centre", s.Centre.X, 3, 1e-9)
		}
	}
}

// An undrained cockpit open to the water takes its volume away and nothing else.
func TestOpenRecess(t *testing.T) {
	h := prism()
	h.Recesses = []Recess{{ID: "cockpit", Aft: 1, Fore: 4, Half: 0.8, Sole: 0.4}}
	shut, err := h.Body(false)
	if err != nil {
		t.Fatal(err)
	}
	open, err := h.Body(true)
	if err != nil {
		t.Fatal(err)
	}
	deep := hydrostatics.Attitude{Level: 5}
	lost := shut.Immerse(deep).Volume - open.Immerse(deep).Volume
	near(t, "volume of the cockpit, own arithmetic", lost, 3*1.6*0.45, 1e-3)
}

func TestFindsWhatCannotBe(t *testing.T) {
	rows := []struct {
		rule   string
		change func(h *Hull)
		says   string
	}{
		{"lines-order", func(h *Hull) { h.Stations[2].X = 1.2 }, "station 2 at x 1.200 m does not lie forward of station 1 at x 1.500 m"},
		{"lines-sheer-low", func(h *Hull) { h.Stations[3].At[Sheer].Z = 0.2 }, "the sheer (z 0.200 m) does not lie above the chine (z 0.309 m)"},
		{"lines-chine-low", func(h *Hull) { h.Stations[1].At[Keel].Z = 0.5 }, "the chine (z 0.309 m) lies under the keel (z 0.500 m)"},
		{"lines-cross", func(h *Hull) {
			h.Stations[2].At[Outer] = hydrostatics.Point{Y: 1.1, Z: 0.3}
			h.Stations[2].At[Knuckle] = hydrostatics.Point{Y: 0.7, Z: 0.1}
		}, "crosses"},
		{"recess-outside", func(h *Hull) { h.Recesses = []Recess{{ID: "c", Aft: -1, Fore: 2, Half: 0.5, Sole: 0.4}} }, "reaches beyond the hull"},
		{"recess-ends", func(h *Hull) { h.Recesses = []Recess{{ID: "c", Aft: 3, Fore: 2, Half: 0.5, Sole: 0.4}} }, "aft of where it begins"},
		{"frame-outside", func(h *Hull) { h.Frames = []Frame{{ID: "9", X: 6.4}} }, "frame 9 at x 6.40 m lies beyond the hull"},
		{"frame-order", func(h *Hull) { h.Frames = []Frame{{ID: "1", X: 2}, {ID: "2", X: 1.5}} }, "does not lie forward of frame 1"},
		{"opening-outside", func(h *Hull) {
			h.Openings = []Opening{{ID: "o", Name: "fore hatch", At: []hydrostatics.Vector{{X: 9}}}}
		}, "fore hatch at x 9.00 m lies beyond the hull"},
	}
	for _, r := range rows {
		h := prism()
		if clean := h.Check(); len(clean) > 0 {
			t.Fatalf("a sound hull is found wrong: %v", clean)
		}
		r.change(h)
		found := false
		for _, f := range h.Check() {
			if f.Rule == r.rule && strings.Contains(f.Says, r.says) && f.Kind == finding.Contradiction {
				found = true
			}
		}
		if !found {
			t.Errorf("%s: not found among %v", r.rule, h.Check())
		}
	}
}

// A hull of which the first stations are written contradicts nothing: something is missing.
func TestFewStationsAreAGap(t *testing.T) {
	for n, want := range map[int]string{1: "the lines have 1 station;", 2: "the lines have 2 stations;"} {
		h := prism()
		h.Stations = h.Stations[:n]
		if got := h.Check(); len(got) != 1 || got[0].Kind != finding.Gap || !strings.HasPrefix(got[0].Says, want) {
			t.Errorf("%d stations: %+v", n, got)
		}
	}
}

func TestOneUnfairOrdinateStandsOut(t *testing.T) {
	h := &Hull{}
	for i := 0; i <= 12; i++ {
		x := 0.6 * float64(i)
		s := Station{X: x, ID: strconv.Itoa(i)}
		f := x / 7.2
		s.At[Chine] = hydrostatics.Point{Y: 1 - 0.9*math.Pow(f, 3), Z: 0.3 + 0.5*math.Pow(f, 3)}
		s.At[Outer], s.At[Knuckle] = s.At[Chine], s.At[Chine]
		s.At[Sheer] = hydrostatics.Point{Y: 1.2 - 1.0*math.Pow(f, 3), Z: 0.9 + 0.3*f*f}
		h.Stations = append(h.Stations, s)
	}
	for _, r := range h.Fairness() {
		if r.Stands {
			t.Errorf("fair hull: %s at station %s stands out by %.4f m", r.Edge, r.Station, r.Off)
		}
	}
	h.Stations[6].At[Chine].Y += 0.03
	var who []string
	for _, r := range h.Fairness() {
		if r.Stands {
			who = append(who, r.Edge.String()+" "+r.Station)
		}
	}
	if len(who) == 0 || who[0] != "chine 6" {
		t.Errorf("chine of station 6 moved out 30 mm; standing out: %v", who)
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6f, want %.6f within %g", what, got, want, tol)
	}
}
