package results

import (
	"hullfile/engine/manoeuvre"
	"hullfile/engine/tracklog"
)

// logResults is what the logs gave, for machines.
func logResults(r *tracklog.Result) object {
	logs, runs := []object{}, []object{}
	for i := range r.Logs {
		log := &r.Logs[i]
		o := object{{"trial", log.Trial.ID}, {"key", log.Record.ID}, {"present", log.Present}, {"sha256", log.SHA256}, {"bytes", log.Bytes}, {"lines", log.Report.Lines}, {"samples", log.Report.Samples}}
		if log.Report.Samples > 0 {
			o.add("first", tracklog.Moment(log.Report.First))
			o.add("last", tracklog.Moment(log.Report.Last))
		}
		notes := object{}
		for _, n := range log.Report.Notes {
			notes.add(string(n.Trouble), n.Count)
		}
		o.add("notes", notes)
		logs = append(logs, o)
	}
	for i := range r.Runs {
		run := &r.Runs[i]
		held := object{}
		for _, h := range run.Held {
			v := object{{"log_mean", full(h.Mean)}, {"log_least", full(h.Least)}, {"log_greatest", full(h.Most)}, {"samples", h.N}, {"taken", h.Taken}}
			if h.HasWritten {
				v.add("written", full(h.Written))
				v.add("agrees", h.Agrees)
			}
			held.add(h.Name, v)
		}
		runs = append(runs, object{{"trial", run.Trial.ID}, {"key", run.Record.ID}, {"held", held}, {"why", run.Why}})
	}
	return object{{"logs", logs}, {"runs", runs}}
}

// moveResults is what the manoeuvres gave.
func moveResults(r *manoeuvre.Result) []object {
	out := []object{}
	add := func(trial, kind, id string, all ...*manoeuvre.Figure) {
		o := object{{"trial", trial}, {"kind", kind}, {"key", id}}
		for _, f := range all {
			v := object{{"unit", f.Sign}}
			if f.Written.Set {
				v.add("written", full(f.Written.V))
			}
			if f.HasLog {
				v.add("log", full(f.Logged))
			}
			o.add(f.Name, v)
		}
		out = append(out, o)
	}
	for i := range r.Accelerations {
		a := &r.Accelerations[i]
		add(a.Trial.ID, "acceleration", a.Record.ID, &a.Speed, &a.Plane, &a.Trim)
	}
	for i := range r.Turnings {
		t := &r.Turnings[i]
		add(t.Trial.ID, "turning", t.Record.ID, &t.Diameter, &t.Tactical, &t.Seconds)
	}
	for i := range r.Stoppings {
		s := &r.Stoppings[i]
		add(s.Trial.ID, "stopping", s.Record.ID, &s.Before, &s.Distance, &s.Seconds)
	}
	return out
}
