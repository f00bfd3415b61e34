package trial

import (
	"fmt"
	"math"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"

	"pgregory.net/rapid"
)

func put[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: 9})
}

// leg makes a run of a setting.
func leg(setting string, heading unit.Deg, speed unit.Knot, rpm unit.RPM, fuel unit.LPerH) record.Run {
	return record.Run{Setting: put(setting), Heading: put(heading), Speed: put(speed), RPM: put(rpm), Fuel: put(fuel)}
}

// tried makes a complete trial of the runs, on an invented boat.
func tried(runs ...record.Run) *record.Hull {
	for i := range runs {
		runs[i].ID = fmt.Sprint(i + 1)
	}
	h := &record.Hull{Number: "H1"}
	h.Boat = record.Boat{
		Speed: put(unit.Knot(32)), LoadedMass: put(unit.KG(2400)), BeamChine: put(unit.M(1.9)),
		FuelUsable: put(unit.Litre(120)), FuelTank: put(unit.Litre(140)), Power: put(unit.KW(150)),
	}
	h.Trials = []record.Trial{{
		Entry: record.Entry{ID: "T1", At: finding.Place{File: "hulls/H1/hull.toml", Line: 5}},
		Date:  put(record.Date{Year: 2026, Month: time.June, Day: 3}), By: put("mo"), Instrument: put("gps"),
		Sea: put("smooth"), Wind: put(unit.Knot(4)), Depth: put(unit.M(60)), Mass: put(unit.KG(2380)), Propeller: put("three blades"),
		Pitch: put(unit.Inch(17)), Gear: put(unit.Ratio(1.92)), Reserve: put(unit.Percent(20)), Document: put("trial-1"), Runs: runs,
	}}
	return h
}

func builder() *record.Builder {
	return &record.Builder{Instruments: []record.Instrument{{
		Entry:      record.Entry{ID: "gps"},
		Calibrated: put(record.Date{Year: 2026, Month: time.January, Day: 1}), Due: put(record.Date{Year: 2027, Month: time.January, Day: 1}),
	}}}
}

// good is a setting run twice both ways.
func good() []record.Run {
	return []record.Run{
		leg("full", 90, 31.2, 5500, 52), leg("full", 272, 29.1, 5500, 52), leg("full", 90, 30.6, 5500, 52), leg("full", 268, 29.7, 5500, 52),
	}
}

func TestSettingReduced(t *testing.T) {
	r := Assess(tried(good()...), builder())
	s := r.Trials[0].Settings[0]
	rows := []struct {
		where     string
		got, want float64
	}{
		{"own arithmetic: mean of means", s.Speed.Value, 30},
		{"own arithmetic: plain mean", float64(s.Simple), 30.15},
		{"own arithmetic: spread of the runs", s.Speed.Spread, 2.1},
		{"own arithmetic: stream (1.05 + 0.75 + 0.45)/3", float64(s.Current), 0.75},
		{"own arithmetic: sets to the first heading", float64(s.SetsTo), 90},
		{"own arithmetic: litres per mile 52/30", s.PerMile.Value, 52.0 / 30},
		{"own arithmetic: range 120 x 0.8 / (52/30)", s.Range.Value, 55.384615},
		{"own arithmetic: slip 1 - 30/40.07", s.Slip.Value, 0.25129},
	}
	for _, row := range rows {
		if math.Abs(row.got-row.want) > 1e-4 {
			t.Errorf("%s: %v, want %v", row.where, row.got, row.want)
		}
	}
	if len(s.Pairs) != 3 || s.OneWay || s.Interval.Has || s.Interval.N != 2 {
		t.Errorf("pairs %v, one way %v, interval %+v", s.Pairs, s.OneWay, s.Interval)
	}
	if top := r.Trials[0].Top; top != 0 || r.Trials[0].Best != 0 {
		t.Errorf("top %d, best %d (%s)", top, r.Trials[0].Best, r.Trials[0].BestWhy)
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s: %s, %s", c.Rule, c.Standing, c.Says)
		}
	}
	if len(r.Findings) != 0 {
		t.Errorf("findings on a trial in order: %v", r.Findings)
	}
}

