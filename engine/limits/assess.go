package limits

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/planing"
	"hullfile/engine/record"
	"hullfile/engine/ride"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// Input is what the limits rest on.
type Input struct {
	Hull       *record.Hull
	Craft      *method.Working // values of the craft by the governing structural sheet
	Prediction *planing.Result
	Trials     []trial.Trial
	Rides      []ride.Ride
	Library    *method.Library
}

const (
	sheetName = "savitsky-brown-1976"
	planes    = 1.5 // speed coefficient from which the boat planes (as in the prediction)
	usualTrim = 4.0 // degrees, where no trim is known (practice)
)

// standardGravity is in m/s², knot in m/s; both by definition.
const (
	standardGravity = 9.80665
	knot            = 1852.0 / 3600.0
)

// Assess reckons the limits. Without the principal data, or without any level, there are none, and it says why.
func Assess(in Input) Result {
	var r Result
	r.Category = categoryOf(in.Hull)
	m, why := in.model()
	if why != "" {
		r.Why = why
		return r
	}
	boat := &in.Hull.Boat
	r.From = math.Ceil(planes * math.Sqrt(standardGravity*float64(boat.BeamChine.V)) / knot)
	r.To = math.Max(in.fastest(), r.From+1)
	r.Model = m
	r.Levels = in.levels()
	in.met(&r)
	if len(r.Levels) == 0 {
		r.Why = "neither the structural sheet gives a design acceleration nor does the record choose a level for the people on board"
		return r
	}
	for i := range r.Levels {
		l := &r.Levels[i]
		for v := r.From; v <= r.To; v++ {
			if p, ok := m.height(v, l); ok {
				l.Curve = append(l.Curve, p)
			}
		}
	}
	r.Card = card(&r, boat.Speed)
	in.show(&r)
	r.Assumptions = in.assumptions(&r)
	r.Findings = in.findings(&r)
	return r
}

// model puts the boat into the sheet.
func (in *Input) model() (*Model, string) {
	boat := &in.Hull.Boat
	var lacks []string
	g := method.GivenMap{}
	put := func(name, key, unit string, f float64, set bool, at finding.Place) {
		if !set {
			lacks = append(lacks, key)
		}
		g[name] = method.Quantity{Number: f, Unit: unit, Place: at}
	}
	put("planing.beam_m", "boat.beam_chine_m", "m", float64(boat.BeamChine.V), boat.BeamChine.Set, boat.BeamChine.At)
	put("planing.deadrise_deg", "boat.deadrise_deg", "°", float64(boat.Deadrise.V), boat.Deadrise.Set, boat.Deadrise.At)
	put("planing.length_m", "boat.length_waterline_m", "m", float64(boat.LengthWL.V), boat.LengthWL.Set, boat.LengthWL.At)
	put("planing.mass_kg", "boat.loaded_mass_kg", "kg", float64(boat.LoadedMass.V), boat.LoadedMass.Set, boat.LoadedMass.At)
	if len(lacks) > 0 {
		return nil, "not written: " + strings.Join(lacks, ", ")
	}
	if in.Library == nil {
		return nil, "no method sheets"
	}
	sheet, ok := in.Library.Sheet(sheetName)
	if !ok {
		return nil, "the method sheet for impacts in waves is not there"
	}
	return &Model{Sheet: sheet, boat: g, trims: in.trims(), fixed: usualTrim}, ""
}

// trims are those measured on the plane, or those predicted where none was.
func (in *Input) trims() []trimAt {
	var out []trimAt
	least := planes * math.Sqrt(standardGravity*float64(in.Hull.Boat.BeamChine.V)) / knot
	for i := range in.Trials {
		if len(out) > 0 {
			break // one trial: trims of two masses do not make one curve
		}
		for _, s := range in.Trials[i].Settings {
			if s.Speed.Has && s.Trim.Has && s.Speed.Value >= least {
				out = append(out, trimAt{s.Speed.Value, s.Trim.Value, "measured on trial " + in.Trials[i].Record.ID})
			}
		}
	}
	if len(out) > 0 || in.Prediction == nil || len(in.Prediction.Cases) == 0 {
		return rising(out)
	}
	for i := range in.Prediction.Cases[0].Points {
		if p := &in.Prediction.Cases[0].Points[i]; p.Knots >= least {
			out = append(out, trimAt{p.Knots, p.Run.Trim, "predicted"})
		}
	}
	return rising(out)
}

// rising drops what does not rise in speed: settings come in order of speed, two of them may have the same.
func rising(all []trimAt) []trimAt {
	var out []trimAt
	for _, t := range all {
		if len(out) == 0 || t.knots > out[len(out)-1].knots {
			out = append(out, t)
		}
	}
	return out
}

