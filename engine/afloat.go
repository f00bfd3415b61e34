package engine

import (
	"hullfile/engine/capacity"
	"hullfile/engine/finding"
	"hullfile/engine/loading"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/stability"
)

// afloat puts the boat into the water in every condition and judges it there. A hull without lines, or with lines that
// cannot be those of a hull, is told by the lines alone: nothing is floated and nothing more is said.
func (d *Dossier) afloat(h *record.Hull, library *method.Library) {
	if d.Lines.Hull == nil || !d.Lines.Sound {
		return
	}
	d.Loading = loading.Assess(h, d.Weight, d.Lines.Hull)
	d.Stability = stability.Assess(h, d.Weight, d.Lines.Hull, d.Loading, library)
}

// limitsAfloat is what stability leaves of the number of persons, for the plates.
func (d *Dossier) limitsAfloat() []capacity.Limit {
	if len(d.Stability.WhatIf) == 0 {
		return nil
	}
	l := capacity.Limit{Name: "stability with everybody to one side", Subject: "condition loaded"}
	n, rule, ok := d.Stability.MostPersons()
	if !ok {
		l.Why = "no check turns short in the range of persons that was tried"
		if rule != "" {
			l.Why = "a check is short with a single person already"
		}
		return []capacity.Limit{l}
	}
	l.Persons, l.HasPersons = n, true
	for _, s := range d.Stability.Shown {
		if s.Check.Rule == rule {
			l.Basis, l.Source, l.Places = finding.Softer(l.Basis, s.Check.Basis), s.Check.Source, s.Check.Places
		}
	}
	return []capacity.Limit{l}
}
