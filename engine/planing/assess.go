package planing

import (
	"math"
	"strings"

	"hullfile/engine/lines"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
)

// Input is what a prediction rests on.
type Input struct {
	Hull    *record.Hull
	Sisters []*record.Hull // other hulls of the same family of designs
	Loaded  weight.Total
	Lines   *lines.Result
	Trials  []trial.Trial
	Library *method.Library
}

// The sheets that a prediction uses.
const (
	sheetPlaning    = "savitsky-1964"
	sheetSpray      = "whisker-spray-2007"
	sheetPorpoising = "porpoising-1964"
	sheetPower      = "planing-power"
	sheetSister     = "crouch"
)

// Assess predicts trim, wetted length, resistance and power over the range of speed, and puts what the trials measured
// beside it. A boat without the values that are needed has no prediction and is told which are missing; that is no gap,
// because no rule asks for a prediction.
func Assess(in Input) Result {
	var r Result
	for i := range in.Trials {
		if t := &in.Trials[i]; t.Record.Mass.Set {
			in.add(&r, t, record.Val[float64]{V: float64(t.Record.Mass.V), Set: true, At: t.Record.Mass.At})
		}
	}
	boat := &in.Hull.Boat
	if len(r.Cases) == 0 && r.Why == "" && boat.LoadedMass.Set {
		in.add(&r, nil, record.Val[float64]{V: float64(boat.LoadedMass.V), Set: true, At: boat.LoadedMass.At})
	}
	if len(r.Cases) == 0 && r.Why == "" {
		r.Why = "neither a trial nor the boat states a mass"
	}
	if len(r.Cases) == 0 {
		r.Sheets = nil
	}
	return r
}

// models are the sheets. They are asked for once it is known that the boat has what they need.
type models struct {
	planing, spray, porpoising, power, sister *method.Sheet
}

func (m *models) list() []*method.Sheet {
	return []*method.Sheet{m.planing, m.spray, m.porpoising, m.power, m.sister}
}

func (in *Input) sheets() (*models, string) {
	m := &models{}
	for name, to := range map[string]**method.Sheet{
		sheetPlaning: &m.planing, sheetSpray: &m.spray, sheetPorpoising: &m.porpoising, sheetPower: &m.power, sheetSister: &m.sister,
	} {
		if in.Library == nil {
			return nil, "no method sheets"
		}
		s, ok := in.Library.Sheet(name)
		if !ok {
			return nil, "a method sheet that a prediction needs is not there"
		}
		*to = s
	}
	return m, ""
}

// add reckons one case.
func (in *Input) add(r *Result, t *trial.Trial, mass record.Val[float64]) {
	var rec *record.Trial
	if t != nil {
		rec = t.Record
	}
	w := in.build(rec, mass)
	if len(w.lacks) > 0 {
		r.Why = "not written: " + strings.Join(w.lacks, ", ")
		return
	}
	m, why := in.sheets()
	if why != "" {
		r.Why = why
		return
	}
	r.Sheets = m.list()
	c := Case{Trial: rec, Mass: mass.V, LCG: w.hull.LCG, VCG: w.hull.VCG, HasVCG: w.hasVCG, Full: w.fullForm, Waterline: w.length, Installed: float64(in.Hull.Boat.Power.V)}
	s := in.newSweep(m, &w)
	c.Points = s.over(in.fastest(t))
	if len(c.Points) == 0 {
		r.Why = "no running attitude is found at any speed"
		return
	}
	if t != nil {
		c.Settings = s.settings(t)
	}
	c.Shown, c.Hull = s.shown(in.shownAt(t))
	c.Reach = reach(c.Points, c.Installed)
	in.sisters(&c, m, t)
	r.Cases = append(r.Cases, c)
	if len(r.Cases) == 1 {
		r.Assumptions = append(w.assumed, in.leftOut()...)
	}
	r.Findings = append(r.Findings, in.findings(&c)...)
}

// fastest is the greatest speed that is of interest, in knots.
func (in *Input) fastest(t *trial.Trial) float64 {
	top := float64(in.Hull.Boat.Speed.V)
	if t != nil && t.Top >= 0 {
		top = math.Max(top, t.Settings[t.Top].Speed.Value)
	}
	return math.Min(1.1*top, 120)
}

// shownAt is the speed whose working is shown: the fastest measured, or that intended.
func (in *Input) shownAt(t *trial.Trial) float64 {
	if t != nil && t.Top >= 0 {
		return t.Settings[t.Top].Speed.Value
	}
	return float64(in.Hull.Boat.Speed.V)
}
