// Package fleet looks at one figure over hulls that were built one after the other.
//
//   - Question: does the yard build alike from hull to hull?
//   - In: one figure a hull, in the order of building.
//   - Out: the mean, limits of single values, and which hulls lie outside; no limits below LeastHulls.
//   - Source: control chart for individual values, ISO 7870-2, recalled.
package fleet

import "math"

// LeastHulls is the number of hulls from which limits are given. practice: with fewer, one hull moves its own limits.
const LeastHulls = 6

// spread turns the mean of the ranges between neighbours into three standard deviations: 3 / 1.128, where 1.128 is the
// mean range of two values in standard deviations (control chart for individual values; recalled, ISO 7870-2).
const spread = 2.66

// Chart says between which limits a figure stays from hull to hull as long as nothing in the work changes.
type Chart struct {
	N       int
	Mean    float64
	Lower   float64
	Upper   float64
	Limited bool  // there are hulls enough for limits
	Outside []int // values beyond the limits, by their place
}

// Individuals gives the chart of single values in the order in which the hulls were built. Values that are not finite
// must be left out before.
func Individuals(values []float64) Chart {
	c := Chart{N: len(values)}
	if c.N == 0 {
		return c
	}
	sum, ranges := 0.0, 0.0
	for i, v := range values {
		sum += v
		if i > 0 {
			ranges += math.Abs(v - values[i-1])
		}
	}
	c.Mean = sum / float64(c.N)
	if c.N < LeastHulls {
		return c
	}
	half := float64(spread * (ranges / float64(c.N-1)))
	c.Limited, c.Lower, c.Upper = true, c.Mean-half, c.Mean+half
	for i, v := range values {
		if v < c.Lower || v > c.Upper {
			c.Outside = append(c.Outside, i)
		}
	}
	return c
}
