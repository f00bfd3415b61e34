package proof

import (
	"fmt"
	"math"

	"hullfile/engine/endurance"
	"hullfile/engine/fatigue"
	"hullfile/engine/planing"
	"hullfile/engine/ride"
)

// functionUnderway finds a function of rides, hours and cycles.
func functionUnderway(name string) (function, bool) {
	switch name {
	case "trial length factor":
		return function{[]string{"failures", "confidence_percent"}, func(in map[string]float64) float64 {
			factor, err := endurance.Factor(int(in["failures"]), in["confidence_percent"]/100)
			return orNaN(factor, err)
		}}, true
	case "mean time bound":
		return function{[]string{"hours", "failures", "confidence_percent"}, func(in map[string]float64) float64 {
			bound, _, err := endurance.MeanTime(in["hours"], int(in["failures"]), in["confidence_percent"]/100)
			return orNaN(bound, err)
		}}, true
	case "trial hours needed":
		return function{[]string{"target_h", "reliability_percent", "confidence_percent", "slope", "units"}, func(in map[string]float64) float64 {
			return orNaN(endurance.Needed(in["target_h"], in["reliability_percent"]/100, in["confidence_percent"]/100, in["slope"], int(in["units"])))
		}}, true
	case "success run":
		return function{[]string{"reliability_percent", "confidence_percent"}, func(in map[string]float64) float64 {
			n, err := endurance.Boats(in["reliability_percent"]/100, in["confidence_percent"]/100)
			return orNaN(float64(n), err)
		}}, true
	case "part that runs":
		return function{[]string{"hours_run", "hours", "slope", "failures", "confidence_percent"}, func(in map[string]float64) float64 {
			w := endurance.Weibull{Slope: in["slope"], Confidence: in["confidence_percent"] / 100, Runs: []float64{in["hours_run"]}, Failed: int(in["failures"])}
			part, err := w.Reliability(in["hours"])
			return orNaN(100*part, err)
		}}, true
	case "rainflow count":
		return function{[]string{"range", "value_*"}, func(in map[string]float64) float64 { return rainflow(inRow(in, "value_", ""), in["range"]) }}, true
	case "exponential mean of the highest":
		return function{[]string{"n"}, func(in map[string]float64) float64 { return ride.Exponential(in["n"]) }}, true
	}
	return function{}, false
}

func orNaN(v float64, err error) float64 {
	if err != nil {
		return math.NaN()
	}
	return v
}

// rainflow counts the cycles of one range, or of all for the range nought.
func rainflow(history []float64, size float64) float64 {
	cycles, err := fatigue.Count(history)
	if err != nil {
		return math.NaN()
	}
	sum := 0.0
	for _, c := range cycles {
		if c.Range == size || size == 0 {
			sum += c.Count
		}
	}
	return sum
}

// planingInputs are those of a balance of the planing sheet; short is 1 for the form with all forces through the centre
// of gravity.
var planingInputs = []string{"speed_m_s", "beam_m", "deadrise_deg", "weight_n", "lcg_m", "vcg_m", "thrust_deg", "thrust_arm_m", "density_kg_m3", "viscosity_1e6_m2_s", "gravity_m_s2", "short"}

// planingSymbols says which symbol of the planing sheet a function gives; trim and wetted length are what is sought.
var planingSymbols = map[string]string{"planing trim": "tau", "planing wetted length": "lambda", "planing drag": "D", "planing power": "P_E"}

// balanced solves the planing sheet and takes a symbol of its last turn, so that the formulas count as checked.
func (r *runner) balanced(c *row) (outcome, error) {
	sheet, ok := r.lib.Sheet("savitsky-1964")
	if !ok {
		return outcome{}, fmt.Errorf("no method sheet savitsky-1964")
	}
	in := map[string]float64{}
	for name, v := range c.Inputs {
		x, ok := number(v)
		if !ok {
			return outcome{}, fmt.Errorf("input %s is no number", name)
		}
		in[name] = x
	}
	out := outcome{inputs: listed(in), symbol: planingSymbols[c.Function]}
	if _, err := (function{planingInputs, func(map[string]float64) float64 { return 0 }}).run(in); err != nil {
		return out, err
	}
	run, err := planing.Solve(sheet, planing.Hull{
		Speed: in["speed_m_s"], Beam: in["beam_m"], Deadrise: in["deadrise_deg"], Weight: in["weight_n"], LCG: in["lcg_m"], VCG: in["vcg_m"],
		Thrust: in["thrust_deg"], ThrustArm: in["thrust_arm_m"], Density: in["density_kg_m3"], Viscosity: in["viscosity_1e6_m2_s"] / 1e6,
		Gravity: in["gravity_m_s2"], Roughness: 0.0004, Short: in["short"] == 1,
	})
	if err != nil {
		return out, err
	}
	out.under = run.Working
	err = out.take(out.symbol)
	return out, err
}
