package crosscheck

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// act is something that a person did on a day.
type act struct {
	subject, what string
	by            record.Val[string]
	day           record.Val[record.Date]
}

func acts(h *record.Hull) []act {
	all := []act{{"issue", "issued the file", h.Issue.By, h.Issue.Date}}
	for _, w := range h.Weighings {
		all = append(all, act{"weighing " + w.ID, "weighed the boat", w.By, w.Date})
	}
	for _, t := range h.Trials {
		all = append(all, act{"trial " + t.ID, "ran the trial", t.By, t.Date})
	}
	for _, l := range h.Looks {
		all = append(all, act{"look " + l.ID, "looked at the seams", l.By, l.Date})
	}
	for _, r := range h.Rides {
		all = append(all, act{"ride " + r.ID, "made the record", r.By, r.Date})
	}
	return all
}

// outOfRole finds people who did something before or after the days in which they were in their role.
func outOfRole(b *record.Builder, h *record.Hull) []finding.Finding {
	people := map[string]*record.Person{}
	for i := range b.People {
		people[b.People[i].ID] = &b.People[i]
	}
	var all []finding.Finding
	for _, a := range acts(h) {
		p, known := people[a.by.V]
		if !known || !a.by.Set || !a.day.Set {
			continue
		}
		settle := "correct the day or the person"
		if p.Since.Set && a.day.V.Before(p.Since.V) {
			all = append(all, contradiction("person-in-role", a.subject, settle, []finding.Place{a.by.At, a.day.At, p.Since.At},
				"%s %s on %s, but is in the role of %s only since %s", p.ID, a.what, a.day.V, p.Role.V, p.Since.V))
		}
		if p.Until.Set && p.Until.V.Before(a.day.V) {
			all = append(all, contradiction("person-in-role", a.subject, settle, []finding.Place{a.by.At, a.day.At, p.Until.At},
				"%s %s on %s, but was in the role of %s only until %s", p.ID, a.what, a.day.V, p.Role.V, p.Until.V))
		}
	}
	return all
}
