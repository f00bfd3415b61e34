// Package manoeuvre reduces what a boat did on trial beside its steady runs: acceleration from rest, time to plane and the
// greatest trim on the way, turning circles, stops, noise and what the helm sees ahead.
//
//   - Question: how does the boat gather way, turn and stop, how loud is it, and what does the helm see?
//   - In: manoeuvres on record and the windows of the logs.
//   - Out: figures as written, as logged, and which of the two counts.
//   - Source: own derivation from the logs; limits of agreement are practice.
package manoeuvre

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/tracklog"
)

// Result is all manoeuvres of one hull, in the order of the records.
type Result struct {
	Accelerations []Acceleration
	Turnings      []Turning
	Stoppings     []Stopping
	Noises        []Noise
	Sights        []Sight
	Findings      []finding.Finding
}

// Figure is one quantity of a manoeuvre: what is written, what the log gives, and which of the two counts.
type Figure struct {
	Name     string
	Sign     string
	Decimals int
	Written  record.Val[float64]
	Logged   float64
	HasLog   bool
	Why      string // why the log gives none
}

// Value gives the figure that counts: what is written, otherwise what the log gives.
func (f *Figure) Value() (v float64, ok bool) {
	if f.Written.Set {
		return f.Written.V, true
	}
	return f.Logged, f.HasLog
}

// Acceleration is one run from rest.
type Acceleration struct {
	Trial   *record.Trial
	Record  *record.Acceleration
	Move    *tracklog.Move // nil where it names no log
	To      []Reached      // times to round speeds, from the log
	Speed   Figure         // time to the speed on record
	Plane   Figure         // time until on the plane
	Trim    Figure         // greatest trim
	TrimAt  float64        // speed at which it was greatest, knots
	HasTrim bool           // TrimAt is there
	Start   float64        // moment at which the boat began to move, seconds since 1970
	PlaneKn float64        // knots from which the boat counts as on the plane; nought where not known
}

// Reached is the time from rest to a speed.
type Reached struct {
	Knots   float64
	Seconds float64
}

// Turning is one turning circle.
type Turning struct {
	Trial    *record.Trial
	Record   *record.Turning
	Move     *tracklog.Move
	Diameter Figure  // of the circle, the drift taken out
	Tactical Figure  // distance from the approach after half a turn
	Seconds  Figure  // through the full circle
	Lengths  float64 // diameter in hull lengths; nought where not known
	Drift    float64 // knots with which the circle was set aside
	DriftTo  float64 // degrees
	Residue  float64 // metres by which the track strays from the circle (root mean square)
	HasLog   bool
	Why      string
}

// Stopping is one stop.
type Stopping struct {
	Trial    *record.Trial
	Record   *record.Stopping
	Move     *tracklog.Move
	Before   Figure // speed
	Distance Figure
	Seconds  Figure
	Lengths  float64 // distance in hull lengths; nought where not known
}

// Noise is one reading.
type Noise struct {
	Trial  *record.Trial
	Record *record.Noise
}

// Sight is what the helm sees.
type Sight struct {
	Trial  *record.Trial
	Record *record.Sight
}
