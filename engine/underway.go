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

// Underway is what the boat does at speed and over its hours: predicted, measured, allowed and proven.
type Underway struct {
	Prediction planing.Result
	Ride       ride.Result
	Limits     limits.Result
	Hours      running.Result
	Details    detail.Result
	Classes    []detail.Class // that a record may name
}

// underway reckons them, each from those before it.
func (d *Dossier) underway(y *record.Yard, ref *Reference, root *os.Root) {
	u, h := &d.Underway, d.Hull
	u.Prediction = planing.Assess(planing.Input{Hull: h, Sisters: family(y, h), Loaded: d.Weight.Loaded, Lines: &d.Lines, Trials: d.Trials.Trials, Library: ref.Library})
	u.Ride = ride.Assess(ride.Input{Hull: h, Root: root, Paths: d.papers(), Design: d.designAcceleration(), At: d.centre()})
	u.Limits = limits.Assess(limits.Input{Hull: h, Craft: d.Structure.Craft, Prediction: &u.Prediction, Trials: d.Trials.Trials, Rides: u.Ride.Rides, Library: ref.Library})
	u.Hours = running.Assess(running.Input{Hull: h, Sisters: sisters(y, h), Tenth: u.Limits.Model.Tenth})
	u.Details = detail.Assess(h, u.Ride.Rides, ref.Details)
	u.Classes = ref.Details.All()
}

func (u *Underway) checks() []finding.Check { return slices.Concat(u.Ride.Checks, u.Hours.Checks) }

func (u *Underway) findings() []finding.Finding {
	return slices.Concat(u.Prediction.Findings, u.Ride.Findings, u.Limits.Findings, u.Hours.Findings, u.Details.Findings)
}

func (u *Underway) assumptions() []finding.Assumption {
	return slices.Concat(u.Prediction.Assumptions, u.Ride.Assumptions, u.Limits.Assumptions, u.Hours.Assumptions, u.Details.Assumptions)
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

// sisters are the other hulls of the same design. A variant is another design: its welds are others.
func sisters(y *record.Yard, h *record.Hull) []*record.Hull {
	var out []*record.Hull
	for _, s := range y.Hulls {
		if s.Number != h.Number && h.Design.Set && s.Design.V == h.Design.V {
			out = append(out, s)
		}
	}
	return out
}

// family are the other hulls of the same design or of one that comes from the same.
func family(y *record.Yard, h *record.Hull) []*record.Hull {
	var out []*record.Hull
	for _, s := range y.Hulls {
		if s.Number != h.Number && h.Design.Set && bottomDesign(y, s.Design.V) == bottomDesign(y, h.Design.V) {
			out = append(out, s)
		}
	}
	return out
}

// bottomDesign follows what designs are based on. The reader refuses a circle.
func bottomDesign(y *record.Yard, name string) string {
	for range y.Designs {
		for _, d := range y.Designs {
			if d.Name == name && d.BasedOn != "" {
				name = d.BasedOn
			}
		}
	}
	return name
}
