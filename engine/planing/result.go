package planing

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Result is the prediction for one hull: one case for each trial that states its mass, or one for the boat as designed.
type Result struct {
	Why         string // why there is no prediction
	Cases       []Case
	Sheets      []*method.Sheet // those that were used
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Case is the hull at one mass over the range of speed. Masses in kg, lengths in metres, angles in degrees, powers in kW.
type Case struct {
	Trial     *record.Trial // nil for the boat as designed
	Mass      float64
	LCG, VCG  float64
	HasVCG    bool
	Hull      Hull // at the speed of Shown
	Full      bool // the form with thrust line and moments; else all forces go through the centre of gravity
	Waterline float64
	Installed float64 // rated power, zero where not written
	Points    []Point // at whole knots
	Settings  []Setting
	Shown     Workings // of the fastest setting, or of the speed as intended
	Sisters   []Sister
	Reach     Reach
}

// Point is the hull at one speed.
type Point struct {
	Knots       float64
	Coefficient float64 // speed over the root of gravity times beam
	Run         Attitude
	Other       Attitude // the other form, for comparison
	HasOther    bool
	Spray       float64 // N
	Drag        float64 // in all, N
	Effective   float64 // kW
	Least, Most float64 // engine power at the ends of the band of efficiency, kW
	Critical    float64 // trim at which it porpoises
	HasCritical bool
	OffChart    string   // why there is no critical trim
	Second      float64  // second opinion on it
	Flags       []string // why the prediction is not to be trusted here
}

// Inside reports whether every range holds.
func (p *Point) Inside() bool { return len(p.Flags) == 0 }

// Setting is a throttle setting of the trial beside the prediction for its speed.
type Setting struct {
	Name    string
	Knots   float64
	Trim    float64
	HasTrim bool
	Point   *Point // nil where nothing is predicted
	Why     string
}

// Workings are the sheets behind one point.
type Workings struct {
	Knots                             float64
	Planing, Spray, Porpoising, Power *method.Working
	Sister                            *method.Working // back-figured coefficient, nil without a speed reached on trial
}

// Sister is another hull of the same family with the speed to expect of it.
type Sister struct {
	Number  string
	Mass    float64
	Power   float64
	Speed   float64
	Outside bool
}

// Reach is the speed that the installed power gives in the prediction, at both ends of the band of efficiency.
type Reach struct {
	Low, High       float64 // knots
	HasLow, HasHigh bool    // false where the curve ends before
}
