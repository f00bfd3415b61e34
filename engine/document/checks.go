package document

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// checks of one document: that it is there, that it is what was put on record, and that it was valid when it was needed.
func checks(d *Document, h *record.Hull) []finding.Check {
	all := []finding.Check{present(d)}
	if d.Present && d.Record.SHA256.Set {
		all = append(all, unchanged(d))
	}
	if d.Record.Until.Set {
		all = append(all, valid(d, neededOn(h, d.Record.ID)))
	}
	return all
}

func check(d *Document, rule, asks string) finding.Check {
	return finding.Check{
		Rule: rule, Subject: "document " + d.Record.ID, Asks: asks, Standing: finding.NotShown,
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{d.Record.File.At},
	}
}

func present(d *Document) finding.Check {
	c := check(d, "document-present", "the document is in the documents folder")
	name := visible(d.Record.File.V)
	switch {
	case !d.Present:
		c.Says = fmt.Sprintf("%s: %s", name, d.Why)
		c.Settle = "put the file into the documents folder beside the record, under the name that the record has"
	case d.Bytes == 0:
		c.Says = name + " is empty"
		c.Settle = "put the whole file there"
	default:
		c.Standing = finding.Met
		c.Says = name + " is there"
	}
	return c
}

func unchanged(d *Document) finding.Check {
	c := check(d, "document-unchanged", "the file is the one that was put on record")
	c.Places = append(c.Places, d.Record.SHA256.At)
	c.Needed, c.Has = d.Record.SHA256.V, d.SHA256
	if d.Matches {
		c.Standing = finding.Met
		c.Says = "the hash is the one on record"
		return c
	}
	c.Standing = finding.Short
	c.Says = fmt.Sprintf("%s is not the file that was put on record: its hash begins %.12s, the one on record %.12s", visible(d.Record.File.V), d.SHA256, d.Record.SHA256.V)
	c.Settle = "put the file on record back, or put the new one on record with a new date and hash"
	return c
}

// valid holds the last day of a document against the days on which it was needed.
func valid(d *Document, days []record.Val[record.Date]) finding.Check {
	c := check(d, "document-valid", "the document was valid when it was needed")
	until := d.Record.Until
	c.Places = append(c.Places, until.At)
	c.Has = "until " + until.V.String()
	if len(days) == 0 {
		c.Says = fmt.Sprintf("valid until %s; neither a trial, a weighing nor an issue gives the day on which it was needed", until.V)
		c.Missing, c.Settle = []string{"issue.date"}, "write issue.date"
		return c
	}
	last := days[0]
	for _, day := range days {
		if last.V.Before(day.V) {
			last = day
		}
	}
	c.Places = append(c.Places, last.At)
	c.Needed = "on " + last.V.String()
	if until.V.Before(last.V) {
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("valid until %s, needed on %s", until.V, last.V)
		c.Settle = "put the document that was valid on that day on record"
		return c
	}
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("valid until %s, needed on %s", until.V, last.V)
	return c
}

// findings of one document that are no shortfall and no gap: the hash and the kind of the file contradict the record.
// The first has the rule and subject of its check and stands in for the shortfall.
func findings(d *Document) []finding.Finding {
	var all []finding.Finding
	subject := "document " + d.Record.ID
	if d.Present && !d.Matches {
		c := unchanged(d)
		all = append(all, finding.Finding{Kind: finding.Contradiction, Rule: c.Rule, Subject: subject, Says: c.Says, Settle: c.Settle, Places: c.Places})
	}
	if want := promised(d.Record.File.V); d.Present && d.Bytes > 0 && want != "" && want != d.Type {
		all = append(all, finding.Finding{
			Kind: finding.Contradiction, Rule: "document-kind", Subject: subject,
			Says:   fmt.Sprintf("%s should be %s by its name; by its first bytes it is %s", visible(d.Record.File.V), want, kindWords(d.Type)),
			Settle: "put the right file there, or give it its right name", Places: []finding.Place{d.Record.File.At},
		})
	}
	if d.Path == "" {
		all = append(all, finding.Finding{
			Kind: finding.Contradiction, Rule: "document-present", Subject: subject,
			Says:   fmt.Sprintf("%s is refused: %s", visible(d.Record.File.V), d.Why),
			Settle: "put the file itself into the documents folder beside the record and write its plain name", Places: []finding.Place{d.Record.File.At},
		})
	}
	return all
}

func kindWords(kind string) string {
	if kind == kindUnknown {
		return "of no known kind"
	}
	return kind
}

// withoutHash doubts in one sentence all documents whose change nobody would notice.
func withoutHash(all []Document) []finding.Finding {
	var first *Document
	count := 0
	for i := range all {
		if d := &all[i]; d.Present && !d.Record.SHA256.Set {
			if first == nil {
				first = d
			}
			count++
		}
	}
	if count == 0 {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Doubt, Rule: "document-hash", Subject: "documents",
		Says:   fmt.Sprintf("%d of %d documents were put on record without a hash; a change before this issue would not be noticed", count, len(all)),
		Settle: "write sha256 when a document is put on record", Places: []finding.Place{first.Record.At},
	}}
}
