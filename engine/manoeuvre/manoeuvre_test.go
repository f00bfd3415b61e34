package manoeuvre

import (
	"math"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

func put[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: 5})
}

// logged makes the reading of one log with the window of one manoeuvre.
func logged(t *record.Trial, kind, id string, points []tracklog.Point) *tracklog.Result {
	w := &tracklog.Window{From: points[0].Time, To: points[len(points)-1].Time, Samples: len(points), Points: points}
	return &tracklog.Result{Moves: []tracklog.Move{{Trial: t, Kind: kind, ID: id, Place: tracklog.Place{Window: w}}}}
}

func trialOne() *record.Trial {
	return &record.Trial{Entry: record.Entry{ID: "T1"}, Date: put(record.Date{Year: 2026, Month: time.March, Day: 3})}
}

// A boat that gains 2 kn a second from the third second on: 10 kn after 5 s, 20 kn after 10 s (own arithmetic).
func TestAcceleration(t *testing.T) {
	tr := trialOne()
	tr.Accelerate = []record.Acceleration{{Entry: record.Entry{ID: "A1"}, Speed: put(unit.Knot(16)), Seconds: put(unit.Second(8.4))}}
	var all []tracklog.Point
	for i := range 20 {
		kn := math.Max(0, 2*float64(i-3))
		all = append(all, tracklog.Point{Time: 1000 + float64(i), Speed: kn, Trim: 6 - math.Abs(kn-12)/4})
	}
	h := &record.Hull{}
	h.Trials = []record.Trial{*tr}
	r := Assess(h, logged(tr, "acceleration", "A1", all), &trial.Result{Trials: []trial.Trial{{Record: tr, Planing: trial.Value{Value: 13, Has: true}}}})
	a := r.Accelerations[0]
	if len(a.To) != 3 || a.To[0].Seconds != 5 || a.To[1].Seconds != 10 {
		t.Errorf("%+v", a.To)
	}
	if a.Plane.Logged != 6.5 || a.Speed.Logged != 8 || len(r.Findings) != 0 {
		t.Errorf("plane %v, speed %v, %v", a.Plane.Logged, a.Speed.Logged, r.Findings)
	}
	if a.Trim.Logged != 6 || a.TrimAt != 12 || !a.HasTrim {
		t.Errorf("hump %v at %v", a.Trim.Logged, a.TrimAt)
	}
	all[8].Break = true
	a = Assess(h, logged(tr, "acceleration", "A1", all), &trial.Result{}).Accelerations[0]
	if a.Speed.HasLog || a.Speed.Why == "" || a.Plane.Why == "" {
		t.Errorf("a gap is bridged: %+v", a)
	}
}

// A circle of 15 m radius run at 10 m/s in a stream of 0.5 m/s to the east: by construction (own arithmetic).
func ring(seconds int, side float64) []tracklog.Point {
	const radius, speed, stream = 15.0, 10.0, 0.5
	const perDegree = 6371008.8 * math.Pi / 180
	var all []tracklog.Point
	for i := range seconds * 5 {
		at := float64(i) / 5
		turn := side * speed / radius * at
		east := radius*side*(1-math.Cos(turn)) + stream*at
		north := radius * side * math.Sin(turn)
		vEast, vNorth := speed*math.Sin(turn)+stream, speed*math.Cos(turn)
		all = append(all, tracklog.Point{
			Time: 1000 + at, Lat: 47 + north/perDegree, Lon: -20 + east/perDegree/math.Cos(47*math.Pi/180), Speed: math.Hypot(vEast, vNorth) / metresPerSecond,
			Toward: math.Mod(math.Atan2(vEast, vNorth)*180/math.Pi+360, 360),
		})
	}
	return all
}

func TestTurning(t *testing.T) {
	for _, side := range []float64{1, -1} {
		tr := trialOne()
		tr.Turnings = []record.Turning{{Entry: record.Entry{ID: "P1"}, Side: put("starboard"), Diameter: put(unit.M(40)), Seconds: put(unit.Second(9.5))}}
		h := &record.Hull{}
		h.Trials, h.Boat.LengthHull = []record.Trial{*tr}, put(unit.M(7.5))
		r := Assess(h, logged(tr, "turning", "P1", ring(14, side)), &trial.Result{})
		m := r.Turnings[0]
		if math.Abs(m.Diameter.Logged-30) > 0.2 || math.Abs(m.Seconds.Logged-2*math.Pi*1.5) > 0.1 || m.Residue > 0.2 {
			t.Errorf("diameter %v in %v s, residue %v: %s", m.Diameter.Logged, m.Seconds.Logged, m.Residue, m.Why)
		}
		if math.Abs(m.Drift-0.5/metresPerSecond) > 0.05 || math.Abs(m.DriftTo-90) > 3 {
			t.Errorf("drift %v kn to %v", m.Drift, m.DriftTo)
		}
		if math.Abs(m.Tactical.Logged-30) > 1 || math.Abs(m.Lengths-40/7.5) > 1e-9 {
			t.Errorf("tactical %v, %v lengths", m.Tactical.Logged, m.Lengths)
		}
		if len(r.Findings) != 1 || !strings.Contains(r.Findings[0].Says, "diameter 40 m is written") {
			t.Errorf("%v", r.Findings)
		}
	}
	tr := trialOne()
	tr.Turnings = []record.Turning{{Entry: record.Entry{ID: "P1"}}}
	h := &record.Hull{}
	h.Trials = []record.Trial{*tr}
	if m := Assess(h, logged(tr, "turning", "P1", ring(7, 1)), &trial.Result{}).Turnings[0]; m.HasLog || !strings.Contains(m.Why, "full circle") {
		t.Errorf("three quarters of a circle: %+v", m)
	}
}

// Eleven knots lost at 1 kn a second until the boat lies still at 1 kn: the mean of 12 and 1 kn over 11 s (own arithmetic).
func TestStopping(t *testing.T) {
	tr := trialOne()
	tr.Stoppings = []record.Stopping{{Entry: record.Entry{ID: "S1"}, How: put("astern")}}
	var all []tracklog.Point
	for i := range 15 {
		all = append(all, tracklog.Point{Time: 1000 + float64(i), Speed: math.Max(0, 12-float64(i))})
	}
	h := &record.Hull{}
	h.Trials = []record.Trial{*tr}
	s := Assess(h, logged(tr, "stopping", "S1", all), &trial.Result{}).Stoppings[0]
	want := 6.5 * metresPerSecond * 11
	if math.Abs(s.Distance.Logged-want) > 1e-9 || s.Seconds.Logged != 11 || s.Before.Logged != 12 {
		t.Errorf("%v m in %v s from %v kn, want %v m", s.Distance.Logged, s.Seconds.Logged, s.Before.Logged, want)
	}
	s = Assess(h, logged(tr, "stopping", "S1", all[:8]), &trial.Result{}).Stoppings[0]
	if s.Distance.HasLog || !strings.Contains(s.Distance.Why, "come to rest") {
		t.Errorf("%+v", s.Distance)
	}
	s = Assess(h, &tracklog.Result{}, &trial.Result{}).Stoppings[0]
	if s.Distance.Why != "no log is named" {
		t.Errorf("%+v", s.Distance)
	}
}
