package document

import "hullfile/engine/record"

// usedBy lists for every document the records that name it, as subjects: "panel B3", "weighing W1".
func usedBy(h *record.Hull) map[string][]string {
	used := map[string][]string{}
	add := func(v record.Val[string], subject string) {
		if v.Set {
			used[v.V] = append(used[v.V], subject)
		}
	}
	for _, p := range h.Plated() {
		add(p.Document, p.Kind+" "+p.ID)
	}
	for _, w := range h.Weights {
		add(w.Document, "weight "+w.ID)
	}
	for _, w := range h.Weighings {
		add(w.Document, "weighing "+w.ID)
	}
	for _, t := range h.Trials {
		add(t.Document, "trial "+t.ID)
	}
	for _, r := range h.Rides {
		add(r.Document, "ride "+r.ID)
	}
	for _, l := range h.Looks {
		add(l.Document, "look "+l.ID)
	}
	for i := range h.Welds {
		add(h.Welds[i].Photo, "weld "+h.Welds[i].ID)
	}
	for i := range h.Inspections {
		add(h.Inspections[i].Document, "inspection "+h.Inspections[i].ID)
	}
	for i := range h.Imperfections {
		add(h.Imperfections[i].Photo, "imperfection "+h.Imperfections[i].ID)
	}
	for i := range h.Nonconformities {
		add(h.Nonconformities[i].Document, "nonconformity "+h.Nonconformities[i].ID)
	}
	for i := range h.LeakTests {
		add(h.LeakTests[i].Document, "leak test "+h.LeakTests[i].ID)
	}
	for i := range h.HoldPoints {
		add(h.HoldPoints[i].Document, "hold point "+h.HoldPoints[i].ID)
	}
	return used
}

// neededOn gives the days on which a document had to be valid: those of the trials and weighings that name it, and
// where there are none the day of the issue.
func neededOn(h *record.Hull, id string) []record.Val[record.Date] {
	var days []record.Val[record.Date]
	add := func(names record.Val[string], day record.Val[record.Date]) {
		if names.Set && names.V == id && day.Set {
			days = append(days, day)
		}
	}
	for _, t := range h.Trials {
		add(t.Document, t.Date)
	}
	for _, w := range h.Weighings {
		add(w.Document, w.Date)
	}
	if len(days) == 0 && h.Issue.Date.Set {
		days = append(days, h.Issue.Date)
	}
	return days
}
