package tracklog

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// runFindings of one run: what is written and what the log shows.
func (r *Result) runFindings(run *Run) []finding.Finding {
	where := func(log, line int) []finding.Place {
		return []finding.Place{run.Record.At, r.line(log, line)}
	}
	if run.Why != "" {
		kind := finding.Doubt
		if run.Log < 0 {
			kind = finding.Contradiction
		}
		return []finding.Finding{{
			Kind: kind, Rule: "run-not-in-log", Subject: run.Subject(), Says: "nothing is taken from the log: " + run.Why,
			Settle: "write the log, and from when to when the run lasted, as 09:14:00 in UTC", Places: where(run.Log, 0),
		}}
	}
	var all []finding.Finding
	for _, h := range run.Held {
		all = append(all, run.apart(h, where(h.Log, h.At))...)
	}
	if f, uneven := run.uneven(where(run.Log, 0)); uneven {
		all = append(all, f)
	}
	return all
}

// apart tells a written value that the log does not show.
func (run *Run) apart(h Held, places []finding.Place) []finding.Finding {
	if !h.HasWritten || h.Agrees {
		return nil
	}
	f := finding.Finding{
		Kind: finding.Contradiction, Rule: "run-and-log", Subject: run.Subject(), Places: places, Settle: "see which of the two is wrong: the sheet, the times of the run, or the log",
		Says: fmt.Sprintf("%s %s %s is written; between %s and %s the log has %s to %s %s, on average %s %s", h.Name, unit.Text(h.Written, h.Decimals), h.Sign, Clock(run.Window.From), Clock(run.Window.To),
			unit.Text(h.Least, h.Decimals), unit.Text(h.Most, h.Decimals), h.Sign, unit.Text(h.Mean, h.Decimals), h.Sign),
	}
	if h.Name == "engine speed" && h.Mean > 0 && math.Abs(h.Written/h.Mean/100-1) <= hundredWithin {
		f.Settle = `the log counts in hundreds: write unit = "100 rpm" for its column`
	}
	return []finding.Finding{f}
}

// uneven doubts a run during which speed or direction changed more than a steady run allows.
func (run *Run) uneven(places []finding.Place) (finding.Finding, bool) {
	w := run.Window
	if w == nil || run.Record.Left.Set {
		return finding.Finding{}, false
	}
	var why []string
	if limit := math.Max(SteadyKnots, SteadyPart*w.Speed.Mean); w.Derived == 0 && w.Speed.Has() && 4*w.Speed.SD() > limit {
		why = append(why, fmt.Sprintf("the speed strays by %s kn about its mean (standard deviation), more than a quarter of %s kn", unit.Text(w.Speed.SD(), 2), unit.Text(limit, 1)))
	}
	if lost := w.To - w.From - w.Seconds(); lost > 2*usualGap {
		why = append(why, fmt.Sprintf("the log has only %s of its %s", span(w.Seconds()), span(w.To-w.From)))
	}
	if w.Gaps > 0 {
		why = append(why, fmt.Sprintf("the log has %d gaps in it", w.Gaps))
	}
	if len(why) == 0 {
		return finding.Finding{}, false
	}
	return finding.Finding{
		Kind: finding.Doubt, Rule: "run-unsteady", Subject: run.Subject(), Places: places, Says: strings.Join(why, "; "),
		Settle: "take a steadier stretch of the log, or run again",
	}, true
}

// moveFindings tells manoeuvres that are not in the log they name.
func (r *Result) moveFindings() []finding.Finding {
	var all []finding.Finding
	for i := range r.Moves {
		m := &r.Moves[i]
		why := m.Why
		if why == "" && m.Window.Samples < fewestSamples {
			why = "the log has no samples between " + Clock(m.Window.From) + " and " + Clock(m.Window.To)
		}
		if why == "" {
			continue
		}
		m.Why = why
		all = append(all, finding.Finding{
			Kind: finding.Doubt, Rule: "move-not-in-log", Subject: "trial " + m.Trial.ID + " " + m.Kind + " " + m.ID, Says: "nothing is taken from the log: " + why,
			Settle: "write the log, and from when to when it lasted, as 09:14:00 in UTC", Places: []finding.Place{m.Trial.At, r.line(m.Log, 0)},
		})
	}
	return all
}
