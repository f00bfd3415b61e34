package weldmap

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/grid"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

var here = finding.Place{File: "joints.csv", Line: 2}

func w[T any](v T) record.Val[T] { return record.Written(v, here) }

// needs is a grid with three seams: a chine of 5 m, a frame across the bottom, and brackets that lie on no skin.
func needs() *grid.Result {
	return &grid.Result{Derived: true, Seams: []grid.Seam{
		{Name: "bottom to side, port", Type: "fillet", Thickness: 6, Other: 4, Length: 5, Category: "shell", Where: "chine", Flat: [][2]float64{{0, -1}, {2.5, -1.2}, {5, -0.9}}, Place: here},
		{Name: "frame 3 to bottom, port", Type: "fillet", Thickness: 4, Other: 6, Length: 1, Category: "primary", Connection: "floor-elsewhere", Where: "frame 3", Flat: [][2]float64{{1.5, 0}, {1.5, -1}}, Place: here},
		{Name: "brackets BK, port", Type: "fillet", Thickness: 4, Length: 3, Category: "primary", Where: "keel", Place: here},
	}}
}

func joint(id, typ string, metres float64, ends ...float64) record.Joint {
	j := record.Joint{Entry: record.Entry{ID: id, At: here}, Type: w(typ), Length: w(unit.M(metres))}
	if len(ends) == 4 {
		j.AftX, j.AftGirth, j.ForeX, j.ForeGirth = w(unit.M(ends[0])), w(unit.M(ends[1])), w(unit.M(ends[2])), w(unit.M(ends[3]))
	}
	return j
}

func hull(joints ...record.Joint) *record.Hull {
	h := &record.Hull{}
	h.Joints = joints
	return h
}

// TestWhole: two stretches of a chine, a frame found by its place, and brackets by name make the map whole.
func TestWhole(t *testing.T) {
	k := joint("BK", "fillet", 3)
	k.Proposed = w("brackets BK, port")
	r := Assess(hull(joint("C1", "fillet", 2.5, 0, -1, 2.5, -1.2), joint("C2", "fillet", 2.4, 2.5, -1.2, 4.9, -0.9), joint("F3", "fillet", 1, 1.5, -0.06, 1.5, -1), k,
		joint("W1", "fillet", 4)), needs())
	if r.Recorded != 3 || r.Missing != 0 || len(r.Findings) > 0 || len(r.Checks) != 1 || r.Checks[0].Standing != finding.Met {
		t.Errorf("%+v", r)
	}
	if len(r.Rows[0].Joints) != 2 || len(r.Rows[1].Joints) != 1 || len(r.Beside) != 1 || r.Beside[0].ID != "W1" {
		t.Errorf("%+v, beside %v", r.Rows, r.Beside)
	}
	if table := r.Table(); len(table) != 1 {
		t.Errorf("a whole map still proposes %v", table)
	}
}

// TestNotWhole: what is missing is proposed and counted, and shown is nothing by it.
func TestNotWhole(t *testing.T) {
	r := Assess(hull(joint("F3", "fillet", 1, 1.5, -0.06, 1.5, -1)), needs())
	c := r.Checks[0]
	if r.Missing != 2 || r.Metres != 8 || c.Standing != finding.NotShown || !strings.Contains(c.Says, "2 of 3 seams that the grid needs, 8.0 m together, are proposed and not on record: bottom to side, port; brackets BK, port") {
		t.Errorf("%s: %s", c.Standing, c.Says)
	}
	table := r.Table()
	if len(table) != 3 || strings.Join(table[1], "|") != "P1|fillet|6.0|4.0|5.00|shell||0.00|-1.00|5.00|-0.90|chine|bottom to side, port" ||
		strings.Join(table[2], "|") != "P2|fillet|4.0||3.00|primary||||||keel|brackets BK, port" {
		t.Errorf("%q", table)
	}
}

// TestContradictions: lengths that differ, a name that nobody proposed, a seam on the other side, one that runs the other way,
// and one of another type.
func TestContradictions(t *testing.T) {
	r := Assess(hull(joint("C1", "fillet", 3.5, 0, -1, 3.5, -1.1)), needs())
	if len(r.Findings) != 1 || r.Findings[0].Rule != "weld-map-length" || r.Findings[0].Subject != "joint C1" || !strings.Contains(r.Findings[0].Says, "3.50 m together; the grid needs 5.00 m") {
		t.Errorf("%v", r.Findings)
	}
	for _, by := range []float64{4.3, 5.7} { // 14 % either way: stringers and keels end in pieces of their own
		if r := Assess(hull(joint("C1", "fillet", by, 0, -1, 5, -0.9)), needs()); len(r.Findings) > 0 {
			t.Errorf("%g m for 5 m is told: %v", by, r.Findings)
		}
	}
	k := joint("X", "fillet", 1)
	k.Proposed = w("brackets BX, port")
	if r := Assess(hull(k), needs()); len(r.Findings) != 1 || r.Findings[0].Rule != "weld-map-name" || len(r.Beside) != 1 {
		t.Errorf("%v", r.Findings)
	}
	for what, j := range map[string]record.Joint{
		"to starboard":   joint("F", "fillet", 1, 1.5, 0.2, 1.5, 1),
		"along the boat": joint("F", "fillet", 0.2, 1.45, -0.5, 1.6, -0.5),
		"a butt":         joint("F", "butt", 1, 1.5, -0.06, 1.5, -1),
		"without ends":   joint("F", "fillet", 1),
	} {
		if r := Assess(hull(j), needs()); r.Recorded != 0 || len(r.Beside) != 1 {
			t.Errorf("%s: %+v", what, r.Rows)
		}
	}
}

// TestNoGrid: without a grid there is nothing to hold joints against.
func TestNoGrid(t *testing.T) {
	if r := Assess(hull(joint("C1", "fillet", 5)), &grid.Result{}); len(r.Checks)+len(r.Findings)+len(r.Rows) > 0 {
		t.Errorf("%+v", r)
	}
}
