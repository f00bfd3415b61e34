package main

import (
	"encoding/json"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"hullfile/engine/compare"
)

// Two issues of the finished hull of the demo: what the second changes is told, and nothing else.
func TestTwoIssuesOfTheDemoAreCompared(t *testing.T) {
	t.Parallel()
	dir := ownDemo(t)
	yard, old := filepath.Join(dir, "yard"), filepath.Join(dir, "files", "HL74-012")
	text, ok := plain(t, filepath.Join(yard, "hulls", "HL74-012"), `sed -i 's/^number = 4$/number = 5/; s/^date   = 2026-08-07$/date   = 2026-09-01/; s/^light_mass_kg  *= .*/light_mass_kg = 2140/' hull.toml && grep -q 'light_mass_kg = 2140' hull.toml && printf 'another\n' > documents/trial-sheet-T1.pdf`)
	if !ok {
		t.Fatal(text)
	}
	said(t, statusSound, "render", yard, "-o", filepath.Join(dir, "next"), "HL74-012")
	next := filepath.Join(dir, "next", "HL74-012")
	var c compare.Comparison
	if err := json.Unmarshal([]byte(said(t, statusSound, "compare", old, next, "--json")), &c); err != nil {
		t.Fatal(err)
	}
	keys := map[string]bool{}
	for _, g := range c.Groups {
		for _, r := range g.Records {
			keys[r.What] = true
		}
		for _, p := range g.Documents {
			if p.Key != "trial-T1" || p.Says != "it is another file than before" {
				t.Errorf("paper %+v", p)
			}
		}
	}
	for _, want := range []string{"issue.number", "issue.date", "boat.light_mass_kg"} {
		if !keys[want] {
			t.Errorf("%s is not told", want)
		}
	}
	if len(keys) != 3 || c.Counts.Documents != 1 || c.Old.Issue != 4 || c.New.Issue != 5 || c.Counts.Standings == 0 {
		t.Errorf("records %v, counts %+v", keys, c.Counts)
	}
	page := filepath.Join(dir, "page")
	told := said(t, statusSound, "compare", old, next, "--page", page)
	if !strings.Contains(told, "boat.light_mass_kg: 2120 to 2140 kg, 0.9 % more") || !strings.Contains(told, "look again") {
		t.Errorf("the text: %s", told)
	}
	html, err := os.ReadFile(filepath.Join(page, "compare.html"))
	if err != nil || !strings.Contains(string(html), "boat.light_mass_kg") {
		t.Errorf("the page: %v", err)
	}
	said(t, statusFailed, "compare", old, next, "--page", page) // it is not written over
	if text := said(t, statusSound, "compare", old, old); !strings.Contains(text, "Nothing changed") {
		t.Errorf("compared with itself: %s", text)
	}
}

func TestHullsAndDesignsAreCompared(t *testing.T) {
	t.Parallel()
	dir := ownDemo(t)
	yard := filepath.Join(dir, "yard")
	if text := said(t, statusSound, "compare", "--yard", yard, "HL74-012", "HL74-013"); !strings.Contains(text, "HL74-012, issue 4 of 7 August 2026 -> HL74-013") {
		t.Errorf("two hulls: %.300s", text)
	}
	if text := said(t, statusSound, "compare", "--yard", yard, "HL74", "HL74-012", "--all"); !strings.Contains(text, "boat.light_mass_kg: 2110 to 2120 kg, 0.5 % more") {
		t.Errorf("a hull and its design: %.300s", text)
	}
	if text := said(t, statusSound, "compare", "--yard", yard, "HL74", "HL74-012"); strings.Count(text, "\n") > 60 || !strings.Contains(text, "In short.") {
		t.Errorf("more than a screen: %s", text)
	}
	if text := said(t, statusFailed, "compare", "--yard", yard, "HL74-12", "HL74-012"); !strings.Contains(text, "did you mean") {
		t.Errorf("a hull that is none: %s", text)
	}
	if text := said(t, statusFailed, "compare", yard, yard); !strings.Contains(text, "no technical file of a hull") {
		t.Errorf("a yard: %s", text)
	}
}
