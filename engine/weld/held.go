package weld

import (
	"strings"

	"hullfile/engine/finding"
)

// held doubts ranges that rest on recalled rows which nobody has held against the standard.
func (a *assessor) held() {
	var soft []string
	for _, p := range a.Procedures {
		for _, t := range p.Tests {
			if t.Scheme != nil && t.Basis == finding.Recalled && !a.ranges.ProceduresHeld.Holds() {
				soft = with(soft, t.Scheme.Work)
			}
		}
	}
	for _, w := range a.Welders {
		for _, r := range w.Ranges {
			if r.Scheme != nil && r.Basis == finding.Recalled && !a.ranges.WeldersHeld.Holds() {
				soft = with(soft, r.Scheme.Work)
			}
		}
	}
	if len(soft) == 0 {
		return
	}
	a.find(finding.Doubt, ruleHeld, "boat", "what tests of procedures and welders qualify was derived from recalled tables of "+strings.Join(soft, " and ")+", which nobody has held against the text",
		"let the welding coordinator hold the tables against the standards")
}
