package scantling_test

import (
	"io/fs"
	"os"
	"testing"

	"hullfile/engine/grid"
	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/unit"
)

// whole is every shipped sheet, for questions that need more than one.
func whole(t testing.TB) rig {
	t.Helper()
	content := os.DirFS("../../content")
	methods, err := fs.Sub(content, "methods")
	if err != nil {
		t.Fatal(err)
	}
	lib, err := method.ReadShipped(methods).Library(nil)
	if err != nil {
		t.Fatalf("shipped sheets: %v", err)
	}
	table, err := material.Load(content)
	if err != nil {
		t.Fatal(err)
	}
	return rig{lib, table}
}

// others are the sheets that stand beside the governing one.
var others = []string{"light-craft-class-2011", "european-high-speed", "open-literature-planing"}

// practiceBoat is the 7 m boat of common practice with what the further sheets ask for.
func practiceBoat() *record.Hull {
	h := boat("C")
	h.Boat.Draught = put(unit.M(0.4), 10)
	h.Rules.Also = put(others, 11)
	h.Rules.Service, h.Rules.Area, h.Rules.Sea = put("patrol", 12), put("R3", 13), put("moderate", 14)
	h.Rules.Wave, h.Rules.Trim, h.Rules.OneOf = put(unit.M(0.6), 15), put(unit.Deg(4), 16), put(unit.Ratio(10), 17)
	return h
}

// flatBar puts a flat bar on record and gives its key.
func flatBar(h *record.Hull, height, web unit.MM) string {
	s := record.Section{Shape: put("flat bar", 40), Height: put(height, 41), Web: put(web, 42), Alloy: put("5083-H116", 43)}
	s.ID, s.At = unit.Text(height, 0)+"x"+unit.Text(web, 0), at(39)
	h.Sections = append(h.Sections, s)
	return s.ID
}

// stringer is a bottom stringer forward on 6 mm plate.
func stringer(id, section string) record.Member {
	m := record.Member{
		Kind: put("bottom stringer", 51), Role: put("secondary", 52), Zone: put("bottom", 53), X: put(unit.M(4.27), 54), Z: put(unit.M(-0.1), 55),
		HullTop: put(unit.M(0.75), 56), Span: put(unit.MM(500), 57), Spacing: put(unit.MM(200), 58), Ends: put("fixed", 59), Deadrise: put(unit.Deg(19), 60),
		Section: put(section, 61), Attached: put(unit.MM(6), 62), AttachedAlloy: put("5083-H116", 63),
	}
	m.ID, m.At = id, at(50)
	return m
}

// frame is a bottom frame from keel to chine.
func frame(id, section string) record.Member {
	m := stringer(id, section)
	m.Kind, m.Role = put("bottom frame", 51), put("primary", 52)
	m.Span, m.Spacing = put(unit.MM(1058), 57), put(unit.MM(500), 58)
	return m
}

func (r rig) judge(h *record.Hull, panels []record.Panel, members []record.Member) scantling.Result {
	return scantling.Assess(scantling.Input{Hull: h, Library: r.lib, Alloys: r.alloys, Grid: &grid.Result{Panels: panels, Members: members}})
}
