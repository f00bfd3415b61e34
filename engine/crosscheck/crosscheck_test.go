package crosscheck

import (
	"strings"
	"testing"
	"time"

	"hullfile/engine/document"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

var line int

func put[T any](v T) record.Val[T] {
	line++
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: line})
}

func day(month time.Month, d int) record.Val[record.Date] {
	return put(record.Date{Year: 2026, Month: month, Day: d})
}

// orderly is a yard of two hulls of which nothing is to be said.
func orderly() *record.Yard {
	h := &record.Hull{Number: "H1"}
	h.Identity = record.Identity{HIN: put("ZZ-ABC00001A626"), State: put("finished"), KeelLaid: day(1, 5), Launched: day(4, 1), Handed: day(5, 1)}
	h.Issue = record.Issue{Number: put(1), Date: day(5, 2), By: put("mo")}
	h.Boat = record.Boat{
		LengthOverall: put(unit.M(7.9)), LengthHull: put(unit.M(7.4)), LengthWL: put(unit.M(6.6)), BeamHull: put(unit.M(2.5)), BeamChine: put(unit.M(2.1)),
		LightMass: put(unit.KG(2000)), LoadedMass: put(unit.KG(2700)), FuelTank: put(unit.Litre(300)), FuelUsable: put(unit.Litre(285)),
	}
	h.Weighings = []record.Weighing{{Entry: record.Entry{ID: "W1", At: put(0).At}, Date: day(3, 1), By: put("mo"), Instrument: put("cells"), Document: put("cert")}}
	h.Trials = []record.Trial{{Entry: record.Entry{ID: "T1", At: put(0).At}, Date: day(4, 10), By: put("mo"), Mass: put(unit.KG(2300)), Document: put("cert")}}
	h.Documents = []record.Document{{Entry: record.Entry{ID: "cert"}, Date: day(2, 1)}}
	other := &record.Hull{Number: "H2"}
	other.Identity = record.Identity{HIN: put("ZZ-ABC00002A626")}
	return &record.Yard{
		Builder: record.Builder{
			People:      []record.Person{{Entry: record.Entry{ID: "mo"}, Role: put("weights"), Since: day(1, 1), Until: day(12, 31)}},
			Instruments: []record.Instrument{{Entry: record.Entry{ID: "cells"}, Calibrated: day(1, 1), Due: day(12, 31)}},
		},
		Hulls: []*record.Hull{h, other},
	}
}

// papers holds every document of a hull as present.
func papers(h *record.Hull) *document.Result {
	r := &document.Result{}
	for i := range h.Documents {
		r.Documents = append(r.Documents, document.Document{Record: &h.Documents[i], Present: true, Matches: true, Bytes: 9})
	}
	return r
}

func TestSignedSheets(t *testing.T) {
	rows := []struct {
		where string
		alter func(h *record.Hull, p *document.Result)
		says  string
	}{
		{"no sheet named", func(h *record.Hull, p *document.Result) {
			h.Trials[0].Document, h.Weighings[0].Document = record.Val[string]{}, record.Val[string]{}
		}, "no signed sheet is named"},
		{"named and not there", func(h *record.Hull, p *document.Result) { p.Documents[0].Present = false }, "document cert is named, but its file is not there"},
		{"named and empty", func(h *record.Hull, p *document.Result) { p.Documents[0].Bytes = 0 }, "not there or not the one on record"},
		{"named and altered", func(h *record.Hull, p *document.Result) { p.Documents[0].Matches = false }, "not the one on record"},
	}
	for _, r := range rows {
		y := orderly()
		h := y.Hulls[0]
		p := papers(h)
		r.alter(h, p)
		found := 0
		for _, c := range Assess(y, h, p).Checks {
			if c.Rule != "trial-sheet" && c.Rule != "weighing-sheet" {
				continue
			}
			found++
			if c.Standing != finding.NotShown || !strings.Contains(c.Says, r.says) || c.Settle == "" {
				t.Errorf("%s: %+v", r.where, c)
			}
		}
		if found != 2 {
			t.Errorf("%s: %d sheets looked for, want 2", r.where, found)
		}
	}
}

func TestAnOrderlyYard(t *testing.T) {
	y := orderly()
	r := Assess(y, y.Hulls[0], papers(y.Hulls[0]))
	if len(r.Findings) != 0 {
		t.Errorf("findings %v", r.Findings)
	}
	if len(r.Checks) != 5 {
		t.Fatalf("checks %v", r.Checks)
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s: %s, %s", c.Rule, c.Standing, c.Says)
		}
	}
}

