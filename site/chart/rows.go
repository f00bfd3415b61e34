package chart

import (
	"math"

	"hullfile/engine/unit"
)

// longest is how many rows a table under a figure has at most; the whole stands in the results for machines.
const longest = 200

// rows makes the table of a spec: one row a point, with the series it belongs to.
func (s Spec) rows() [][]string {
	e := s.extents()
	x, left, right := placesFor(e.x), placesFor(e.left), placesFor(e.right)
	table := [][]string{{"Series", s.X.label(), "Value", "Unit"}}
	add := func(name string, xs, ys []float64, isRight bool) {
		places, sign := left, s.Y.Unit
		if isRight {
			places, sign = right, s.Y2.Unit
		}
		for i := range xs {
			table = append(table, []string{name, unit.Text(xs[i], x), unit.Text(ys[i], places), sign})
		}
	}
	for _, l := range s.Lines {
		add(l.Name, l.X, l.Y, l.Right)
	}
	for _, d := range s.Dots {
		add(d.Name, d.X, d.Y, d.Right)
	}
	return cut(table)
}

// cut keeps a table to a length that can be read, and says how many rows it lost.
func cut(table [][]string) [][]string {
	if len(table) <= longest+1 {
		return table
	}
	last := make([]string, len(table[0]))
	last[0] = unit.Text(float64(len(table)-1-longest), 0) + " more points"
	return append(table[:longest+1:longest+1], last)
}

// placesFor gives the decimals that show the greatest of some values with three figures.
func placesFor(e extent) int { return placesOf(max(math.Abs(e.lo), math.Abs(e.hi))) }

// placesOf gives the decimals that show a value with three figures, none to three.
func placesOf(v float64) int {
	if v == 0 || !usable(v) {
		return 0
	}
	return min(3, max(0, 2-int(math.Floor(math.Log10(math.Abs(v))))))
}
