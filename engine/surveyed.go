package engine

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/survey"
)

// surveyed makes the survey sheet from all that was collected, holds its readings against the file, and adds what follows.
func (d *Dossier) surveyed() {
	d.Survey = survey.Assess(survey.Input{
		Hull: d.Hull, Builder: d.Builder, Structure: &d.Structure, Details: &d.Details, Stock: &d.Stock, Seams: d.Seams,
		Checks: d.Checks, Findings: d.Findings, Assumptions: d.Assumptions,
	})
	if len(d.Survey.Checks)+len(d.Survey.Findings) == 0 {
		return
	}
	d.Checks = slices.Concat(d.Checks, d.Survey.Checks)
	d.Findings = slices.Concat(d.Findings, d.Survey.Findings, notTold(finding.Findings(d.Survey.Checks), d.Survey.Findings))
	finding.Sort(d.Findings)
}
