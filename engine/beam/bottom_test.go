package beam

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"
)

// floor is a bottom of our own making: frames at a spacing, stringers at a spacing, a chine that may draw in.
func floor(frames, stringers int, aft, fwd float64) Bottom {
	b := Bottom{Aft: 0, Fwd: 0.5 * float64(frames+1), AtKeel: Rigid, AtChine: Rigid, AtBulkhead: Rigid, KeelToe: 0.08, ChineToe: 0.1, Pressure: 62}
	for i := range frames {
		b.Frames = append(b.Frames, Rib{fmt.Sprintf("frame %d", i+1), 0.5 * float64(i+1), Stiffness{EI: 90, EA: 9e4, GA: 2e4, GJ: 0.05}})
	}
	for j := range stringers {
		b.Stringers = append(b.Stringers, Rib{fmt.Sprintf("stringer %d", j+1), max(aft, fwd) * float64(j+1) / float64(stringers+1), Stiffness{EI: 15, EA: 9e4, GA: 7e3, GJ: 0.01}})
	}
	for i := range frames + 2 {
		b.Girth = append(b.Girth, aft+(fwd-aft)*float64(i)/float64(frames+1))
	}
	return b
}

func floored(t testing.TB, b Bottom) BottomResult {
	t.Helper()
	out, err := b.Solve()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// One frame without stringers carries a trapezoid: ql²/12 (1 - 2a² + a³) at fixed ends, a the sloping part of the span (handbook of
// beams, recalled), q the pressure times the spacing; pinned ends ql²/24 (3 - 4a²).
func TestBottomOfOneFrame(t *testing.T) {
	b := floor(1, 0, 1.25, 1.25)
	out := floored(t, b)
	q, span, a := 62*0.5, 1.25, 0.25/1.25
	hold(t, "fixed, trapezoid", row{"keel", out.Frames[0].Start.Moment, -q * span * span / 12 * (1 - 2*a*a + a*a*a)}, row{"chine", out.Frames[0].End.Moment, -q * span * span / 12 * (1 - 2*a*a + a*a*a)},
		row{"formula for the whole load", out.Frames[0].Fixed, q * span * span / 12}, row{"total", out.Total, 62 * 1.25})
	b.AtKeel, b.AtChine = Hinge, Hinge
	hold(t, "pinned, trapezoid", row{"middle", floored(t, b).Frames[0].Moment.Value, q * span * span / 24 * (3 - 4*a*a)})
}

// What supports push, and what the plating gives them at once, is the pressure times the area; whatever runs where.
func TestBottomCarriesItsLoad(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		b := floor(rapid.IntRange(0, 6).Draw(t, "frames"), rapid.IntRange(1, 6).Draw(t, "stringers"), rapid.Float64Range(0.4, 1.4).Draw(t, "aft"), rapid.Float64Range(0.4, 1.4).Draw(t, "fwd"))
		b.Keel = Edge{rapid.Bool().Draw(t, "keel gives"), Stiffness{EI: 800, GA: 1e5}}
		b.Chine = Edge{rapid.Bool().Draw(t, "chine gives"), Stiffness{EI: 300, GA: 1e5}}
		joint := func(name string) Joint { return rapid.SampledFrom([]Joint{Rigid, Hinge}).Draw(t, name) }
		b.AtKeel, b.AtChine, b.AtBulkhead = joint("keel"), joint("chine"), joint("bulkhead")
		out, err := b.Solve()
		if err != nil && strings.Contains(err.Error(), "runs through no bay") {
			return
		}
		if err != nil {
			t.Fatal(err)
		}
		area := (b.Girth[0] + b.Girth[len(b.Girth)-1]) / 2 * (b.Fwd - b.Aft)
		pushed := out.Direct - out.Balance.Reactions[0]
		if math.Abs(out.Total-62*area) > 1e-9*out.Total || math.Abs(pushed-out.Total) > 1e-6*out.Total {
			t.Fatalf("total %v, pressure times area %v, supports %v", out.Total, 62*area, pushed)
		}
		if len(out.Frames) != len(b.Frames) {
			t.Fatalf("%d frames given, %d shown", len(b.Frames), len(out.Frames))
		}
	})
}

