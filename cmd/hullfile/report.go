package main

import (
	"fmt"
	"strings"

	"hullfile/engine"
	"hullfile/engine/finding"
)

// report prints what to do next, the standing and the findings of every hull, then those of the yard's own records.
func (s *screen) report(hulls []*engine.Dossier, yard []finding.Finding) {
	s.ahead(hulls)
	for _, h := range hulls {
		s.hull(h)
		s.howFar(h.Parts())
		if len(hulls) > 1 {
			step := h.Next()
			s.paragraph("  next: ", about(step.Name(), step.Says))
		}
		for _, kind := range finding.Kinds() {
			s.findings(kind, h.Findings)
		}
		s.assumptions(h.Assumptions)
		s.line("")
	}
	if len(yard) > 0 {
		s.head("The yard's own records")
		for _, kind := range finding.Kinds() {
			s.findings(kind, yard)
		}
		s.line("")
	}
	s.paragraph("", summary(hulls, yard))
}

// hull prints the name of a hull and how it stands.
func (s *screen) hull(h *engine.Dossier) {
	s.head("%s", strings.TrimSpace(h.Hull.Number+"  "+h.Hull.Title.V))
	n := tally(h.Checks)
	s.verdict("  ", h.Standing(), fmt.Sprintf(": of %s %d met, %d short, %d not shown",
		count(len(h.Checks), "check", "checks"), n[finding.Met], n[finding.Short], n[finding.NotShown]))
}

// tally counts the outcomes.
func tally(checks []finding.Check) map[finding.Standing]int {
	n := map[finding.Standing]int{}
	for _, c := range checks {
		n[c.Standing]++
	}
	return n
}

// findings prints those of one kind, each with its places and what would settle it.
func (s *screen) findings(kind finding.Kind, all []finding.Finding) {
	these := ofKind(kind, all)
	if len(these) == 0 {
		return
	}
	s.line("")
	s.head("  %s", plural(kind, len(these)))
	for _, f := range toldOnce(these) {
		says := about(f.Name(), f.Says)
		if f.times > 1 {
			says += fmt.Sprintf(" (%d times)", f.times)
		}
		s.paragraph("    - ", says)
		if len(f.Places) > 0 {
			s.paragraph("      at ", placesOf(f.Finding))
		}
		if f.Settle != "" {
			s.paragraph("      to settle: ", f.Settle)
		}
	}
}

// placesOf lists the record lines of a finding, each in the form that an editor opens.
func placesOf(f finding.Finding) string {
	var all []string
	for _, p := range f.Places {
		all = append(all, p.String())
	}
	return strings.Join(all, ", ")
}

func ofKind(kind finding.Kind, all []finding.Finding) []finding.Finding {
	var these []finding.Finding
	for _, f := range all {
		if f.Kind == kind {
			these = append(these, f)
		}
	}
	return these
}

// assumptions prints the values that nobody wrote down and that matter.
func (s *screen) assumptions(all []finding.Assumption) {
	if len(all) == 0 {
		return
	}
	s.line("")
	s.head("  %s", count(len(all), "assumption", "assumptions"))
	for _, a := range all {
		s.paragraph("    - ", about(a.Subject, a.Says))
		if a.Settle != "" {
			s.paragraph("      to settle: ", a.Settle)
		}
	}
}

// summary counts the findings of all hulls in one sentence.
func summary(hulls []*engine.Dossier, yard []finding.Finding) string {
	all := yard
	for _, h := range hulls {
		all = append(all[:len(all):len(all)], h.Findings...)
	}
	var parts []string
	for _, kind := range finding.Kinds() {
		parts = append(parts, plural(kind, len(ofKind(kind, all))))
	}
	return count(len(hulls), "hull", "hulls") + ": " + strings.Join(parts, ", ")
}

// plural gives "1 gap", "2 gaps", "2 contradictions".
func plural(kind finding.Kind, n int) string { return count(n, string(kind), string(kind)+"s") }

// brief prints how a hull stands and one line for each thing that is contradictory, short or missing.
func (s *screen) brief(h *engine.Dossier) {
	s.hull(h)
	for _, kind := range []finding.Kind{finding.Contradiction, finding.Shortfall, finding.Gap} {
		for _, f := range ofKind(kind, h.Findings) {
			s.paragraph("    "+label(kind)+" ", about(f.Name(), f.Says))
		}
	}
	if n := len(ofKind(finding.Doubt, h.Findings)); n > 0 {
		s.paragraph("    ", plural(finding.Doubt, n)+", told in the file")
	}
	s.line("")
}

// label is the word in front of a finding, all of one width.
func label(kind finding.Kind) string {
	switch kind {
	case finding.Contradiction:
		return "contradicts:"
	case finding.Shortfall:
		return "short:      "
	}
	return "missing:    "
}

// anythingWrong reports whether something is short or contradictory. Gaps and doubts are told but are not wrong.
func anythingWrong(hulls []*engine.Dossier, yard []finding.Finding) bool {
	for _, h := range hulls {
		if h.Standing() == finding.Short || wrong(h.Findings) {
			return true
		}
	}
	return wrong(yard)
}

func wrong(all []finding.Finding) bool {
	for _, f := range all {
		if f.Kind == finding.Contradiction || f.Kind == finding.Shortfall {
			return true
		}
	}
	return false
}
