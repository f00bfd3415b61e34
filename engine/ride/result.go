package ride

import (
	"hullfile/engine/fatigue"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Result is every acceleration record of one hull.
type Result struct {
	Rides       []Ride // in the order of the record
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Ride is one record reduced. Accelerations in g.
type Ride struct {
	Record     *record.Ride
	Why        string // why there is no result
	Log        Log    // without its values
	Peaks      Peaks
	Third      Mean
	Tenth      Mean
	Hundredth  Mean
	Error      float64 // relative standard deviation of the mean of the highest tenth that the number of peaks alone gives
	Departs    float64 // part by which it lies off the exponential law
	HasDeparts bool
	Design     float64 // design acceleration of the structure, 0 where there is none
	Cycles     []fatigue.Cycle
	Doubts     []string // in short, for the table
}

// Mean is a mean of the highest peaks, with how many went in.
type Mean struct {
	G   float64
	K   int
	Has bool
}

// Whole reports whether the record gave a mean of the highest tenth.
func (r *Ride) Whole() bool { return r.Why == "" && r.Tenth.Has }
