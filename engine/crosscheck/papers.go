package crosscheck

import (
	"fmt"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// signedSheets checks that a signed sheet stands behind every weighing and every trial, and that its file is there.
func signedSheets(h *record.Hull, papers *document.Result) []finding.Check {
	there := map[string]bool{}
	for i := range papers.Documents {
		d := &papers.Documents[i]
		there[d.Record.ID] = d.Present && d.Matches && d.Bytes > 0
	}
	var all []finding.Check
	for _, w := range h.Weighings {
		all = append(all, sheet("weighing", w.Entry, w.Document, there))
	}
	for _, t := range h.Trials {
		all = append(all, sheet("trial", t.Entry, t.Document, there))
	}
	return all
}

// sheet checks one; kind is "weighing" or "trial".
func sheet(kind string, of record.Entry, named record.Val[string], there map[string]bool) finding.Check {
	key := fmt.Sprintf("%s.%s.document", kind, of.ID)
	c := finding.Check{
		Rule: kind + "-sheet", Subject: kind + " " + of.ID, Standing: finding.NotShown,
		Asks:  "a signed sheet stands behind the figures",
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{of.At},
	}
	switch {
	case !named.Set:
		c.Says, c.Missing = "no signed sheet is named", []string{key}
		c.Settle = "put the signed sheet into the documents folder and name it under " + key
	case !there[named.V]:
		c.Places = []finding.Place{named.At}
		c.Says = fmt.Sprintf("document %s is named, but its file is not there or not the one on record", named.V)
		c.Settle = "put the signed sheet into the documents folder"
	default:
		c.Places = []finding.Place{named.At}
		c.Standing, c.Says = finding.Met, fmt.Sprintf("document %s is named and there", named.V)
	}
	return c
}
