package scantling_test

import (
	"math"
	"strings"
	"testing"

	"hullfile/engine/material"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// Every value that the sheet asks of the boat, a panel or its alloy is one that the records or the alloys have; a name
// mistyped in the sheet would leave every panel not shown.
func TestSheetAsksForWhatRecordsHave(t *testing.T) {
	r := shipped(t)
	sheet, _ := r.lib.Sheet("iso-12215-5-2008")
	metal, _ := r.alloys.Find("5083-H116")
	of := metal.For(material.Asked{Source: sheet.Work, Thickness: 6, Form: "plate"})
	asked := 0
	for _, sc := range sheet.Scopes {
		for _, in := range sc.Inputs {
			kind, key, _ := strings.Cut(in.From, ".")
			known := false
			switch kind {
			case "boat":
				_, known = record.Lookup(&record.Boat{}, key)
			case "panel":
				_, known = record.Lookup(&record.Panel{}, key)
			case "alloy":
				_, known = of.Lookup(in.From)
			default:
				continue
			}
			asked++
			if !known {
				t.Errorf("%s of scope %s: %s is no record value", in.Symbol, sc.Name, in.From)
			}
		}
	}
	if asked < 20 {
		t.Errorf("only %d inputs were held against the records", asked)
	}
}

// Where one formula hands over to the next, both give the same, or the step between them is the rule's own.
func TestJoints(t *testing.T) {
	r := shipped(t)
	sheet, _ := r.lib.Sheet("iso-12215-5-2008")
	value := func(symbol string, put map[string]float64) float64 {
		given := method.GivenMap{}
		for name, v := range put {
			given[name] = method.Quantity{Number: v, Unit: "mm"}
		}
		craft, err := sheet.Evaluate("craft", method.GivenMap{}, nil)
		if err != nil {
			t.Fatal(err)
		}
		w, err := sheet.Evaluate("panel", given, craft)
		if err != nil {
			t.Fatal(err)
		}
		v, ok := w.Value(symbol)
		if !ok {
			t.Fatalf("%s has no value for %v", symbol, put)
		}
		return v
	}
	k2 := func(long float64) float64 {
		return value("k_2", map[string]float64{"panel.short_side_mm": 1000, "panel.long_side_mm": long})
	}
	kC := func(camber float64) float64 {
		return value("k_C", map[string]float64{"panel.short_side_mm": 1000, "panel.long_side_mm": 2000, "panel.camber_mm": camber})
	}
	rows := []struct {
		where        string
		below, above float64
		jump         float64
	}{
		{"ISO 12215-5:2008 10.1.2, k2 at l/b = 2", k2(2000), k2(2000.001), 0.0027},
		{"ISO 12215-5:2008 10.1.3, kC at c/b = 0.03", kC(30), kC(30.001), 0.0002},
		{"ISO 12215-5:2008 10.1.3, kC at c/b = 0.18", kC(180), kC(180.001), 0.0007},
	}
	for _, row := range rows {
		if d := math.Abs(row.above - row.below); d > row.jump {
			t.Errorf("%s: %v and %v differ by %v", row.where, row.below, row.above, d)
		}
	}
	if k2(1000) != 0.308 {
		t.Errorf("ISO 12215-5:2008 10.1.2: k2 of a square is not less than 0.308, got %v", k2(1000))
	}
}
