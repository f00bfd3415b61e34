package engine

import (
	"strings"
	"testing"

	"hullfile/engine/finding"
)

// A hull without lines, or with lines that cannot be, is told by the lines alone.
func TestNothingAfloatWithoutSoundLines(t *testing.T) {
	yard, ref, root := demo(t)
	h := *yard.Hulls[0]
	h.Stations = nil
	d := Assess(yard, &h, ref, root)
	if n := len(d.Loading.Checks) + len(d.Stability.Checks) + len(d.Stability.Findings); n != 0 {
		t.Errorf("%d checks and findings of a hull without lines", n)
	}
	gaps := 0
	for _, f := range d.Findings {
		if f.Kind == finding.Gap && strings.Contains(f.Says, "the lines are not on record") {
			gaps++
		}
	}
	if gaps != 1 {
		t.Errorf("%d gaps tell that the lines are not on record", gaps)
	}
	h = *yard.Hulls[0]
	h.Stations = append(h.Stations[:0:0], h.Stations...)
	h.Stations[3].X.V = 0
	if d := Assess(yard, &h, ref, root); d.Lines.Sound || len(d.Stability.Checks) != 0 {
		t.Error("a hull whose stations are out of order was floated")
	}
}

// The number of persons that stability bears is one of the limits from which the plate is made.
func TestStabilityLimitsThePersons(t *testing.T) {
	yard, ref, root := demo(t)
	d := Assess(yard, yard.Hulls[0], ref, root)
	n, rule, ok := d.Stability.MostPersons()
	if !ok || n < d.Hull.Boat.Persons.V || rule == "" {
		t.Fatalf("most persons %d by %q, %v", n, rule, ok)
	}
	for _, l := range d.Capacity.Limits {
		if l.Subject == "condition loaded" && l.HasPersons && l.Persons == n && l.Basis != "" && l.Source != "" {
			return
		}
	}
	t.Errorf("no limit of %d persons among %+v", n, d.Capacity.Limits)
}
