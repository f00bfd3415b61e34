package tracklog

import (
	"math"
	"testing"
)

// feed gives a log of a sample a second with the speed and direction of each.
func feed(n int, at func(i int) (kn, toward float64)) []Sample {
	var all []Sample
	for i := range n {
		s := blank()
		s.Time, s.Line = 1000+float64(i), i+1
		s.Speed, s.Course = at(i)
		all = append(all, s)
	}
	return all
}

func stretches(all []Sample) []Steady {
	f := &finder{}
	for i := range all {
		f.take(&all[i])
	}
	f.stop()
	return f.found
}

// The stated rule: averages of five seconds, at least a minute, no more than a knot or a twentieth, no more than twelve
// degrees, under way, no gap inside.
func TestSteadyStretches(t *testing.T) {
	const north = 359.0
	gap := feed(100, func(int) (float64, float64) { return 20, north })
	gap[50].Break = true
	rows := []struct {
		where string
		all   []Sample
		from  []float64 // beginning of each
		long  []float64
	}{
		{"two minutes over north", feed(121, func(i int) (float64, float64) { return 20, math.Mod(north+float64(i%3), 360) }), []float64{1000}, []float64{120}},
		{"less than a minute", feed(50, func(int) (float64, float64) { return 20, 0 }), nil, nil},
		{"a gap in the middle of a hundred seconds", gap, nil, nil},
		{"at anchor", feed(200, func(int) (float64, float64) { return 0.4, 0 }), nil, nil},
		{"always faster", feed(300, func(i int) (float64, float64) { return 5 + float64(i)/10, 0 }), nil, nil},
		{"always turning", feed(300, func(i int) (float64, float64) { return 20, math.Mod(float64(i), 360) }), nil, nil},
		{"faster after a turn", feed(200, func(i int) (float64, float64) {
			if i < 100 {
				return 20, 64
			}
			return 25, 244
		}), []float64{1000, 1100}, []float64{99, 99}},
		{"a twentieth of thirty knots", feed(100, func(i int) (float64, float64) { return 30 + 0.7*float64(i/5%2), 64 }), []float64{1000}, []float64{99}},
		{"more than a knot at ten", feed(100, func(i int) (float64, float64) { return 10 + 1.1*float64(i/5%2), 64 }), nil, nil},
	}
	for _, r := range rows {
		got := stretches(r.all)
		if len(got) != len(r.from) {
			t.Errorf("%s: %d stretches, want %d", r.where, len(got), len(r.from))
			continue
		}
		for i, s := range got {
			if math.Abs(s.From-r.from[i]) > 0.5 || math.Abs(s.Seconds()-r.long[i]) > 5 {
				t.Errorf("%s: from %v for %v s", r.where, s.From, s.Seconds())
			}
		}
	}
}

// However long it is steady, the finder holds no more than a minute of bins.
func TestFinderForgets(t *testing.T) {
	f := &finder{}
	for i := range 100000 {
		s := blank()
		s.Time, s.Line, s.Speed, s.Course = float64(i), i+1, 20+0.2*float64(i%4), 64
		f.take(&s)
		if len(f.queue) > 14 {
			t.Fatalf("%d bins after %d s", len(f.queue), i)
		}
	}
	f.stop()
	if len(f.found) != 1 || f.found[0].Seconds() < 99990 {
		t.Errorf("%+v", f.found)
	}
}

func TestMeasureAndDirection(t *testing.T) {
	var m Measure
	for _, v := range []float64{2, 4, 4, 4, 5, 5, 7, 9, math.NaN()} {
		m.take(v)
	}
	// Mean 5, sum of squared departures 32 over 7 (own arithmetic).
	if m.N != 8 || m.Mean != 5 || math.Abs(m.SD()-math.Sqrt(32.0/7)) > 1e-12 || m.Spread() != 7 {
		t.Errorf("%+v, sd %v", m, m.SD())
	}
	var d Direction
	for _, v := range []float64{350, 10, 358, 2} {
		d.take(v)
	}
	if mean := d.Mean(); math.Abs(math.Remainder(mean, 360)) > 1e-9 || d.Spread() != 20 {
		t.Errorf("mean %v, spread %v", mean, d.Spread())
	}
}

func TestThinKeepsGaps(t *testing.T) {
	tr := newThin(8)
	for i := range 100 {
		s := blank()
		s.Time, s.Break = float64(i), i == 37
		tr.take(&s)
	}
	gaps := 0
	for i, p := range tr.all {
		if p.Break {
			gaps++
			if p.Time < 37 || i == 0 || tr.all[i-1].Time >= 37 {
				t.Errorf("the gap moved to %v", p.Time)
			}
		}
	}
	if gaps != 1 || len(tr.all) > 8 || len(tr.all) < 4 || tr.all[0].Time != 0 {
		t.Errorf("%d gaps in %d points", gaps, len(tr.all))
	}
}
