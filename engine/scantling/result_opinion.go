package scantling

import "hullfile/engine/finding"

// Opinion is what a sheet that does not govern says of a panel or member. It makes no check.
type Opinion struct {
	Rule     int     // index into Result.Rules
	What     string  // "thickness" of a panel; "bending", "shear", "inertia" or "slenderness" of a member: what governs
	Unit     string  // of Needed and Fitted
	Needed   float64 // zero where not shown
	Fitted   float64
	Margin   float64 // fitted over needed of what governs, 0 where not shown
	Governs  string  // symbol of the governing step
	Asked    string  // what the sheet calls it
	Clause   string
	Pressure float64 // kN/m², that under the governing step; 0 for a minimum
	Stress   float64 // N/mm², that the governing step allows, where it names one
	Minimum  bool    // no pressure lies under the governing step
	Outside  bool    // rests on a value outside the range of its formula
	Standing finding.Standing
	Basis    finding.Basis
	Why      string // why it is not shown
	Differs  Differs
}

// Differs says why an opinion asks for another size than the governing sheet. Needed = Load · Strength · Rest; the parts
// are nought where either sheet takes a minimum, or shows nothing.
type Differs struct {
	Needed   float64 // needed by the opinion over needed by the governing sheet
	Load     float64 // part that comes from the pressure: its ratio for members, the root of it for plate
	Strength float64 // part that comes from the allowable stress
	Rest     float64 // part that comes from the form of the formula: sides, ends, area, curvature
	Says     string  // the same in a sentence
}

// Zone is one part of the boat as each sheet sees it.
type Zone struct {
	Name    string
	Panels  int // both sides counted
	Members int
	ByRule  []ZoneView // in the order of Result.Rules
}

// ZoneView is what one sheet says of one zone: the panel and the member with the least room, and how many are not met.
type ZoneView struct {
	Rule     int
	Standing finding.Standing
	Panel    int // index into Result.Panels of the least room by this sheet; -1 where none is shown
	Member   int // index into Result.Members, likewise
	Short    int // panels and members, both sides counted
	NotShown int
}
