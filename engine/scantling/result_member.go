package scantling

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/section"
	"hullfile/engine/unit"
)

// Member is one stiffener, frame or girder judged by the governing sheet.
type Member struct {
	Record    *record.Member
	Derived   bool   // laid out from the grid, not listed by hand
	Same      string // member whose working this one shares; empty if it has its own
	Count     int
	Scope     string             // of the sheet: "stiffener" for a secondary member, "primary" for a primary one
	Bar       section.Section    // as fitted, with the plating that counts with it
	Fitted    section.Properties // of Bar
	Effective unit.MM            // breadth of plating that counts, nought for a member that stands free of the plate
	Working   *method.Working
	Needs     []Need
	Governs   string  // what has the least room: bending, shear, inertia or slenderness
	Margin    float64 // of what governs, 0 where not shown
	Standing  finding.Standing
	Basis     finding.Basis
	Pressure  float64 // kN/m²
	Moment    float64 // kN·m, greatest of one span alone, where the sheet gives it
	Force     float64 // kN, at the end of the span
	Why       string  // why it is not shown
	Opinions  []Opinion
	Together  []Together // what models of its ring and of its bottom say
}

// Need is one thing that a sheet asks of a member.
type Need struct {
	What   string // bending, shear, inertia or slenderness
	Symbol string
	Name   string
	Unit   string
	Needed float64
	Fitted float64
	Most   bool    // what is fitted may not be more than Needed; otherwise not less
	Margin float64 // above 1 is room, 0 where not shown
	Shown  bool
	State  method.State
	reason
}

// Need gives what the sheet asks for one thing; of several steps for it the one that asks the most.
func (m *Member) Need(what string) (Need, bool) {
	var out Need
	found := false
	for _, n := range m.Needs {
		if n.What == what && n.Shown && (!found || n.Margin < out.Margin) {
			out, found = n, true
		}
	}
	return out, found
}

// Together is what one beam model says of a member among its neighbours. It is information; it decides only where the
// record says so.
type Together struct {
	Model   int     // index into Result.Models
	Moment  float64 // kN·m, greatest along the member
	Shear   float64 // kN, greatest
	Moves   unit.MM // greatest, inward
	Ratio   float64 // moment over that of one span alone by the governing sheet
	Margin  float64 // of bending and shear under the model at the stresses that the sheet allows, the lesser
	Alone   float64 // the lesser of bending and shear of one span alone
	Decides bool
	Says    string
}
