package crosscheck

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/inspection"
)

// accepted reports whether an imperfection was left as it is: so the inspector said, or the inspection was accepted and
// nothing else was said of it.
func accepted(j *inspection.Judged) bool {
	return j.Record.Judged.V == "within" || !j.Record.Judged.Set && j.Look != nil && j.Look.Result.V == "accepted"
}

// beyondLimit finds imperfections that were accepted and are beyond the limit of their level.
func beyondLimit(b *build) []told {
	return b.judged(func(j *inspection.Judged) bool {
		return j.Verdict.Standing == finding.Short && accepted(j) && !isCrack(j.Record.Number.V)
	}, "measure again, or raise a nonconformity", "imperfection %s was accepted, but is beyond its limit: %s")
}

// crackAccepted finds cracks that were accepted.
func crackAccepted(b *build) []told {
	return b.judged(func(j *inspection.Judged) bool {
		return isCrack(j.Record.Number.V) && accepted(j) && j.Verdict.Standing != finding.Met
	},
		"take the crack out and inspect again", "imperfection %s is a crack and was accepted; %s")
}

// withinLimit finds imperfections that an inspector called beyond and that their level leaves.
func withinLimit(b *build) []told {
	return b.judged(func(j *inspection.Judged) bool {
		return j.Verdict.Standing == finding.Met && j.Record.Judged.V == "beyond"
	},
		"find out by which level it was judged", "imperfection %s was called beyond the limit, but %s")
}

// isCrack reports a number of the group of cracks (ISO 6520-1).
func isCrack(number string) bool { return strings.HasPrefix(number, "10") && len(number) >= 3 }

func (b *build) judged(is func(*inspection.Judged) bool, settle, format string) []told {
	if b.books.Inspections == nil {
		return nil
	}
	var all []told
	for i := range b.books.Inspections.Judged {
		j := &b.books.Inspections.Judged[i]
		if !is(j) {
			continue
		}
		places := at(j.Record.At, j.Record.Size.At)
		if j.Look != nil {
			places = append(places, j.Look.Result.At, j.Look.Level.At)
		}
		all = append(all, tell("imperfection "+j.Record.ID, settle, places, format, j.Record.ID, j.Verdict.Says))
	}
	return all
}
