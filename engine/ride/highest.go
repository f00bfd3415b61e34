package ride

import "math"

// Least is the fewest peaks from which a mean of the highest tenth is given.
const Least = 30

// Highest is the mean of the highest 1/n of the peaks, g: the k = max(1, round(N/n)) greatest of N. ok is false with
// fewer peaks than Least.
func (p Peaks) Highest(n int) (mean float64, k int, ok bool) {
	if len(p.Sizes) < Least || n < 1 {
		return 0, 0, false
	}
	k = int(math.Max(1, math.Floor(float64(len(p.Sizes))/float64(n)+0.5)))
	for _, s := range p.Sizes[:k] {
		mean += s
	}
	return mean / float64(k), k, true
}

// Average is the mean of all accepted peaks, g.
func (p Peaks) Average() float64 {
	sum := 0.0
	for _, s := range p.Sizes {
		sum += s
	}
	return sum / math.Max(1, float64(len(p.Sizes)))
}

// Exponential is the ratio of the mean of the highest 1/n to the mean of all, when peaks follow the exponential law:
// 1 + ln n. It follows exactly from the law; that peaks of planing craft do so is Fridsma's finding (1971).
func Exponential(n float64) float64 { return 1 + math.Log(n) }

// Departure is how far the mean of the highest 1/n lies from the exponential law fitted to all peaks, as a part: 0.1 is a
// tenth above it. Peaks are only seen above the RMS, where an exponential law begins anew: the law is taken from there.
// A large departure means a clipped sensor, or runs of different speed in one record.
func (p Peaks) Departure(n int) (float64, bool) {
	top, _, ok := p.Highest(n)
	if !ok {
		return 0, false
	}
	law := p.RMS + float64((p.Average()-p.RMS)*Exponential(float64(n)))
	return top/law - 1, law > 0
}

// Sampling is the relative standard deviation of the mean of the highest tenth of N exponential peaks. The k greatest of
// N exponential values have mean 1 + sum(1/j, j = k+1..N) and variance 1/k + sum(1/j², j = k+1..N), both exact.
func Sampling(peaks, n int) float64 {
	k := int(math.Max(1, math.Floor(float64(peaks)/float64(n)+0.5)))
	mean, variance := 1.0, 1/float64(k)
	for j := k + 1; j <= peaks; j++ {
		mean += 1 / float64(j)
		variance += 1 / float64(j*j)
	}
	return math.Sqrt(variance) / mean
}
