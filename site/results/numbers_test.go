package results

import (
	"encoding/json"
	"math"
	"math/rand/v2"
	"testing"
)

// What is written of a number is the same where a product and a sum are rounded once and where they are rounded twice.
func TestProcessorsWriteAlike(t *testing.T) {
	numbers := rand.New(rand.NewPCG(5, 6))
	differ := 0
	for range 20_000 {
		x, y, z := 1+3000*numbers.Float64(), 0.01+9*numbers.Float64(), 5000*numbers.Float64()
		twice, once := float64(x*y)+z, math.FMA(x, y, z)
		if twice == once {
			continue
		}
		differ++
		if a, b := inJSON(twice), inJSON(once); a != b {
			t.Errorf("%v*%v + %v is written %s and %s", x, y, z, a, b)
		}
		if a, b := inJSON(float64(toNanometre(twice/1e4))), inJSON(float64(toNanometre(once/1e4))); a != b {
			t.Errorf("%v*%v + %v as a lever is written %s and %s", x, y, z, a, b)
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

func TestWhatIsNoNumberIsNull(t *testing.T) {
	for _, v := range []float64{math.NaN(), math.Inf(1), math.Inf(-1)} {
		if got := inJSON(v); got != "null" {
			t.Errorf("%v is written %s", v, got)
		}
	}
}
