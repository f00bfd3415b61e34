// Package limits says how fast a boat may be driven in which sea: the wave height at which the design acceleration of its
// structure, or the level chosen for its crew, is reached at each speed.
//
//   - Question: how fast in which sea?
//   - In: the boat, its trials and rides, the method sheet of impacts.
//   - Out: wave height over speed for each acceleration that must not be passed, and a card for the helm; valid for
//     head seas.
//   - Source: Savitsky and Brown 1976, recalled, in the sheet; categories by directive 2013/53/EU.
package limits

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
)

// Result is the operating limits of one hull. Speeds in knots, heights in metres, accelerations in g.
type Result struct {
	Why         string // why there are no limits
	Model       *Model
	Levels      []Level
	Met         []Met // what the boat really ran in
	Category    Category
	Card        []CardRow
	From, To    float64 // speeds over which the limits are reckoned
	Shown       Shown
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Level is one acceleration that is not to be passed.
type Level struct {
	Name   string // "design acceleration of the structure", "level chosen for the people on board"
	Short  string // "structure", "people"
	G      float64
	Source string
	Basis  finding.Basis
	Place  finding.Place
	Curve  []Point
}

// Point is one speed with the significant wave height at which the level is reached; nought where flat water is enough.
type Point struct {
	Knots, Height float64
	Outside       bool
}

// Met is one speed in one sea that the boat was run in.
type Met struct {
	Subject  string // "ride R1", "trial T1", "hours 12"
	Knots    float64
	Height   float64
	Measured float64 // mean of the highest tenth, 0 where it was not measured
	Reckoned float64 // by the sheet, 0 where it gives none
	Outside  bool
}

// Category is the sea of the boat's design category.
type Category struct {
	Letter string
	Most   float64 // significant wave height in metres; 0 where it has no upper end or is not written
	Says   string
}

// CardRow is one wave height with the greatest speed for each level, in the order of Levels.
type CardRow struct {
	Height float64
	Limits []CardLimit
}

// CardLimit is one speed on the card, rounded down to a whole knot. Where the level is not reached at all it is the speed for which the
// structure is reckoned.
type CardLimit struct {
	Knots float64
	Any   bool // the level is not reached at any speed for which the structure is reckoned
	Slow  bool // it is reached already at the slowest planing speed
}

// Shown is the working at one speed: the sheet for the boat, for a sea and for each level.
type Shown struct {
	Knots  float64
	Height float64
	Boat   *method.Working
	Sea    *method.Working
	Levels []*method.Working
}
