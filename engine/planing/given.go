package planing

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// standardGravity is in m/s², knot in m/s; both by definition.
const (
	standardGravity = 9.80665
	knot            = 1852.0 / 3600.0
)

// water is sea and fresh water at 15 °C: density in kg/m³ and kinematic viscosity in m²/s (ITTC values, recalled).
type water struct {
	name               string
	density, viscosity float64
}

func waterOf(t *record.Trial) (w water, written bool) {
	salt := water{"salt water of 15 °C", 1025.9, 1.188e-6}
	fresh := water{"fresh water of 15 °C", 999.1, 1.139e-6}
	if t == nil || !t.Water.Set {
		return salt, false
	}
	switch t.Water.V {
	case "fresh":
		return fresh, true
	case "brackish":
		return water{"brackish water of 15 °C, halfway between salt and fresh", (salt.density + fresh.density) / 2, (salt.viscosity + fresh.viscosity) / 2}, true
	}
	return salt, true
}

// wall is what a Hull is built from, with where each value was written.
type wall struct {
	hull     Hull
	where    map[string]method.Quantity // by sheet name, value left out
	assumed  []finding.Assumption
	lacks    []string
	length   float64
	hasVCG   bool
	fullForm bool
}

// build puts the hull of one case together. What is not written is taken from the lines or the weight breakdown, and
// said; what is nowhere is listed in lacks.
func (in *Input) build(t *record.Trial, mass record.Val[float64]) wall {
	w := wall{where: map[string]method.Quantity{}}
	h := in.Hull
	w.hull.Weight = mass.V * standardGravity
	w.note("planing.weight_n", mass.At, "mass times standard gravity")
	w.hull.Beam = w.take(float64(h.Boat.BeamChine.V), h.Boat.BeamChine.Set, h.Boat.BeamChine.At, "planing.beam_m", in.Lines.Afloat.BeamChine, in.Lines.HasAfloat, "boat.beam_chine_m")
	w.hull.Deadrise = w.take(float64(h.Boat.Deadrise.V), h.Boat.Deadrise.Set, h.Boat.Deadrise.At, "planing.deadrise_deg", in.Lines.Afloat.Deadrise, in.Lines.HasAfloat, "boat.deadrise_deg")
	w.length = w.take(float64(h.Boat.LengthWL.V), h.Boat.LengthWL.Set, h.Boat.LengthWL.At, "planing.length_m", in.Lines.Afloat.LengthWL, in.Lines.HasAfloat, "boat.length_waterline_m")
	in.centre(&w)
	in.thrust(&w)
	in.surroundings(&w, t)
	return w
}

func (w *wall) note(name string, at finding.Place, source string) {
	w.where[name] = method.Quantity{Place: at, Source: source}
}

// take gives the written value, or that of the lines.
func (w *wall) take(v float64, set bool, at finding.Place, name string, lines float64, afloat bool, key string) float64 {
	switch {
	case set:
		w.note(name, at, "")
		return v
	case afloat:
		w.note(name, finding.Place{}, "lines of the hull, afloat at the loaded mass")
		return lines
	}
	w.lacks = append(w.lacks, key)
	return math.NaN()
}

// centre finds the centre of gravity: written for the trial, else that of the weight breakdown fully loaded.
func (in *Input) centre(w *wall) {
	p := &in.Hull.Prediction
	switch {
	case p.LCG.Set:
		w.hull.LCG = float64(p.LCG.V)
		w.note("planing.lcg_m", p.LCG.At, "")
	case in.Loaded.HasX:
		w.hull.LCG = float64(in.Loaded.X)
		w.note("planing.lcg_m", finding.Place{}, "weight breakdown, fully loaded")
		w.assume("the centre of gravity fore and aft on trial is that of the weight breakdown, fully loaded", "write prediction.lcg_m", finding.Derived)
	default:
		w.lacks = append(w.lacks, "prediction.lcg_m")
	}
	switch {
	case p.VCG.Set:
		w.hull.VCG, w.hasVCG = float64(p.VCG.V), true
		w.note("planing.vcg_m", p.VCG.At, "")
	case in.Loaded.HasZ:
		w.hull.VCG, w.hasVCG = float64(in.Loaded.Z), true
		w.note("planing.vcg_m", finding.Place{}, "weight breakdown, fully loaded")
	}
}

// thrust takes the thrust line, where it is written and the height of the centre of gravity is known.
func (in *Input) thrust(w *wall) {
	p := &in.Hull.Prediction
	if !p.ShaftZ.Set || !w.hasVCG {
		w.assume("all forces go through the centre of gravity (the paper's short form), because the height of the propeller shaft is not written", "write prediction.thrust_z_m", finding.Read)
		w.note("planing.thrust_deg", finding.Place{}, "not used in the short form")
		w.note("planing.thrust_arm_m", finding.Place{}, "not used in the short form")
		return
	}
	w.fullForm = true
	w.hull.Thrust = float64(p.ShaftTilt.V)
	tilt := w.hull.Thrust * math.Pi / 180
	w.hull.ThrustArm = (w.hull.VCG-float64(p.ShaftZ.V))*math.Cos(tilt) - w.hull.LCG*math.Sin(tilt)
	w.note("planing.thrust_deg", p.ShaftTilt.At, "")
	w.note("planing.thrust_arm_m", p.ShaftZ.At, "centre of gravity above the shaft, square to the thrust")
	if !p.ShaftTilt.Set {
		w.note("planing.thrust_deg", p.ShaftTilt.At, "assumed: the thrust runs along the keel")
		w.assume("the thrust runs along the keel", "write prediction.thrust_deg", finding.Practice)
	}
}

func (in *Input) surroundings(w *wall, t *record.Trial) {
	of, written := waterOf(t)
	w.hull.Density, w.hull.Viscosity, w.hull.Gravity, w.hull.Roughness = of.density, of.viscosity, standardGravity, 0.0004
	at := finding.Place{}
	if written {
		at = t.Water.At
	}
	w.note("planing.density_kg_m3", at, of.name)
	w.note("planing.viscosity", at, of.name)
	w.note("planing.gravity", finding.Place{}, "standard gravity")
	w.note("planing.roughness", finding.Place{}, "roughness of the paper's example")
	w.assume("the water is "+of.name, "write the water of the trial, and a note where the temperature was far from it", finding.Recalled)
	w.assume("the bottom has the roughness of the paper's example, 0.0004 on the friction coefficient", "a note on the state of the bottom", finding.Read)
}

func (w *wall) assume(says, settle string, basis finding.Basis) {
	w.assumed = append(w.assumed, finding.Assumption{Subject: "prediction", Says: says, Settle: settle, Basis: basis})
}
