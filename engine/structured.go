package engine

import (
	"hullfile/engine/grid"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
)

// structure lays frames, stringers and plates on the lines and judges what comes of it beside what is listed by hand.
func (d *Dossier) structure(y *record.Yard, ref *Reference) {
	var hull *lines.Hull
	if d.Lines.Sound {
		hull = d.Lines.Hull
	}
	d.Grid = grid.Derive(d.Hull, hull)
	d.Structure = scantling.Assess(scantling.Input{Yard: y, Hull: d.Hull, Library: ref.Library, Alloys: ref.Alloys, Grid: &d.Grid})
}
