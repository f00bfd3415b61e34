package engine

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/next"
)

// Next is the one thing to do next for this hull.
func (d *Dossier) Next() next.Step {
	return next.Of(next.Input{
		Hull:     d.Hull,
		Safety:   d.Safety(),
		Findings: d.Findings,
	})
}

// Safety is the checks of strength, load and floating: where one is short, people can be hurt.
func (d *Dossier) Safety() []finding.Check {
	return slices.Concat(d.Structure.Checks, d.Loading.Checks, d.Stability.Checks, d.Capacity.Checks)
}

// Parts says how far the parts of this hull's file have come.
func (d *Dossier) Parts() []next.Part { return next.Parts(d.Hull) }
