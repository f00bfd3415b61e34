package tracklog

import (
	"math"
	"testing"
)

// passed runs times through the order and gives those that come out, with a minus before one that follows a gap.
func passed(times ...float64) (out []float64, notes []Note) {
	tl := &told{}
	o := &order{told: tl, gap: usualGap, out: func(s *Sample) {
		if s.Break {
			out = append(out, -s.Time)
			return
		}
		out = append(out, s.Time)
	}}
	for i, t := range times {
		s := blank()
		s.Time, s.Line = t, i+1
		o.take(&s)
	}
	o.end()
	return out, tl.notes
}

func TestOrder(t *testing.T) {
	rows := []struct {
		where    string
		in, want []float64
		trouble  Trouble
	}{
		{"forward", []float64{1, 2, 3}, []float64{1, 2, 3}, ""},
		{"one alone", []float64{7}, []float64{7}, ""},
		{"back and on", []float64{1, 2, 3, 2, 4}, []float64{1, 2, 3, 4}, Backwards},
		{"set back for good: unused until it has caught up", []float64{100, 101, 50, 51, 52}, []float64{100, 101}, Backwards},
		{"twice the same", []float64{1, 1, 2}, []float64{1, 2}, Repeated},
		{"a gap", []float64{1, 2, 30, 31}, []float64{1, 2, -30, 31}, Gaps},
		{"an afternoon later, confirmed", []float64{1, 2, 20000, 20001}, []float64{1, 2, -20000, 20001}, Gaps},
		{"one clock far ahead", []float64{1, 2, 9e9, 3, 4}, []float64{1, 2, 3, 4}, Spikes},
		{"the first clock far ahead", []float64{9e9, 3, 4}, []float64{3, 4}, Spikes},
		{"the first clock far behind", []float64{0, 20000, 20001}, []float64{20000, 20001}, Spikes},
		{"the last clock far ahead", []float64{1, 2, 9e9}, []float64{1, 2}, Spikes},
		{"two far ahead, each elsewhere", []float64{1, 2, 9e9, 9e12, 3}, []float64{1, 2, 3}, Spikes},
		{"no time", []float64{1, math.NaN(), 2}, []float64{1, 2}, NoTime},
	}
	for _, r := range rows {
		got, notes := passed(r.in...)
		if len(got) != len(r.want) {
			t.Errorf("%s: %v, want %v", r.where, got, r.want)
			continue
		}
		for i := range got {
			if got[i] != r.want[i] {
				t.Errorf("%s: %v, want %v", r.where, got, r.want)
				break
			}
		}
		if r.trouble == "" && len(notes) > 0 || r.trouble != "" && (len(notes) != 1 || notes[0].Trouble != r.trouble) {
			t.Errorf("%s: %v", r.where, notes)
		}
	}
}

// One minute of latitude is a nautical mile within a third of a percent on the mean sphere; a quarter of the equator and
// the way from pole to pole follow from the radius (own arithmetic). Nashville to Los Angeles is the example that the
// formula is usually shown with: 36.12 N 86.67 W to 33.94 N 118.40 W, 2887 km with a radius of 6372.8 km (recalled).
func TestDistance(t *testing.T) {
	rows := []struct {
		where                  string
		lat1, lon1, lat2, lon2 float64
		metres, tol            float64
	}{
		{"one minute of latitude", 47, -20, 47 + 1.0/60, -20, 1853.25, 0.01},
		{"a quarter of the equator", 0, 0, 0, 90, math.Pi / 2 * earthRadius, 1e-3},
		{"pole to pole", 90, 0, -90, 0, math.Pi * earthRadius, 1e-3},
		{"published example", 36.12, -86.67, 33.94, -118.40, 2887259.95 * earthRadius / 6372800, 10},
		{"over the date line", 0, 179.999, 0, -179.999, 222.39, 0.01},
		{"nowhere", 10, 10, 10, 10, 0, 0},
	}
	for _, r := range rows {
		if got := Distance(r.lat1, r.lon1, r.lat2, r.lon2); !near9(got, r.metres, r.tol) {
			t.Errorf("%s: %v m, want %v", r.where, got, r.metres)
		}
	}
	for _, r := range [][5]float64{{0, 0, 1, 0, 0}, {0, 0, 0, 1, 90}, {0, 0, -1, 0, 180}, {0, 0, 0, -1, 270}} {
		if got := Bearing(r[0], r[1], r[2], r[3]); !near9(got, r[4], 1e-9) {
			t.Errorf("bearing %v: %v", r, got)
		}
	}
	if a, b := near(47, -20, 47.001, -20.001), Distance(47, -20, 47.001, -20.001); !near9(a, b, 0.01) {
		t.Errorf("flat %v, round %v", a, b)
	}
	east, north := PlaneAt(47, -20).At(47.001, -19.999)
	if !near9(math.Hypot(east, north), Distance(47, -20, 47.001, -19.999), 0.01) || east < 0 || north < 0 {
		t.Errorf("%v %v", east, north)
	}
}

func TestNumbers(t *testing.T) {
	for _, text := range []string{"0", "-0.5", "+3", "12.", ".5", "123456.789", "9007199254740993", "1e-3", "0.000000000000001", "179.99999999999999", "-12.25"} {
		want := parse(t, text)
		if got, ok := number([]byte(text), false); !ok || got != want {
			t.Errorf("%s: %v %t, want %v", text, got, ok, want)
		}
	}
	for _, text := range []string{"", "-", ".", "1.2.3", "1,2", "NaN", "inf", "0x1", "1_0", "1e999", "1 2", "--1"} {
		if v, ok := number([]byte(text), false); ok {
			t.Errorf("%q was read as %v", text, v)
		}
	}
	if v, ok := number([]byte("1,5"), true); !ok || v != 1.5 {
		t.Errorf("decimal comma: %v %t", v, ok)
	}
}

func TestMoments(t *testing.T) {
	rows := []struct {
		text  string
		want  string
		zoned bool
	}{
		{"1970-01-01T00:00:00Z", "1970-01-01 00:00:00 UTC", true},
		{"2000-02-29 23:59:60", "2000-03-01 00:00:00 UTC", false},
		{"2026-03-03T10:14:00+01:00", "2026-03-03 09:14:00 UTC", true},
		{"2026-03-03T04:44:00-0430", "2026-03-03 09:14:00 UTC", true},
		{"2026-12-31T23:59", "2026-12-31 23:59:00 UTC", false},
		{"1900-03-01T00:00:00Z", "1900-03-01 00:00:00 UTC", true},
	}
	for _, r := range rows {
		if at, zoned, ok := moment([]byte(r.text)); !ok || Moment(at) != r.want || zoned != r.zoned {
			t.Errorf("%s: %s %t %t", r.text, Moment(at), zoned, ok)
		}
	}
	for _, text := range []string{"", "2026-13-01T00:00:00Z", "2026-02-29T00:00:00Z", "2026-03-03", "03.03.2026 09:14:00", "2026-03-03T24:00:00Z", "2026-03-03T09:14:00X", "2026-03-03T09:14:00+1", "2026-03-03T09:60"} {
		if at, _, ok := moment([]byte(text)); ok {
			t.Errorf("%q was read as %s", text, Moment(at))
		}
	}
}
