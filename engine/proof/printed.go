package proof

import (
	"fmt"
	"math"
	"strconv"
	"strings"
)

// wanted gives the value that the source prints and how far a result may lie from it: half a unit in the last printed
// place, unless the case says otherwise and why.
func (r *row) wanted() (want, tolerance float64, err error) {
	want, err = strconv.ParseFloat(r.Printed, 64)
	if r.Want != nil {
		want, err = *r.Want, nil
	}
	if err != nil || math.IsNaN(want) || math.IsInf(want, 0) {
		return 0, 0, fmt.Errorf("printed value %q is no number and no want is given", r.Printed)
	}
	if r.Tolerance != nil {
		return want, *r.Tolerance, nil
	}
	return want, halfPlace(r.Printed), nil
}

// halfPlace is half a unit in the last place of a printed number: 0.0005 for "0.916", 0.5 for "305".
func halfPlace(printed string) float64 {
	_, decimals, _ := strings.Cut(printed, ".")
	return 0.5 * math.Pow10(-len(decimals))
}

// agrees reports whether a result is what the source prints. A hair is added to the tolerance for the binary form of
// decimal numbers.
func agrees(got, want, tolerance float64) bool {
	hair := 1e-12 * math.Max(1, math.Abs(want))
	return math.Abs(got-want) <= tolerance+hair
}
