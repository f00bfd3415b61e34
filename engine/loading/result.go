// Package loading puts together what the boat weighs in each condition and lets it float: mass, centre, free surfaces,
// sinkage, trim and heel, freeboards and metacentric height.
//
// The light craft comes from the weight breakdown. What is carried is put together anew for every condition, so load items
// of the breakdown are not simply added: people items are replaced by the people of the condition, an item that a tank
// names is replaced by the contents of that tank, fuel and water that no tank names is taken by the part to which tanks are
// full, and every other load item counts as stores.
//
// Axes as in hydrostatics: x forward of the transom, y to starboard, z up; metres. Masses in kilograms, angles in degrees.
//
//   - Question: what does the boat weigh in each condition, and how does it float?
//   - In: the hull with its tanks, people and conditions, its weight breakdown and its lines.
//   - Out: conditions with mass, centre, attitude, freeboards and metacentric height; checks, findings, assumptions.
//   - Source: statics; conditions as ISO 12217 names them, recalled where it was not read.
package loading

import (
	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/record"
)

// Result is the conditions of one hull.
type Result struct {
	Conditions  []Condition // the light craft first
	Density     float64     // of the water, kg/m³
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Find gives the first condition of a kind; ok is false where there is none.
func (r *Result) Find(kind string) (*Condition, bool) {
	for i := range r.Conditions {
		if r.Conditions[i].Kind == kind {
			return &r.Conditions[i], true
		}
	}
	return nil, false
}

// Condition is one state of loading.
type Condition struct {
	ID      string
	Title   string
	Kind    string
	Record  *record.Condition // nil where it is derived
	Persons int
	Person  float64 // mass of one
	Parts   []Part
	Mass    float64
	Centre  hydrostatics.Vector
	Whole   bool     // every part has its mass and centre
	Without []string // what lacks a mass or a centre

	Surfaces []Surface
	Rise     float64 // of the centre of gravity by free surfaces, metres

	Floats  bool
	Why     string            // why it does not float or was not floated
	Afloat  lines.Afloat      // held upright
	Rest    hydrostatics.Rest // as it lies by itself, heel included
	Heel    float64           // of that, starboard down positive
	GM      float64           // upright, liquids taken as solid
	GMFluid float64           // less the rise by free surfaces
	Least   float64           // least height of the sheer above the water as it lies
	LeastX  float64           // where that is
}

// Part is one part of a condition.
type Part struct {
	Name    string
	Mass    float64
	Centre  hydrostatics.Vector
	Working string
	Places  []finding.Place
}

// Surface is the free surface of one slack tank.
type Surface struct {
	Tank    *record.Tank
	Rise    float64 // of the centre of gravity, metres
	Known   bool    // false where the record gives no surface
	Working string
}

// Load is what the water has to carry; with the centre raised by the free surfaces if fluid is true.
func (c *Condition) Load(density float64, fluid bool) hydrostatics.Load {
	l := hydrostatics.Load{Mass: c.Mass, Centre: c.Centre, Density: density}
	if fluid {
		l.Centre.Z += c.Rise
	}
	return l
}
