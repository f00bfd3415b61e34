package site

import (
	"slices"
	"strconv"
	"strings"

	"hullfile/engine/finding"
)

// Tally counts checks by their outcome.
type Tally struct {
	Checks   int
	Met      int
	Short    int
	NotShown int
	Standing Standing
}

func tally(checks []finding.Check) Tally {
	t := Tally{Checks: len(checks)}
	for _, c := range checks {
		switch c.Standing {
		case finding.Met:
			t.Met++
		case finding.Short:
			t.Short++
		default:
			t.NotShown++
		}
	}
	t.Standing = standing(finding.Worst(standingsIn(checks)...))
	return t
}

// tallyAt counts the checks of a page, of which the standing is never better than the findings that it tells leave it.
func (l *leaf) tallyAt(path string, checks []finding.Check) Tally {
	t := tally(checks)
	t.Standing = l.leftAt(path, standingsIn(checks))
	return t
}

func (l *leaf) leftAt(path string, all []finding.Standing) Standing {
	return standing(finding.Worst(slices.Concat(all, l.leaves[l.sectionOf(path)])...))
}

// leftOn is the standing of one subject, by its checks and by what is found about it.
func (l *leaf) leftOn(subject string, checks []finding.Check) Standing {
	all := standingsIn(checks)
	for _, f := range l.dossier.Findings {
		if f.Subject == subject {
			all = append(all, f.Kind.Standing())
		}
	}
	return standing(finding.Worst(all...))
}

func standingsIn(checks []finding.Check) []finding.Standing {
	all := make([]finding.Standing, len(checks))
	for i, c := range checks {
		all[i] = c.Standing
	}
	return all
}

// otherChecks gives the checks that belong to no discipline with a page of its own: those of the boat as a whole, of its
// lines, and of the records held against each other.
func (b *book) otherChecks() []finding.Check {
	var out []finding.Check
	for _, c := range b.dossier.Checks {
		if b.rulePage[c.Rule] == "" {
			out = append(out, c)
		}
	}
	return out
}

// checksOf gives the checks about one subject, or about subjects that begin with it.
func checksOf(checks []finding.Check, subject string) []finding.Check {
	var out []finding.Check
	for _, c := range checks {
		if c.Subject == subject {
			out = append(out, c)
		}
	}
	return out
}

// counts gives the findings by kind, in the order in which they are told, with a way to each group.
func (l *leaf) counts() []Count {
	n := tellKinds(l.findings)
	var out []Count
	for _, k := range finding.Kinds() {
		if n[k] > 0 {
			out = append(out, Count{kind(k), n[k], l.to(findingsPath, string(k))})
		}
	}
	return out
}

func tellKinds(all []finding.Finding) map[finding.Kind]int {
	out := map[finding.Kind]int{}
	for _, f := range all {
		out[f.Kind]++
	}
	return out
}

// FindingRow is one finding as a page shows it.
type FindingRow struct {
	ID      string
	No      string
	Kind    Kind
	Subject string
	Says    Prose
	Places  []Link
	Settle  string
	Working Link
}

func (l *leaf) findingRow(f finding.Finding, n int) FindingRow {
	row := FindingRow{Kind: kind(f.Kind), Subject: unsaid(subjectWords(f.Name()), f.Says), Says: Prose(closed(f.Says)), Places: l.places(f.Places), Settle: closed(capital(f.Settle)), Working: l.about(f.Rule, f.Subject, f.Name())}
	if row.Subject == "" {
		row.Says = Prose(capital(string(row.Says)))
	}
	if n > 0 {
		row.No = strconv.Itoa(n)
		row.ID = "f" + row.No
	}
	return row
}

// subjectWords names what a finding is about; the boat as a whole needs no name.
func subjectWords(subject string) string {
	if subject == "boat" || subject == "weights" || subject == "documents" {
		return ""
	}
	return capital(spoken(subject))
}

// unsaid gives the subject that a sentence needs before it: none where the sentence begins with it.
func unsaid(subject, says string) string {
	rest, begins := strings.CutPrefix(capital(says), subject)
	if begins && (rest == "" || strings.ContainsAny(rest[:1], " :,")) {
		return ""
	}
	return subject
}

// spoken gives a subject as a person would say it: "heel_test H1" is heel test H1. Keys stay as they were written.
func spoken(subject string) string {
	word, key, found := strings.Cut(subject, " ")
	if !found {
		return subject
	}
	return strings.ReplaceAll(word, "_", " ") + " " + key
}

// findingsHere gives the findings that belong on this page, or at one anchor of it.
func (l *leaf) findingsHere(anchor string) []FindingRow {
	return l.findingsBeside(l.toldAt[spot{l.at.path, anchor}])
}

// findingsOn gives the findings that belong on this page, at whatever place of it.
func (l *leaf) findingsOn() []FindingRow { return l.findingsBeside(l.toldOn[l.at.path]) }

// findingsAmong gives the findings that are shown on this page at any of the anchors, in the order of the file.
func (l *leaf) findingsAmong(anchors []string) []FindingRow {
	var all []int
	for _, anchor := range anchors {
		all = append(all, l.toldAt[spot{l.at.path, anchor}]...)
	}
	slices.Sort(all)
	return l.findingsBeside(slices.Compact(all))
}

// findingsBeside gives findings, by their place in the order in which they are told, as they stand beside what they are about.
func (l *leaf) findingsBeside(all []int) []FindingRow {
	var out []FindingRow
	for _, i := range all {
		row := l.findingRow(l.findings[i], i+1)
		row.ID, row.Working = "", Link{}
		out = append(out, row)
	}
	return out
}

// CheckRow is one requirement held against what is there.
type CheckRow struct {
	Head     CheckHead // above the first of several that ask the same
	Subject  Link
	Asks     string // empty where it stands above
	Needed   string
	Has      string
	Standing Standing
	Says     Prose
	Basis    Basis
	Source   string
	Places   []Link
	Missing  []Lack
	Working  Link // where it is worked out, on the same page
}

func (l *leaf) checkRows(checks []finding.Check) []CheckRow {
	out := make([]CheckRow, 0, len(checks))
	for _, c := range checks {
		out = append(out, CheckRow{
			Subject: l.about(c.Rule, c.Subject, c.Name()), Asks: c.Asks, Needed: shortHash(c.Needed), Has: shortHash(c.Has), Standing: standing(c.Standing), Says: Prose(closed(capital(c.Says))),
			Basis: basis(c.Basis), Source: c.Source, Places: l.places(c.Places), Missing: missingKeys(c.Missing),
		})
	}
	return out
}
