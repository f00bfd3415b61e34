package trial

import (
	"hullfile/engine/calibration"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Assess reduces every trial of the hull. b gives the instruments; without it their calibration is not shown.
//
// The runs of a trial are grouped by setting. Those of one setting, in the order in which they were made, give the mean
// of means where each is opposite to the one before it; a setting that was run one way gives no mean, and nothing is
// derived from its speed. A run that the record leaves out is shown and not used.
func Assess(h *record.Hull, b *record.Builder) Result {
	var r Result
	for i := range h.Trials {
		t := reduce(&h.Trials[i], &h.Boat)
		r.Trials = append(r.Trials, t)
		r.Checks = append(r.Checks, checks(&t, b)...)
		r.Findings = append(r.Findings, findings(&t, &h.Boat)...)
		r.Assumptions = append(r.Assumptions, assumptions(&t)...)
	}
	r.Compared = compare(r.Trials)
	r.Findings = append(r.Findings, repeats(r.Trials, r.Compared)...)
	if h.Identity.State.V == "design" && len(r.Trials) == 0 {
		return r
	}
	r.Checks = append(r.Checks, speedReached(r.Trials, &h.Boat))
	r.Findings = append(r.Findings, slowerThanStated(r.Trials, &h.Boat)...)
	return r
}

// reduce does one trial.
func reduce(rec *record.Trial, boat *record.Boat) Trial {
	t := Trial{Record: rec}
	t.fuelAboard(boat)
	t.Planing = planingFrom(boat)
	t.Settings = settings(rec)
	for i := range t.Settings {
		t.Settings[i].derive(&t)
	}
	t.Top = t.fastest()
	t.Best, t.BestWhy = t.mostEconomical()
	return t
}

// fastest gives the index of the setting with the greatest mean of means, -1 if no setting has one.
func (t *Trial) fastest() int {
	top := -1
	for i, s := range t.Settings {
		if s.Speed.Has && (top < 0 || s.Speed.Value > t.Settings[top].Speed.Value) {
			top = i
		}
	}
	return top
}

// checks of one trial.
func checks(t *Trial, b *record.Builder) []finding.Check {
	all := []finding.Check{
		particulars(t.Record),
		calibration.Check(b, calibration.Use{
			Subject: t.subject(), Key: t.key("instrument"), Instrument: t.Record.Instrument, Day: t.Record.Date,
		}),
	}
	if t.burns() {
		all = append(all, rangeStated(t))
	}
	return all
}

func (t *Trial) subject() string { return "trial " + t.Record.ID }

// key gives the record key of a value of this trial, for what is missing.
func (t *Trial) key(name string) string { return "trial." + t.Record.ID + "." + name }
