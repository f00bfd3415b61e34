package site

import (
	"strconv"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// ProposedSeams is the weld map as the grid needs it: how much of it is on record, and what is proposed only. What is
// proposed is no evidence of anything.
type ProposedSeams struct {
	Standing Standing
	All      int
	Recorded int
	Missing  int
	Metres   string // of those that are proposed only
	Rows     []ProposedRow
	Table    Link // the same as rows of joints.csv, to be taken over
}

// ProposedRow is one seam that is proposed and not on record.
type ProposedRow struct {
	Name     string
	What     string // "fillet, 4 to 6 mm"
	Category string
	Metres   string
	Place    Link
}

// proposedSeams is nil for a hull without a grid.
func (l *leaf) proposedSeams() *ProposedSeams {
	r := &l.dossier.WeldMap
	if len(r.Rows) == 0 {
		return nil
	}
	p := &ProposedSeams{All: len(r.Rows), Recorded: r.Recorded, Missing: r.Missing, Metres: unit.Text(r.Metres, 1), Standing: standing(finding.Met)}
	for _, c := range r.Checks {
		p.Standing = standing(c.Standing)
	}
	for i := range r.Rows {
		row := &r.Rows[i]
		if len(row.Joints) > 0 {
			continue
		}
		s := row.Seam
		what := s.Type
		if s.Thickness > 0 {
			what += ", " + unit.Text(s.Thickness, 1)
		}
		if s.Other > 0 && s.Other != s.Thickness {
			what += " to " + unit.Text(s.Other, 1)
		}
		if s.Thickness > 0 {
			what += noBreak + "mm"
		}
		p.Rows = append(p.Rows, ProposedRow{Name: s.Name, What: what, Category: s.Category, Metres: unit.Text(s.Length, 2), Place: l.place(s.Place)})
	}
	if p.Missing > 0 {
		p.Table = Link{Text: "as rows of joints.csv", Href: l.to(proposedTable().path(), "")}
	}
	return p
}

func proposedTable() *csvTable {
	return &csvTable{name: "proposed-joints", says: "seams that the grid needs and that are not on record, as rows of joints.csv"}
}

// proposedJoints is the table that a yard may take over into its joints.csv.
func (b *book) proposedJoints() *csvTable {
	t := proposedTable()
	for i, row := range b.dossier.WeldMap.Table() {
		if i == 0 {
			t.head = row
			continue
		}
		cells := make([]any, len(row))
		for k, cell := range row {
			cells[k] = cell
			if v, err := strconv.ParseFloat(cell, 64); err == nil {
				cells[k] = v
			}
		}
		t.add(cells...)
	}
	return t
}
