package crosscheck

import (
	"slices"
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// issueOrder holds the issues of a file against each other: numbers and days go up, the present issue is the last, and no
// number is left out.
func issueOrder(h *record.Hull) []finding.Finding {
	var all []finding.Finding
	say := func(places []finding.Place, format string, args ...any) {
		all = append(all, contradiction("issue-order", "issue", "hold the list of issues against the files that were handed over", places, format, args...))
	}
	past, now := h.Issue.Earlier, &h.Issue
	for i := range past {
		p := &past[i]
		if i > 0 {
			before := &past[i-1]
			if p.Number.V <= before.Number.V {
				say([]finding.Place{before.Number.At, p.Number.At}, "issue %d is listed after issue %d", p.Number.V, before.Number.V)
			}
			if p.Date.V.Before(before.Date.V) {
				say([]finding.Place{before.Date.At, p.Date.At}, "issue %d is of %s, before issue %d of %s", p.Number.V, p.Date.V, before.Number.V, before.Date.V)
			}
		}
		if now.Number.Set && p.Number.V >= now.Number.V {
			say([]finding.Place{p.Number.At, now.Number.At}, "issue %d is listed as an earlier one, and the file is issue %d", p.Number.V, now.Number.V)
		}
		if now.Date.Set && now.Date.V.Before(p.Date.V) {
			say([]finding.Place{p.Date.At, now.Date.At}, "the file is issued on %s, before its earlier issue %d of %s", now.Date.V, p.Number.V, p.Date.V)
		}
	}
	return append(all, issuesMissing(h)...)
}

// issuesMissing tells of numbers that no issue has: what stood in them nobody can ask for.
func issuesMissing(h *record.Hull) []finding.Finding {
	missing := ""
	for n := 1; n < h.Issue.Number.V; n++ {
		if !slices.ContainsFunc(h.Issue.Earlier, func(p record.PastIssue) bool { return p.Number.V == n }) {
			missing += ", " + strconv.Itoa(n)
		}
	}
	if missing == "" {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Gap, Rule: "issue-history", Subject: "issue", Says: "the file is issue " + strconv.Itoa(h.Issue.Number.V) + ", and of these earlier issues day and reason are not on record: " + missing[2:],
		Settle: "write them under [[issue.earlier]]", Places: []finding.Place{h.Issue.Number.At},
	}}
}
