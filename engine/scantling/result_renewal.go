package scantling

import (
	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Renewal is how thin one panel may become. There is one for each panel, in the order of Result.Panels.
type Renewal struct {
	Panel    int     // index into Result.Panels
	Shown    bool    // the least thickness is known
	Why      string  // why it is not
	Least    unit.MM // least thickness, in steps of 0.05 mm, at which the governing sheet is still met
	Room     unit.MM // fitted less that: what may be lost by strength; below nought for a panel that is short
	Practice unit.MM // least thickness by the diminution of class practice, nought where the sheet for it shows none
	Watch    unit.MM // thickness from which class practice watches the plate, by the yard's share where one is written; nought for a plate that is short as built
	Yard     unit.MM // least thickness by the share that the yard lets go, nought where none is written
	Gauged   []Gauged
}

// Gauged is one thickness reading held against the panel in which it lies.
type Gauged struct {
	Record     *record.Gauging
	Measured   unit.MM
	Lost       unit.MM // built less measured
	Share      float64 // of the built thickness, of one
	Left       unit.MM // measured less what must remain; below nought it must be renewed
	Used       float64 // part of what may be lost that is lost
	Standing   finding.Standing
	Renew      bool
	Watched    bool             // past the thickness from which class practice watches
	Instrument finding.Standing // whether it was in calibration on the day
	Working    *method.Working  // of the sheet for diminution
	Says       string
}

// ShortAsBuilt reports whether the plate was thinner than what must remain before anything wore: that is a matter of strength,
// and nothing may be lost.
func (r *Renewal) ShortAsBuilt(fitted unit.MM) bool { return r.Shown && fitted < r.Must() }

// Must is what must remain: the yard's share where one is written, else what the governing sheet still meets.
func (r *Renewal) Must() unit.MM {
	if r.Yard > 0 {
		return r.Yard
	}
	return r.Least
}
