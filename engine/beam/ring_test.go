package beam

import (
	"math"
	"strings"
	"testing"
)

// launch is the ring of a boat of our own making: 1.06 m bottom frames at some 20 degrees, upright sides, a deck beam.
func launch() Ring {
	load := RingLoad{Bottom: Run{31, 31}, Side: Run{5, 3}, Deck: Run{2.5, 2.5}}
	return Ring{
		Keel: Place{0, 0}, Chine: Place{1.0, 0.36}, Sheer: Place{1.12, 1.15}, Camber: 0.04,
		Bottom: Stiffness{EI: 70, EA: 90000, GA: 16000}, Side: Stiffness{EI: 35, EA: 60000, GA: 12000}, Deck: Stiffness{EI: 25, EA: 50000, GA: 9000},
		AtKeel: Rigid, AtChine: Rigid, AtSheer: Rigid, KeelHeld: Firmly, ChineHeld: Firmly, SheerHeld: Firmly,
		KeelToe: 0.08, ChineToe: 0.1, SheerToe: 0.06, Starboard: load, Port: load,
	}
}

func ringed(t testing.TB, r Ring) RingResult {
	t.Helper()
	out, err := r.Solve()
	if err != nil {
		t.Fatal(err)
	}
	return out
}

// Pinned all round and held at every corner each bar is a single span.
func TestRingOfSingleSpans(t *testing.T) {
	r := launch()
	r.AtKeel, r.AtChine, r.AtSheer = Hinge, Hinge, Hinge
	r.Starboard.Side = Run{5, 0}
	out := ringed(t, r)
	span := math.Hypot(1, 0.36)
	hold(t, "handbook: pinned, even load", row{"bottom", out.Beside[0].Moment.Value, 31 * span * span / 8}, row{"formula beside it", out.Beside[0].Pinned, 31 * span * span / 8},
		row{"ratio", out.Beside[0].Ratio, 1.5}, row{"port", out.Beside[3].Moment.Value, 31 * span * span / 8}, row{"at the joint", out.Beside[0].End.Moment, 0})
	side := math.Hypot(0.12, 0.79)
	hold(t, "handbook: pinned, load from w to nought, wl²/(9√3)", row{"side", out.Beside[1].Moment.Value, 5 * side * side / 9 / math.Sqrt(3)}, row{"formula beside it", out.Beside[1].Pinned, 5 * side * side / 9 / math.Sqrt(3)},
		row{"fixed formula l²·2q₁... (3q₁+2q₂)/60", out.Beside[1].Fixed, 5 * side * side / 20})
}

// Rigid at keel and chine, pinned at the sheer, corners held: moment distribution (Cross) at the chine. Both sides alike, so that
// the keel does not turn.
func TestRingByMomentDistribution(t *testing.T) {
	r := launch()
	r.AtSheer = Hinge
	r.Bottom.GA, r.Side.GA = 0, 0
	r.Starboard.Side, r.Port.Side = Run{4, 4}, Run{4, 4}
	out := ringed(t, r)
	l1, l2 := math.Hypot(1, 0.36), math.Hypot(0.12, 0.79)
	k1, k2 := 4*70/l1, 3*35/l2
	f1, f2 := 31*l1*l1/12, 4*l2*l2/8
	chine := f1 + k1/(k1+k2)*(f2-f1)
	keelMoment := f1 - (chine-f1)/2 // half of what the chine gains is carried over with the other sign
	for side, b := range []Beside{out.Beside[0], out.Beside[3]} {
		hold(t, "Cross, own arithmetic", row{"chine", b.End.Moment, -chine}, row{"keel", b.Start.Moment, -keelMoment}, row{"side at the chine", out.Beside[3*side+1].Start.Moment, -chine})
	}
	toe := out.Solution.Bars[0].At(0.08)
	hold(t, "the toe of a bracket", row{"moment", out.Beside[0].Start.ToeMoment, -toe.Moment}, row{"shear", out.Beside[0].Start.ToeShear, toe.Shear})
}

// The two sides of an evenly loaded ring are mirror images, also where the sheer may move.
func TestRingIsEven(t *testing.T) {
	r := launch()
	r.SheerHeld, r.ChineHeld = Loosely, Upright
	out := ringed(t, r)
	for i := range 3 {
		a, b := out.Beside[i], out.Beside[3+i]
		if math.Abs(a.Moment.Value-b.Moment.Value) > 1e-9 || math.Abs(a.Shear.Value-b.Shear.Value) > 1e-9 || math.Abs(a.Moves.Value-b.Moves.Value) > 1e-12 || math.Abs(a.End.Moment-b.End.Moment) > 1e-9 {
			t.Errorf("starboard %+v\nport %+v", a, b)
		}
	}
	if out.Beside[0].Moves.Value <= 0 || out.Beside[0].Start.Moment >= 0 {
		t.Errorf("pressure from outside must bend the bottom inward and stretch its outer face at the keel: %+v", out.Beside[0])
	}
}

func TestRingFaults(t *testing.T) {
	r := launch()
	r.AtKeel, r.SheerHeld, r.Keel.Y, r.Chine.Y = "bolted", "", 0.2, -1
	_, err := r.Solve()
	want := "keel: lies 0.2 m from the middle, must lie in it\nchine and sheer: lie -1 and 1.12 m from the middle, must lie to starboard of it\nkeel: joint \"bolted\" is not known; write fixed or pinned\nsheer: hold \"\" is not known; write free, upright or held"
	if err == nil || err.Error() != want {
		t.Errorf("%v\nwant\n%s", err, want)
	}
	r = launch()
	r.Deck, r.AtSheer, r.SheerHeld, r.AtChine = Stiffness{}, "", Loosely, Hinge
	r.Starboard.Deck, r.Port.Deck = Run{}, Run{}
	if _, err = r.Solve(); err == nil || !strings.Contains(err.Error(), "sheer) is held by nothing") {
		t.Errorf("side frames on a hinge with nothing above: %v", err)
	}
}

func BenchmarkRing(b *testing.B) {
	r := launch()
	b.ReportAllocs()
	for b.Loop() {
		ringed(b, r)
	}
}
