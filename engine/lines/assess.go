package lines

import (
	"errors"
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

// Result is the shape of one hull, and the boat afloat at its loaded mass.
type Result struct {
	Hull        *Hull // nil where the record has no stations
	Sound       bool  // nothing in the lines keeps the hull from being floated
	Afloat      Afloat
	HasAfloat   bool
	Why         string // why it is not afloat
	Skins       []Skin
	Fairness    []Fair
	Form        []hydrostatics.Form // on an even keel, in the water of SeaWater
	Compared    []Compared
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// SeaWater is the density at which dimensions afloat are derived, kg/m³: the value small-craft standards use (recalled).
const SeaWater = 1025

// Assess takes the lines out of the record, floats the hull with the loaded mass and centre of the weight breakdown, and
// holds what the record states against what the lines give. Without stations there is nothing here but one gap.
func Assess(h *record.Hull, loaded weight.Total) Result {
	r := Result{}
	if len(h.Stations) == 0 {
		r.Checks = append(r.Checks, finding.Check{Rule: "lines", Subject: "boat", Asks: "the shape of the hull is on record",
			Standing: finding.NotShown, Source: "the lines on record", Says: "the lines are not on record, so nothing that depends on the shape of the hull is shown",
			Missing: []string{"station"}, Settle: "write the stations into lines.csv beside hull.toml, or beside design.toml where boats share them: keel, chine and sheer"})
		return r
	}
	r.Hull = FromRecord(&h.HullFile)
	r.Findings = r.Hull.Check()
	r.Sound = len(r.Findings) == 0
	if !r.Sound {
		r.Why = "the lines cannot be those of a hull"
		if len(h.Stations) < fewest {
			r.Why = "the lines have too few stations to make a hull"
		}
		r.Checks = append(r.Checks, r.shape(h, finding.NotShown))
		return r
	}
	r.Skins, r.Fairness = r.Hull.Skins(), r.Hull.Fairness()
	r.Form, _ = r.Hull.Form(SeaWater) // fails only where Float does, which says it
	r.Findings = append(r.Findings, r.unfair()...)
	r.Checks = append(r.Checks, r.shape(h, finding.Met))
	r.float(h, loaded)
	r.compare(h)
	return r
}

func (r *Result) shape(h *record.Hull, s finding.Standing) finding.Check {
	c := finding.Check{Rule: "lines", Subject: "boat", Asks: "the shape of the hull is on record", Standing: s,
		Basis: finding.Yard, Source: "the lines on record", Places: []finding.Place{h.Stations[0].At}}
	if s == finding.Met {
		c.Says = fmt.Sprintf("%d stations from x %.2f to %.2f m", len(h.Stations), r.Hull.Stations[0].X, r.Hull.Stations[len(h.Stations)-1].X)
		return c
	}
	c.Says, c.Settle = r.Why, "write more stations"
	if len(h.Stations) >= fewest {
		c.Says, c.Settle = r.Why+"; see the contradictions", "mend the stations that the contradictions name"
	}
	return c
}

func (r *Result) unfair() []finding.Finding {
	var out []finding.Finding
	for _, f := range r.Fairness {
		if !f.Stands {
			continue
		}
		what := "half breadth"
		if f.Height {
			what = "height"
		}
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: "lines-fair", Subject: "station " + f.Station,
			Says:   fmt.Sprintf("the %s of the %s at station %s lies %.0f mm off the curve through its neighbours", what, f.Edge, f.Station, f.Off*1000),
			Settle: "measure this ordinate again, or say in a note why the line has a corner there", Places: []finding.Place{f.Place}})
	}
	return out
}

// float puts the hull in salt water with the loaded mass of the breakdown.
func (r *Result) float(h *record.Hull, loaded weight.Total) {
	r.settle(h, loaded)
	c := finding.Check{Rule: "lines-afloat", Subject: "boat", Asks: "the hull floats with its loaded mass",
		Basis: finding.Derived, Source: "hydrostatics of the lines on record", Places: []finding.Place{h.Stations[0].At}}
	if r.HasAfloat {
		c.Standing = finding.Met
		c.Says = fmt.Sprintf("with %s kg it draws %.2f m on a waterline of %.2f m", unit.Text(r.Afloat.Load.Mass, 0), r.Afloat.Draught, r.Afloat.LengthWL)
	} else {
		c.Standing, c.Says = finding.NotShown, "dimensions afloat are not shown: "+r.Why
		c.Settle = "complete the masses and positions of the weight breakdown"
	}
	r.Checks = append(r.Checks, c)
}

func (r *Result) settle(h *record.Hull, loaded weight.Total) {
	if !(loaded.Mass > 0) || !loaded.HasX || !loaded.HasZ {
		r.Why = "the weight breakdown gives no loaded mass with its centre"
		return
	}
	load := hydrostatics.Load{Mass: float64(loaded.Mass), Density: SeaWater,
		Centre: hydrostatics.Vector{X: float64(loaded.X), Z: float64(loaded.Z)}}
	a, err := r.Hull.Float(load)
	switch {
	case errors.Is(err, hydrostatics.ErrSinks):
		r.Why = fmt.Sprintf("the hull cannot carry %.0f kg even when wholly under water", load.Mass)
		r.Findings = append(r.Findings, wrong("lines-float", "boat", h.Stations[0].At,
			r.Why, "hold the stations and the weight breakdown against the drawing; a length in mm or feet is a common cause"))
	case err != nil:
		r.Why = err.Error()
		r.Findings = append(r.Findings, wrong("lines-float", "boat", h.Stations[0].At,
			fmt.Sprintf("no position of rest is found for %.0f kg at x %.2f m", load.Mass, load.Centre.X), "hold the centre of the breakdown against the lines"))
	default:
		r.Afloat, r.HasAfloat = a, true
		r.Assumptions = append(r.Assumptions, finding.Assumption{Subject: "boat", Basis: finding.Recalled,
			Says:   fmt.Sprintf("the boat floats in salt water of %s kg/m³, the value of small-craft standards", unit.Text(float64(SeaWater), 0)),
			Settle: "state the density with each condition where another is wanted"})
	}
}
