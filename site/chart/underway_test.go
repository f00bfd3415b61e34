package chart

import (
	"math"
	"strconv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/limits"
	"hullfile/engine/planing"
	"hullfile/engine/record"
	"hullfile/engine/ride"
	"hullfile/engine/running"
	"hullfile/engine/unit"
)

// A prediction is drawn full inside its range and dashed outside, and the table says which.
func TestPredictionIsDashedOutsideItsRange(t *testing.T) {
	c := &planing.Case{Waterline: 6, Installed: 170, Full: true}
	for v := 9.0; v <= 30; v++ {
		p := planing.Point{Knots: v, Drag: 100 * v, Least: 4 * v, Most: 5 * v, Critical: 9 - v/5, HasCritical: v > 15, Run: planing.Attitude{Trim: 8 - v/6, Drag: 90 * v, Keel: 5, Chine: 3}}
		if v < 14 {
			p.Flags = []string{"not yet planing"}
		}
		c.Points = append(c.Points, p)
	}
	c.Settings = []planing.Setting{{Name: "full", Knots: 28, Trim: 3, HasTrim: true, Point: &c.Points[19]}}
	for name, f := range map[string]Figure{"resistance": Resistance(c, "T1"), "power": EnginePower(c, "T1"), "trim": TrimSpeed(c, "T1"), "wetted": WettedLength(c, "T1")} {
		for _, fault := range look(f) {
			t.Errorf("%s: %s", name, fault)
		}
		if !strings.Contains(f.SVG, `class="g-b"`) || !strings.Contains(f.SVG, `class="g-a"`) {
			t.Errorf("%s: not drawn full inside and dashed outside", name)
		}
		if rows := len(f.Table); rows != len(c.Points)+1 || f.Table[1][len(f.Table[1])-1] != "no" || f.Table[rows-1][len(f.Table[rows-1])-1] != "yes" {
			t.Errorf("%s: table of %d rows does not say what is in range", name, rows)
		}
	}
}

func wildRide(t *rapid.T) *ride.Ride {
	r := &ride.Ride{Record: &record.Ride{}, Design: value(t, 0, 9), Departs: value(t, -0.9, 2)}
	r.Record.ID = wildName(t)
	size := value(t, 0, 30)
	for range rapid.IntRange(0, 60).Draw(t, "peaks") {
		r.Peaks.Sizes = append(r.Peaks.Sizes, size)
		size *= rapid.Float64Range(0.5, 1).Draw(t, "falls to")
	}
	r.Peaks.RMS = value(t, 0, 5)
	r.Tenth = ride.Mean{G: value(t, 0, 20), K: 4, Has: rapid.Bool().Draw(t, "tenth")}
	return r
}

func TestAnyRideIsSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { check(t, Exceedance(wildRide(t))) })
}

// The k-th of N impacts stands at (k - ½)/N, and the law is given beside it.
func TestExceedanceTable(t *testing.T) {
	r := &ride.Ride{Record: &record.Ride{}, Peaks: ride.Peaks{RMS: 0.5}}
	for i := range 40 {
		r.Peaks.Sizes = append(r.Peaks.Sizes, 0.5-math.Log((float64(i)+0.5)/40))
	}
	f := Exceedance(r)
	if f.Empty || len(f.Table) != 41 {
		t.Fatalf("%d rows", len(f.Table))
	}
	if f.Table[1][2] != "0.013" || f.Table[1][1] != "4.88" {
		t.Errorf("first row %v", f.Table[1])
	}
}