// fastest is the greatest speed that the boat reaches or is meant to reach, at most 120 kn.
func (in *Input) fastest() float64 {
	top := float64(in.Hull.Boat.Speed.V)
	for i := range in.Trials {
		if t := &in.Trials[i]; t.Top >= 0 {
			top = math.Max(top, t.Settings[t.Top].Speed.Value)
		}
	}
	return math.Min(math.Ceil(top), 120)
}

// levels are the accelerations that are not to be passed.
func (in *Input) levels() []Level {
	var out []Level
	if s, ok := in.Craft.Get("n_CG"); ok && (s.State == method.Sound || s.State == method.Outside) && s.Value > 0 {
		out = append(out, Level{Name: "design acceleration of the structure", Short: "structure", G: s.Value, Basis: s.Rests,
			Source: "dynamic load factor of " + in.Craft.Sheet.Work + " " + in.Craft.Sheet.Edition})
	}
	if c := &in.Hull.Comfort; c.Level.Set {
		source := "chosen by the yard"
		if c.Who.Set {
			source += ": " + c.Who.V
		}
		out = append(out, Level{Name: "level chosen for the people on board", Short: "people", G: float64(c.Level.V), Basis: finding.Yard, Source: source, Place: c.Level.At})
	}
	return out
}

// show keeps the working at the speed and sea of the first impact record, or in the middle of the curves.
func (in *Input) show(r *Result) {
	v := math.Ceil((r.From + r.To) / 2)
	boat, err := r.Model.at(v)
	if err != nil {
		return
	}
	h := float64(in.Hull.Boat.BeamChine.V) / 4
	for _, m := range r.Met {
		if m.Measured > 0 {
			v, h = m.Knots, m.Height
			boat, _ = r.Model.at(v)
			break
		}
	}
	r.Shown = Shown{Knots: v, Height: h, Boat: boat}
	r.Shown.Sea, _ = r.Model.sea(boat, h)
	for i := range r.Levels {
		w, err := r.Model.limit(boat, &r.Levels[i])
		if err == nil {
			r.Shown.Levels = append(r.Shown.Levels, w)
		}
	}
}

func (in *Input) assumptions(r *Result) []finding.Assumption {
	var out []finding.Assumption
	say := func(says, settle string, b finding.Basis) {
		out = append(out, finding.Assumption{Subject: "limits", Says: says, Settle: settle, Basis: b})
	}
	for _, l := range r.Levels {
		if l.Short == "structure" {
			say("the dynamic load factor of the structural rule is read as the mean of the highest tenth of impacts; the rule's own coefficient fits that reading at about 3.6° of trim", "hold it against your copy of the rule", finding.Recalled)
		}
	}
	say("the seas come from ahead, which is the hardest course", "run the boat at other courses and record the impacts", finding.Recalled)
	say("the boat runs at its loaded mass; a lighter boat is hit harder", "write boat.loaded_mass_kg", finding.Yard)
	if _, from := r.Model.trim(r.From); len(r.Model.trims) == 0 || from == "predicted" {
		words := "the trim is the predicted one"
		if len(r.Model.trims) == 0 {
			words = fmt.Sprintf("the trim is %s° at every speed", unit.Text(usualTrim, 0))
		}
		say(words+", because no trim was measured on the plane", "write trial.run.trim_deg", finding.Practice)
	}
	return out
}

// findings tells a formula outside its range, and a level that is passed where the boat is meant to run.
func (in *Input) findings(r *Result) []finding.Finding {
	var out []finding.Finding
	outside, all := 0, 0
	for _, l := range r.Levels {
		for _, p := range l.Curve {
			all++
			if p.Outside {
				outside++
			}
		}
	}
	if outside > 0 {
		which := fmt.Sprintf("%d of the %d points reckoned", outside, all)
		if outside == all {
			which = "any of the points reckoned"
		}
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: "limits-range", Subject: "limits",
			Says:   fmt.Sprintf("the formula for impacts was not made for %s: %s", which, in.whyOutside(r)),
			Settle: "record accelerations under way and hold them against the curve"})
	}
	return out
}

// whyOutside gives the figures that lie outside the range of the tests.
func (in *Input) whyOutside(r *Result) string {
	w := r.Shown.Boat
	var parts []string
	add := func(symbol, what string, lo, hi float64, n int) {
		if v, ok := w.Value(symbol); ok && (v < lo || v > hi) {
			parts = append(parts, fmt.Sprintf("%s %s, the tests had %s to %s", what, unit.Text(v, n), unit.Plain(lo), unit.Plain(hi)))
		}
	}
	add("r_m", "displacement ratio", 100, 250, 0)
	add("r_L", "length over beam", 3, 5, 2)
	add("beta", "deadrise", 10, 30, 0)
	add("tau", fmt.Sprintf("trim at %s kn", unit.Text(r.Shown.Knots, 0)), 3, 7, 1)
	if len(parts) == 0 {
		return "speed, trim or wave height lie beyond those of the tests"
	}
	return strings.Join(parts, "; ")
}
