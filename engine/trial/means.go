package trial

import (
	"math"

	"gonum.org/v1/gonum/stat/distuv"
)

// exactWeights is the greatest number of runs for which the weights are halved step by step, exact in binary.
const exactWeights = 32

// MeanOfMeans gives the mean of means of runs made alternately with and against a stream, in the order in which they
// were made: the means of neighbouring runs, the means of those, and so on until one is left. The weights it returns are
// the binomial numbers of n-1 over 2^(n-1), so they sum to one: 1 2 1 over 4 for three runs, 1 3 3 1 over 8 for four.
// With equal time between runs it removes a stream that changes as a polynomial of degree n-2 in time without remainder.
// Fewer than two values have no mean of means: the result is not a number and there are no weights.
//
// Source: Strasser et al., J. Mar. Sci. Technol. 2015, for the use of the mean of means in speed trials (abstract read);
// the weights and the degree are own derivation.
func MeanOfMeans(speeds []float64) (mean float64, weights []float64) {
	if len(speeds) < 2 {
		return math.NaN(), nil
	}
	weights = binomialWeights(len(speeds))
	for i, v := range speeds {
		mean += float64(weights[i] * v)
	}
	return mean, weights
}

// binomialWeights gives n weights C(n-1,k)/2^(n-1).
func binomialWeights(n int) []float64 {
	w := make([]float64, n)
	if n > exactWeights {
		b := distuv.Binomial{N: float64(n - 1), P: 0.5}
		for k := range w {
			w[k] = b.Prob(float64(k))
		}
		return w
	}
	w[0] = 1
	for row := 1; row < n; row++ {
		for k := row; k > 0; k-- {
			w[k] = (w[k] + w[k-1]) / 2
		}
		w[0] /= 2
	}
	return w
}

// plainMean gives the arithmetic mean with its spread; Has is false for no values.
func plainMean(values []float64) Mean {
	if len(values) == 0 {
		return Mean{}
	}
	sum, least, most := 0.0, math.Inf(1), math.Inf(-1)
	for _, v := range values {
		sum += v
		least, most = math.Min(least, v), math.Max(most, v)
	}
	return Mean{Value: sum / float64(len(values)), Spread: most - least, N: len(values), Has: true}
}
