package record

import "hullfile/engine/finding"

// apart finds days in different records of one hull that cannot both be true. Two dates in one table that stand in the
// wrong order are a fault and keep the file from being made; these are left in, because either record may be the wrong
// one and the reader of the file must see it.
func apart(h *Hull) []YardDoubt {
	a := apartness{issue: h.Issue.Date, launched: h.Identity.Launched}
	for i := range h.Weighings {
		w := &h.Weighings[i]
		a.issued("weighing "+w.ID, w.Date)
	}
	for i := range h.Trials {
		t := &h.Trials[i]
		a.issued("trial "+t.ID, t.Date)
		a.afloat("trial "+t.ID, t.Date)
	}
	for i := range h.Documents {
		d := &h.Documents[i]
		a.issued("document "+d.ID, d.Date)
	}
	var all []YardDoubt
	for _, f := range a.found {
		all = append(all, YardDoubt{Hull: h.Number, Finding: f})
	}
	return all
}

type apartness struct {
	issue, launched Val[Date]
	found           []finding.Finding
}

// issued: what is in an issue of the file was there when it was issued.
func (a *apartness) issued(subject string, d Val[Date]) {
	if d.Set && a.issue.Set && a.issue.V.Before(d.V) {
		a.add("date-after-issue", subject, subject+" is dated "+d.V.String()+", after the issue of this file on "+a.issue.V.String(),
			"correct the date, or the date of the issue", d, a.issue)
	}
}

// afloat: a boat that is on trial has been launched.
func (a *apartness) afloat(subject string, d Val[Date]) {
	if d.Set && a.launched.Set && d.V.Before(a.launched.V) {
		a.add("trial-before-launch", subject, subject+" is dated "+d.V.String()+", before the launch on "+a.launched.V.String(),
			"correct one of the two days", d, a.launched)
	}
}

func (a *apartness) add(rule, subject, says, settle string, d, other Val[Date]) {
	a.found = append(a.found, finding.Finding{Kind: finding.Contradiction, Rule: rule, Subject: subject, Says: says, Settle: settle,
		Places: []finding.Place{d.At, other.At}})
}