// From the rows of the table the mean of the highest tenth can be reckoned again, in a record of any length.
func TestExceedanceTableHoldsTheHighestTenth(t *testing.T) {
	for _, n := range []int{30, 49, 400, 2000} {
		r := &ride.Ride{Record: &record.Ride{}, Peaks: ride.Peaks{RMS: 0.5}}
		for i := range n {
			r.Peaks.Sizes = append(r.Peaks.Sizes, 0.5-math.Log((float64(i)+0.5)/float64(n)))
		}
		third, k3, _ := r.Peaks.Highest(3)
		r.Third = ride.Mean{G: third, K: k3, Has: true}
		want, k, _ := r.Peaks.Highest(10)
		rows, sum := Exceedance(r).Table[1:], 0.0
		for i := range k {
			g, err := strconv.ParseFloat(rows[i][1], 64)
			if err != nil || rows[i][0] != strconv.Itoa(i+1) {
				t.Fatalf("%d impacts: row %d is %v", n, i, rows[i])
			}
			sum += g
		}
		if math.Abs(sum/float64(k)-want) > 0.005 {
			t.Errorf("%d impacts: the rows give %.3f g, the highest tenth is %.3f", n, sum/float64(k), want)
		}
		if len(rows) > mostWhole+2*tableRows {
			t.Errorf("%d impacts: %d rows", n, len(rows))
		}
	}
}

func wildHours(t *rapid.T) *running.Result {
	r := &running.Result{Start: value(t, 0, 50), End: value(t, 50, 5000), Logged: value(t, 0, 5000)}
	meter := r.Start
	for range rapid.IntRange(0, 20).Draw(t, "rows") {
		rec := &record.Hours{From: wr(unit.Hour(meter)), To: wr(unit.Hour(meter + 7))}
		r.Rows = append(r.Rows, running.Row{Record: rec, G: value(t, 0, 5)})
		meter += 7
	}
	for range rapid.IntRange(0, 12).Draw(t, "looks") {
		rec := &record.Look{Meter: wr(unit.Hour(rapid.Float64Range(0, 6000).Draw(t, "at"))), Method: wr(wildName(t)), Indications: make([]record.Indication, rapid.IntRange(0, 2).Draw(t, "found"))}
		rec.ID = wildName(t)
		r.Looks = append(r.Looks, running.Look{Record: rec, Cracks: rapid.IntRange(0, 1).Draw(t, "cracks")})
	}
	return r
}

func TestAnyHoursAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) { check(t, Hours(wildHours(t))) })
}

func TestAnyLimitsAndBoundsAreSound(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		r := limits.Result{Why: wildName(t), From: 14, To: 34, Category: limits.Category{Letter: "C", Most: value(t, 0, 5)}}
		for range rapid.IntRange(0, 2).Draw(t, "levels") {
			l := limits.Level{Name: wildName(t), Short: wildName(t), G: value(t, 0, 8)}
			for v := 14.0; v < 34; v++ {
				l.Curve = append(l.Curve, limits.Point{Knots: v, Height: value(t, 0, 4), Outside: rapid.Bool().Draw(t, "outside")})
			}
			r.Levels = append(r.Levels, l)
		}
		for range rapid.IntRange(0, 5).Draw(t, "met") {
			r.Met = append(r.Met, limits.Met{Subject: rapid.SampledFrom([]string{"ride R1", "hours 3", "trial T1"}).Draw(t, "subject"), Knots: value(t, 0, 60), Height: value(t, 0, 5), Measured: value(t, 0, 6)})
		}
		check(t, Limits(r))
		p := &running.Promise{Record: &record.Warranty{}, Hours: value(t, 1, 5000)}
		for _, slope := range []float64{1, 2, 3} {
			c := running.Curve{Slope: slope}
			for range rapid.IntRange(0, 60).Draw(t, "points") {
				c.Hours, c.Part = append(c.Hours, value(t, 0, 5000)), append(c.Part, value(t, 0, 1))
			}
			p.Curves = append(p.Curves, c)
		}
		check(t, Bound(p, wildName(t)))
	})
}

func BenchmarkUnderway(b *testing.B) {
	r := &ride.Ride{Record: &record.Ride{}, Peaks: ride.Peaks{RMS: 0.5}}
	for i := range 60 {
		r.Peaks.Sizes = append(r.Peaks.Sizes, 0.5-math.Log((float64(i)+0.5)/60))
	}
	b.ReportAllocs()
	for b.Loop() {
		if Exceedance(r).Empty {
			b.Fatal("nothing drawn")
		}
	}
}
