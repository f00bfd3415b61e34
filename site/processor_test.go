package site

import (
	"math"
	"math/rand/v2"
	"testing"

	"hullfile/engine/unit"
	"hullfile/site/results"
)

// TestProcessorsPrintAlike reckons products and sums as one make of processor does, which rounds twice, and as another,
// which rounds once (The Go Programming Language Specification, "Floating-point operators"). They differ in the last bit,
// and what is printed of them must not.
func TestProcessorsPrintAlike(t *testing.T) {
	numbers := rand.New(rand.NewPCG(5, 6))
	differ := 0
	for range 20_000 {
		// A mass times a lever, and a moment of the same sign beside it.
		x, y, z := 1+3000*numbers.Float64(), 0.01+9*numbers.Float64(), 5000*numbers.Float64()
		twice, once := float64(x*y)+z, math.FMA(x, y, z)
		if twice == once {
			continue
		}
		differ++
		for _, print := range []func(float64) string{
			func(v float64) string { return unit.Text(v, 3) },
			func(v float64) string { return unit.Figures(v, 4) },
			mass, times, func(v float64) string { return string(results.AppendShort(nil, v)) },
		} {
			if a, b := print(twice), print(once); a != b {
				t.Errorf("%v*%v + %v is printed %s and %s", x, y, z, a, b)
			}
		}
	}
	if differ < 1000 {
		t.Errorf("only %d numbers differ between the two ways; the test shows nothing", differ)
	}
}
