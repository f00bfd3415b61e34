package proof

import (
	"fmt"
	"math"
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/trial"
)

// function is a function of the calculator that is no formula of a sheet, as a proof calls it.
type function struct {
	inputs []string // names of its inputs; a name that ends in a star stands for a row: run_1, run_2, ...
	call   func(in map[string]float64) float64
}

// functionNamed finds a function under the name by which proofs call it.
func functionNamed(name string) (function, bool) {
	switch name {
	case "mean of means":
		return function{[]string{"run_*_kn"}, func(in map[string]float64) float64 {
			mean, _ := trial.MeanOfMeans(inRow(in, "run_", "_kn"))
			return mean
		}}, true
	case "theoretical speed":
		return function{slipInputs(), func(in map[string]float64) float64 {
			theoretical, _ := trial.Slip(in["engine_rpm"], in["pitch_in"], in["gear_ratio"], in["speed_kn"])
			return theoretical
		}}, true
	case "slip":
		return function{slipInputs(), func(in map[string]float64) float64 {
			_, slip := trial.Slip(in["engine_rpm"], in["pitch_in"], in["gear_ratio"], in["speed_kn"])
			return slip
		}}, true
	case "student t":
		return function{[]string{"degrees_of_freedom"}, func(in map[string]float64) float64 {
			return trial.StudentT(int(in["degrees_of_freedom"]))
		}}, true
	}
	if f, ok := functionUnderway(name); ok {
		return f, true
	}
	return functionAfloat(name)
}

func slipInputs() []string { return []string{"engine_rpm", "pitch_in", "gear_ratio", "speed_kn"} }

// inRow gathers run_1, run_2, ... up to the first that is not there.
func inRow(in map[string]float64, before, after string) []float64 {
	var out []float64
	for i := 1; ; i++ {
		v, ok := in[before+strconv.Itoa(i)+after]
		if !ok {
			return out
		}
		out = append(out, v)
	}
}

// run calls the function, after every input has been held against those that it takes.
func (f function) run(in map[string]float64) (float64, error) {
	for name := range in {
		if !slices.ContainsFunc(f.inputs, func(known string) bool { return fits(known, name) }) {
			return 0, fmt.Errorf("the function has no input %q; it takes %s", name, strings.Join(f.inputs, ", "))
		}
	}
	for _, known := range f.inputs {
		if _, ok := in[strings.Replace(known, "*", "1", 1)]; !ok {
			return 0, fmt.Errorf("input %s is missing", known)
		}
	}
	got := f.call(in)
	if math.IsNaN(got) || math.IsInf(got, 0) {
		return 0, fmt.Errorf("the function gives no finite result")
	}
	return got, nil
}

// fits reports whether an input has this name; the star stands for a number.
func fits(known, name string) bool {
	before, after, star := strings.Cut(known, "*")
	if !star {
		return known == name
	}
	middle, ok := strings.CutPrefix(name, before)
	if !ok {
		return false
	}
	middle, ok = strings.CutSuffix(middle, after)
	_, err := strconv.Atoi(middle)
	return ok && err == nil
}
