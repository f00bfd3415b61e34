package engine

import (
	"testing"

	"github.com/BurntSushi/toml"

	"hullfile/engine/finding"
)

// planted is one thing that the demo yard is made to show.
type planted struct {
	Hull, Kind, Rule, Subject, Why, Record string
}

// The demo shows everything that was planted in it, at the record that carries it, and no contradiction, shortfall or gap
// besides. Doubts are held one way only: recalled formulas and ranges give doubts on every hull.
func TestTheDemoShowsWhatWasPlanted(t *testing.T) {
	var list struct{ Planted []planted }
	if _, err := toml.DecodeFile("../testdata/demo-planted.toml", &list); err != nil {
		t.Fatal(err)
	}
	if len(list.Planted) < 10 {
		t.Fatalf("only %d planted", len(list.Planted))
	}
	yard, ref, root := demo(t)
	wanted := map[planted]int{}
	for _, p := range list.Planted {
		wanted[planted{Hull: p.Hull, Kind: p.Kind, Rule: p.Rule, Subject: p.Subject}]++
	}
	found := map[planted]int{}
	files := map[planted]map[string]bool{}
	for _, h := range yard.Hulls {
		for _, f := range Assess(yard, h, ref, root).Findings {
			key := planted{Hull: h.Number, Kind: string(f.Kind), Rule: f.Rule, Subject: f.Subject}
			found[key]++
			if files[key] == nil {
				files[key] = map[string]bool{}
			}
			for _, p := range f.Places {
				files[key][p.File] = true
			}
			if wanted[key] == 0 && f.Kind != finding.Doubt {
				t.Errorf("not planted: %s: %s %s on %s: %s", h.Number, f.Kind, f.Rule, f.Subject, f.Says)
			}
		}
	}
	for _, p := range list.Planted {
		key := planted{Hull: p.Hull, Kind: p.Kind, Rule: p.Rule, Subject: p.Subject}
		switch {
		case found[key] == 0:
			t.Errorf("not shown: %s: %s %s on %s, planted because %s", p.Hull, p.Kind, p.Rule, p.Subject, p.Why)
		case p.Record != "" && !files[key][p.Record]:
			t.Errorf("%s: %s on %s does not point at %s but at %v", p.Hull, p.Rule, p.Subject, p.Record, files[key])
		}
	}
	for key, n := range found {
		if kind := finding.Kind(key.Kind); kind != finding.Doubt && wanted[key] > 0 && n != wanted[key] {
			t.Errorf("%v: shown %d times, planted %d times", key, n, wanted[key])
		}
	}
}
