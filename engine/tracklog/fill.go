package tracklog

import (
	"slices"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Filled gives the hull with every run that lies in a log completed from it: only what the record does not write is taken,
// and its place is the line of the log. Where nothing is taken the hull itself is given; the records are never changed.
func (r *Result) Filled(h *record.Hull) *record.Hull {
	if !slices.ContainsFunc(r.Runs, func(run Run) bool { return slices.ContainsFunc(run.Held, func(x Held) bool { return x.Taken }) }) {
		return h
	}
	full := *h
	full.Trials = slices.Clone(h.Trials)
	for i := range full.Trials {
		full.Trials[i].Runs = slices.Clone(h.Trials[i].Runs)
	}
	for i := range r.Runs {
		r.fill(&r.Runs[i], &full)
	}
	return &full
}

// fill completes one run.
func (r *Result) fill(run *Run, h *record.Hull) {
	into := find(h, run)
	if into == nil {
		return
	}
	for _, v := range run.Held {
		if !v.Taken {
			continue
		}
		place := r.line(v.Log, v.At)
		switch v.Name {
		case "speed":
			into.Speed = record.Written(unit.Knot(v.Mean), place)
		case "heading":
			into.Heading = record.Written(unit.Deg(v.Mean), place)
		case "engine speed":
			into.RPM = record.Written(unit.RPM(v.Mean), place)
		case "fuel flow":
			into.Fuel = record.Written(unit.LPerH(v.Mean), place)
		case "trim":
			into.Trim = record.Written(unit.Deg(v.Mean), place)
		}
	}
	if !into.Seconds.Set && len(run.Held) > 0 {
		into.Seconds = record.Written(unit.Second(run.Window.Seconds()), r.line(run.Log, run.Window.At))
	}
}

// find gives the run of the copied hull that stands where the run of the record does.
func find(h *record.Hull, run *Run) *record.Run {
	for i := range h.Trials {
		t := &h.Trials[i]
		if t.ID != run.Trial.ID {
			continue
		}
		for j := range t.Runs {
			if t.Runs[j].ID == run.Record.ID && t.Runs[j].At == run.Record.At {
				return &t.Runs[j]
			}
		}
	}
	return nil
}
