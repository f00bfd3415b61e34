package weldmap

import (
	"fmt"
)

// head is the head of the table of proposed joints: columns of joints.csv.
var head = []string{"id", "type", "thickness_mm", "other_thickness_mm", "length_m", "category", "connection", "from_x_m", "from_girth_m", "to_x_m", "to_girth_m", "where", "proposed"}

// Table gives the seams that are proposed and not on record as rows of joints.csv, the head first. Their keys are P1, P2 in
// order and are only there to be replaced.
func (r *Result) Table() [][]string {
	out := [][]string{append([]string(nil), head...)}
	for i := range r.Rows {
		row := &r.Rows[i]
		if len(row.Joints) > 0 {
			continue
		}
		s := row.Seam
		line := []string{fmt.Sprintf("P%d", len(out)), s.Type, thickness(s.Thickness), thickness(s.Other), fmt.Sprintf("%.2f", s.Length), s.Category, s.Connection, "", "", "", "", s.Where, s.Name}
		if len(s.Flat) > 1 {
			p, q := s.Flat[0], s.Flat[len(s.Flat)-1]
			for k, v := range []float64{p[0], p[1], q[0], q[1]} {
				line[7+k] = fmt.Sprintf("%.2f", v)
			}
		}
		out = append(out, line)
	}
	return out
}

// thickness is a number of a cell; nothing where it is not known.
func thickness(mm float64) string {
	if mm <= 0 {
		return ""
	}
	return fmt.Sprintf("%.1f", mm)
}
