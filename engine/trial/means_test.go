package trial

import (
	"math"
	"testing"

	"pgregory.net/rapid"
)

func TestMeanOfMeans(t *testing.T) {
	rows := []struct {
		where  string
		speeds []float64
		want   float64
		tol    float64
	}{
		{"own arithmetic: 30 kn, stream 1.2 kn", []float64{31.2, 28.8}, 30, 1e-9},
		{"own arithmetic: 30 kn, stream 1.2 - 0.3 i", []float64{31.2, 29.1, 30.6}, 30, 1e-9},
		{"own arithmetic: 30 kn, stream 1.2 - 0.3 i, four runs", []float64{31.2, 29.1, 30.6, 29.7}, 30, 1e-9},
		{"own arithmetic: stream of degree two, three runs leave 0.05 kn", []float64{31.2, 29.2, 30.2}, 29.95, 1e-9},
	}
	for _, r := range rows {
		if got, _ := MeanOfMeans(r.speeds); math.Abs(got-r.want) > r.tol {
			t.Errorf("%s: %v, want %v", r.where, got, r.want)
		}
	}
}

func TestMeanOfMeansWeights(t *testing.T) {
	rows := []struct {
		where string
		n     int
		want  []float64
		noise float64 // root of the sum of squares: the spread of the mean for a spread of one in each run
	}{
		{"own arithmetic", 2, []float64{1, 1}, 0.707},
		{"own arithmetic", 3, []float64{1, 2, 1}, 0.612},
		{"own arithmetic", 4, []float64{1, 3, 3, 1}, 0.559},
		{"own arithmetic", 5, []float64{1, 4, 6, 4, 1}, 0.523},
	}
	for _, r := range rows {
		_, w := MeanOfMeans(make([]float64, r.n))
		if len(w) != r.n {
			t.Fatalf("%d runs: %d weights", r.n, len(w))
		}
		squares := 0.0
		for i := range w {
			if got := w[i] * math.Pow(2, float64(r.n-1)); got != r.want[i] {
				t.Errorf("%s: %d runs, weight %d is %v, want %v", r.where, r.n, i+1, got, r.want[i])
			}
			squares += w[i] * w[i]
		}
		if math.Abs(math.Sqrt(squares)-r.noise) > 0.0005 {
			t.Errorf("%s: %d runs, noise %v, want %v", r.where, r.n, math.Sqrt(squares), r.noise)
		}
	}
}

func TestMeanOfMeansNeedsTwo(t *testing.T) {
	for _, speeds := range [][]float64{nil, {31.2}} {
		if mean, w := MeanOfMeans(speeds); !math.IsNaN(mean) || w != nil {
			t.Errorf("MeanOfMeans(%v) = %v, %v; want no mean", speeds, mean, w)
		}
	}
}

// The two ways of making weights must be one function of n.
func TestWeightsAgreeAcrossTheirTwoForms(t *testing.T) {
	for _, n := range []int{exactWeights, exactWeights + 1, 200, 2000} {
		w := binomialWeights(n)
		sum := 0.0
		for _, v := range w {
			sum += v
		}
		if math.Abs(sum-1) > 1e-9 {
			t.Errorf("%d weights sum to %v", n, sum)
		}
	}
	last, next := binomialWeights(exactWeights), binomialWeights(exactWeights+1)
	for k := 1; k < exactWeights; k++ {
		if want := (last[k] + last[k-1]) / 2; math.Abs(next[k]-want) > 1e-12 {
			t.Errorf("weight %d of %d is %v, want %v", k, exactWeights+1, next[k], want)
		}
	}
}

// A stream that changes as a polynomial of degree n-2 leaves nothing behind, whatever its size (own derivation).
func TestMeanOfMeansRemovesAPolynomialStream(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		n := rapid.IntRange(2, 8).Draw(t, "n")
		speed := rapid.Float64Range(1, 60).Draw(t, "speed")
		c := rapid.SliceOfN(rapid.Float64Range(-2, 2), n-1, n-1).Draw(t, "coefficients")
		runs := make([]float64, n)
		for i := range runs {
			stream, x := 0.0, float64(i)/float64(n)
			for d := len(c) - 1; d >= 0; d-- {
				stream = float64(stream*x) + c[d]
			}
			runs[i] = speed + stream*math.Pow(-1, float64(i))
		}
		if got, _ := MeanOfMeans(runs); math.Abs(got-speed) > 1e-9 {
			t.Fatalf("runs %v give %v, want %v", runs, got, speed)
		}
	})
}

func TestStudentT(t *testing.T) {
	table := []float64{12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23}
	for i, want := range table {
		if got := StudentT(i + 1); math.Abs(got-want) > 0.005 {
			t.Errorf("NIST TN 1297 Table B.1, 95 %%, nu %d: %v, want %v", i+1, got, want)
		}
	}
	if got := StudentT(0); !math.IsNaN(got) {
		t.Errorf("StudentT(0) = %v, want no number", got)
	}
}

func TestIntervalNeedsFourDoubleRuns(t *testing.T) {
	if got := interval([]float64{30, 30.2, 29.9}); got.Has || got.Why == "" || got.Half != 0 {
		t.Errorf("three double runs gave %+v", got)
	}
	got := interval([]float64{30, 30.2, 29.8, 30.4})
	// own arithmetic: mean 30.1, s = sqrt(0.2/3) = 0.2582, 3.182 x 0.2582 / 2
	if !got.Has || got.N != 4 || math.Abs(got.Half-0.4108) > 0.0005 {
		t.Errorf("four double runs gave %+v, want half 0.4108", got)
	}
}

func TestSlip(t *testing.T) {
	th, slip := Slip(5500, 17, 1.92, 34)
	if math.Abs(th-40.07) > 0.005 || math.Abs(slip-0.152) > 0.0005 {
		t.Errorf("own arithmetic, 5500 rpm, 17 in, 1.92, 34 kn: %v kn, slip %v; want 40.07 and 0.152", th, slip)
	}
	if math.Abs(inchesPerMinute-1215.2231) > 0.0001 {
		t.Errorf("one knot is %v inches a minute, want 1215.2231 (own derivation)", inchesPerMinute)
	}
	for _, bad := range [][3]float64{{0, 17, 1.92}, {5500, 0, 1.92}, {5500, 17, 0}} {
		if th, slip := Slip(bad[0], bad[1], bad[2], 34); !math.IsNaN(th) || !math.IsNaN(slip) {
			t.Errorf("Slip(%v) = %v, %v; want no number", bad, th, slip)
		}
	}
}
