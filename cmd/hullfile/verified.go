package main

import (
	"fmt"
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
	"hullfile/site/seal"
)

// mostTroubles is the number of files that are told one by one; --json tells all.
const mostTroubles = 40

// verified prints what was found out about a technical file: the checks, and below them what is wrong with which file
// and what the seals say.
func (s *screen) verified(r *seal.Report) {
	s.head("%s", strings.Join(without("hull "+r.Hull, issueWords(r.Issue, r.Issued)), ", "))
	for _, c := range r.Checks {
		s.verdict("  "+c.Subject+": ", c.Standing, "")
		s.paragraph("    ", c.Says)
		if c.Standing != finding.Met && c.Settle != "" {
			s.paragraph("    to settle: ", c.Settle)
		}
	}
	s.troubles(r.Files.Troubles)
	for i := range r.Seals {
		s.seal(&r.Seals[i])
	}
	s.line("")
	s.line("root        %s", r.Root)
	s.line("SHA256SUMS  %s", r.Sums)
}

func issueWords(number int, day string) string {
	if number == 0 {
		return "no issue recorded"
	}
	if day == "" {
		return fmt.Sprintf("issue %d", number)
	}
	return fmt.Sprintf("issue %d of %s", number, unit.Day(day))
}

func (s *screen) troubles(all []seal.Trouble) {
	if len(all) == 0 {
		return
	}
	s.line("")
	s.head("  Files that are not as listed")
	for i, t := range all {
		if i == mostTroubles {
			s.paragraph("    ", fmt.Sprintf("and %d more; --json lists all", len(all)-i))
			break
		}
		s.paragraph("    - ", t.Kind+" "+pathShown(t.Path)+": "+t.Says)
	}
}

// pathShown quotes a path that holds anything but plain characters.
func pathShown(path string) string {
	if quoted := strconv.Quote(path); quoted != `"`+path+`"` || strings.ContainsAny(path, " ") {
		return quoted
	}
	return path
}

// seal prints what a seal says, in the words of whoever signed it.
func (s *screen) seal(one *seal.Seal) {
	st := &one.Statement
	if st.Name == "" {
		return // the check has told that it could not be read
	}
	s.line("")
	s.head("  %s", one.Name)
	s.paragraph("    ", fmt.Sprintf("%s, %s, %s, key %s", st.Name, st.Role, unit.Day(st.Date), st.Key))
	for line := range strings.SplitSeq(st.Says, "\n") {
		s.paragraph("    | ", line)
	}
}
