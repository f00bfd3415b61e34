package tracklog

import "math"

// Sample is one moment of a log. What the log does not say is not a number.
type Sample struct {
	Time    float64    // seconds since 1970-01-01 UTC
	Line    int        // of the log file, from one
	Lat     float64    // degrees, north positive, WGS 84
	Lon     float64    // degrees, east positive
	Speed   float64    // over ground, knots
	Course  float64    // over ground, degrees true, 0 to 360
	Heading float64    // degrees, 0 to 360
	RPM     float64    // engine speed, mean of the engines
	Fuel    float64    // l/h, all engines together
	Trim    float64    // degrees, bow up
	Acc     [3]float64 // m/s², as the log has it: forward, to one side, upward
	Break   bool       // a gap lies before this sample
	Derived bool       // the speed is that between two positions, not the receiver's
}

// blank gives a sample of which nothing is known.
func blank() Sample {
	n := math.NaN()
	return Sample{Time: n, Lat: n, Lon: n, Speed: n, Course: n, Heading: n, RPM: n, Fuel: n, Trim: n, Acc: [3]float64{n, n, n}}
}

// placed reports whether the sample has a position.
func (s *Sample) placed() bool { return known(s.Lat) && known(s.Lon) }

// known reports whether a value was there.
func known(v float64) bool { return v == v }

// toward gives the direction in which the boat went: its course, or its heading where there is no course.
func (s *Sample) toward() float64 {
	if known(s.Course) {
		return s.Course
	}
	return s.Heading
}
