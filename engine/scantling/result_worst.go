package scantling

import "hullfile/engine/finding"

// Critical is one panel, member, bracket or fitting among those with the least room by the governing sheet.
type Critical struct {
	Subject  string // "panel B3", "member FR", "bracket K frame 3", "fitting C1"
	Zone     string // empty for brackets and fittings
	Where    string // as the record says
	What     string // what governs: thickness, bending, shear, slenderness, or what a sheet for local loads calls it
	Margin   float64
	Standing finding.Standing
	Basis    finding.Basis
	Equal    int    // how many more of the zone come to the same, both sides not counted
	Says     string // in a sentence
}

// Wire is one filler in the seams of the hull, or planned for them, and whether a sheet that parts its strengths by filler
// took it.
type Wire struct {
	Name    string // 5183
	From    string // where that is known from
	Planned bool   // by a procedure; nothing is welded yet
	Place   finding.Place
}
