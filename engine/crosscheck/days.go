package crosscheck

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// event is something that happened to the boat on a day.
type event struct {
	subject string
	what    string
	day     record.Val[record.Date]
}

// events lists what a technical file can tell of, in the order of its contents.
func events(h *record.Hull) []event {
	all := []event{
		{"identity", "building began", h.Identity.KeelLaid},
		{"identity", "the boat was launched", h.Identity.Launched},
		{"identity", "the boat was handed over", h.Identity.Handed},
	}
	for _, w := range h.Weighings {
		all = append(all, event{"weighing " + w.ID, "the boat was weighed", w.Date})
	}
	for _, t := range h.Trials {
		all = append(all, event{"trial " + t.ID, "the trial was run", t.Date})
	}
	for _, l := range h.Looks {
		all = append(all, event{"look " + l.ID, "the seams were looked at", l.Date})
	}
	for _, r := range h.Rides {
		all = append(all, event{"ride " + r.ID, "the accelerations were recorded", r.Date})
	}
	for _, r := range h.Hours {
		all = append(all, event{"hours " + r.ID, "the hours were run", r.Date})
	}
	for _, d := range h.Documents {
		all = append(all, event{"document " + d.ID, "the document was made", d.Date})
	}
	return all
}

// afterIssue finds what the file tells of and happened after the day on which it was issued.
func afterIssue(h *record.Hull) []finding.Finding {
	issue := h.Issue.Date
	if !issue.Set {
		return nil
	}
	var all []finding.Finding
	for _, e := range events(h) {
		if e.day.Set && issue.V.Before(e.day.V) {
			all = append(all, contradiction("after-issue", e.subject, "correct one of the two days, or issue the file anew", []finding.Place{e.day.At, issue.At},
				"%s on %s, but this issue of the file is of %s", e.what, e.day.V, issue.V))
		}
	}
	return all
}

// outOfOrder finds what cannot come before what it needs: a weighing before building began, a trial before the launch.
func outOfOrder(h *record.Hull) []finding.Finding {
	var all []finding.Finding
	need := func(subject, what string, day record.Val[record.Date], first string, after record.Val[record.Date]) {
		if day.Set && after.Set && day.V.Before(after.V) {
			all = append(all, contradiction("days-in-order", subject, "correct one of the two days", []finding.Place{day.At, after.At},
				"%s on %s, but %s on %s", what, day.V, first, after.V))
		}
	}
	for _, w := range h.Weighings {
		need("weighing "+w.ID, "the boat was weighed", w.Date, "building began", h.Identity.KeelLaid)
	}
	for _, t := range h.Trials {
		need("trial "+t.ID, "the trial was run", t.Date, "building began", h.Identity.KeelLaid)
		need("trial "+t.ID, "the trial was run", t.Date, "the boat was launched", h.Identity.Launched)
	}
	return all
}
