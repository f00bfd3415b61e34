package engine

import (
	"encoding/json"
	"reflect"
	"slices"
	"testing"

	"hullfile/engine/record"
)

// The dossier of each hull of the demo is the same with all other hulls and with only what Near takes from them. The second
// is made a twin of the first, so that each kind of thing that is taken is there.
func TestNearSufficesForTheDossier(t *testing.T) {
	yard, ref, root := demo(t)
	first, second := yard.Hulls[0], yard.Hulls[1]
	second.Design, second.Identity.HIN, second.Hours, second.Looks = first.Design, first.Identity.HIN, first.Hours, first.Looks
	second.Welds, second.Parts = append(second.Welds, first.Welds...), append(second.Parts, first.Parts...)
	second.Boat.LoadedMass, second.Boat.Power = first.Boat.LoadedMass, first.Boat.Power
	neighbours, rests := NewNeighbours(yard), 0
	for _, h := range yard.Hulls {
		near := neighbours.Near(h)
		text, err := json.Marshal(near)
		if err != nil {
			t.Fatal(err)
		}
		var read []Neighbour
		if err := json.Unmarshal(text, &read); err != nil {
			t.Fatal(err)
		}
		alone := *yard
		alone.Hulls = []*record.Hull{h}
		joined, err := Rejoin(&alone, read)
		if err != nil {
			t.Fatal(err)
		}
		want, got, without := Assess(yard, h, ref, root), Assess(joined, h, ref, root), Assess(&alone, h, ref, root)
		for _, pair := range [][2]any{{want.Checks, got.Checks}, {want.Findings, got.Findings}, {want.Assumptions, got.Assumptions}, {want.Hours.Pool, got.Hours.Pool}, {want.Records, got.Records}, {want.Identity.Findings, got.Identity.Findings}} {
			if !reflect.DeepEqual(pair[0], pair[1]) {
				t.Errorf("hull %s: %T differs with what is near alone", h.Number, pair[0])
			}
		}
		if !reflect.DeepEqual(want.Findings, without.Findings) || !reflect.DeepEqual(want.Hours.Pool, without.Hours.Pool) {
			rests++
		}
	}
	if rests < 2 {
		t.Errorf("%d hulls rest on another, want two; the test shows nothing", rests)
	}
}

// A thickness of plate that a boat does not draw on is an answer to what another thickness would change, so a file that is made
// again needs the list of thicknesses beside the stock that it encloses.
func TestPlateOfTheRestOfTheStock(t *testing.T) {
	yard, ref, root := demo(t)
	h := yard.Hulls[0]
	spare := yard.Stock.Lots[slices.IndexFunc(yard.Stock.Lots, func(l record.Lot) bool { return l.Kind.V == "plate" && l.Alloy.V == h.Platings[0].Alloy.V })]
	spare.ID, spare.Thickness.V = "spare", 7
	larger := *yard
	larger.Stock.Lots = append(slices.Clone(yard.Stock.Lots), spare)
	again := *yard
	again.Elsewhere = larger.StockedPlates()
	want, got, without := Assess(&larger, h, ref, root).Structure.WhatIfs, Assess(&again, h, ref, root).Structure.WhatIfs, Assess(yard, h, ref, root).Structure.WhatIfs
	if !reflect.DeepEqual(want, got) {
		t.Error("what would change differs with the list of thicknesses")
	}
	if reflect.DeepEqual(want, without) {
		t.Error("a thickness more changes nothing; the test shows nothing")
	}
}

func TestRejoinRefusesWhatCannotBe(t *testing.T) {
	yard := &record.Yard{Hulls: []*record.Hull{{Number: "H1"}}}
	for where, near := range map[string][]Neighbour{
		"itself":      {{Number: "H1"}},
		"twice":       {{Number: "H2"}, {Number: "H2"}},
		"no number":   {{}},
		"a day of no": {{Number: "H2", Welds: []NearWeld{{Date: "soon"}}}},
	} {
		if _, err := Rejoin(yard, near); err == nil {
			t.Errorf("%s is taken", where)
		}
	}
}
