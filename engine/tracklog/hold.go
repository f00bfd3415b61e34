package tracklog

import (
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// What a window must have before a run takes anything from it (practice).
const (
	fewestSamples = 5
	leastSeconds  = 10.0
	headingWithin = 15.0 // degrees by which heading and course over ground may part
)

// hold puts the log beside every value of a run. A run whose window is too short, or lies outside the log, takes nothing.
func (r *Run) hold(logs []Log) {
	w := r.Window
	switch {
	case w == nil:
		return
	case w.Samples == 0:
		r.Why = "the log has no sample between " + Clock(w.From) + " and " + Clock(w.To)
		return
	case w.Samples < fewestSamples || w.Seconds() < leastSeconds:
		r.Why = "the log has only " + span(w.Seconds()) + " of it, in " + unit.Text(float64(w.Samples), 0) + " samples"
		return
	}
	r.holdFrom(&logs[r.Log], r.Log, w)
	for _, b := range r.Beside {
		if b.Window.Samples >= fewestSamples && b.Window.Seconds() >= leastSeconds {
			r.holdFrom(&logs[b.Log], b.Log, b.Window)
		}
	}
}

// holdFrom holds the values that one log has and that none before it had.
func (r *Run) holdFrom(l *Log, log int, w *Window) {
	rec := r.Record
	add := func(h Held) {
		if slices.ContainsFunc(r.Held, func(o Held) bool { return o.Name == h.Name }) {
			return
		}
		h.Log, h.At = log, w.At
		r.Held = append(r.Held, h)
	}
	if kn, ok := w.SpeedMade(); ok {
		add(holdUp("speed", "kn", 1, rec.Speed, measured{kn, w.Speed.Least, w.Speed.Most, w.Speed.N}))
	}
	if w.Toward.Has() {
		add(direction(rec, w))
	}
	if w.RPM.Has() && (rec.RPM.Set || !l.Report.inHundreds()) {
		add(holdUp("engine speed", "rpm", 0, rec.RPM, w.RPM.measured()))
	}
	if w.Fuel.Has() {
		add(holdUp("fuel flow", "l/h", 1, rec.Fuel, w.Fuel.measured()))
	}
	if w.Trim.Has() {
		add(holdUp("trim", "°", 1, rec.Trim, w.Trim.measured()))
	}
}

// direction holds the heading against the course, which wind and stream part from it.
func direction(rec *record.Run, w *Window) Held {
	mean := w.Toward.Mean()
	h := Held{Name: "heading", Sign: "°", Mean: mean, Least: w.Toward.first + w.Toward.Left, Most: w.Toward.first + w.Toward.Right, N: w.Toward.N}
	v, ok := rec.Heading.Get()
	h.Written, h.HasWritten, h.Taken = float64(v), ok, !ok
	h.Agrees = ok && math.Abs(turned(mean, float64(v))) <= headingWithin
	return h
}

func (m *Measure) measured() measured { return measured{m.Mean, m.Least, m.Most, m.N} }

// measured is a quantity as the log has it.
type measured struct {
	mean, least, most float64
	n                 int
}

// holdUp holds one value against the log: written, it must lie within what single samples show, widened by half its last
// printed place, because it was rounded.
func holdUp[T ~float64](name, sign string, decimals int, v record.Val[T], m measured) Held {
	h := Held{Name: name, Sign: sign, Decimals: decimals, Mean: m.mean, Least: m.least, Most: m.most, N: m.n}
	if !v.Set {
		h.Taken = true
		return h
	}
	h.Written, h.HasWritten = float64(v.V), true
	half := 0.5 * math.Pow(10, -float64(decimals))
	if sign == "rpm" {
		half = 5 // engine speed is read off in tens
	}
	least, most := math.Min(m.least, m.mean), math.Max(m.most, m.mean)
	h.Agrees = h.Written >= least-half-1e-9 && h.Written <= most+half+1e-9
	return h
}

// line gives a line of a log as a place; without a number it is the log as a whole.
func (r *Result) line(log, number int) finding.Place {
	if log < 0 || r.Logs[log].Path == "" {
		return finding.Place{}
	}
	return finding.Place{File: r.Logs[log].Path, Line: number}
}
