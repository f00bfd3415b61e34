package manoeuvre

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// How far a figure taken by hand may lie from that of the log (practice).
const (
	handSeconds = 1.5  // a stop watch, both ends
	handPart    = 0.15 // or this part of the figure, whichever is more
	handMetres  = 3.0
	handKnots   = 0.5
	handDegrees = 0.7
)

// Assess reduces every manoeuvre of the hull. Their logs have been read; trials gives the speed of planing.
func Assess(h *record.Hull, logs *tracklog.Result, trials *trial.Result) Result {
	var r Result
	for i := range h.Trials {
		t := &h.Trials[i]
		for j := range t.Accelerate {
			a := accelerate(t, &t.Accelerate[j], logs, planing(trials, t.ID))
			r.Accelerations = append(r.Accelerations, a)
			r.hold(t, "acceleration", a.Record.ID, a.Move, &a.Speed, &a.Plane, &a.Trim)
		}
		for j := range t.Turnings {
			m := turn(t, &t.Turnings[j], logs, &h.Boat)
			r.Turnings = append(r.Turnings, m)
			r.hold(t, "turning", m.Record.ID, m.Move, &m.Diameter, &m.Seconds)
		}
		for j := range t.Stoppings {
			s := stop(t, &t.Stoppings[j], logs, &h.Boat)
			r.Stoppings = append(r.Stoppings, s)
			r.hold(t, "stopping", s.Record.ID, s.Move, &s.Before, &s.Distance, &s.Seconds)
		}
		for j := range t.Noises {
			r.Noises = append(r.Noises, Noise{t, &t.Noises[j]})
		}
		for j := range t.Sights {
			r.Sights = append(r.Sights, Sight{t, &t.Sights[j]})
		}
	}
	return r
}

// planing gives the speed in knots from which the boat counts as on the plane, nought where it is not known.
func planing(trials *trial.Result, id string) float64 {
	for i := range trials.Trials {
		if t := &trials.Trials[i]; t.Record.ID == id && t.Planing.Has {
			return t.Planing.Value
		}
	}
	return 0
}

// hold tells a figure taken by hand that the log does not bear out.
func (r *Result) hold(t *record.Trial, kind, id string, m *tracklog.Move, all ...*Figure) {
	for _, f := range all {
		if !f.Written.Set || !f.HasLog || math.Abs(f.Written.V-f.Logged) <= f.tolerance() {
			continue
		}
		r.Findings = append(r.Findings, finding.Finding{
			Kind: finding.Contradiction, Rule: "move-and-log", Subject: "trial " + t.ID + " " + kind + " " + id, Places: []finding.Place{f.Written.At},
			Says: fmt.Sprintf("%s %s %s is written; between %s and %s the log gives %s %s", f.Name, unit.Text(f.Written.V, f.Decimals), f.Sign,
				tracklog.Clock(m.Window.From), tracklog.Clock(m.Window.To), unit.Text(f.Logged, f.Decimals), f.Sign),
			Settle: "see which of the two is wrong: the sheet, the times, or the log",
		})
	}
}

func (f *Figure) tolerance() float64 {
	least := map[string]float64{"s": handSeconds, "m": handMetres, "kn": handKnots, "°": handDegrees}[f.Sign]
	return math.Max(least, handPart*math.Abs(f.Logged))
}

// figure begins with what is written.
func figure[T ~float64](name, sign string, decimals int, v record.Val[T]) Figure {
	return Figure{Name: name, Sign: sign, Decimals: decimals, Written: record.Val[float64]{V: float64(v.V), Set: v.Set, At: v.At}}
}

// from adds what the log gives.
func (f *Figure) from(v float64, ok bool, why string) {
	f.Logged, f.HasLog = v, ok && !math.IsNaN(v)
	if !f.HasLog {
		f.Why = why
	}
}

// points gives the points of the log of a manoeuvre, or why there are none.
func points(m *tracklog.Move) ([]tracklog.Point, string) {
	switch {
	case m == nil:
		return nil, "no log is named"
	case m.Why != "":
		return nil, m.Why
	}
	return m.Window.Inside(), ""
}

// lengths gives a distance in hull lengths, nought where the length is not known.
func lengths(f *Figure, boat *record.Boat) float64 {
	v, ok := f.Value()
	if length, has := boat.LengthHull.Get(); ok && has {
		return v / float64(length)
	}
	return 0
}