func TestWorkingIsWrittenOut(t *testing.T) {
	s := Assess(tried(good()...), builder()).Trials[0].Settings[0]
	want := map[string][2]string{
		"mean of means":                    {"(31.2 + 3 × 29.1 + 3 × 30.6 + 29.7) / 8", "30.00 kn"},
		"stream along the course":          {"mean of 1.05, 0.75 and 0.45, setting towards 090°", "0.75 kn"},
		"fuel per nautical mile":           {"52.0 l/h / 30.00 kn", "1.73 l/NM"},
		"range with the reserve kept back": {"120 l × (1 − 20 %) / 1.73 l/NM", "55 NM"},
		"slip":                             {"1 − 30.00 kn / 40.07 kn", "25.1 %"},
	}
	for _, l := range s.Working {
		if w, ok := want[l.Name]; ok {
			if l.Text != w[0] || l.Result != w[1] {
				t.Errorf("%s: %q = %q, want %q = %q", l.Name, l.Text, l.Result, w[0], w[1])
			}
			delete(want, l.Name)
		}
		if l.Source == "" || l.Basis == "" {
			t.Errorf("%s has no source or basis", l.Name)
		}
	}
	if len(want) > 0 {
		t.Errorf("lines not written: %v", want)
	}
}

func TestNoMeanWithoutBothWays(t *testing.T) {
	unheaded := leg("full", 0, 30, 5500, 52)
	unheaded.Heading = record.Val[unit.Deg]{}
	left := leg("full", 270, 29, 5500, 52)
	left.Left = put("wash of a ferry")
	rows := []struct {
		where string
		runs  []record.Run
		why   string
		used  int
	}{
		{"one run", []record.Run{leg("full", 90, 31, 5500, 52)}, "one run only", 1},
		{"same heading", []record.Run{leg("full", 90, 31, 5500, 52), leg("full", 95, 30, 5500, 52)}, "not on opposite headings (090° and 095°)", 2},
		{"16° from opposite", []record.Run{leg("full", 90, 31, 5500, 52), leg("full", 286, 30, 5500, 52)}, "not on opposite headings", 2},
		{"across north, 350° and 010°", []record.Run{leg("full", 350, 31, 5500, 52), leg("full", 10, 30, 5500, 52)}, "(350° and 010°)", 2},
		{"no heading", []record.Run{leg("full", 90, 31, 5500, 52), unheaded}, "the heading of run 2 is not written", 2},
		{"the way back left out", []record.Run{leg("full", 90, 31, 5500, 52), left}, "one run only", 1},
	}
	for _, r := range rows {
		res := Assess(tried(r.runs...), builder())
		s := res.Trials[0].Settings[0]
		if s.Speed.Has || s.PerMile.Has || s.Slip.Has || s.Range.Has || !s.OneWay || s.Used != r.used || !strings.Contains(s.Why, r.why) {
			t.Errorf("%s: %+v", r.where, s)
		}
		if !hasRule(res.Findings, "trial-one-way", finding.Doubt) {
			t.Errorf("%s: no doubt in %v", r.where, res.Findings)
		}
	}
}

func TestReciprocalWithinFifteenDegrees(t *testing.T) {
	rows := []struct {
		where string
		a, b  unit.Deg
		want  bool
	}{
		{"own arithmetic", 90, 270, true}, {"own arithmetic", 0, 165, true}, {"own arithmetic", 0, 164, false},
		{"own arithmetic", 350, 175, true}, {"own arithmetic", 360, 180, true}, {"own arithmetic", 10, 350, false},
	}
	for _, r := range rows {
		if got := reciprocal(r.a, r.b); got != r.want {
			t.Errorf("%s: %v and %v: %v", r.where, r.a, r.b, got)
		}
	}
}

func TestALeftOutRunIsShownAndNotUsed(t *testing.T) {
	runs := append(good(), leg("full", 90, 55, 5500, 52))
	runs[4].Left = put("log jumped")
	s := Assess(tried(runs...), builder()).Trials[0].Settings[0]
	if len(s.Runs) != 5 || s.Used != 4 || math.Abs(s.Speed.Value-30) > 1e-9 {
		t.Errorf("%d runs, %d used, %v kn", len(s.Runs), s.Used, s.Speed.Value)
	}
	if last := s.Runs[4]; last.Used || last.Why != "log jumped" {
		t.Errorf("left out run %+v", last)
	}
}

