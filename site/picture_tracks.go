package site

import (
	"math"
	"slices"

	"hullfile/engine/manoeuvre"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/site/chart"
)

func speedOf(p *tracklog.Point) float64 { return p.Speed }
func rpmOf(p *tracklog.Point) float64   { return p.RPM }
func trimOf(p *tracklog.Point) float64  { return p.Trim }
func fuelOf(p *tracklog.Point) float64  { return p.Fuel }

// logPicture draws where the boat went in a whole log.
func (l *leaf) logPicture(log *tracklog.Log) Drawing {
	return drawing("Track of the log", chart.Track(chart.TrackSpec{
		ID: "fig-log-track", Title: "Track of log " + log.Record.ID, Legs: []chart.Leg{{Name: "log " + log.Record.ID, Points: log.Report.Track, Main: true}},
		Note: "A gap in the log is a gap in the line.",
	}))
}

// logHistory draws what a whole log has over time, with the runs shaded.
func (l *leaf) logHistory(log *tracklog.Log) Drawing {
	h := chart.History{ID: "fig-log-time", Title: "Log " + log.Record.ID + " over time", Zero: log.Report.First, Minutes: true, Note: "Shaded: the runs of the trial."}
	points := log.Report.Track
	if log.Report.Speeds+log.Report.Derived > 0 {
		h.Traces = append(h.Traces, chart.Trace{Name: "Speed", Unit: "kn", Points: points, Of: speedOf, From0: true, Decimals: 1})
	}
	if log.Report.RPM.Has() {
		h.Traces = append(h.Traces, chart.Trace{Name: "Engine speed", Unit: "rpm", Points: points, Of: rpmOf, Right: len(h.Traces) > 0, From0: true})
	}
	if log.Report.Fuel.Has() && len(h.Traces) < 2 {
		h.Traces = append(h.Traces, chart.Trace{Name: "Fuel flow", Unit: "l/h", Points: points, Of: fuelOf, Right: len(h.Traces) > 0, From0: true, Decimals: 1})
	}
	for i := range l.dossier.Logs.Runs {
		if run := &l.dossier.Logs.Runs[i]; run.Window != nil && run.Trial.ID == log.Trial.ID {
			h.Bands = append(h.Bands, chart.Band{From: run.Window.From, To: run.Window.To, Text: run.Record.ID})
		}
	}
	return drawing("What the log has over time", chart.Over(h)).says(bandsSay(len(h.Bands)))
}

func bandsSay(n int) string {
	if n == 0 {
		return ""
	}
	return plural(n, "run of the trial lies", "runs of the trial lie") + " in it"
}

// runPictures draws a run among the others of its setting, and its minutes.
func (l *leaf) runPictures(run *tracklog.Run) (track, speed, course Drawing) {
	return drawing("Track of the run among those of its setting", l.runTrack(run)).says(runSays(run.Window)),
		drawing("Speed and engine speed over the run", l.runHistory(run)).says(speedSays(run.Window)),
		drawing("Course over the run", runCourse(run)).says(courseSays(run.Window))
}

// mostBeside is how many other runs a run is drawn among. Every run has a page: what each of them shows of all others would
// grow with the square of the runs.
const mostBeside = 24

func (l *leaf) runTrack(run *tracklog.Run) chart.Figure {
	legs, left := nearLegs(l.legsOf(run))
	thin := "the other runs at the same setting"
	if left > 0 {
		thin = plural(len(legs)-1, "other run", "other runs") + " at the same setting that stand next to it on record, " + plural(left, "run is", "runs are") + " left out"
	}
	spec := chart.TrackSpec{
		ID: "fig-run-track", Title: "Track of run " + run.Record.ID, Legs: legs,
		Note: "Heavy: this run, from its circle to its tip. Thin: " + thin + ". Of the stream only the part along the course shows.",
	}
	if s := l.settingOf(run); s != nil {
		spec.Stream = streamOf(s)
	}
	return chart.Track(spec)
}

// legsOf gives a run and all others at its setting, in the order of the record.
func (l *leaf) legsOf(run *tracklog.Run) (legs []chart.Leg) {
	for i := range l.dossier.Logs.Runs {
		other := &l.dossier.Logs.Runs[i]
		if other.Window == nil || other.Trial.ID != run.Trial.ID || other.Record.Setting.V != run.Record.Setting.V {
			continue
		}
		legs = append(legs, chart.Leg{Name: "run " + other.Record.ID, Points: other.Window.Inside(), Main: other == run})
	}
	return legs
}

