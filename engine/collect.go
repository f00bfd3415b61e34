package engine

import (
	"sync"

	"fmt"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/proof"
	"hullfile/engine/record"
)

// collect brings checks, findings and assumptions of all disciplines together, in the order of the contents.
//
// Every check that is not met is a finding, and a discipline tells further findings of its own. Where one of these has
// the rule and the subject of a check and is at least as grave, it stands in for the finding that the check would give:
// so a weighing that does not agree is told once, as a contradiction, and not again as a shortfall.
func (d *Dossier) collect(y *record.Yard) {
	d.Checks = slices.Concat(d.Structure.Checks, d.Weight.Checks, d.Lines.Checks, d.Loading.Checks, d.Stability.Checks, d.Capacity.Checks, d.Identity.Checks, d.Logs.Checks, d.Trials.Checks, d.underwayChecks(), d.Stock.Checks, d.Welding.Checks, d.WeldMap.Checks, d.Inspections.Checks, d.Documents.Checks, d.Records.Checks)
	d.Assumptions = slices.Concat(d.Grid.Assumptions, d.Structure.Assumptions, d.Weight.Assumptions, d.Lines.Assumptions, d.Loading.Assumptions, d.Stability.Assumptions, d.Capacity.Assumptions, d.Logs.Assumptions, d.Trials.Assumptions, d.underwayAssumptions(), d.Welding.Assumptions, d.Inspections.Assumptions)
	own := slices.Concat(d.Grid.Findings, d.Structure.Findings, d.Weight.Findings, d.Lines.Findings, d.Loading.Findings, d.Stability.Findings, d.Capacity.Findings, d.Identity.Findings, d.Logs.Findings, d.Trials.Findings, d.Moves.Findings, d.underwayFindings(), d.Stock.Findings, d.Welding.Findings, d.WeldMap.Findings, d.Inspections.Findings, d.Documents.Findings, d.Records.Findings,
		doubtsOf(y, d.Hull), unproved(&d.Proofs), stale(d.Tables))
	d.Findings = slices.Concat(own, notTold(finding.Findings(d.Checks), own))
	finding.Sort(d.Findings)
}

// notTold leaves out the findings of checks for which a discipline has a finding of its own that is at least as grave.
func notTold(ofChecks, own []finding.Finding) []finding.Finding {
	type about struct{ rule, subject string }
	told := map[about]int{}
	for _, f := range own {
		key := about{f.Rule, f.Subject}
		if grave, found := told[key]; !found || gravity(f.Kind) < grave {
			told[key] = gravity(f.Kind)
		}
	}
	return slices.DeleteFunc(ofChecks, func(f finding.Finding) bool {
		grave, found := told[about{f.Rule, f.Subject}]
		return found && grave <= gravity(f.Kind)
	})
}

// gravity orders the kinds, the gravest first.
func gravity(k finding.Kind) int { return slices.Index(finding.Kinds(), k) }

// doubtsOf gives the unlikely values of the hull's own records and of the yard's, of the stock only those that stand in what the
// hull draws on: the rest is not in its file, and a file is made again from what is in it.
func doubtsOf(y *record.Yard, h *record.Hull) []finding.Finding {
	var all []finding.Finding
	drawn := sync.OnceValue(func() *record.Drawn { return record.DrawingOf(y).Of(h) })
	for i := range y.Doubts {
		d := &y.Doubts[i]
		if d.Hull == h.Number || d.Hull == "" && !d.Within(func(file string) bool { return !drawn().Has(file) }) {
			all = append(all, d.Finding)
		}
	}
	return all
}

// unproved doubts a calculator that does not give what its published cases print.
func unproved(p *proof.Sheet) []finding.Finding {
	failed := p.Failed()
	if len(failed) == 0 {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Doubt, Rule: "proof-failed", Subject: "proofs",
		Says: fmt.Sprintf("%d of %d published values are not reproduced by the method sheets and tables in use, the first being %s of %s",
			len(failed), len(p.Cases), failed[0].Name, failed[0].Title),
		Settle: "hold the method sheet that was changed against the published case",
	}}
}
