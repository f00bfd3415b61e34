package lines

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weight"
)

func at(line int) finding.Place {
	return finding.Place{File: "designs/P/design.toml", Line: line, Col: 1}
}

func m(v float64) record.Val[unit.M] { return record.Written(unit.M(v), at(3)) }

// prismRecord is the hard-chine prism as a record.
func prismRecord() *record.Hull {
	h := &record.Hull{Number: "P-1"}
	for i, x := range []float64{0, 2, 4, 6} {
		h.Stations = append(h.Stations, record.Station{Entry: record.Entry{ID: string(rune('0' + i)), At: at(10 + i)},
			X: m(x), KeelZ: m(0), ChineY: m(0.95), ChineZ: m(0.308674), SheerY: m(1.10), SheerZ: m(0.85)})
	}
	h.Boat.LengthHull, h.Boat.LengthWL, h.Boat.BeamHull, h.Boat.BeamChine = m(6), m(6), m(2.2), m(1.9)
	h.Boat.Draught, h.Boat.Deadrise = m(0.28), record.Written(unit.Deg(18), at(4))
	return h
}

func loaded() weight.Total {
	return weight.Total{Mass: 1500, X: 3, Z: 0.55, HasX: true, HasY: true, HasZ: true}
}

func TestStatedAgreesWithLines(t *testing.T) {
	r := Assess(prismRecord(), loaded())
	if len(r.Findings) > 0 || len(r.Compared) != 6 {
		t.Fatalf("findings %v, %d comparisons", r.Findings, len(r.Compared))
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s: %s: %s", c.Rule, c.Standing, c.Says)
		}
	}
}

func TestStatedAgainstLines(t *testing.T) {
	rows := []struct {
		rule   string
		change func(h *record.Hull)
		found  bool
	}{
		{"lines-length-hull-m", func(h *record.Hull) { h.Boat.LengthHull = m(6.13) }, true},
		{"lines-length-hull-m", func(h *record.Hull) { h.Boat.LengthHull = m(6.11) }, false},
		{"lines-draught-m", func(h *record.Hull) { h.Boat.Draught = m(0.33) }, true},
		{"lines-draught-m", func(h *record.Hull) { h.Boat.Draught = m(0.30) }, false},
		{"lines-deadrise-deg", func(h *record.Hull) { h.Boat.Deadrise = record.Written(unit.Deg(20), at(4)) }, true},
	}
	for _, row := range rows {
		h := prismRecord()
		row.change(h)
		r := Assess(h, loaded())
		found := false
		for _, f := range r.Findings {
			found = found || f.Rule == row.rule && f.Kind == finding.Contradiction
		}
		if found != row.found {
			t.Errorf("%s: found %t, want %t: %v", row.rule, found, row.found, r.Findings)
		}
	}
}

func TestNothingAfloatIsNeverMet(t *testing.T) {
	rows := []struct {
		where  string
		hull   func(h *record.Hull)
		total  weight.Total
		says   string
		contra bool
	}{
		{"no stations", func(h *record.Hull) { h.Stations = nil }, loaded(), "the lines are not on record", false},
		{"no centre", func(*record.Hull) {}, weight.Total{Mass: 1500}, "no loaded mass with its centre", false},
		{"sinks", func(*record.Hull) {}, weight.Total{Mass: 90000, X: 3, HasX: true, HasZ: true}, "cannot carry 90000 kg", true},
		{"crossed", func(h *record.Hull) { h.Stations[1].SheerZ = m(0.1) }, loaded(), "the lines cannot be those of a hull", true},
	}
	for _, row := range rows {
		h := prismRecord()
		row.hull(h)
		r := Assess(h, row.total)
		if r.HasAfloat {
			t.Errorf("%s: floats all the same", row.where)
		}
		said, contra := false, false
		for _, c := range r.Checks {
			said = said || c.Standing == finding.NotShown && strings.Contains(c.Says, row.says)
		}
		for _, f := range r.Findings {
			contra = contra || f.Kind == finding.Contradiction
		}
		if !said || contra != row.contra {
			t.Errorf("%s: checks %v, findings %v", row.where, r.Checks, r.Findings)
		}
	}
}
