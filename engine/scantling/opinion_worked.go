package scantling

import (
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Second works panels and members in full by one rule, for a reader who asks how an opinion came about. Assess keeps no
// working but those of the governing rule; here they are made again, from the same records.
type Second struct {
	rule *rule
	bars *bars
}

// Second gives the rule of an index into Rules to work by.
func (r *Result) Second(at int) Second {
	j := r.judge
	return Second{newRule(j.rules[at].name, j.in, j.wires), j.bars}
}

// Panel works one panel, and gives the symbol of the step that governs; nil where the sheet does not judge panels.
func (s Second) Panel(rec *record.Panel) (w *method.Working, governs string) {
	p := s.rule.panel(rec, false, true)
	return p.Working, p.Governs
}

// Member works one member likewise.
func (s Second) Member(rec *record.Member) (w *method.Working, governs string) {
	m := s.rule.member(rec, s.bars, false, true)
	return m.Working, m.governs.Symbol
}
