package planing

import (
	"math"
	"os"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/lines"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

func val[T any](v T) record.Val[T] { return record.Val[T]{V: v, Set: true} }

// boat is a small planing boat with all that a prediction needs; the figures are invented.
func boat(t testing.TB) Input {
	t.Helper()
	lib, err := method.ReadShipped(os.DirFS("../../content/methods")).Library(nil)
	if err != nil {
		t.Fatal(err)
	}
	h := &record.Hull{Number: "A-1"}
	h.Design = val("D")
	b := &h.Boat
	b.BeamChine, b.Deadrise, b.LengthWL, b.LoadedMass = val(unit.M(2.05)), val(unit.Deg(18)), val(unit.M(6.2)), val(unit.KG(2760))
	b.Speed, b.Power = val(unit.Knot(34)), val(unit.KW(170))
	return Input{Hull: h, Loaded: weight.Total{Mass: 2760, X: 2.45, Z: 0.93, HasX: true, HasZ: true, Items: 1}, Lines: &lines.Result{}, Library: lib}
}

// onTrial adds a trial with one fast setting.
func onTrial(in Input, mass, knots, trim float64) Input {
	rec := &record.Trial{Entry: record.Entry{ID: "T1"}, Mass: val(unit.KG(mass)), Water: val("salt")}
	s := trial.Setting{Name: "full", Speed: trial.Mean{Value: knots, N: 4, Has: true}, Trim: trial.Mean{Value: trim, N: 4, Has: true}}
	slow := trial.Setting{Name: "idle", Speed: trial.Mean{Value: 3, N: 4, Has: true}}
	in.Trials = []trial.Trial{{Record: rec, Settings: []trial.Setting{slow, s}, Top: 1}}
	return in
}

func TestPredictionBesideATrial(t *testing.T) {
	in := onTrial(boat(t), 2685, 33.6, 3.2)
	in.Sisters = []*record.Hull{{Number: "A-2"}, {Number: "A-3"}}
	in.Sisters[0].Boat.LoadedMass, in.Sisters[0].Boat.Power = val(unit.KG(2685)), val(unit.KW(170))
	r := Assess(in)
	if len(r.Cases) != 1 || r.Why != "" {
		t.Fatalf("%d cases: %s", len(r.Cases), r.Why)
	}
	c := &r.Cases[0]
	if c.Full || c.Mass != 2685 || c.Shown.Knots != 33.6 || c.Shown.Planing == nil {
		t.Errorf("case %+v", c)
	}
	if c.Settings[0].Point != nil || !strings.Contains(c.Settings[0].Why, "too slow") {
		t.Errorf("3 kn is predicted: %+v", c.Settings[0])
	}
	top := c.FastestMeasured()
	if top == nil || !top.Inside() || math.Abs(top.Effective*2-top.Most) > 1e-9*top.Most {
		t.Fatalf("fastest setting %+v", top)
	}
	// own arithmetic: a sister of the same mass and power runs as fast
	if len(c.Sisters) != 1 || math.Abs(c.Sisters[0].Speed-33.6) > 1e-9 {
		t.Errorf("sisters %+v", c.Sisters)
	}
	for i := 1; i < len(c.Points); i++ {
		if p := &c.Points[i]; p.Coefficient < planesFrom && p.Inside() {
			t.Errorf("%g kn is inside the range below planing speed", p.Knots)
		}
	}
}

// Air, appendages and spray are counted as stated and only then; with them the drag grows by just what they are.
func TestWhatIsStatedIsCounted(t *testing.T) {
	bare := Assess(onTrial(boat(t), 2685, 33.6, 3.2)).Cases[0].FastestMeasured()
	in := onTrial(boat(t), 2685, 33.6, 3.2)
	in.Hull.Prediction = record.Prediction{Front: val(unit.M2(4)), AirDrag: val(unit.Ratio(0.7)), Appendage: val(unit.Percent(10)), Spray: val(true)}
	r := Assess(in)
	all := r.Cases[0].FastestMeasured()
	v := 33.6 * knot
	want := bare.Drag + 0.5*1.225*0.7*4*v*v + 0.1*bare.Drag + all.Spray
	if math.Abs(all.Drag-want) > 1e-6*want || !(all.Spray > 0) {
		t.Errorf("drag %g, want %g with spray of %g", all.Drag, want, all.Spray)
	}
	for _, a := range r.Assumptions {
		if strings.Contains(a.Says, "left out") {
			t.Errorf("stated, and yet: %s", a.Says)
		}
	}
}

func TestWherePredictionAndTrialPart(t *testing.T) {
	told := func(in Input) map[string]bool {
		out := map[string]bool{}
		for _, f := range Assess(in).Findings {
			out[f.Rule] = f.Kind == finding.Doubt
		}
		return out
	}
	if got := told(onTrial(boat(t), 2685, 33.6, 6.5)); !got["prediction-trim"] || !got["prediction-porpoising"] {
		t.Errorf("a trim of 6.5° at 33.6 kn is not doubted: %v", got)
	}
	weak := onTrial(boat(t), 2685, 33.6, 3.2)
	weak.Hull.Boat.Power = val(unit.KW(80))
	if !told(weak)["prediction-power"] {
		t.Error("33.6 kn with 80 kW is not doubted")
	}
	strong := onTrial(boat(t), 2685, 20, 6)
	strong.Hull.Boat.Power = val(unit.KW(300))
	if !told(strong)["prediction-power"] {
		t.Error("20 kn with 300 kW is not doubted")
	}
	if got := told(onTrial(boat(t), 2685, 33.6, 3.2)); len(got) > 0 {
		t.Errorf("a boat that does what is predicted is doubted: %v", got)
	}
}

func TestNoPredictionSaysWhy(t *testing.T) {
	in := boat(t)
	in.Hull.Boat.Deadrise = record.Val[unit.Deg]{}
	if r := Assess(in); len(r.Cases) > 0 || !strings.Contains(r.Why, "boat.deadrise_deg") {
		t.Errorf("no deadrise: %q", r.Why)
	}
	in = boat(t)
	in.Loaded = weight.Total{}
	if r := Assess(in); len(r.Cases) > 0 || !strings.Contains(r.Why, "prediction.lcg_m") {
		t.Errorf("no centre of gravity: %q", r.Why)
	}
	in = boat(t)
	in.Hull.Boat.LoadedMass = record.Val[unit.KG]{}
	if r := Assess(in); len(r.Cases) > 0 || !strings.Contains(r.Why, "mass") {
		t.Errorf("no mass: %q", r.Why)
	}
	if r := Assess(boat(t)); len(r.Cases) != 1 || r.Cases[0].Trial != nil {
		t.Error("a boat as designed is not predicted")
	}
}

func BenchmarkAssess(b *testing.B) {
	in := onTrial(boat(b), 2685, 33.6, 3.2)
	in.Hull.Prediction.ShaftZ = val(unit.M(-0.18))
	b.ReportAllocs()
	for b.Loop() {
		if r := Assess(in); len(r.Cases) != 1 {
			b.Fatal(r.Why)
		}
	}
}
