package engine

import (
	"hullfile/engine/grid"
	"hullfile/engine/lines"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// structure lays frames, stringers and plates on the lines and judges what comes of it beside what is listed by hand.
func (d *Dossier) structure(y *record.Yard, ref *Reference) {
	var hull *lines.Hull
	if d.Lines.Sound {
		hull = d.Lines.Hull
	}
	d.Grid = grid.Derive(d.Hull, hull)
	d.Structure = scantling.Assess(scantling.Input{Yard: y, Hull: d.Hull, Library: ref.Library, Alloys: ref.Alloys, Grid: &d.Grid, Depth: depth(hull)})
}

// depth is that of the hull amidships, from the keel to the sheer; nought without lines.
func depth(hull *lines.Hull) unit.M {
	if hull == nil {
		return 0
	}
	mid := &hull.Stations[len(hull.Stations)/2]
	return unit.M(mid.At[lines.Sheer].Z - mid.At[lines.Keel].Z)
}
