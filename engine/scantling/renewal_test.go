package scantling_test

import (
	"math"
	"strings"
	"testing"
	"time"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

func day(d int) record.Val[record.Date] {
	return put(record.Date{Year: 2026, Month: time.May, Day: d}, 70)
}

func gauging(id, panel string, measured unit.MM) record.Gauging {
	g := record.Gauging{Panel: put(panel, 71), Measured: put(measured, 72), Date: day(10), Instrument: put("gauge", 73)}
	g.ID, g.At = id, at(70)
	return g
}

func gauged(t *testing.T, h *record.Hull, g ...record.Gauging) scantling.Result {
	t.Helper()
	h.Gaugings = g
	y := &record.Yard{}
	y.Builder.Instruments = []record.Instrument{{Entry: record.Entry{ID: "gauge"}, Calibrated: day(1), Due: day(20)}}
	r := whole(t)
	return scantling.Assess(scantling.Input{Yard: y, Hull: h, Library: r.lib, Alloys: r.alloys})
}

// A reading of a boat whose record names a sheet that is not there cannot be judged, and says so; it names the sheet as the
// record does.
func TestAReadingWithoutASheet(t *testing.T) {
	h := boat("C")
	h.Rules.Structure = put("no-such-sheet", 5)
	h.Panels = []record.Panel{bottom("B3", 6)}
	found := false
	for _, c := range gauged(t, h, gauging("G1", "B3", 5.8)).Checks {
		if c.Rule == "plate-renewal" {
			found = true
			if c.Standing != finding.NotShown || c.Source != "no-such-sheet" || !strings.Contains(c.Says, "is not shown") {
				t.Errorf("%+v", c)
			}
		}
	}
	if !found {
		t.Error("the reading is not told")
	}
}

// The bottom of common practice needs 3.32 mm (own arithmetic), so 3.35 mm is the least in steps of 0.05 mm.
func TestLeastThickness(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B3", 6), bottom("B4", 3)}
	out := gauged(t, h)
	n := out.Renewals[0]
	if !n.Shown || n.Least != 3.35 || n.Room != 2.65 || n.Practice != 5.1 {
		t.Errorf("own arithmetic: %+v", n)
	}
	if short := out.Renewals[1]; short.Least != 3.35 || short.Room != -0.35 {
		t.Errorf("a panel that is short: %+v", short)
	}
	h.Panels[0].X.Set = false
	if lost := gauged(t, h).Renewals[0]; lost.Shown || lost.Why == "" {
		t.Errorf("a panel that is not shown: %+v", lost)
	}
}

// A plate that is short as built has nothing that wear could use: nothing is watched, and a reading says that wear is not the
// cause. Own arithmetic: the bottom of common practice needs 3.35 mm.
func TestShortAsBuilt(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B3", 6), bottom("B4", 3)}
	out := gauged(t, h, gauging("G1", "B4", 3))
	sound, short := out.Renewals[0], out.Renewals[1]
	if sound.ShortAsBuilt(6) || sound.Watch != 5.325 || math.Abs(float64(sound.Watch-(5.1+0.25*0.9))) > 1e-9 {
		t.Errorf("5.1 mm by practice and a quarter of 0.9 mm: %+v", sound)
	}
	if !short.ShortAsBuilt(3) || short.Watch != 0 || short.Gauged[0].Watched || !short.Gauged[0].Renew {
		t.Errorf("%+v", short)
	}
	if says := short.Gauged[0].Says; !strings.Contains(says, "did not have as built") || strings.Contains(says, "renew") {
		t.Error(says)
	}
	for _, c := range out.Checks {
		if c.Rule == "plate-renewal" && (c.Standing != finding.Short || !strings.Contains(c.Settle, "fit plate of 3.35 mm or more") || !strings.Contains(c.Settle, "wear is not the cause")) {
			t.Errorf("%+v", c)
		}
	}
}

// The plate is watched above what must remain, whoever decides that. Own arithmetic.
func TestWatchLiesAboveWhatMustRemain(t *testing.T) {
	for _, share := range []float64{0, 0.02, 0.2, 0.4} {
		for _, fitted := range []unit.MM{3, 3.4, 4, 6, 10} {
			h := boat("C")
			h.Panels = []record.Panel{bottom("B3", fitted)}
			if share > 0 {
				h.Rules.Values = []record.RuleValue{{Entry: record.Entry{ID: "diminution_share"}, Number: put(unit.Ratio(share), 80), From: put("the yard's own choice", 81)}}
			}
			n := gauged(t, h).Renewals[0]
			if watched := n.Watch > 0; !n.Shown || watched == n.ShortAsBuilt(fitted) || watched && (n.Watch < n.Must() || n.Watch > fitted) {
				t.Errorf("%v mm, share %v: %+v", fitted, share, n)
			}
		}
	}
}

func TestReadings(t *testing.T) {
	rows := []struct {
		measured unit.MM
		want     finding.Standing
		doubt    string
	}{
		{5.6, finding.Met, ""}, {4.2, finding.Met, "plate-wear"}, {3.35, finding.Met, "plate-wear"}, {3.34, finding.Short, ""}, {6.5, finding.Met, "gauging-reading"},
	}
	for _, row := range rows {
		h := boat("C")
		h.Panels = []record.Panel{bottom("B3", 6)}
		out := gauged(t, h, gauging("G1", "B3", row.measured))
		d := out.Renewals[0].Gauged[0]
		if d.Standing != row.want || d.Renew != (row.want == finding.Short) || d.Instrument != finding.Met {
			t.Errorf("%v mm: %+v", row.measured, d)
		}
		c := out.Checks[1]
		if c.Rule != "plate-renewal" || c.Subject != "panel B3" || c.Standing != row.want || !strings.Contains(c.Says, "3.35 mm must remain") {
			t.Errorf("%v mm: %+v", row.measured, c)
		}
		told := ""
		for _, f := range out.Findings {
			if f.Rule == "plate-wear" || f.Rule == "gauging-reading" {
				told += f.Rule
			}
		}
		if told != row.doubt {
			t.Errorf("%v mm: doubts %q, want %q", row.measured, told, row.doubt)
		}
	}
}

// A share that the yard lets go decides in place of what the method still meets.
func TestYardsShare(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B3", 6)}
	h.Rules.Values = []record.RuleValue{{Entry: record.Entry{ID: "diminution_share"}, Number: put(unit.Ratio(0.2), 80), From: put("the yard's own choice", 81)}}
	out := gauged(t, h, gauging("G1", "B3", 4.7))
	d := out.Renewals[0].Gauged[0]
	if out.Renewals[0].Yard != 4.8 || !d.Renew || math.Abs(float64(d.Left)+0.1) > 1e-9 {
		t.Errorf("own arithmetic: 0.8 x 6 = 4.8 must remain: %+v", out.Renewals[0])
	}
}

func TestReadingWithoutPanelOrGauge(t *testing.T) {
	h := boat("C")
	h.Panels = []record.Panel{bottom("B3", 6)}
	lost, blind, old := gauging("G1", "B9", 5), gauging("G2", "B3", 5), gauging("G3", "B3", 5)
	blind.Instrument.Set = false
	old.Date = day(21)
	nowhere := gauging("G4", "", 5)
	nowhere.Panel.Set = false
	out := gauged(t, h, lost, blind, old, nowhere)
	standing := map[string]finding.Standing{}
	for _, c := range out.Checks[1:] {
		standing[c.Rule+" "+c.Subject] = c.Standing
	}
	for subject, want := range map[string]finding.Standing{
		"plate-renewal gauging G1": finding.NotShown, "instrument-calibrated gauging G2": finding.NotShown,
		"instrument-calibrated gauging G3": finding.Short, "plate-renewal gauging G4": finding.NotShown,
	} {
		if standing[subject] != want {
			t.Errorf("%s: %q, want %q", subject, standing[subject], want)
		}
	}
}

// At the least thickness the sheet is met, one step below it is not.
func TestLeastIsLeast(t *testing.T) {
	r := shipped(t)
	rapid.Check(t, func(t *rapid.T) {
		h, p := drawn(t).record()
		p.Thickness = put(unit.MM(rapid.Float64Range(2, 16).Draw(t, "thickness")), 20)
		h.Panels = []record.Panel{p}
		n := r.assess(h).Renewals[0]
		if !n.Shown {
			t.Skip("not shown")
		}
		for _, row := range []struct {
			thick unit.MM
			want  finding.Standing
		}{{n.Least, finding.Met}, {n.Least - 0.05, finding.Short}} {
			h.Panels[0].Thickness = put(row.thick, 20)
			if got := r.assess(h).Panels[0].Standing; got != row.want {
				t.Fatalf("%v mm: %s, want %s (needed %v)", row.thick, got, row.want, r.assess(h).Panels[0].Needed)
			}
		}
	})
}

// A reading without a panel is found by its place on the unrolled skin; own square of half a metre from 2.0 m on.
func TestReadingByItsPlace(t *testing.T) {
	h := boat("C")
	r := whole(t)
	g := &grid.Result{Derived: true, Panels: []record.Panel{bottom("bottom frames 3-4 strake 1", 6)}, Patches: []grid.Patch{{ID: "bottom frames 3-4 strake 1", Panel: "bottom frames 3-4 strake 1", Zone: "bottom",
		Flat: [][2]float64{{2, 0}, {2.5, 0}, {2.5, 0.2}, {2, 0.2}}}}}
	read := func(zone string, x, girth float64) scantling.Result {
		one := gauging("G1", "", 5.5)
		one.Panel.Set = false
		one.X, one.Girth = put(unit.M(x), 74), put(unit.M(girth), 75)
		if zone != "" {
			one.Zone = put(zone, 76)
		}
		h.Gaugings = []record.Gauging{one}
		return scantling.Assess(scantling.Input{Hull: h, Library: r.lib, Alloys: r.alloys, Grid: g})
	}
	for _, row := range []struct {
		zone     string
		x, girth float64
		found    bool
	}{{"", 2.2, 0.1, true}, {"bottom", 2.2, 0.1, true}, {"side", 2.2, 0.1, false}, {"", 2.6, 0.1, false}, {"", 2.2, -0.1, false}} {
		out := read(row.zone, row.x, row.girth)
		if got := len(out.Renewals[0].Gauged) == 1; got != row.found {
			t.Errorf("%+v: found %v", row, got)
		}
	}
}
