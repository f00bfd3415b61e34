package crosscheck

import (
	"time"

	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// deed is something of the build record with its day.
type deed struct {
	subject string
	what    string // "was welded"
	day     record.Val[record.Date]
}

// deeds lists them in the order of the records.
func (b *build) deeds() []deed {
	var all []deed
	add := func(subject, what string, day record.Val[record.Date]) {
		if day.Set {
			all = append(all, deed{subject, what, day})
		}
	}
	h := b.Hull
	for i := range h.Parts {
		add("part "+h.Parts[i].ID, "was cut", h.Parts[i].Cut)
	}
	for i := range h.Welds {
		add("weld "+h.Welds[i].ID, "was made", h.Welds[i].Date)
	}
	for i := range h.Inspections {
		add("inspection "+h.Inspections[i].ID, "was made", h.Inspections[i].Date)
	}
	for i := range h.Nonconformities {
		add("nonconformity "+h.Nonconformities[i].ID, "was raised", h.Nonconformities[i].Raised)
	}
	for i := range h.Repairs {
		add("repair "+h.Repairs[i].ID, "was made", h.Repairs[i].Date)
	}
	for i := range h.LeakTests {
		add("leak test "+h.LeakTests[i].ID, "was made", h.LeakTests[i].Date)
	}
	for i := range h.HoldPoints {
		add("hold point "+h.HoldPoints[i].ID, "was released", h.HoldPoints[i].Released)
	}
	return all
}

// farYears is how far from the building of the boat a day is in the wrong century or year, rather than too early or late.
const farYears = 10

// wrongCentury finds days that are years away from the building of the boat.
func wrongCentury(b *build) []told {
	laid := b.Hull.Identity.KeelLaid
	var all []told
	for _, d := range b.deeds() {
		if laid.Set && far(d.day.V, laid.V) {
			all = append(all, tell(d.subject, "correct the year", at(d.day.At, laid.At), "%s %s on %s, but the keel was laid on %s", d.subject, d.what, d.day.V, laid.V))
		}
	}
	return all
}

func far(a, b record.Date) bool { return a.Year-b.Year >= farYears || b.Year-a.Year >= farYears }

// beforeKeel finds welding, inspections and tests before the keel was laid. Parts are cut before that.
func beforeKeel(b *build) []told {
	laid := b.Hull.Identity.KeelLaid
	var all []told
	for _, d := range b.deeds() {
		if laid.Set && d.day.V.Before(laid.V) && !far(d.day.V, laid.V) && d.what != "was cut" {
			all = append(all, tell(d.subject, "correct one of the two days", at(d.day.At, laid.At), "%s %s on %s, before the keel was laid on %s", d.subject, d.what, d.day.V, laid.V))
		}
	}
	return all
}

// afterLaunch finds cutting and welding after the boat was launched.
func afterLaunch(b *build) []told {
	launched := b.Hull.Identity.Launched
	var all []told
	for _, d := range b.deeds() {
		if launched.Set && launched.V.Before(d.day.V) && !far(d.day.V, launched.V) && (d.what == "was cut" || startsWith(d.subject, "weld ")) {
			all = append(all, tell(d.subject, "correct one of the two days, or say what was welded in the boat afloat or hauled out", at(d.day.At, launched.At),
				"%s %s on %s, after the launch on %s", d.subject, d.what, d.day.V, launched.V))
		}
	}
	return all
}

func startsWith(s, start string) bool { return len(s) >= len(start) && s[:len(start)] == start }

// atWeekends finds days on which a yard is usually closed.
func atWeekends(b *build) []told {
	var open gathered
	for _, d := range b.deeds() {
		if day := seam.Weekday(d.day.V); day == time.Saturday || day == time.Sunday {
			open.add(d.subject+" ("+d.day.V.String()+")", d.day.At)
		}
	}
	return open.tell("hull", "correct the days, or say that the yard worked", "a Saturday or Sunday is the day of %d of the records: %s")
}

// afterTheIssue finds what is dated after the day on which this file was issued.
func afterTheIssue(b *build) []told {
	issue := b.Hull.Issue.Date
	var all []told
	for _, d := range b.deeds() {
		if issue.Set && issue.V.Before(d.day.V) && !far(d.day.V, issue.V) {
			all = append(all, tell(d.subject, "correct one of the two days, or issue the file anew", at(d.day.At, issue.At), "%s %s on %s, but this issue of the file is of %s", d.subject, d.what, d.day.V, issue.V))
		}
	}
	return all
}
