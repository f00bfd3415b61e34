// Package crosscheck holds the records of a hull against each other and against those of the yard and of the other
// hulls: what two people wrote on two days and cannot both be true. Each file asks one question.
//
//   - Question: which two entries cannot both be true?
//   - In: the yard, one hull, which papers are there; for the build record also the map of its seams.
//   - Out: findings, each with both places; checks of what must agree.
//   - Source: own practice; a figure taken from a standard names it where it stands.
package crosscheck

import (
	"fmt"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Result is what the records of one hull say of each other.
type Result struct {
	Checks   []finding.Check
	Findings []finding.Finding
}

// Assess asks all questions about one hull of a yard. papers says which of its documents are there.
func Assess(y *record.Yard, h *record.Hull, papers *document.Result) Result {
	var r Result
	r.Checks = append(r.Checks, identified(h)...)
	r.Checks = append(r.Checks, issued(h)...)
	r.Checks = append(r.Checks, weighedWith(&y.Builder, h)...)
	r.Checks = append(r.Checks, signedSheets(h, papers)...)
	r.Findings = append(r.Findings, sameHIN(y, h)...)
	r.Findings = append(r.Findings, stateAgrees(h)...)
	r.Findings = append(r.Findings, issueOrder(h)...)
	r.Findings = append(r.Findings, afterIssue(h)...)
	r.Findings = append(r.Findings, outOfOrder(h)...)
	r.Findings = append(r.Findings, outOfRole(&y.Builder, h)...)
	r.Findings = append(r.Findings, sizes(h)...)
	r.Findings = append(r.Findings, trialMass(h)...)
	return r
}

// contradiction makes a finding that two records cannot both be true. Places that were not written are left out.
func contradiction(rule, subject, settle string, places []finding.Place, format string, args ...any) finding.Finding {
	var known []finding.Place
	for _, p := range places {
		if p.Known() {
			known = append(known, p)
		}
	}
	return finding.Finding{
		Kind: finding.Contradiction, Rule: rule, Subject: subject, Settle: settle, Places: known,
		Says: fmt.Sprintf(format, args...),
	}
}

// done reports whether the boat is finished, so that its papers must be complete. A hull that does not say counts as
// finished: a file that is handed to somebody must not be lenient because a word is missing.
func done(h *record.Hull) bool {
	return h.Identity.State.V != "design" && h.Identity.State.V != "in build"
}
