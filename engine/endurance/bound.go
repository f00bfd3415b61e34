// Package endurance says what hours run without, or with few, failures prove: lower bounds on the time between failures
// and on the chance of running a stated time without one. It never says more than the arithmetic.
//
//   - Question: what do so many hours with so few failures prove?
//   - In: hours, failures, confidence from 0 to 1.
//   - Out: lower bounds: mean hours between failures, the chance of a stated time without one, hours still needed; an
//     error for what has no answer.
//   - Source: NIST/SEMATECH e-Handbook 8.4.5.1 and the success-run theorem; each function names its own.
package endurance

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// MeanTime is the lower bound, at the given confidence (0 to 1), on the mean time between failures when the trial ended
// at a fixed time: T / factor, factor = chi²(confidence; 2r+2)/2. hours is the total of all boats, failures the count r.
// Source: NIST/SEMATECH e-Handbook of Statistical Methods 8.4.5.1 (time-terminated; with no failure T/(-ln(1-C)));
// the form with failures allowed is that of general reliability texts.
// Errors: hours not above zero, failures below zero, confidence not between 0 and 1.
func MeanTime(hours float64, failures int, confidence float64) (bound, factor float64, err error) {
	factor, err = Factor(failures, confidence)
	if err != nil {
		return 0, 0, err
	}
	if !(hours > 0) {
		return 0, 0, fmt.Errorf("hours %g must be above zero", hours)
	}
	return hours / factor, factor, nil
}

// Factor is the length of the trial over the mean time between failures that it shows, with r failures.
// Errors: failures below zero, confidence not between 0 and 1.
func Factor(failures int, confidence float64) (float64, error) {
	if failures < 0 {
		return 0, fmt.Errorf("failures %d below zero", failures)
	}
	if !(confidence > 0 && confidence < 1) {
		return 0, fmt.Errorf("confidence %g is not between 0 and 1", confidence)
	}
	return distuv.ChiSquared{K: float64(2*failures + 2)}.Quantile(confidence) / 2, nil
}

// Weibull is what a trial with no or few failures shows when life follows Weibull's law with a slope that is chosen, not
// measured (slope 1: chance does not change with age; above 1: wear and fatigue). Times are hours.
type Weibull struct {
	Slope      float64
	Confidence float64
	Runs       []float64 // hours of each boat, counted to its failure where it failed
	Failed     int       // how many of them failed
}

// Scale is the lower bound on the characteristic life: [sum T^slope / factor]^(1/slope), with the factor of Factor, which
// is -ln(1-C) without failure.
// Source: the Weibull method with a slope that is given (Abernethy); T^slope follows the exponential law when T follows
// Weibull's, so the bound is that of MeanTime on T^slope.
// Errors: slope not above zero, confidence not between 0 and 1, a run below zero, no hours at all.
func (w Weibull) Scale() (float64, error) {
	if !(w.Slope > 0) || !(w.Confidence > 0 && w.Confidence < 1) {
		return 0, fmt.Errorf("slope %g must be above zero and confidence %g between 0 and 1", w.Slope, w.Confidence)
	}
	sum := 0.0
	for _, t := range w.Runs {
		if t < 0 || math.IsNaN(t) {
			return 0, fmt.Errorf("a run of %g hours", t)
		}
		sum += math.Pow(t, w.Slope)
	}
	if sum == 0 {
		return 0, fmt.Errorf("no hours")
	}
	factor, err := Factor(w.Failed, w.Confidence)
	if err != nil {
		return 0, err
	}
	return math.Pow(sum/factor, 1/w.Slope), nil
}

// Reliability is the lower bound on the chance of running the given hours without failure.
// The error is that of Scale.
func (w Weibull) Reliability(hours float64) (float64, error) {
	scale, err := w.Scale()
	if err != nil {
		return 0, err
	}
	return math.Exp(-math.Pow(hours/scale, w.Slope)), nil
}

// Life is the lower bound on the time that the given part of boats (0 to 1) outlasts: part 0.9 gives the life that one in
// ten does not reach.
// Errors: those of Scale; part not between 0 and 1.
func (w Weibull) Life(part float64) (float64, error) {
	scale, err := w.Scale()
	if err != nil {
		return 0, err
	}
	if !(part > 0 && part < 1) {
		return 0, fmt.Errorf("part %g is not between 0 and 1", part)
	}
	return scale * math.Pow(-math.Log(part), 1/w.Slope), nil
}

// Needed is how long each of n boats must run without failure to claim the reliability at the target hours.
// All times are hours. Source: Weibull's law solved for the time, with -ln(1-C) as in Scale. The error names what is out of range.
func Needed(target, reliability, confidence, slope float64, n int) (float64, error) {
	if !(target > 0) || !(reliability > 0 && reliability < 1) || !(confidence > 0 && confidence < 1) || !(slope > 0) || n < 1 {
		return 0, fmt.Errorf("target %g h, reliability %g, confidence %g, slope %g, %d boats: out of range", target, reliability, confidence, slope, n)
	}
	return target * math.Pow(math.Log(1-confidence)/(float64(n)*math.Log(reliability)), 1/slope), nil
}

// Boats is how many boats must each run the whole time without failure to claim the reliability: the success run,
// R = (1-C)^(1/n), rounded up.
// Error: reliability or confidence not between 0 and 1.
func Boats(reliability, confidence float64) (int, error) {
	if !(reliability > 0 && reliability < 1) || !(confidence > 0 && confidence < 1) {
		return 0, fmt.Errorf("reliability %g and confidence %g must be between 0 and 1", reliability, confidence)
	}
	return int(math.Ceil(math.Log(1-confidence)/math.Log(reliability) - 1e-9)), nil
}

// Harsher is how many hours of service the hours of a trial stand for, when damage grows as the load to the power m and
// the trial was that much harsher: hours x ratio^m. It holds only for the same weld, the same place and the same way of
// failing; m of 3 to 4 is what welded details show.
// Error: hours below zero, ratio or power not above zero.
func Harsher(hours, ratio, m float64) (float64, error) {
	if !(hours >= 0) || !(ratio > 0) || !(m > 0) {
		return 0, fmt.Errorf("hours %g, ratio %g, power %g: out of range", hours, ratio, m)
	}
	return hours * math.Pow(ratio, m), nil
}
