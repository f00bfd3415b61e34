// Package trial reduces sea trials: pairs on reciprocal headings, means of means, spread, slip, fuel and range.
//
//   - Question: how fast is the boat, at what fuel, with how much doubt?
//   - In: the runs of a trial (kn, rpm, l/h, °), the instruments.
//   - Out: settings with pair means, mean of means, spread, slip, l per nautical mile and range; checks of what makes
//     a trial valid.
//   - Source: mean of means as in speed trials (Strasser and others 2015, abstract read); limits are practice.
package trial

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Result is all trials of one hull.
type Result struct {
	Trials      []Trial
	Compared    []Comparison // two states of loading side by side, and the same state on two days
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Trial is one trial reduced.
type Trial struct {
	Record   *record.Trial
	Settings []Setting // in order of speed; those without any speed come last
	Best     int       // index of the setting with the least litres per nautical mile on the plane, -1 if none
	BestWhy  string    // why there is no best setting
	Planing  Value     // knots from which a setting counts as on the plane
	Top      int       // index of the fastest setting by its mean of means, -1 if none
	Usable   unit.Litre
	Reserve  unit.Percent
	HasRange bool
	RangeWhy string // why range is not shown, or what it was reckoned with

	missing []string // record keys without which range cannot be stated
}

// Setting is all runs at one throttle setting.
type Setting struct {
	Name      string
	Runs      []Run
	Used      int // runs that took part
	RPM       Mean
	Speed     Mean      // mean of means of the runs in their order
	Simple    unit.Knot // plain mean of the runs used; the only speed of a setting that was run one way
	Current   unit.Knot // half the mean difference between successive legs, without sign: what the stream along the course would have to be
	SetsTo    unit.Deg  // heading towards which that stream sets
	HasStream bool
	Pairs     []Pair // overlapping: runs 1 and 2, runs 2 and 3, ...
	Interval  Interval
	Fuel      Mean // l/h
	Trim      Mean // degrees
	PerMile   Value
	Range     Value // nautical miles with the reserve kept back
	Slip      Value // part of one
	Depth     Value // depth Froude number
	Working   []Line
	Why       string // why there is no mean: "one run only", "headings are not reciprocal"
	OneWay    bool   // the speed is of runs one way only; stream not removed
}

// Run is one run, with whether it was used.
type Run struct {
	Record *record.Run
	Used   bool
	Why    string // why it was left out
}

// Pair is two successive runs on opposite headings.
type Pair struct {
	First, Second int // index into Runs
	Mean          unit.Knot
	Half          unit.Knot // half the difference
}

// Mean is a mean with its spread.
type Mean struct {
	Value  float64
	Spread float64 // greatest less least of what went in
	N      int
	Has    bool
}

// Value is a derived figure that may not be there.
type Value struct {
	Value float64
	Has   bool
	Why   string // why not
}

// Interval is a 95 % interval of the mean from the pair means, shown only where it says something.
type Interval struct {
	Half float64
	N    int
	T    float64 // factor of Student's distribution
	Has  bool
	Why  string
}

// Line is one line of working: what, formula with values, result.
type Line struct {
	Name   string
	Text   string // "(31.2 + 2 × 29.1 + 30.6) / 4"
	Result string // "30.00 kn"
	Source string
	Basis  finding.Basis
}
