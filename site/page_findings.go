package site

import (
	"html/template"

	"hullfile/engine/finding"
)

// FindingsPage tells everything that a reader must be told, by kind, then what was assumed, then every check.
type FindingsPage struct {
	Caution     template.HTML
	Verdict     Verdict
	Groups      []FindingGroup
	Assumptions []AssumptionRow
	Checks      []CheckRow
}

// FindingGroup is all findings of one kind.
type FindingGroup struct {
	Kind Kind
	Rows []FindingRow
}

// AssumptionRow is a value that nobody wrote down and that matters.
type AssumptionRow struct {
	Subject Link
	Says    string
	Settle  string
	Basis   Basis
}

func (l *leaf) findingsPage() (FindingsPage, error) {
	p := FindingsPage{Caution: l.press.notes["findings"], Verdict: l.verdict(), Checks: grouped(l.checkRows(l.dossier.Checks))}
	for i := range p.Verdict.Counts {
		p.Verdict.Counts[i].Href = "#" + p.Verdict.Counts[i].Kind.Word
	}
	n := 0
	for _, k := range finding.Kinds() {
		group := FindingGroup{Kind: kind(k)}
		for _, f := range l.findings {
			if f.Kind == k {
				n++
				group.Rows = append(group.Rows, l.findingRow(f, n))
			}
		}
		if len(group.Rows) > 0 {
			p.Groups = append(p.Groups, group)
		}
	}
	for _, a := range l.dossier.Assumptions {
		p.Assumptions = append(p.Assumptions, AssumptionRow{l.subject(a.Subject), closed(capital(a.Says)), closed(capital(a.Settle)), basis(a.Basis)})
	}
	return p, nil
}
