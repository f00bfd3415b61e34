// Package engine reckons one hull: records in, a Dossier out. It knows no HTML, no flags, no clock and no environment.
// Assess reads like the table of contents of a technical file; each trade has a package of its own below this one.
package engine

import (
	"hullfile/engine/capacity"
	"hullfile/engine/crosscheck"
	"hullfile/engine/detail"
	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/held"
	"hullfile/engine/identity"
	"hullfile/engine/inspection"
	"hullfile/engine/limits"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/manoeuvre"
	"hullfile/engine/planing"
	"hullfile/engine/proof"
	"hullfile/engine/record"
	"hullfile/engine/requirement"
	"hullfile/engine/ride"
	"hullfile/engine/running"
	"hullfile/engine/scantling"
	"hullfile/engine/seam"
	"hullfile/engine/stability"
	"hullfile/engine/stock"
	"hullfile/engine/survey"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
	"hullfile/engine/weight"
	"hullfile/engine/weld"
	"hullfile/engine/weldmap"
)

// Dossier is everything that is known about one hull.
type Dossier struct {
	Builder     *record.Builder
	Hull        *record.Hull
	Grid        grid.Result // panels and members laid out on the lines
	Structure   scantling.Result
	Weight      weight.Result
	Lines       lines.Result
	Loading     loading.Result    // the conditions
	Stability   stability.Result  // righting levers and checks afloat
	Capacity    capacity.Result   // load, persons and plates
	Identity    identity.Result   // the hull identification number
	Logs        tracklog.Result   // what instruments wrote down, held against the runs
	Trials      trial.Result      // runs completed from the logs
	Moves       manoeuvre.Result  // acceleration, turning, stopping, noise, sight
	Prediction  planing.Result    // trim, resistance and power at speed
	Ride        ride.Result       // impacts recorded under way
	Limits      limits.Result     // how fast in which sea
	Hours       running.Result    // running hours and what they prove
	Details     detail.Result     // welded details ranked
	Classes     []detail.Class    // that a record may name
	Stock       stock.Result      // metal against certificates, parts against lots
	Welding     weld.Result       // procedures and people against their tests, strength and consumption of seams
	Seams       *seam.Map         // the build record, linked
	WeldMap     weldmap.Result    // the seams that the grid needs, held against those on record
	Coverage    seam.Coverage     // how far the seams are covered by evidence
	Tables      []held.Table      // the tables of limits for building, and who held them
	Inspections inspection.Result // imperfections and tests of tightness, judged
	Documents   document.Result
	Records     crosscheck.Result // the records held against each other
	Survey      survey.Result     // what to look at on board, and what was found
	Proofs      proof.Sheet
	Asked       []string // files of the yard's own that the hull asks for, whether they are there or not: method sheets and lists of requirements

	Requirements requirement.Result // lists of requirements held against all of it

	Checks      []finding.Check      // of all disciplines, in the order of the contents
	Findings    []finding.Finding    // of all disciplines, in the order in which they are told
	Assumptions []finding.Assumption // of all disciplines
}

// Standing is that of all checks and findings together: a file in which two records contradict each other is not met, whatever its checks say.
func (d *Dossier) Standing() finding.Standing {
	all := make([]finding.Standing, 0, len(d.Checks)+len(d.Findings))
	for _, c := range d.Checks {
		all = append(all, c.Standing)
	}
	for _, f := range d.Findings {
		all = append(all, f.Kind.Standing())
	}
	return finding.Worst(all...)
}
