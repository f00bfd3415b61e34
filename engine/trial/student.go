package trial

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"
	"gonum.org/v1/gonum/stat/distuv"
)

// fewestDoubleRuns is how many double runs an interval needs before it says something: with two the factor t/√n is 9,
// with three 2.5, with four 1.6 (own arithmetic on Student's factors). The limit itself is practice.
const fewestDoubleRuns = 4

// StudentT gives the factor t of Student's distribution for a two-sided 95 % interval with nu degrees of freedom:
// 12.71 for one, 3.18 for three. Below one degree of freedom there is no factor and the result is not a number.
//
// Source: Taylor and Kuyatt, NIST Technical Note 1297, 1994, Table B.1, which the tests hold it against.
func StudentT(nu int) float64 {
	if nu < 1 {
		return math.NaN()
	}
	return distuv.StudentsT{Mu: 0, Sigma: 1, Nu: float64(nu)}.Quantile(0.975)
}

// interval gives the 95 % interval of the mean speed in knots from double runs that share no run. Single runs are no
// samples of it: they differ by twice the stream.
func interval(doubles []float64) Interval {
	n := len(doubles)
	if n < fewestDoubleRuns {
		return Interval{N: n, Why: fmt.Sprintf("%d of the %d double runs that an interval needs", n, fewestDoubleRuns)}
	}
	t := StudentT(n - 1)
	s := stat.StdDev(doubles, nil)
	return Interval{Half: t * s / math.Sqrt(float64(n)), N: n, T: t, Has: true}
}
