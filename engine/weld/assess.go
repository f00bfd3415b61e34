package weld

import (
	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Assess holds the procedures and people that a hull names against what their tests qualify, and reckons strength,
// consumption and time of its seams by the method sheets of lib. A hull without joints and welds gives nothing.
func Assess(y *record.Yard, h *record.Hull, lib *method.Library, alloys *material.Table, ranges *Ranges) Result {
	a := &assessor{yard: y, hull: h, lib: lib, alloys: alloys, ranges: ranges}
	a.procedures()
	a.people()
	a.seams()
	a.heats()
	a.held()
	for i := range h.Stages {
		a.Stages = append(a.Stages, &h.Stages[i])
	}
	return a.Result
}

type assessor struct {
	Result
	yard   *record.Yard
	hull   *record.Hull
	lib    *method.Library
	alloys *material.Table
	ranges *Ranges

	metal   *method.Slate     // of the sheet of weld metal, turned once a seam
	hot     *record.Procedure // of the hottest weld
	longest method.GivenMap   // what went in for the longest seam
}

func (a *assessor) find(kind finding.Kind, rule, subject, says, settle string, places ...finding.Place) {
	a.Findings = append(a.Findings, finding.Finding{Kind: kind, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: finding.Places(places...)})
}
