package section

import (
	"math"
	"testing"
)

// must gives the section of a shape that a test knows to be possible.
func must(t testing.TB, s Shape) Section {
	t.Helper()
	sec, err := New(s)
	if err != nil {
		t.Fatal(err)
	}
	return sec
}

func TestFlatBarOnPlate(t *testing.T) {
	const where = "own arithmetic: (1200·3 + 250·31)/1450, FB 50x5 on 200x6"
	s, err := must(t, Shape{Kind: FlatBar, Height: 50, Web: 5}).With(6, 200)
	if err != nil {
		t.Fatal(err)
	}
	p := s.Properties()
	for _, row := range []struct {
		what           string
		got, want, tol float64
	}{
		{"area, cm2", float64(p.Area), 14.50, 1e-9}, {"neutral axis, mm", float64(p.Neutral), 7.8276, 5e-5}, {"I, cm4", float64(p.I), 21.79, 5e-3},
		{"modulus to the free edge, cm3", float64(p.AtEdge), 4.52, 0.013}, {"web, cm2", float64(p.Web), 2.50, 1e-9},
	} {
		if !(math.Abs(row.got-row.want) <= row.tol) {
			t.Errorf("%s: %s %.5f, want %.5f", where, row.what, row.got, row.want)
		}
	}
}
