// Package ride reads a record of vertical accelerations: it finds the impact peaks, averages the highest of them, and
// says how far their spread follows the exponential law that rough-water formulas assume.
//
// The rule for a peak is that of public guidance of the United States Navy for high-speed craft (Riley and others,
// NSWCCD-80-TR-2016/003 and NSWCCD-23-TM-2010/13; the thresholds are recalled): a peak counts when it is above the RMS
// of the whole record and no higher peak lies within half a second. The result depends on the rule, so the rule travels
// with it.
//
//   - Question: how hard does the boat hit, and how do the blows spread?
//   - In: a log of vertical acceleration (g) and the record of the ride.
//   - Out: peaks, means of the highest third, tenth and hundredth, and how far they follow the exponential law.
//   - Source: as above.
package ride

import (
	"fmt"
	"math"
	"sort"
)

// Rule is how peaks are told from noise.
type Rule struct {
	Apart  float64 // seconds within which only the highest peak counts; 0.5
	Filter float64 // low-pass corner, Hz; 10. Zero leaves the record as it is
}

// Standard is the rule of the public guidance (recalled).
func Standard() Rule { return Rule{Apart: 0.5, Filter: 10} }

// Record is an acceleration log at even steps, in g, level being zero.
type Record struct {
	Rate   float64 // samples a second
	Values []float64
}

// Peaks is what a record comes to.
type Peaks struct {
	Rule    Rule
	Samples int
	Seconds float64
	Mean    float64 // taken away before anything else, g; near 1 where gravity was left in
	RMS     float64
	Sizes   []float64 // accepted peaks, highest first, g
	Clipped int       // samples at the highest value held for three samples or more: a sensor at its stop
}

// find takes the mean away, filters, and collects the peaks; it also gives the record as it was when they were picked.
// Errors: fewer than two samples, a rate too slow for the filter (five samples to a period of its corner), a value that
// is no number.
func find(r Record, rule Rule) (Peaks, []float64, error) {
	if len(r.Values) < 2 || !(r.Rate > 0) {
		return Peaks{}, nil, fmt.Errorf("a record of %d samples at %g a second", len(r.Values), r.Rate)
	}
	if rule.Filter > 0 && r.Rate < 5*rule.Filter {
		return Peaks{}, nil, fmt.Errorf("%g samples a second are too few for a %g Hz filter; %g are needed", r.Rate, rule.Filter, 5*rule.Filter)
	}
	p := Peaks{Rule: rule, Samples: len(r.Values), Seconds: float64(len(r.Values)) / r.Rate}
	sum := 0.0
	for i, v := range r.Values {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return Peaks{}, nil, fmt.Errorf("sample %d is no number", i+1)
		}
		sum += v
	}
	p.Mean = sum / float64(len(r.Values))
	p.Clipped = clipped(r.Values)
	f := newLowPass(rule.Filter, r.Rate)
	work := make([]float64, len(r.Values))
	square := 0.0
	for i, v := range r.Values {
		work[i] = f.next(v - p.Mean)
		square += float64(work[i] * work[i])
	}
	p.RMS = math.Sqrt(square / float64(len(work)))
	p.Sizes = pick(work, p.RMS, int(math.Round(rule.Apart*r.Rate)))
	sort.Sort(sort.Reverse(sort.Float64Slice(p.Sizes)))
	return p, work, nil
}

// pick walks once: the highest point above the threshold stands until nothing higher came within the gap.
func pick(v []float64, above float64, gap int) []float64 {
	var out []float64
	best, at := 0.0, -1
	for i := range v {
		if at >= 0 && i-at > gap {
			out = append(out, best)
			at = -1
		}
		if v[i] <= above || !local(v, i) {
			continue
		}
		if at < 0 || v[i] > best {
			best, at = v[i], i
		}
	}
	if at >= 0 {
		out = append(out, best)
	}
	return out
}

func local(v []float64, i int) bool {
	return (i == 0 || v[i] >= v[i-1]) && (i == len(v)-1 || v[i] > v[i+1])
}

// clipped counts the samples of flat tops: three or more at the very highest value.
func clipped(v []float64) int {
	top := math.Inf(-1)
	for _, x := range v {
		top = math.Max(top, x)
	}
	n, run := 0, 0
	for i := 0; i <= len(v); i++ {
		if i < len(v) && v[i] == top {
			run++
			continue
		}
		if run >= 3 {
			n += run
		}
		run = 0
	}
	return n
}

// lowPass is a Butterworth filter of second order by the bilinear transform.
type lowPass struct {
	on             bool
	b0, b1, b2     float64
	a1, a2         float64
	x1, x2, y1, y2 float64
}

func newLowPass(corner, rate float64) *lowPass {
	if corner <= 0 {
		return &lowPass{}
	}
	k := math.Tan(math.Pi * corner / rate)
	n := 1 / (1 + math.Sqrt2*k + float64(k*k))
	return &lowPass{on: true, b0: k * k * n, b1: 2 * k * k * n, b2: k * k * n, a1: 2 * (k*k - 1) * n, a2: (1 - math.Sqrt2*k + float64(k*k)) * n}
}

func (f *lowPass) next(x float64) float64 {
	if !f.on {
		return x
	}
	y := float64(f.b0*x) + float64(f.b1*f.x1) + float64(f.b2*f.x2) - float64(f.a1*f.y1) - float64(f.a2*f.y2)
	f.x2, f.x1, f.y2, f.y1 = f.x1, x, f.y1, y
	return y
}
