package weldmap

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Rules of the check and the finding of this package.
const (
	ruleWhole  = "weld-map-whole"
	ruleLength = "weld-map-length"
)

// How much shorter or longer a joint on record may be than its seam before it is told: stringers end in brackets, keel bars
// have ends of their own (practice).
const (
	allowedPart   = 0.15
	allowedMetres = 0.15
)

// Assess matches joints on record with the seams that the grid proposes. A hull without a derived grid has nothing to be held
// against, and gives nothing.
func Assess(h *record.Hull, g *grid.Result) Result {
	var r Result
	if !g.Derived || len(g.Seams) == 0 {
		return r
	}
	r.Rows = make([]Row, len(g.Seams))
	at := make(map[string]int, len(g.Seams))
	for i := range g.Seams {
		r.Rows[i].Seam = &g.Seams[i]
		at[g.Seams[i].Name] = i
	}
	for i := range h.Joints {
		r.match(&h.Joints[i], at)
	}
	r.sum()
	r.Checks = append(r.Checks, r.whole(h))
	return r
}

// match gives a joint to the seam that it names, else to the one it lies on.
func (r *Result) match(j *record.Joint, at map[string]int) {
	name, named := j.Proposed.Get()
	if i, known := at[name]; named && known {
		r.Rows[i].Joints = append(r.Rows[i].Joints, j)
		return
	}
	if named {
		r.Findings = append(r.Findings, finding.Finding{Kind: finding.Contradiction, Rule: "weld-map-name", Subject: "joint " + j.ID,
			Says:   fmt.Sprintf("joint %s is on record as the proposed seam %q, and the grid proposes none of that name", j.ID, name),
			Settle: "take the name from the list of proposed seams, or take the line out", Places: []finding.Place{j.Proposed.At}})
	}
	if i := r.liesOn(j); i >= 0 {
		r.Rows[i].Joints = append(r.Rows[i].Joints, j)
		return
	}
	r.Beside = append(r.Beside, j)
}

// sum adds up what is on record for each seam.
func (r *Result) sum() {
	for i := range r.Rows {
		row := &r.Rows[i]
		for _, j := range row.Joints {
			row.Metres += float64(j.Length.V)
		}
		if len(row.Joints) == 0 {
			r.Missing++
			r.Metres += row.Seam.Length
			continue
		}
		r.Recorded++
		if by := math.Abs(row.Metres - row.Seam.Length); by > allowedMetres && by > allowedPart*row.Seam.Length {
			row.Apart = true
			r.Findings = append(r.Findings, row.apart())
		}
	}
}

func (row *Row) apart() finding.Finding {
	first := row.Joints[0]
	f := finding.Finding{Kind: finding.Contradiction, Rule: ruleLength, Subject: "joint " + first.ID,
		Says:   fmt.Sprintf("%s on record with %s m together; the grid needs %s m for the seam %s", idsOf(row.Joints), unit.Text(row.Metres, 2), unit.Text(row.Seam.Length, 2), row.Seam.Name),
		Settle: "measure the seam, or mend the frames, plates or stringers that meet in it"}
	for _, j := range row.Joints {
		f.Places = append(f.Places, j.Length.At)
	}
	f.Places = append(f.Places, row.Seam.Place)
	return f
}

func idsOf(all []*record.Joint) string {
	var ids []string
	for _, j := range all {
		ids = append(ids, j.ID)
	}
	if len(ids) == 1 {
		return "joint " + ids[0] + " is"
	}
	return "joints " + strings.Join(ids, ", ") + " are"
}

// named is how many missing seams a check names before it only counts.
const named = 4

// whole checks that every seam that the grid needs is on the weld map.
func (r *Result) whole(h *record.Hull) finding.Check {
	c := finding.Check{Rule: ruleWhole, Subject: "joints", Standing: finding.Met, Basis: finding.Derived, Source: "the structural grid",
		Asks: "every seam that the grid needs is on the weld map", Needed: fmt.Sprintf("%d seams", len(r.Rows)), Has: fmt.Sprintf("%d seams", r.Recorded),
		Says: fmt.Sprintf("all %d seams that the grid needs are on record", len(r.Rows))}
	if r.Missing == 0 {
		return c
	}
	var missing []string
	for i := range r.Rows {
		if row := &r.Rows[i]; len(row.Joints) == 0 {
			missing = append(missing, row.Seam.Name)
			if len(c.Places) == 0 {
				c.Places = append(c.Places, row.Seam.Place)
			}
		}
	}
	c.Standing = finding.NotShown
	c.Says = fmt.Sprintf("%d of %d seams that the grid needs, %s m together, are proposed and not on record: %s", r.Missing, len(r.Rows), unit.Text(r.Metres, 1), list(missing))
	c.Missing = []string{"joint"}
	c.Settle = "take the proposed seams over into joints.csv, amend them, and name each in its column proposed"
	return c
}

func list(names []string) string {
	if len(names) <= named {
		return strings.Join(names, "; ")
	}
	return fmt.Sprintf("%s and %d more", strings.Join(names[:named], "; "), len(names)-named)
}
