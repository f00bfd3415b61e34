// Package weldmap holds the seams on record against those that the structural grid needs: what is proposed and on record,
// what is proposed only, and where lengths differ. What is proposed is no evidence: it says what a yard will want to draw,
// weld and write down, and may take over into joints.csv.
//
//   - Question: is every seam that the boat needs on its weld map?
//   - In: the hull and its grid.
//   - Out: each seam of the grid with the joints on record for it, and a table of those that are missing.
//   - Source: geometry; lengths agree within practice.
package weldmap

import (
	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/record"
)

// Result is the weld map of one hull as the grid proposes it.
type Result struct {
	Rows     []Row
	Recorded int             // seams with a joint on record
	Missing  int             // seams without
	Metres   float64         // of those without
	Beside   []*record.Joint // joints that are no seam of the grid: superstructure, fittings, insert plates
	Checks   []finding.Check
	Findings []finding.Finding
}

// Row is one proposed seam with the joints on record that are it, or stretches of it.
type Row struct {
	Seam   *grid.Seam
	Joints []*record.Joint
	Metres float64 // of these joints together
	Apart  bool    // their length is another than that of the seam
}
