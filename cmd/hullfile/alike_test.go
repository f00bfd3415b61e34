package main

import (
	"testing"

	"hullfile/engine/finding"
)

func TestToldOnce(t *testing.T) {
	a, b := finding.Place{File: "a.toml", Line: 1}, finding.Place{File: "a.toml", Line: 2}
	all := []finding.Finding{
		{Subject: "condition loaded", Says: "no place for people", Settle: "write it", Places: []finding.Place{a}},
		{Subject: "condition light", Says: "no place for people", Places: []finding.Place{a}},
		{Subject: "condition loaded", Says: "no place for people", Settle: "write it as [crew_area.NAME]", Places: []finding.Place{a, b}},
	}
	got := toldOnce(all)
	if len(got) != 2 || got[0].times != 2 || got[1].times != 1 {
		t.Fatalf("%+v, want two, the first told twice", got)
	}
	if len(got[0].Places) != 2 || got[0].Settle != all[2].Settle {
		t.Errorf("places %v, settle %q", got[0].Places, got[0].Settle)
	}
	if len(all[0].Places) != 1 {
		t.Errorf("the findings were changed: %v", all[0].Places)
	}
}
