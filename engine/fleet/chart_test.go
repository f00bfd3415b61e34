package fleet

import (
	"math"
	"slices"
	"testing"
)

func TestIndividuals(t *testing.T) {
	rows := []struct {
		where        string
		values       []float64
		mean         float64
		lower, upper float64
		limited      bool
		outside      []int
	}{
		{"own arithmetic: no hull", nil, 0, 0, 0, false, nil},
		{"own arithmetic: too few for limits", []float64{1, 2, 3, 4, 5}, 3, 0, 0, false, nil},
		{"own arithmetic: ranges of 1, limits 2.66 from the mean", []float64{1, 2, 1, 2, 1, 2}, 1.5, -1.16, 4.16, true, nil},
		{"own arithmetic: no spread, one value of seven apart", []float64{2, 2, 2, 2, 2, 2, 9}, 3, 3 - 2.66*7/6, 3 + 2.66*7/6, true, []int{6}},
	}
	for _, r := range rows {
		c := Individuals(r.values)
		if c.N != len(r.values) || c.Limited != r.limited || !slices.Equal(c.Outside, r.outside) ||
			math.Abs(c.Mean-r.mean)+math.Abs(c.Lower-r.lower)+math.Abs(c.Upper-r.upper) > 1e-12 {
			t.Errorf("%s: %+v", r.where, c)
		}
	}
}