func TestContradictions(t *testing.T) {
	rows := []struct {
		where   string
		alter   func(y *record.Yard, h *record.Hull)
		rule    string
		subject string
		says    string
	}{
		{"one number on two hulls, written differently", func(y *record.Yard, h *record.Hull) { y.Hulls[1].Identity.HIN = put("zz abc00001-a626") }, "hin-twice", "identity", "hull H1 and hull H2"},
		{"trial after the issue", func(y *record.Yard, h *record.Hull) { h.Trials[0].Date = day(5, 3) }, "after-issue", "trial T1", "3 May 2026"},
		{"handed over after the issue", func(y *record.Yard, h *record.Hull) { h.Identity.Handed = day(5, 3) }, "after-issue", "identity", "handed over on 3 May 2026"},
		{"document after the issue", func(y *record.Yard, h *record.Hull) { h.Documents[0].Date = day(6, 1) }, "after-issue", "document cert", "1 June 2026"},
		{"trial before the launch", func(y *record.Yard, h *record.Hull) { h.Trials[0].Date = day(3, 31) }, "days-in-order", "trial T1", "launched on 1 April 2026"},
		{"weighing before building", func(y *record.Yard, h *record.Hull) { h.Weighings[0].Date = day(1, 4) }, "days-in-order", "weighing W1", "building began on 5 January 2026"},
		{"weighed before the role", func(y *record.Yard, h *record.Hull) { y.Builder.People[0].Since = day(3, 2) }, "person-in-role", "weighing W1", "only since 2 March 2026"},
		{"issued after the role", func(y *record.Yard, h *record.Hull) { y.Builder.People[0].Until = day(5, 1) }, "person-in-role", "issue", "only until 1 May 2026"},
		{"handed over in build", func(y *record.Yard, h *record.Hull) { h.Identity.State = put("in build") }, "state", "identity", "handed over"},
		{"a design on trial", func(y *record.Yard, h *record.Hull) { h.Identity.State = put("design") }, "state", "identity", "trial T1"},
		{"usable above the tank", func(y *record.Yard, h *record.Hull) { h.Boat.FuelUsable = put(unit.Litre(301)) }, "principal-data", "boat", "boat.fuel_usable_l is 301 l"},
		{"light above loaded", func(y *record.Yard, h *record.Hull) { h.Boat.LoadedMass = put(unit.KG(1990)) }, "principal-data", "boat", "boat.light_mass_kg"},
		{"waterline above hull", func(y *record.Yard, h *record.Hull) { h.Boat.LengthWL = put(unit.M(7.5)) }, "principal-data", "boat", "7.50 m"},
		{"hull above overall", func(y *record.Yard, h *record.Hull) { h.Boat.LengthOverall = put(unit.M(7)) }, "principal-data", "boat", "boat.length_hull_m"},
		{"chine above beam", func(y *record.Yard, h *record.Hull) { h.Boat.BeamChine = put(unit.M(2.6)) }, "principal-data", "boat", "2.60 m"},
		{"trial below the light craft", func(y *record.Yard, h *record.Hull) { h.Trials[0].Mass = put(unit.KG(1900)) }, "trial-mass", "trial T1", "1\u00a0900 kg"},
	}
	for _, r := range rows {
		y := orderly()
		r.alter(y, y.Hulls[0])
		found := false
		for _, f := range Assess(y, y.Hulls[0], papers(y.Hulls[0])).Findings {
			if f.Rule == r.rule && f.Subject == r.subject && strings.Contains(f.Says, r.says) {
				found = true
				if f.Kind != finding.Contradiction || f.Settle == "" || len(f.Places) < 2 {
					t.Errorf("%s: %+v", r.where, f)
				}
			}
		}
		if !found {
			t.Errorf("%s: no %s on %s with %q in %v", r.where, r.rule, r.subject, r.says, Assess(y, y.Hulls[0], papers(y.Hulls[0])).Findings)
		}
	}
}

func TestSameDayIsInOrder(t *testing.T) {
	y := orderly()
	h := y.Hulls[0]
	h.Trials[0].Date, h.Identity.Launched, h.Identity.Handed = h.Issue.Date, h.Issue.Date, h.Issue.Date
	if all := Assess(y, h, papers(h)).Findings; len(all) != 0 {
		t.Errorf("everything on the day of the issue: %v", all)
	}
}

func TestGaps(t *testing.T) {
	rows := []struct {
		where string
		state string
		want  map[string]finding.Standing
	}{
		{"finished", "finished", map[string]finding.Standing{"hull-identified": finding.NotShown, "file-issued": finding.NotShown}},
		{"state not written", "", map[string]finding.Standing{"hull-identified": finding.NotShown, "file-issued": finding.NotShown}},
		{"in build", "in build", map[string]finding.Standing{}},
	}
	for _, r := range rows {
		h := &record.Hull{Number: "H1"}
		if r.state != "" {
			h.Identity.State = put(r.state)
		}
		got := map[string]finding.Standing{}
		for _, c := range Assess(&record.Yard{Hulls: []*record.Hull{h}}, h, papers(h)).Checks {
			got[c.Rule] = c.Standing
		}
		if len(got) != len(r.want) {
			t.Errorf("%s: %v, want %v", r.where, got, r.want)
		}
		for rule, standing := range r.want {
			if got[rule] != standing {
				t.Errorf("%s: %s is %s, want %s", r.where, rule, got[rule], standing)
			}
		}
	}
}

func TestHalfAnIssueIsAGapInBuildToo(t *testing.T) {
	h := &record.Hull{Number: "H1"}
	h.Identity.State, h.Issue.Number = put("in build"), put(1)
	r := Assess(&record.Yard{Hulls: []*record.Hull{h}}, h, papers(h))
	if len(r.Checks) != 1 || strings.Join(r.Checks[0].Missing, " ") != "issue.date issue.by" {
		t.Errorf("%+v", r.Checks)
	}
}
