package ride

import (
	"fmt"
	"math"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func val[T any](v T) record.Val[T] { return record.Val[T]{V: v, Set: true} }

// assessed writes a log into a folder and reduces it as the record of a hull.
func assessed(t *testing.T, log string, change func(*record.Ride), design float64) Result {
	t.Helper()
	dir := t.TempDir()
	if err := os.WriteFile(filepath.Join(dir, "a.csv"), []byte(log), 0o644); err != nil {
		t.Fatal(err)
	}
	root, err := os.OpenRoot(dir)
	if err != nil {
		t.Fatal(err)
	}
	t.Cleanup(func() { root.Close() })
	rec := record.Ride{Entry: record.Entry{ID: "R1"}, Document: val("a"), Rate: val(unit.Hertz(500)), Speed: val(unit.Knot(22)), Wave: val(unit.M(0.5))}
	if change != nil {
		change(&rec)
	}
	h := &record.Hull{}
	h.Rides = []record.Ride{rec}
	return Assess(Input{Hull: h, Root: root, Paths: map[string]string{"a": "a.csv"}, Design: design, At: 2.5})
}

// logOf writes the record of a known train, each value changed by f.
func logOf(n int, f func(float64) float64) string {
	sizes := make([]float64, n)
	for i := range sizes {
		sizes[i] = 1 - 0.8*math.Log((float64((i*37)%n)+0.5)/float64(n))
	}
	var b strings.Builder
	b.WriteString("a\n")
	for _, v := range train(500, 1, sizes).Values {
		fmt.Fprintf(&b, "%.4f\n", f(v))
	}
	return b.String()
}

func TestFaultsOfASensorAreNamed(t *testing.T) {
	same := func(v float64) float64 { return v }
	rows := []struct {
		what   string
		log    string
		change func(*record.Ride)
		design float64
		rule   string
		kind   finding.Kind
		tenth  bool
	}{
		{"gravity left in", logOf(120, func(v float64) float64 { return v + 1 }), nil, 0, "ride-gravity", finding.Doubt, true},
		{"clipped", logOf(120, func(v float64) float64 { return math.Min(v, 1.5) }), nil, 0, "ride-clipped", finding.Doubt, true},
		{"few", logOf(40, same), nil, 0, "ride-few-peaks", finding.Doubt, true},
		{"slow", logOf(120, same), func(r *record.Ride) { r.Rate.V = 100 }, 0, "ride-rate-slow", finding.Doubt, true},
		{"above design", logOf(120, same), nil, 1.5, "ride-above-design", finding.Doubt, true},
		{"a row without a number", "a\nx\n" + logOf(120, same)[2:], nil, 0, "ride-no-number", finding.Doubt, true},
		{"away from the centre", logOf(120, same), func(r *record.Ride) { r.X = val(unit.M(4)) }, 0, "ride-place", finding.Doubt, true},
		{"another rate than the clock's", "time_s,a\n0,1\n0.01,2\n0.02,1\n", nil, 0, "ride-rate", finding.Contradiction, false},
	}
	for _, r := range rows {
		got := assessed(t, r.log, r.change, r.design)
		found := false
		for _, f := range got.Findings {
			found = found || f.Rule == r.rule && f.Kind == r.kind
		}
		if !found || got.Rides[0].Tenth.Has != r.tenth {
			t.Errorf("%s: %s is not told, or a mean is given: %v; %+v", r.what, r.rule, got.Rides[0].Tenth, got.Findings)
		}
	}
	if sound := assessed(t, logOf(120, same), nil, 9); len(sound.Findings) > 0 || sound.Checks[0].Standing != finding.Met {
		t.Errorf("a sound record is doubted: %+v", sound.Findings)
	}
}

func TestWhatGivesNoMeanIsNotShown(t *testing.T) {
	same := func(v float64) float64 { return v }
	for what, r := range map[string]Result{
		"20 impacts":       assessed(t, logOf(20, same), nil, 0),
		"no such log":      assessed(t, "a\n1\n", func(r *record.Ride) { r.Document.V = "b" }, 0),
		"40 samples/s":     assessed(t, logOf(120, same), func(r *record.Ride) { r.Rate.V = 40 }, 0),
		"one sample":       assessed(t, "a\n1\n", nil, 0),
		"no column":        assessed(t, "b,c\n1,2\n", nil, 0),
		"truncated to one": assessed(t, "a\n0.1\n", nil, 0),
	} {
		if c := r.Checks[0]; c.Standing != finding.NotShown || c.Settle == "" || r.Rides[0].Tenth.Has {
			t.Errorf("%s: %+v", what, c)
		}
	}
}

// Metres per second squared and a scale of g give the same impacts; counted ranges are never smaller than the real ones.
func TestUnitsAndCycles(t *testing.T) {
	g := assessed(t, logOf(120, func(v float64) float64 { return v }), nil, 0).Rides[0]
	ms := assessed(t, logOf(120, func(v float64) float64 { return v * standardGravity }), func(r *record.Ride) { r.Unit = val("m/s2") }, 0).Rides[0]
	near(t, "highest tenth", ms.Tenth.G, g.Tenth.G, 2e-4)
	greatest := 0.0
	for _, c := range g.Cycles {
		greatest = math.Max(greatest, c.Range)
	}
	if greatest < g.Peaks.Sizes[0] || greatest > 2*g.Peaks.Sizes[0]+bin {
		t.Errorf("greatest range %g, greatest impact %g", greatest, g.Peaks.Sizes[0])
	}
}