func TestSpeedReached(t *testing.T) {
	var noKG record.Val[unit.KG]
	rows := []struct {
		where string
		alter func(*record.Hull)
		want  finding.Standing
		says  string
	}{
		{"slower and not heavier", func(*record.Hull) {}, finding.Met, "reached 30.0 kn on trial T1"},
		{"faster than the structure", func(h *record.Hull) { h.Boat.Speed = put(unit.Knot(29.9)) }, finding.Short, "reckoned for 29.9 kn; the boat reached 30.0 kn"},
		{"just as fast", func(h *record.Hull) { h.Boat.Speed = put(unit.Knot(30)) }, finding.Met, ""},
		{"faster at an unknown mass", func(h *record.Hull) { h.Boat.Speed = put(unit.Knot(28)); h.Trials[0].Mass = noKG }, finding.Short, "28.0 kn"},
		{"mass on trial unknown", func(h *record.Hull) { h.Trials[0].Mass = noKG }, finding.NotShown, "mass is not written"},
		{"heavier than loaded", func(h *record.Hull) { h.Trials[0].Mass = put(unit.KG(2500)) }, finding.NotShown, "above the loaded mass"},
		{"one way faster", func(h *record.Hull) {
			h.Trials[0].Runs = append(h.Trials[0].Runs, leg("trimmed out", 90, 33, 5600, 55))
		}, finding.NotShown, "33.0 kn one way"},
		{"no trial", func(h *record.Hull) { h.Trials = nil }, finding.NotShown, "no sea trial"},
		{"no speed stated", func(h *record.Hull) { h.Boat.Speed = record.Val[unit.Knot]{} }, finding.NotShown, "states no speed"},
	}
	for _, r := range rows {
		h := tried(good()...)
		r.alter(h)
		c, found := check(Assess(h, builder()).Checks, "speed-reached")
		if !found || c.Standing != r.want || !strings.Contains(c.Says, r.says) {
			t.Errorf("%s: %s, %q; want %s, %q", r.where, c.Standing, c.Says, r.want, r.says)
		}
		if c.Standing != finding.Met && c.Settle == "" {
			t.Errorf("%s: nothing said that would settle it", r.where)
		}
	}
}

func TestADesignNeedsNoTrial(t *testing.T) {
	h := tried()
	h.Trials = nil
	h.Identity.State = put("design")
	if r := Assess(h, nil); len(r.Checks) != 0 || len(r.Findings) != 0 {
		t.Errorf("a design on paper has %v, %v", r.Checks, r.Findings)
	}
}

func TestFindings(t *testing.T) {
	rows := []struct {
		where string
		runs  []record.Run
		alter func(*record.Hull)
		rule  string
		kind  finding.Kind
	}{
		{"negative slip", good(), func(h *record.Hull) { h.Trials[0].Gear = put(unit.Ratio(2.8)) }, "slip-negative", finding.Contradiction},
		{"engine speed 4 % apart", []record.Run{leg("a", 90, 30, 5000, 40), leg("a", 270, 29, 5200, 40)}, nil, "trial-rpm", finding.Doubt},
		{"stream of 2.5 kn", []record.Run{leg("a", 90, 32, 5000, 40), leg("a", 270, 27, 5000, 40)}, nil, "trial-stream", finding.Doubt},
		{"stream turns", []record.Run{leg("a", 90, 31, 5000, 40), leg("a", 270, 29, 5000, 40), leg("a", 90, 28.5, 5000, 40)}, nil, "trial-stream", finding.Doubt},
		{"one double run", []record.Run{leg("a", 90, 31, 5000, 40), leg("a", 270, 30, 5000, 40)}, nil, "trial-double-runs", finding.Doubt},
		{"90 l/h from 150 kW", []record.Run{leg("a", 90, 31, 5000, 90), leg("a", 270, 30, 5000, 90)}, nil, "trial-consumption", finding.Doubt},
		{"fuel falls", append(good(), leg("less", 90, 25, 4500, 60)), nil, "trial-fuel-curve", finding.Doubt},
		{"3 m of water", []record.Run{leg("a", 90, 10, 2500, 20), leg("a", 270, 9, 2500, 20)}, func(h *record.Hull) { h.Trials[0].Depth = put(unit.M(3)) }, "trial-shallow", finding.Doubt},
		{"far below the stated speed", good(), func(h *record.Hull) { h.Boat.Speed = put(unit.Knot(40)) }, "speed-stated", finding.Doubt},
	}
	for _, r := range rows {
		h := tried(r.runs...)
		if r.alter != nil {
			r.alter(h)
		}
		res := Assess(h, builder())
		if !hasRule(res.Findings, r.rule, r.kind) {
			t.Errorf("%s: no %s %s in %v", r.where, r.kind, r.rule, res.Findings)
		}
	}
}