// nearLegs keeps the leg that matters and those next to it, and says how many it left out.
func nearLegs(legs []chart.Leg) (near []chart.Leg, left int) {
	if len(legs) <= mostBeside+1 {
		return legs, 0
	}
	own := max(0, slices.IndexFunc(legs, func(leg chart.Leg) bool { return leg.Main }))
	from := min(max(0, own-mostBeside/2), len(legs)-mostBeside-1)
	return legs[from : from+mostBeside+1], len(legs) - mostBeside - 1
}

func streamOf(s *trial.Setting) chart.Stream {
	return chart.Stream{Knots: float64(s.Current), Toward: float64(s.SetsTo), Has: s.HasStream}
}

func (l *leaf) runHistory(run *tracklog.Run) chart.Figure {
	w := run.Window
	h := chart.History{ID: "fig-run-time", Title: "Speed over run " + run.Record.ID, Zero: w.From, Bands: []chart.Band{{From: w.From, To: w.To, Text: "run " + run.Record.ID}},
		Traces: []chart.Trace{{Name: "Speed", Unit: "kn", Points: w.Points, Of: speedOf, Span: 2, Decimals: 1}}, Note: "Shaded: the window of the run."}
	if points := pointsWith(&run.Place, rpmOf); points != nil {
		h.Traces = append(h.Traces, chart.Trace{Name: "Engine speed", Unit: "rpm", Points: points, Of: rpmOf, Right: true, Span: 200})
	}
	return chart.Over(h)
}

// pointsWith gives the points of the first log of a place that has a quantity, nil where none has.
func pointsWith(p *tracklog.Place, of func(*tracklog.Point) float64) []tracklog.Point {
	all := []*tracklog.Window{p.Window}
	for _, b := range p.Beside {
		all = append(all, b.Window)
	}
	for _, w := range all {
		if w == nil {
			continue
		}
		for i := range w.Points {
			if !math.IsNaN(of(&w.Points[i])) {
				return w.Points
			}
		}
	}
	return nil
}

// runCourse draws how far the course lies off its mean, so that a run over north is no jump.
func runCourse(run *tracklog.Run) chart.Figure {
	w := run.Window
	mean := w.Toward.Mean()
	off := func(p *tracklog.Point) float64 { return math.Remainder(p.Toward-mean, 360) }
	return chart.Over(chart.History{
		ID: "fig-run-course", Title: "Course over run " + run.Record.ID, Zero: w.From, Bands: []chart.Band{{From: w.From, To: w.To, Text: "run " + run.Record.ID}},
		Traces: []chart.Trace{{Name: "Course off its mean", Unit: "°", Points: w.Points, Of: off, Span: 20, Decimals: 1}},
	})
}

func (l *leaf) accelerationPicture(a *manoeuvre.Acceleration, id string) Drawing {
	if a.Move == nil || a.Move.Window == nil {
		return Drawing{}
	}
	w := a.Move.Window
	zero := w.From
	h := chart.History{ID: "fig-" + id, Title: "Acceleration " + a.Record.ID}
	if a.Start > 0 {
		zero = a.Start
		h.Note = "Time counts from the moment at which the boat began to move."
	}
	h.Zero = zero
	h.Traces = []chart.Trace{{Name: "Speed", Unit: "kn", Points: w.Points, Of: speedOf, From0: true, Decimals: 1}}
	if points := pointsWith(&a.Move.Place, trimOf); points != nil {
		h.Traces = append(h.Traces, chart.Trace{Name: "Trim, bow up", Unit: "°", Points: points, Of: trimOf, Right: true, From0: true, Decimals: 1})
	}
	return drawing("Speed and trim from rest", chart.Over(h)).says(accelerationSays(a))
}

func (l *leaf) turningPicture(t *manoeuvre.Turning, id string) Drawing {
	if t.Move == nil || t.Move.Window == nil {
		return Drawing{}
	}
	return drawing("Track of the turn", chart.Track(chart.TrackSpec{
		ID: "fig-" + id, Title: "Turning " + t.Record.ID, Legs: []chart.Leg{{Name: "helm over", Points: t.Move.Window.Inside(), Main: true}},
		Stream: chart.Stream{Knots: t.Drift, Toward: t.DriftTo, Has: t.HasLog},
	})).says(turningSays(t))
}

func (l *leaf) stoppingPicture(s *manoeuvre.Stopping, id string) Drawing {
	if s.Move == nil || s.Move.Window == nil {
		return Drawing{}
	}
	w := s.Move.Window
	return drawing("Speed over the stop", chart.Over(chart.History{
		ID: "fig-" + id, Title: "Stopping " + s.Record.ID, Zero: w.From,
		Traces: []chart.Trace{{Name: "Speed", Unit: "kn", Points: w.Points, Of: speedOf, From0: true, Decimals: 1}},
	})).says(stoppingSays(s))
}
