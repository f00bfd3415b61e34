package site

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"

	"hullfile/engine/unit"
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
			mass, times, inJSON,
			func(v float64) string { return inJSON(float64(toNanometre(v / 1e4))) },
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

func inJSON(v float64) string {
	text, err := json.Marshal(full(v))
	if err != nil {
		panic(err)
	}
	return string(text)
}

// TestNoughtIsNought holds what is left of a difference that cancels: another bit on each make of processor (own
// observation: the lever of an upright boat, amd64 and arm64).
func TestNoughtIsNought(t *testing.T) {
	for _, v := range []float64{-1.31752807927e-17, -2.70183856012e-17, 4e-16, 0, math.Copysign(0, -1)} {
		if got := inJSON(float64(toNanometre(v))); got != "0" {
			t.Errorf("a lever of %v is written %s", v, got)
		}
	}
	if got := inJSON(float64(toNanometre(-0.30857534664750001))); got != "-0.308575347" {
		t.Errorf("a lever is written %s", got)
	}
}
