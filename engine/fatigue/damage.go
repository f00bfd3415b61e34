package fatigue

import (
	"fmt"
	"math"
)

// Detail is a line of stress range against cycles: N = 2·10⁶ (Class/range)^Slope. There is no endurance limit: a plate
// hull in salt water has none.
type Detail struct {
	Class float64 // stress range at two million cycles, N/mm²
	Slope float64 // m, 3 for welded details
}

// Cycles is how many ranges of the given size (N/mm²) the detail bears.
// Infinitely many where there is no stress. Error: class or slope not above zero.
func (d Detail) Cycles(stress float64) (float64, error) {
	if !(d.Class > 0) || !(d.Slope > 0) {
		return 0, fmt.Errorf("detail class %g N/mm² with slope %g", d.Class, d.Slope)
	}
	if !(stress > 0) {
		return math.Inf(1), nil
	}
	return 2e6 * math.Pow(d.Class/stress, d.Slope), nil
}

// Damage is the sum of Miner's rule over counted ranges, each turned into stress by the factor scale (N/mm² for one unit
// of the history). Failure is expected near one, with a wide scatter: a lognormal sum with mean 1.0 and coefficient of
// variation 0.3 (JCSS Probabilistic Model Code part 3, after Wirsching 1984).
// The error is that of Cycles.
func Damage(cycles []Cycle, scale float64, d Detail) (float64, error) {
	sum := 0.0
	for _, c := range cycles {
		n, err := d.Cycles(c.Range * scale)
		if err != nil {
			return 0, err
		}
		sum += c.Count / n
	}
	return sum, nil
}

// Equivalent is the one stress range that, as often as there are counted cycles, does the same damage.
func Equivalent(cycles []Cycle, scale, slope float64) float64 {
	sum, n := 0.0, 0.0
	for _, c := range cycles {
		sum += c.Count * math.Pow(c.Range*scale, slope)
		n += c.Count
	}
	if n == 0 {
		return 0
	}
	return math.Pow(sum/n, 1/slope)
}
