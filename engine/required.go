package engine

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/requirement"
)

// required holds everything that was collected against the lists of requirements that the hull must answer. It comes last,
// because it reads the checks and findings of all trades, and adds its own to them.
func (d *Dossier) required(ref *Reference) {
	if ref.Requirements == nil {
		return
	}
	d.Requirements = ref.Requirements.Assess(requirement.Input{Hull: d.Hull, Builder: d.Builder, Checks: d.Checks, Findings: d.Findings, Documents: &d.Documents})
	d.Checks = slices.Concat(d.Checks, d.Requirements.Checks)
	d.Findings = slices.Concat(d.Findings, d.Requirements.Findings, finding.Findings(d.Requirements.Checks))
	finding.Sort(d.Findings)
}