// Soft stringers only hand on their load, and a frame bends as the formula says; far stiffer ones carry it to the bulkheads. In
// between a frame may bend more than alone: a beam on an elastic bed rises beyond its even state near ends that are held,
// by exp(-π) from each end (Hetényi, Beams on Elastic Foundation, recalled).
func TestNeighboursHelp(t *testing.T) {
	b := floor(3, 5, 1.25, 1.25)
	formula := 62 * 0.5 * 1.25 * 1.25 / 12
	for _, r := range []struct{ ei, least, most float64 }{{1e-3, 0.97, 1.0001}, {15, 0.97, 1 + 2*math.Exp(-math.Pi)}, {500, 0.2, 0.97}, {2e4, 0, 0.2}} {
		for j := range b.Stringers {
			b.Stringers[j].Bar.EI, b.Stringers[j].Bar.GA = r.ei, 0
		}
		most := 0.0
		for _, f := range floored(t, b).Frames {
			most = math.Max(most, math.Abs(f.Moment.Value))
			if math.Abs(f.Ratio-math.Abs(f.Moment.Value)/formula) > 1e-9 {
				t.Errorf("ratio %v of %v to %v", f.Ratio, f.Moment.Value, formula)
			}
		}
		if most < r.least*formula || most > r.most*formula {
			t.Errorf("stringers of EI %v: the worst frame bends with %v kN·m, want %v to %v of %v", r.ei, most, r.least, r.most, formula)
		}
	}
	b.Keel = Edge{Gives: true, Bar: Stiffness{EI: 1e9}}
	stiff := floored(t, b)
	b.Keel = Edge{}
	if a, c := stiff.Frames[1].Moment.Value, floored(t, b).Frames[1].Moment.Value; math.Abs(a-c) > 1e-4*math.Abs(c) {
		t.Errorf("a keel that hardly gives is a support: %v, %v", a, c)
	}
}

func TestBottomFaults(t *testing.T) {
	b := floor(2, 2, 1, 1)
	b.Frames[0].At, b.Frames[1].At = 0.9, 0.4
	b.Stringers[1].At, b.Stringers[0].Bar.EI = 1.3, 0
	b.Girth = b.Girth[:3]
	b.AtKeel = ""
	_, err := b.Solve()
	want := `frame 2 (frame 2): lies at 0.4 m, must lie forward of 0.9 and aft of 1.5 m
chine: 3 offsets given, must be one for each bulkhead and frame, 4
stringer 1 (stringer 1): bending stiffness 0 kN·m², must be above nought
stringer 2 (stringer 2): lies 1.3 m from the keel, must lie beyond 0.3333333333333333 m and inside the chine, 1 m
keel: joint "" is not known; write fixed or pinned`
	if err == nil || err.Error() != want {
		t.Errorf("%v\nwant\n%s", err, want)
	}
	b = floor(0, 2, 0.3, 1)
	if _, err := b.Solve(); err == nil || err.Error() != "stringer 1 (stringer 1): runs through no bay: nowhere does it lie inside the chine at both ends of one\nstringer 2 (stringer 2): runs through no bay: nowhere does it lie inside the chine at both ends of one" {
		t.Errorf("stringers that a narrow end keeps out: %v", err)
	}
	if _, err := (Bottom{}).Solve(); err == nil || !strings.Contains(err.Error(), "neither frames nor stringers") {
		t.Errorf("nothing at all: %v", err)
	}
}

func BenchmarkBottom14x10(b *testing.B) {
	bottom := floor(14, 10, 1.3, 0.9)
	b.ReportAllocs()
	for b.Loop() {
		floored(b, bottom)
	}
}

func BenchmarkBottom6x5(b *testing.B) {
	bottom := floor(6, 5, 1.2, 1.1)
	b.ReportAllocs()
	for b.Loop() {
		floored(b, bottom)
	}
}
