package section

import (
	"fmt"
	"math"

	"hullfile/engine/unit"
)

// Lag gives the breadth of plating that works with a stiffener when the shear that brings it to stress is counted, for a
// bending moment that runs as half a sine wave over a length, and stiffeners at an even spacing:
//
//	b_e = 8 l sinh²(x) / (π (1+ν) ((3-ν) sinh 2x - (1+ν) 2x))    x = π s / (2 l)
//
// with s the spacing, l the length between points of no moment and ν Poisson's ratio; never more than s. For wide
// spacing it goes to 4 l / (π (3 + 2ν - ν²)), which is 0.363 l for ν = 0.3 (Timoshenko and Goodier, Theory of
// Elasticity, on the effective width of wide beam flanges, recalled). The form for a finite spacing follows from
// Airy's stress function with plates held straight midway between stiffeners; a test derives it again by numbers.
//
// It is a textbook value beside those of rules, which set their own breadths. For even load on a span with pinned ends l is
// the span; with fixed ends 0.577 of it lies between the points of no moment. Errors, as Faults: a spacing or length
// that is not above nought, a ratio outside 0 to 0.5.
func Lag(spacing, length unit.MM, poisson unit.Ratio) (unit.MM, error) {
	faults := Faults(nil).positive("spacing", spacing).positive("length", length)
	if !(poisson >= 0 && poisson <= 0.5) {
		faults = append(faults, Fault{"Poisson's ratio", fmt.Sprintf("%v, must be 0 to 0.5", float64(poisson))})
	}
	if len(faults) > 0 {
		return 0, faults
	}
	l, nu := float64(length), float64(poisson)
	x := math.Pi * float64(spacing) / (2 * l)
	if x > 20 {
		return unit.MM(math.Min(float64(spacing), 4*l/(math.Pi*(1+nu)*(3-nu)))), nil
	}
	under := (1 + nu) * (float64((3-nu)*math.Sinh(2*x)) - float64((1+nu)*2*x))
	half := 4 * l / math.Pi * math.Pow(math.Sinh(x), 2) / under
	return unit.MM(math.Min(float64(spacing), 2*half)), nil
}
