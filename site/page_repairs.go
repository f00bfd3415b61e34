package site

import (
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/inspection"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// RepairsPage shows what was not as specified, what was decided, and how it was mended.
type RepairsPage struct {
	Open     int
	Share    string // of the length of all seams that was repaired
	Cases    []NonconformityRow
	Repairs  []RepairRow
	Findings []FindingRow
}

// NonconformityRow is one nonconformity.
type NonconformityRow struct {
	ID          string
	Key         string
	About       string
	Of          []Link
	Raised      Figure
	Cause       Figure
	Disposition Figure
	Approved    Link
	Closed      Figure
	Standing    Standing
	Place       Link
}

// RepairRow is one repair.
type RepairRow struct {
	ID        string
	Key       string
	Case      Link
	Joint     Link
	Day       Figure
	Procedure string
	Welder    string
	Length    Figure
	Removed   Figure
	Look      Link
	Place     Link
}

func (l *leaf) repairsPage() (RepairsPage, error) {
	h := l.dossier.Hull
	p := RepairsPage{Open: len(l.dossier.Coverage.Open), Findings: l.findingsOn()}
	for i := range h.Nonconformities {
		p.Cases = append(p.Cases, l.caseRow(&h.Nonconformities[i]))
	}
	for i := range h.Repairs {
		r := &h.Repairs[i]
		row := RepairRow{
			ID: l.anchor("repair " + r.ID), Key: r.ID, Case: l.subjectAs("nonconformity "+r.Nonconformity.V, r.Nonconformity.V), Joint: l.subjectAs("joint "+r.Joint.V, r.Joint.V), Day: dated(r.Date),
			Procedure: strings.TrimSpace(r.Procedure.V + " " + r.Revision.V), Welder: r.Welder.V, Length: measured(r.Length, "mm"), Removed: word(r.Removed), Look: Link{Text: r.Inspection.V}, Place: l.place(r.At),
		}
		if r.Inspection.Set {
			row.Look = l.subjectAs("inspection "+r.Inspection.V, r.Inspection.V)
		}
		p.Repairs = append(p.Repairs, row)
	}
	p.Share = l.repairedShare()
	return p, nil
}

// repairedShare says how much of all seams was mended, each repair over its own length.
func (l *leaf) repairedShare() string {
	mended := 0.0
	for i := range l.hull.Repairs {
		mended += float64(l.hull.Repairs[i].Length.V) / 1000
	}
	if metres := l.dossier.Coverage.Metres; mended > 0 && metres > 0 {
		return unit.Text(mended, 2) + " m of " + unit.Text(metres, 1) + " m of seam, " + unit.Text(100*mended/metres, 2) + " %"
	}
	return ""
}

func (l *leaf) caseRow(n *record.Nonconformity) NonconformityRow {
	row := NonconformityRow{
		ID: l.anchor("nonconformity " + n.ID), Key: n.ID, About: n.About.V, Raised: dated(n.Raised), Cause: word(n.Cause), Disposition: word(n.Disposition), Approved: Link{Text: "nobody named"},
		Closed: has(n.Closed.Set, n.Closed.V.ISO(), "open"), Standing: agreed(n.Closed.Set), Place: l.place(n.At),
	}
	if n.Approved.Set {
		row.Approved = l.subjectAs("person "+n.Approved.V, l.nameOf("person", n.Approved.V))
	}
	for _, of := range []struct {
		kind string
		key  record.Val[string]
	}{{"joint", n.Joint}, {"part", n.Part}, {"lot", n.Lot}, {"imperfection", n.Imperfection}, {"inspection", n.Inspection}} {
		if of.key.Set {
			row.Of = append(row.Of, l.subject(of.kind+" "+of.key.V))
		}
	}
	return row
}

// HoldsPage shows the points at which work waited.
type HoldsPage struct {
	Open     int
	Points   []HoldRow
	Findings []FindingRow
}

// HoldRow is one point of the inspection and test plan.
type HoldRow struct {
	ID       string
	Key      string
	What     string
	Kind     string
	Waits    []Link
	Released Figure
	By       Link
	Witness  Figure
	Next     Figure
	Began    Figure
	Standing Standing
	Place    Link
}

func (l *leaf) holdsPage() (HoldsPage, error) {
	h := l.dossier.Hull
	p := HoldsPage{Findings: l.findingsOn()}
	for i := range h.HoldPoints {
		r := &h.HoldPoints[i]
		row := HoldRow{
			ID: l.anchor("hold point " + r.ID), Key: r.ID, What: r.What.V, Kind: r.Kind.V, Released: has(r.Released.Set, r.Released.V.ISO(), "not released"), By: Link{Text: "nobody named"},
			Witness: word(r.Witness), Next: word(r.Next), Began: dated(r.NextBegan), Standing: released(r.Released.Set), Place: l.place(r.At),
		}
		if r.By.Set {
			row.By = l.subjectAs("person "+r.By.V, l.nameOf("person", r.By.V))
		}
		for _, key := range r.Joints.V {
			row.Waits = append(row.Waits, l.subjectAs("joint "+key, key))
		}
		for _, key := range r.LeakTests.V {
			row.Waits = append(row.Waits, l.subject("leak test "+key))
		}
		if !r.Released.Set {
			p.Open++
		}
		p.Points = append(p.Points, row)
	}
	return p, nil
}

// LeaksPage shows the tests of tightness with their working.
type LeaksPage struct {
	Says     Tally
	Tests    []LeakPart
	Findings []FindingRow
	Checks   []CheckRow
	Assumed  []string
}

// LeakPart is one test.
type LeakPart struct {
	ID       string
	Key      string
	Boundary string
	Findings []FindingRow
	Facts    []Fact
	Joints   []Link
	Working  []Fact
	Standing Standing
}

func (l *leaf) leaksPage() (LeaksPage, error) {
	r := &l.dossier.Inspections
	p := LeaksPage{Says: tally(r.Checks), Findings: l.findingsHere(""), Checks: grouped(l.checkRows(r.Checks))}
	for i := range r.Leaks {
		p.Tests = append(p.Tests, l.leakPart(&r.Leaks[i]))
	}
	for _, a := range r.Assumptions {
		p.Assumed = append(p.Assumed, capital(a.Says))
	}
	return p, nil
}

func (l *leaf) leakPart(k *inspection.Leak) LeakPart {
	t := k.Record
	subject := "leak test " + t.ID
	p := LeakPart{ID: l.anchor(subject), Key: t.ID, Boundary: t.Boundary.V, Findings: l.findingsHere(l.anchor(subject)), Facts: l.fieldsWritten(t, "boundary", "joints")}
	p.Standing, _ = standingOf(l.dossier.Inspections.Checks, subject)
	l.linkFacts(p.Facts)
	for _, key := range t.Joints.V {
		p.Joints = append(p.Joints, l.subjectAs("joint "+key, key))
	}
	if !k.ByAir() {
		return p
	}
	fact := func(name string, v float64, n int, sign, note string, at finding.Place) {
		p.Working = append(p.Working, Fact{Name: name, Value: has(!math.IsNaN(v), unit.Text(v, n), "not shown"), Unit: sign, Note: note, Place: l.place(at)})
	}
	fact("pressure of a tight chamber at the end", k.Expected, 2, "kPa", "(start + 101.325) × T₂ / T₁ − 101.325, temperatures from absolute zero; law of ideal gas", t.Start.At)
	fact("pressure lost beside that", k.Lost, 2, "kPa", "the line above less what was read", t.End.At)
	fact("loss that is left", k.Allowed, 2, "kPa", "2 % of the start, at least 0.05 kPa; practice", t.Start.At)
	fact("head of water of the highest pressure", k.Head, 2, "m", "p / (ρ g), fresh water", t.Highest.At)
	fact("design pressure of the panel", k.Panel, 1, "kN/m²", "as the structure was reckoned", t.Panel.At)
	fact("highest pressure that the boundary should see", k.Most, 2, "kPa", k.MostFrom+"; practice", t.Panel.At)
	return p
}

// released is the standing of a point: not shown until somebody released it.
func released(is bool) Standing {
	if is {
		return standing(finding.Met)
	}
	return standing(finding.NotShown)
}
