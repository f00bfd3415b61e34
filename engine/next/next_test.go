package next

import (
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func written[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hull.toml", Line: 1})
}

// wholeHull is a hull of which every part is there.
func wholeHull() *record.Hull {
	h := &record.Hull{Folder: "hulls/7"}
	b := &h.Boat
	b.LengthHull.Set, b.BeamHull.Set, b.LengthWL.Set, b.BeamChine.Set, b.Deadrise.Set = true, true, true, true, true
	b.Draught.Set, b.LoadedMass.Set, b.Speed.Set, b.Category.Set, b.Persons.Set = true, true, true, true, true
	h.Stations, h.Platings, h.Sections = make([]record.Station, 3), make([]record.Plating, 1), make([]record.Section, 1)
	h.Frames, h.Stringers, h.Weights = make([]record.Frame, 1), make([]record.Stringer, 1), make([]record.Weight, 1)
	h.Weighings, h.Trials = make([]record.Weighing, 1), []record.Trial{{Runs: make([]record.Run, 2)}}
	h.Parts, h.Joints, h.Welds, h.Inspections = make([]record.Part, 1), make([]record.Joint, 1), make([]record.Weld, 1), make([]record.Inspection, 1)
	h.Identity.HIN, h.Plate.MaxLoad.Set, h.Plate.Persons.Set, h.Plate.Category.Set = written("ZZ"), true, true, true
	h.Issue.Number, h.Issue.Date.Set, h.Issue.By, h.Documents = written(1), true, written("ab"), make([]record.Document, 1)
	return h
}

// Each row adds what comes before the row above it, so that the order is held step by step; own arithmetic.
func TestOfTakesTheGravestFirst(t *testing.T) {
	thin := finding.Check{Rule: "plating-thickness", Subject: "panel B3", Standing: finding.Short}
	found := func(kind finding.Kind, rule, subject string) finding.Finding {
		return finding.Finding{Kind: kind, Rule: rule, Subject: subject}
	}
	h := wholeHull()
	in := Input{Hull: h, Safety: []finding.Check{thin}}
	steps := []struct {
		add     func()
		rank    Rank
		subject string
	}{
		{func() {}, Nothing, "boat"},
		{func() { in.Findings = append(in.Findings, found(finding.Doubt, "r", "limits")) }, Doubtful, "limits"},
		{func() { in.Findings = append(in.Findings, found(finding.Gap, "r", "look L1")) }, Missing, "look L1"},
		{func() { h.Inspections = nil }, NotBegun, "metal and seams"},
		{func() { h.Weights = nil }, NotBegun, "weights"},
		{func() { in.Findings = append(in.Findings, found(finding.Shortfall, "r", "trial T1")) }, Falls, "trial T1"},
		{func() { in.Findings = append(in.Findings, found(finding.Contradiction, "r", "hours 4")) }, Contradicts, "hours 4"},
		{func() { in.Findings = append(in.Findings, found(finding.Contradiction, "r", "weighing W1")) }, Contradicts, "weighing W1"},
		{func() { in.Findings = append(in.Findings, found(finding.Shortfall, thin.Rule, "panel B4")) }, Contradicts, "weighing W1"},
		{func() { in.Findings = append(in.Findings, found(finding.Shortfall, thin.Rule, thin.Subject)) }, Unsafe, "panel B3"},
		{func() { h.Stringers = nil }, Frameless, "frames and stringers"},
		{func() { h.Stations = h.Stations[:2] }, Frameless, "shape"},
		{func() { h.Stations = nil }, Frameless, "shape"},
		{func() { h.Boat.Speed.Set = false }, Principal, "principal data"},
	}
	for i, s := range steps {
		s.add()
		got := Of(in)
		if got.Rank != s.rank || got.Subject != s.subject || got.Why == "" || got.Settle == "" && got.Rank < Unsafe {
			t.Errorf("step %d: %d %q (why %q, do %q), want %d %q", i, got.Rank, got.Subject, got.Why, got.Settle, s.rank, s.subject)
		}
	}
}

func TestOfCountsFindingsAlike(t *testing.T) {
	f := finding.Finding{Kind: finding.Shortfall, Rule: "frame-strength", Subject: "frame 1"}
	g := f
	g.Subject = "frame 2"
	got := Of(Input{Hull: wholeHull(), Findings: []finding.Finding{f, g, {Kind: finding.Gap, Rule: f.Rule}}})
	if got.Alike != 2 || got.Subject != "frame 1" {
		t.Errorf("%d alike, first %q; want 2 and frame 1", got.Alike, got.Subject)
	}
}

// Panels and members that are listed by hand need no lines to be judged.
func TestPartsByHandAreThere(t *testing.T) {
	h := wholeHull()
	h.Stations, h.Platings, h.Sections, h.Frames, h.Stringers = nil, nil, nil, nil, nil
	h.Panels, h.Members = make([]record.Panel, 1), make([]record.Member, 1)
	parts := Parts(h)
	if parts[2].State != Done || parts[3].State != Done || parts[1].State != NotYet || parts[1].File != "hulls/7/lines.csv" {
		t.Errorf("plate %s, framing %s, shape %s in %s", parts[2].State, parts[3].State, parts[1].State, parts[1].File)
	}
	f := finding.Finding{Kind: finding.Shortfall, Rule: "r", Subject: "trial T1"}
	if got := Of(Input{Hull: h, Findings: []finding.Finding{f}}); got.Rank != Falls {
		t.Errorf("rank %d, want %d: nothing is derived from lines here", got.Rank, Falls)
	}
}

func TestPartsNameWhatIsMissing(t *testing.T) {
	h := wholeHull()
	h.Boat.Persons.Set = false
	if p := Parts(h)[0]; p.State != Begun || len(p.Missing) != 1 || p.Missing[0] != "boat.persons" {
		t.Errorf("%s, missing %v; want begun without boat.persons", p.State, p.Missing)
	}
	for _, p := range Parts(&record.Hull{}) {
		if p.State != NotYet {
			t.Errorf("%s of an empty record is %s", p.Name, p.State)
		}
	}
}
