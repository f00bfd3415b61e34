package main

import (
	"fmt"
	"strings"

	"hullfile/engine"
	"hullfile/engine/finding"
	"hullfile/engine/next"
)

// ahead prints the one thing to do next in the whole yard, before all findings: who reads one line only reads this one.
func (s *screen) ahead(hulls []*engine.Dossier) {
	h := foremost(hulls)
	if h == nil {
		return
	}
	step := h.Next()
	s.paragraph("next: ", h.Hull.Number+", "+about(step.Name(), step.Says))
	s.step(step)
	s.line("")
}

// step prints what to do, where, and why that first.
func (s *screen) step(step next.Step) {
	if step.Settle != "" {
		s.paragraph("      do:  ", step.Settle)
	}
	if len(step.Places) > 0 {
		s.paragraph("      at:  ", placesOf(finding.Finding{Places: step.Places}))
	}
	why := step.Why
	if step.Alike > 1 {
		why += fmt.Sprintf("; %d findings of this sort stand below", step.Alike)
	}
	s.paragraph("      why: ", why)
}

// foremost is the hull whose next step comes first, of equals the first one; nil without hulls.
func foremost(hulls []*engine.Dossier) *engine.Dossier {
	var least *engine.Dossier
	for _, h := range hulls {
		if least == nil || h.Next().Rank < least.Next().Rank {
			least = h
		}
	}
	return least
}

// howFar prints how many parts of a hull's file are there, and which are not.
func (s *screen) howFar(parts []next.Part) {
	there, rest := 0, map[next.State][]string{}
	for _, p := range parts {
		if p.State == next.Done {
			there++
			continue
		}
		rest[p.State] = append(rest[p.State], p.Name)
	}
	text := fmt.Sprintf("%d of %d parts of the file are there", there, len(parts))
	for _, state := range []next.State{next.Begun, next.NotYet} {
		if names := rest[state]; len(names) > 0 {
			text += "; " + string(state) + ": " + strings.Join(names, ", ")
		}
	}
	s.paragraph("  ", text)
}
