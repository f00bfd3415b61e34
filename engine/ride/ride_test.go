package ride

import (
	"math"
	"testing"
)

// train is a record of half-sine bumps, one every period seconds, 0.1 s wide, of the given sizes.
func train(rate, period float64, sizes []float64) Record {
	r := Record{Rate: rate, Values: make([]float64, int(rate*period*float64(len(sizes))))}
	for k, size := range sizes {
		start := int(rate * (float64(k)*period + 0.3*period))
		for i := 0; i < int(0.1*rate); i++ {
			r.Values[start+i] += size * math.Sin(math.Pi*float64(i)/(0.1*rate))
		}
	}
	return r
}

func TestKnownTrain(t *testing.T) {
	sizes := make([]float64, 60)
	for i := range sizes {
		sizes[i] = 1 + float64(i%10)*0.25
	}
	rule := Rule{Apart: 0.5}
	p, err := found(train(500, 2, sizes), rule)
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Sizes) != 60 {
		t.Fatalf("%d peaks found, 60 made", len(p.Sizes))
	}
	near(t, "greatest peak, own arithmetic: the bump less the mean", p.Sizes[0], 3.25-p.Mean, 1e-3)
	top, k, ok := p.Highest(10)
	if !ok || k != 6 {
		t.Fatalf("highest tenth of 60: %d taken, %t", k, ok)
	}
	near(t, "mean of the highest tenth", top, 3.25-p.Mean, 1e-3)
	third, k3, _ := p.Highest(3)
	if k3 != 20 || third >= top {
		t.Errorf("highest third: %d taken, mean %g against %g", k3, third, top)
	}
}

// Scaling a record scales its peaks; a constant added changes nothing; noise below the RMS adds no peak.
func TestPeaksHold(t *testing.T) {
	sizes := make([]float64, 40)
	for i := range sizes {
		sizes[i] = 1 + math.Mod(float64(i)*0.377, 2)
	}
	base := train(500, 1.5, sizes)
	change := func(f func(i int, v float64) float64) Peaks {
		r := Record{Rate: base.Rate, Values: make([]float64, len(base.Values))}
		for i, v := range base.Values {
			r.Values[i] = f(i, v)
		}
		p, err := found(r, Standard())
		if err != nil {
			t.Fatal(err)
		}
		return p
	}
	plain := change(func(_ int, v float64) float64 { return v })
	a, _, _ := plain.Highest(10)
	b, _, _ := change(func(_ int, v float64) float64 { return 3 * v }).Highest(10)
	near(t, "three times the record", b, 3*a, 1e-9)
	lifted := change(func(_ int, v float64) float64 { return v + 1 })
	c, _, _ := lifted.Highest(10)
	near(t, "gravity left in is taken out", c, a, 1e-9)
	near(t, "and shown", lifted.Mean-plain.Mean, 1, 1e-9)
	noisy := change(func(i int, v float64) float64 { return v + 0.3*plain.RMS*math.Sin(float64(i)*0.9) })
	if len(noisy.Sizes) != len(plain.Sizes) {
		t.Errorf("noise below the RMS: %d peaks, %d without", len(noisy.Sizes), len(plain.Sizes))
	}
}

func TestTwoPeaksCloseTogetherCountOne(t *testing.T) {
	r := train(500, 4, []float64{2, 2, 2, 2})
	for k := 0; k < 4; k++ { // a lower bump 0.3 s behind each
		start := int(500 * (float64(k)*4 + 1.2 + 0.3))
		for i := 0; i < 50; i++ {
			r.Values[start+i] += 1.5 * math.Sin(math.Pi*float64(i)/50)
		}
	}
	p, err := found(r, Rule{Apart: 0.5})
	if err != nil {
		t.Fatal(err)
	}
	if len(p.Sizes) != 4 {
		t.Errorf("%d peaks, want 4: two within 0.3 s are one", len(p.Sizes))
	}
}

// Mean of the highest 1/N over the mean of all for exponential peaks (Fridsma's relation, exact for the law):
// N 3 2.099, 5 2.609, 10 3.303, 20 3.996, 100 5.605, 1000 7.908.
func TestExponentialRatios(t *testing.T) {
	for n, want := range map[float64]float64{3: 2.099, 5: 2.609, 10: 3.303, 20: 3.996, 100: 5.605, 1000: 7.908} {
		near(t, "1 + ln N", Exponential(n), want, 0.0006)
	}
}

// Relative scatter of the mean of the highest tenth by independent simulation: 19 % with 50 peaks, 13 % with 100, 6 % with 500.
func TestSampling(t *testing.T) {
	for n, want := range map[int]float64{50: .19, 100: .13, 500: .06} {
		near(t, "sampling error", Sampling(n, 10), want, 0.006)
	}
}

func TestExponentialPeaksDoNotDepart(t *testing.T) {
	p := Peaks{RMS: 0.4}
	const n = 2000
	for i := 0; i < n; i++ { // the law's own quantiles above the threshold
		p.Sizes = append(p.Sizes, 0.4-0.9*math.Log((float64(i)+0.5)/n))
	}
	d, ok := p.Departure(10)
	if !ok {
		t.Fatal("no departure given")
	}
	near(t, "departure of exponential peaks", d, 0, 0.01)
	for i := range p.Sizes {
		p.Sizes[i] = math.Min(p.Sizes[i], 2)
	}
	if d, _ = p.Departure(10); d > -0.1 {
		t.Errorf("peaks clipped at 2 g depart by %g", d)
	}
}

func TestRefused(t *testing.T) {
	if _, err := found(Record{Rate: 20, Values: make([]float64, 100)}, Standard()); err == nil {
		t.Error("20 samples a second were taken for a 10 Hz filter")
	}
	if _, err := found(Record{Rate: 500, Values: []float64{0, math.NaN()}}, Standard()); err == nil {
		t.Error("a sample that is no number was taken")
	}
	r := train(500, 2, []float64{3, 3, 3})
	for i := range r.Values {
		r.Values[i] = math.Min(r.Values[i], 2)
	}
	if p, _ := found(r, Standard()); p.Clipped < 30 {
		t.Errorf("a sensor at its stop: %d samples seen", p.Clipped)
	}
	if _, _, ok := (Peaks{Sizes: make([]float64, 29)}).Highest(10); ok {
		t.Error("a mean of the highest tenth from 29 peaks")
	}
}

// Ten million samples at 500 a second.
func BenchmarkFind(b *testing.B) {
	r := Record{Rate: 500, Values: make([]float64, 10_000_000)}
	for i := range r.Values {
		r.Values[i] = math.Sin(float64(i)*0.011) * math.Sin(float64(i)*0.00037)
	}
	b.SetBytes(int64(8 * len(r.Values)))
	for b.Loop() {
		if _, err := found(r, Standard()); err != nil {
			b.Fatal(err)
		}
	}
}

func near(t *testing.T, what string, got, want, tol float64) {
	t.Helper()
	if !(math.Abs(got-want) <= tol) {
		t.Errorf("%s: got %.6g, want %.6g within %.3g", what, got, want, tol)
	}
}

// found gives the peaks alone.
func found(r Record, rule Rule) (Peaks, error) {
	p, _, err := find(r, rule)
	return p, err
}
