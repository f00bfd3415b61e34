package engine

import (
	"math"
	"os"
	"slices"

	"hullfile/engine/detail"
	"hullfile/engine/finding"
	"hullfile/engine/limits"
	"hullfile/engine/planing"
	"hullfile/engine/record"
	"hullfile/engine/ride"
	"hullfile/engine/running"
)

// predicted reckons how the boat runs at speed, and holds it against what its trials measured.
func (d *Dossier) predicted(y *record.Yard, ref *Reference) {
	d.Prediction = planing.Assess(planing.Input{Hull: d.Hull, Sisters: family(y, d.Hull), Loaded: d.Weight.Loaded, Lines: &d.Lines, Trials: d.Trials.Trials, Library: ref.Library})
}

// underway reckons what the boat does at speed and over its hours, each part from those before it: predicted, measured,
// allowed, proven.
func (d *Dossier) underway(y *record.Yard, ref *Reference, root *os.Root) {
	h := d.Hull
	d.Ride = ride.Assess(ride.Input{Hull: h, Root: root, Paths: d.papers(), Design: d.designAcceleration(), At: d.centre()})
	d.Limits = limits.Assess(limits.Input{Hull: h, Craft: d.Structure.Craft, Prediction: &d.Prediction, Trials: d.Trials.Trials, Rides: d.Ride.Rides, Library: ref.Library})
	d.Hours = running.Assess(running.Input{Hull: h, Sisters: sisters(y, h), Tenth: d.Limits.Model.Tenth})
	d.Details = detail.Assess(h, d.Ride.Rides, ref.Details)
	d.Classes = ref.Details.All()
}

func (d *Dossier) underwayChecks() []finding.Check {
	return slices.Concat(d.Ride.Checks, d.Hours.Checks)
}

func (d *Dossier) underwayFindings() []finding.Finding {
	return slices.Concat(d.Prediction.Findings, d.Ride.Findings, d.Limits.Findings, d.Hours.Findings, d.Details.Findings)
}

func (d *Dossier) underwayAssumptions() []finding.Assumption {
	return slices.Concat(d.Prediction.Assumptions, d.Ride.Assumptions, d.Limits.Assumptions, d.Hours.Assumptions, d.Details.Assumptions)
}

// designAcceleration is that of the governing structural sheet in g, nought where it gives none.
func (d *Dossier) designAcceleration() float64 {
	v, ok := d.Structure.Craft.Value("n_CG")
	if !ok {
		return 0
	}
	return v
}

// centre is where the centre of gravity lies with full load, metres forward of the transom.
func (d *Dossier) centre() float64 {
	if !d.Weight.Loaded.HasX {
		return math.NaN()
	}
	return float64(d.Weight.Loaded.X)
}

// papers gives the way to every document that is there, by its key.
func (d *Dossier) papers() map[string]string {
	out := map[string]string{}
	for i := range d.Documents.Documents {
		if p := &d.Documents.Documents[i]; p.Present {
			out[p.Record.ID] = p.Path
		}
	}
	return out
}

// bottomDesign follows what designs are based on. The reader refuses a circle.
func bottomDesign(designs []record.DesignName, name string) string {
	for range designs {
		for _, d := range designs {
			if d.Name == name && d.BasedOn != "" {
				name = d.BasedOn
			}
		}
	}
	return name
}
