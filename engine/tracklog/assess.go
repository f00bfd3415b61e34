package tracklog

import (
	"os"
	"path"
	"strings"

	"hullfile/engine/record"
)

// Assess reads every log of the hull once, from the yard folder root, and holds the runs against them. Without a root no
// log is there. What a run does not write itself is not put into its record here; see Result.Filled.
func Assess(root *os.Root, h *record.Hull) Result {
	var r Result
	for i := range h.Trials {
		r.trial(root, &h.Trials[i])
	}
	r.names()
	for i := range r.Runs {
		r.Runs[i].hold(r.Logs)
	}
	for i := range r.Logs {
		l := &r.Logs[i]
		r.Checks = append(r.Checks, checks(l)...)
		r.Findings = append(r.Findings, l.findings()...)
		r.Assumptions = append(r.Assumptions, l.assumptions()...)
	}
	for i := range r.Runs {
		r.Findings = append(r.Findings, r.runFindings(&r.Runs[i])...)
	}
	r.Findings = append(r.Findings, r.moveFindings()...)
	r.strays(root, h)
	return r
}

// trial reads the logs of one trial with all windows that its runs and manoeuvres name.
func (r *Result) trial(root *os.Root, t *record.Trial) {
	first := len(r.Logs)
	for i := range t.Logs {
		r.Logs = append(r.Logs, Log{Trial: t, Record: &t.Logs[i]})
	}
	w := wanted{t: t, logs: r.Logs[first:], first: first, windows: make([][]*Window, len(t.Logs))}
	for i := range t.Runs {
		run := &t.Runs[i]
		if !run.Log.Set && !run.From.Set && !run.To.Set {
			continue
		}
		r.Runs = append(r.Runs, Run{Trial: t, Record: run, Place: w.place(run.Log, run.From, run.To)})
	}
	r.Moves = append(r.Moves, w.moves()...)
	for i := range w.logs {
		w.logs[i].scan(root, w.windows[i])
	}
}

// wanted gathers the windows of the logs of one trial.
type wanted struct {
	t       *record.Trial
	logs    []Log
	first   int
	windows [][]*Window
}

// place notes a window of a log, or says why there is none. The other logs of the trial get the same window: an engine
// log may have what the receiver has not.
func (w *wanted) place(log, from, to record.Val[string]) Place {
	p := Place{Log: -1}
	for i := range w.logs {
		if w.logs[i].Record.ID == log.V {
			p.Log = w.first + i
		}
	}
	start, ok1 := at(from.V, w.t.Date.V)
	end, ok2 := at(to.V, w.t.Date.V)
	switch {
	case !log.Set:
		p.Why = "no log is named"
	case p.Log < 0:
		p.Why = "log " + log.V + " is not on record in this trial"
	case !from.Set || !to.Set:
		p.Why = "both from and to are needed to find it in the log"
	case !ok1 || !ok2:
		p.Why = "its times cannot be read"
	case end <= start:
		p.Why = "it ends before it begins; a run past midnight writes the day too"
	}
	if p.Why != "" {
		return p
	}
	for i := range w.logs {
		window := newWindow(start, end)
		w.windows[i] = append(w.windows[i], window)
		if w.first+i == p.Log {
			p.Window = window
			continue
		}
		p.Beside = append(p.Beside, Beside{Log: w.first + i, Window: window})
	}
	return p
}

// moves gathers the windows of the manoeuvres.
func (w *wanted) moves() []Move {
	var all []Move
	add := func(kind, id string, log, from, to record.Val[string]) {
		if !log.Set && !from.Set && !to.Set {
			return
		}
		all = append(all, Move{Trial: w.t, Kind: kind, ID: id, Place: w.place(log, from, to)})
	}
	for _, m := range w.t.Accelerate {
		add("acceleration", m.ID, m.Log, m.From, m.To)
	}
	for _, m := range w.t.Turnings {
		add("turning", m.ID, m.Log, m.From, m.To)
	}
	for _, m := range w.t.Stoppings {
		add("stopping", m.ID, m.Log, m.From, m.To)
	}
	return all
}

// names gives every log that is there its name inside the technical file, unique where case does not count.
func (r *Result) names() {
	taken := map[string]bool{}
	for i := range r.Logs {
		l := &r.Logs[i]
		if !l.Present || l.SHA256 == "" {
			continue
		}
		stem := safe(l.Trial.ID + "-" + l.Record.ID)
		name := stem
		for n := 'b'; taken[strings.ToLower(name)]; n++ {
			name = stem + "-" + string(n)
		}
		taken[strings.ToLower(name)] = true
		f, _ := formatOf(l.Record.Kind.V)
		l.Out = "logs/" + name + f.ending
	}
}

// safe keeps letters, digits, dashes and underscores of a key.
func safe(key string) string {
	name := strings.Map(func(r rune) rune {
		if r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r >= '0' && r <= '9' || r == '-' || r == '_' {
			return r
		}
		return '-'
	}, key)
	return "log-" + name[:min(len(name), 60)]
}

// folderOf gives the folder of logs of the hull itself.
func folderOf(h *record.Hull) string { return path.Join(h.Folder, logsFolder) }
