package scantling_test

import (
	"io/fs"
	"os"
	"testing"
	"testing/fstest"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// at is a made-up record line.
func at(line int) finding.Place {
	return finding.Place{File: "hulls/T-1/hull.toml", Line: line, Col: 1}
}

func put[T any](v T, line int) record.Val[T] { return record.Written(v, at(line)) }

const sheetName = "iso-12215-5-2008.toml"

// rig is what every judgement needs: the shipped sheets and alloys.
type rig struct {
	lib    *method.Library
	alloys *material.Table
}

func shipped(t testing.TB) rig {
	t.Helper()
	content := os.DirFS("../../content")
	text, err := fs.ReadFile(content, "methods/"+sheetName)
	if err != nil {
		t.Fatal(err)
	}
	lib, err := method.ReadShipped(fstest.MapFS{sheetName: {Data: text}}).Library(nil)
	if err != nil {
		t.Fatalf("shipped sheet: %v", err)
	}
	table, err := material.Load(content)
	if err != nil {
		t.Fatalf("shipped alloys: %v", err)
	}
	return rig{lib, table}
}

func (r rig) assess(h *record.Hull) scantling.Result {
	return scantling.Assess(scantling.Input{Hull: h, Library: r.lib, Alloys: r.alloys})
}

// boat is the 7 m plate boat of common practice; the figures are no real boat's.
func boat(category string) *record.Hull {
	h := &record.Hull{Number: "T-1"}
	h.Boat = record.Boat{
		LengthHull: put(unit.M(7), 2), LengthWL: put(unit.M(6.1), 3), BeamChine: put(unit.M(2), 4),
		Deadrise: put(unit.Deg(19), 5), LoadedMass: put(unit.KG(2400), 6), Speed: put(unit.Knot(38), 7),
		Category: put(category, 8),
	}
	h.Rules.Structure = put("iso-12215-5-2008", 9)
	return h
}

// bottom is a bottom panel forward; the thickness stands on line 20.
func bottom(id string, thickness unit.MM) record.Panel {
	p := record.Panel{
		Zone: put("bottom", 21), X: put(unit.M(4.27), 22), Short: put(unit.MM(200), 23), Long: put(unit.MM(500), 24),
		Thickness: put(thickness, 20), Alloy: put("5083-H116", 25), Edges: put("welded", 26),
	}
	p.ID, p.At = id, at(19)
	return p
}

func side(id string, thickness unit.MM) record.Panel {
	p := bottom(id, thickness)
	p.Zone = put("side", 21)
	p.Z, p.HullTop = put(unit.M(0.30), 27), put(unit.M(0.75), 28)
	return p
}

func house(id, face, walked string) record.Panel {
	p := bottom(id, 4)
	p.Zone, p.Face = put("superstructure", 21), put(face, 29)
	if walked != "" {
		p.Walked = put(walked == "true", 30)
	}
	return p
}

// judgeOne judges a hull with one panel.
func (r rig) judgeOne(t testing.TB, h *record.Hull, p record.Panel) (scantling.Panel, finding.Check) {
	t.Helper()
	h.Panels = []record.Panel{p}
	out := r.assess(h)
	if len(out.Panels) != 1 || len(out.Checks) != 1 {
		t.Fatalf("one panel gave %d results and %d checks", len(out.Panels), len(out.Checks))
	}
	return out.Panels[0], out.Checks[0]
}
