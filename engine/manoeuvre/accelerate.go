package manoeuvre

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/tracklog"
	"hullfile/engine/unit"
)

const (
	atRest    = 1.0  // knots up to which a boat counts as lying still (practice)
	roundStep = 10.0 // knots between the speeds to which the time is given
	riding    = 2.0  // seconds by which two logs may part and still speak of one moment
)

// accelerate reduces one run from rest. Its time begins where the speed last was that of a boat at rest.
func accelerate(t *record.Trial, rec *record.Acceleration, logs *tracklog.Result, planeKn float64) Acceleration {
	a := Acceleration{
		Trial: t, Record: rec, Move: logs.Find(t, "acceleration", rec.ID), PlaneKn: planeKn,
		Speed: figure("time to speed", "s", 1, rec.Seconds), Plane: figure("time to plane", "s", 1, rec.Plane), Trim: figure("greatest trim", "°", 1, rec.Trim),
	}
	all, why := points(a.Move)
	if why != "" {
		a.Speed.Why, a.Plane.Why, a.Trim.Why = why, why, why
		return a
	}
	from := start(all)
	if from < 0 {
		why = "the boat was not at rest in the window"
		a.Speed.Why, a.Plane.Why = why, why
	} else {
		a.times(all[from:])
	}
	a.hump(all)
	return a
}

// start gives the index of the last point at rest before the speed rises for good, -1 where there is none.
func start(all []tracklog.Point) int {
	top := 0
	for i, p := range all {
		if p.Speed > all[top].Speed || math.IsNaN(all[top].Speed) {
			top = i
		}
	}
	for i := top; i >= 0; i-- {
		if all[i].Speed <= atRest {
			return i
		}
	}
	return -1
}

// times gives the time from rest to round speeds, to the speed on record, and to planing.
func (a *Acceleration) times(all []tracklog.Point) {
	a.Start = all[0].Time
	most := 0.0
	for _, p := range all {
		if p.Speed > most {
			most = p.Speed
		}
	}
	for kn := roundStep; kn <= most; kn += roundStep {
		if s, ok := reach(all, kn); ok {
			a.To = append(a.To, Reached{kn, s})
		}
	}
	if kn, ok := a.Record.Speed.Get(); ok {
		s, reached := reach(all, float64(kn))
		a.Speed.from(s, reached, "the log does not reach "+unit.Text(kn, 1)+" kn")
	} else {
		a.Speed.Why = "speed_kn is not written"
	}
	if a.PlaneKn <= 0 {
		a.Plane.Why = "the speed of planing is not known"
		return
	}
	s, reached := reach(all, a.PlaneKn)
	a.Plane.from(s, reached, "the log does not reach "+unit.Text(a.PlaneKn, 1)+" kn")
}

// reach gives the seconds from the first point until a speed is first reached, between two points in proportion. It does
// not look across a gap.
func reach(all []tracklog.Point, kn float64) (seconds float64, ok bool) {
	for i := 1; i < len(all); i++ {
		if all[i].Break {
			return 0, false
		}
		v0, v1 := all[i-1].Speed, all[i].Speed
		if v0 < kn && v1 >= kn {
			part := (kn - v0) / (v1 - v0)
			return all[i-1].Time + float64(part*(all[i].Time-all[i-1].Time)) - all[0].Time, true
		}
	}
	return 0, false
}

// hump finds the greatest trim on the way, in the log itself or in another log of the trial, and the speed at that moment.
func (a *Acceleration) hump(all []tracklog.Point) {
	best := greatestTrim(all)
	if best == nil {
		for _, b := range a.Move.Beside {
			if best = greatestTrim(b.Window.Inside()); best != nil {
				break
			}
		}
	}
	if best == nil {
		a.Trim.Why = "no log of the trial has the trim"
		return
	}
	a.Trim.from(best.Trim, true, "")
	a.TrimAt, a.HasTrim = speedAt(all, best.Time)
}

func greatestTrim(all []tracklog.Point) *tracklog.Point {
	var best *tracklog.Point
	for i := range all {
		if p := &all[i]; !math.IsNaN(p.Trim) && (best == nil || p.Trim > best.Trim) {
			best = p
		}
	}
	return best
}

// speedAt gives the speed of the point nearest to a moment.
func speedAt(all []tracklog.Point, at float64) (kn float64, ok bool) {
	apart := riding
	for _, p := range all {
		if d := math.Abs(p.Time - at); d <= apart && !math.IsNaN(p.Speed) {
			kn, apart, ok = p.Speed, d, true
		}
	}
	return kn, ok
}
