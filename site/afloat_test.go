package site

import (
	"strings"
	"testing"

	"hullfile/engine/hydrostatics"
	"hullfile/engine/loading"
	"hullfile/engine/stability"
)

// afloatLeaf is a page of a hull of which only some conditions are known.
func afloatLeaf(t *testing.T, conditions ...loading.Condition) *leaf {
	t.Helper()
	job := emptyJob(t)
	o := job.open(job.Hulls[0], newShelf(job.Yard))
	o.dossier = o.reckon()
	o.dossier.Loading.Conditions = conditions
	p, err := newPress(job)
	if err != nil {
		t.Fatal(err)
	}
	b := newBook(p, o, nil)
	return b.leaf(b.sectionOf(afloatPath))
}

// A condition that lacks a part has no mass: what is there of it would be taken for the mass of the boat.
func TestNoMassOfHalfACondition(t *testing.T) {
	half := loading.Condition{ID: "loaded", Title: "loaded and ready", Kind: "loaded ready", Mass: 633, Why: "not reckoned: weight x", Parts: []loading.Part{{Name: "people", Mass: 450}}}
	whole := loading.Condition{ID: "light", Title: "light craft", Mass: 900, Whole: true, Centre: hydrostatics.Vector{X: 2}}
	page, err := afloatLeaf(t, half, whole).afloatPage()
	if err != nil {
		t.Fatal(err)
	}
	if got := page.Conditions[0].Mass; got.Text != "" || !strings.Contains(got.Why, "weight x") {
		t.Errorf("mass of half a condition: %+v", got)
	}
	if page.Parts[0].Sum.Mass != "" || page.Parts[1].Sum.Mass != "900" || page.Conditions[1].Mass.Text != "900" {
		t.Errorf("sums %+v and %+v", page.Parts[0].Sum, page.Parts[1].Sum)
	}
	if page.Says.Title != "" || page.Says.Why == "" || page.Says.Conditions != 0 || page.Says.Of != 2 {
		t.Errorf("answer %+v", page.Says)
	}
}

// Two conditions of one name have one anchor between them: the first has it.
func TestConditionsOfOneName(t *testing.T) {
	page, err := afloatLeaf(t, loading.Condition{ID: "loaded", Title: "a"}, loading.Condition{ID: "loaded", Title: "b"}).afloatPage()
	if err != nil {
		t.Fatal(err)
	}
	if page.Parts[0].ID == "" || page.Parts[1].ID != "" {
		t.Errorf("anchors %q and %q", page.Parts[0].ID, page.Parts[1].ID)
	}
}

func TestWhatIfTellsWhereACheckTurns(t *testing.T) {
	p := whatIfPart(&stability.WhatIf{Name: "persons", Base: 2, Rows: []stability.WhatRow{{Value: 2, Margins: []float64{3.24, 0.11}}, {Value: 3, Margins: []float64{-90, -0.02}}},
		Turns: []stability.Turn{{Name: "heel", Unit: "°", At: 2}, {Name: "height", Unit: "m", Never: true}}})
	if p.Heads[0].Turns != "reached up to 2" || p.Heads[1].Turns != "reached over the whole range" {
		t.Errorf("heads %+v", p.Heads)
	}
	if !p.Rows[0].Here || p.Rows[1].Here {
		t.Error("the boat as it is stands at 2")
	}
	if c := p.Rows[0].Cells; c[0].Left != "+3.2" || c[1].Left != "+0.110" || c[0].Short {
		t.Errorf("cells %+v", c)
	}
	if c := p.Rows[1].Cells; c[0].Left != "no rest" || !c[0].Short || !c[1].Short {
		t.Errorf("cells %+v", c)
	}
}

func TestSpokenSubjects(t *testing.T) {
	for in, want := range map[string]string{"heel_test H_1": "heel test H_1", "boat": "boat", "panel B3": "panel B3", "": ""} {
		if got := spoken(in); got != want {
			t.Errorf("%q is said as %q, want %q", in, got, want)
		}
	}
}