// Own arithmetic: in 3 m of water the wave goes sqrt(9.81 x 3) m/s = 10.5 kn, so 7.4 to 12.7 kn are distorted.
func TestOnlySpeedsNearTheWaveAreShallow(t *testing.T) {
	for speed, want := range map[unit.Knot]bool{7: false, 7.8: true, 12: true, 13: false, 30: false} {
		h := tried(leg("a", 90, speed, 2500, 20), leg("a", 270, speed, 2500, 20))
		h.Trials[0].Depth = put(unit.M(3))
		if got := hasRule(Assess(h, builder()).Findings, "trial-shallow", finding.Doubt); got != want {
			t.Errorf("%v kn: doubted %v, want %v", speed, got, want)
		}
	}
}

func TestRangeIsNeverReckonedWithTheTankVolume(t *testing.T) {
	h := tried(good()...)
	h.Boat.FuelUsable = record.Val[unit.Litre]{}
	r := Assess(h, builder())
	if s := r.Trials[0].Settings[0]; s.Range.Has || !strings.Contains(s.Range.Why, "fuel_usable_l") {
		t.Errorf("range %+v", s.Range)
	}
	if c, _ := check(r.Checks, "trial-range"); c.Standing != finding.NotShown || len(c.Missing) != 1 {
		t.Errorf("check %+v", c)
	}
}

func TestNoBestSettingBelowThePlane(t *testing.T) {
	h := tried(leg("slow", 90, 6.2, 1500, 8), leg("slow", 270, 5.8, 1500, 8))
	r := Assess(h, builder()).Trials[0]
	if r.Best != -1 || r.BestWhy == "" {
		t.Errorf("best %d, %q", r.Best, r.BestWhy)
	}
	// own arithmetic: 1.5 x sqrt(9.80665 x 1.9) m/s = 6.475 m/s = 12.586 kn
	if math.Abs(r.Planing.Value-12.586) > 0.002 {
		t.Errorf("planing from %v kn, want 12.586", r.Planing.Value)
	}
}

func TestEightRunsHaveAnInterval(t *testing.T) {
	runs := append(good(), good()...)
	s := Assess(tried(runs...), builder()).Trials[0].Settings[0]
	if !s.Interval.Has || s.Interval.N != 4 || math.Abs(s.Interval.T-3.182) > 0.001 {
		t.Errorf("interval %+v", s.Interval)
	}
}

// Speeds k times as great give a mean, a stream and a range k times as great (property).
func TestScaling(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		k := rapid.Float64Range(0.5, 2).Draw(t, "k")
		v := rapid.SliceOfN(rapid.Float64Range(5, 30), 2, 7).Draw(t, "speeds")
		make := func(k float64) Setting {
			runs := []record.Run{}
			for i, speed := range v {
				runs = append(runs, leg("a", unit.Deg(90+180*(i%2)), unit.Knot(k*speed), 4000, 40))
			}
			return Assess(tried(runs...), builder()).Trials[0].Settings[0]
		}
		one, many := make(1), make(k)
		for _, pair := range [][2]float64{
			{one.Speed.Value, many.Speed.Value}, {float64(one.Current), float64(many.Current)}, {one.Range.Value, many.Range.Value},
		} {
			if math.Abs(pair[0]*k-pair[1]) > 1e-9*(1+math.Abs(pair[1])) {
				t.Fatalf("%v times %v is not %v", pair[0], k, pair[1])
			}
		}
	})
}

func BenchmarkAssess1000Runs(b *testing.B) {
	var runs []record.Run
	for i := range 1000 {
		runs = append(runs, leg(fmt.Sprint("setting ", i/10), unit.Deg(90+180*(i%2)), unit.Knot(10+i/50), unit.RPM(1000+5*i), unit.LPerH(5+i/20)))
	}
	h, yard := tried(runs...), builder()
	for b.Loop() {
		Assess(h, yard)
	}
}

func check(all []finding.Check, rule string) (finding.Check, bool) {
	for _, c := range all {
		if c.Rule == rule {
			return c, true
		}
	}
	return finding.Check{}, false
}

func hasRule(all []finding.Finding, rule string, kind finding.Kind) bool {
	for _, f := range all {
		if f.Rule == rule && f.Kind == kind {
			return f.Settle != "" && len(f.Places) > 0
		}
	}
	return false
}
