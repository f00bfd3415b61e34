package engine

import (
	"math"
	"testing"

	"hullfile/engine/seam"
	"hullfile/engine/trace"
)

// HL74-012 has a whole chain behind every metre of shell seam, HL74-013 has not, and the cast of its bottom plate is in
// both and in no other hull.
func TestSeamsOfTheDemo(t *testing.T) {
	yard, ref, root := demo(t)
	whole := map[string]bool{}
	for _, h := range yard.Hulls {
		d := Assess(yard, h, ref, root)
		c := d.Coverage
		if h.Number == "HL74-012" {
			for _, j := range d.Seams.Joints {
				if lacks := d.Seams.Lacks(j); len(lacks) > 0 {
					t.Errorf("joint %s lacks %v", j.Record.ID, lacks)
				}
			}
		}
		whole[h.Number] = c.Shell > 20 && math.Abs(c.Shell-c.Whole) < 1e-9
		if c.Joints < 20 || c.Joints > 250 {
			t.Errorf("%s has %d joints", h.Number, c.Joints)
		}
	}
	if !whole["HL74-012"] || whole["HL74-013"] {
		t.Errorf("whole chains: %v", whole)
	}
	found := trace.Find(yard, "48117")
	if len(found.Hulls) != 2 || found.Hulls[0].Hull != "HL74-012" || found.Hulls[1].Hull != "HL74-013" || found.Metres < 100 {
		t.Errorf("the cast is found in %d hulls, %v m", len(found.Hulls), found.Metres)
	}
}

// A hull without any build record is told of once.
func TestOneGapWithoutABuildRecord(t *testing.T) {
	yard, ref, root := demo(t)
	h := yard.Hulls[0]
	h.Parts, h.Joints, h.Welds, h.Inspections, h.Imperfections, h.Nonconformities, h.Repairs, h.HoldPoints, h.LeakTests = nil, nil, nil, nil, nil, nil, nil, nil, nil
	if seam.Has(h) {
		t.Fatal("the hull still has a build record")
	}
	n := 0
	for _, f := range Assess(yard, h, ref, root).Findings {
		switch f.Rule {
		case "build-record":
			n++
		case "joint-welded", "inspection-extent", "lot-certificate", "part-lot":
			t.Errorf("%s is told too: %s", f.Rule, f.Says)
		}
	}
	if n != 1 {
		t.Errorf("told %d times that nothing is on record", n)
	}
}
