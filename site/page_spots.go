package site

import "hullfile/engine/unit"

// SpotsPart ranks welded details by how fast the recorded impacts use them up.
type SpotsPart struct {
	Why       string
	Seconds   string
	Rides     []Link
	Rows      []SpotRow
	Low, High string // scatter of the sum at failure
	Classes   []ClassRow
	Assumed   []AssumptionRow
	Findings  []FindingRow
}

// SpotRow is one detail.
type SpotRow struct {
	Rank     string
	Place    string
	Class    string
	Line     string // N/mm² at two million cycles, slope
	Transfer string
	From     string
	Range    string // equivalent stress range
	Greatest string
	Relative string
	Damage   string // in a hundred hours like those recorded
	Record   Link
}

// ClassRow is one class that a record may name.
type ClassRow struct {
	Key, Name, Class, Slope, Note string
	Source                        string
	Basis                         Basis
}

func (l *leaf) spotsPart() SpotsPart {
	u := l.dossier
	r := &u.Details
	p := SpotsPart{Why: r.Why, Seconds: unit.Text(r.Seconds, 0), Low: unit.Text(r.Scatter.Low, 1), High: unit.Text(r.Scatter.High, 1), Assumed: l.assumed(r.Assumptions), Findings: l.findingsHere("fatigue")}
	for _, id := range r.Rides {
		p.Rides = append(p.Rides, l.subjectAs("ride "+id, id))
	}
	for i := range r.Spots {
		s := &r.Spots[i]
		rec := s.Record
		p.Rows = append(p.Rows, SpotRow{
			Rank: wordsOfInt(i + 1), Place: rec.Place.V, Class: s.Class.Name, Line: unit.Plain(s.Class.Line.Class) + ", slope " + unit.Plain(s.Class.Line.Slope),
			Transfer: unit.Plain(rec.Transfer.V), From: rec.From.V, Range: unit.Text(s.Range, 1), Greatest: unit.Text(s.Greatest, 0), Relative: unit.Text(s.Relative, 2),
			Damage: unit.Figures(s.Damage, 2), Record: l.place(rec.At),
		})
	}
	alignRows(p.Rows, func(r *SpotRow) []*string { return []*string{&r.Transfer, &r.Damage} })
	if len(l.hull.Spots) == 0 {
		return p
	}
	for _, c := range u.Classes {
		p.Classes = append(p.Classes, ClassRow{c.Key, c.Name, unit.Plain(c.Line.Class), unit.Plain(c.Line.Slope), c.Note, c.Source, basis(c.Basis)})
	}
	return p
}
