package record

import (
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

func TestValues(t *testing.T) {
	at := finding.Place{File: "hulls/H1/hull.toml", Line: 4}
	h := &Hull{Number: "H1"}
	h.Title = Written("launch", at)
	h.Identity.Launched = Written(Date{2026, time.March, 4}, at) // data, so not in words
	h.Panels = []Panel{{Entry: Entry{ID: "B3"}, Thickness: Written(unit.MM(8), at), Lot: Written("L1", at)}}
	h.Trials = []Trial{{Entry: Entry{ID: "T1"}, Runs: []Run{{Entry: Entry{ID: "2"}, Setting: Written("idle", at)}}}}
	y := &Yard{Builder: Builder{Name: Written("Yard", at)}, Stock: Stock{Lots: []Lot{
		{Entry: Entry{ID: "L1"}, Cast: Written("48117", at)}, {Entry: Entry{ID: "L2"}, Cast: Written("48118", at)},
	}}}
	got := map[string]string{}
	Values(y, h, func(v Value) {
		got[v.Key] = v.Text
		if v.At != at {
			t.Errorf("%s stands at %v", v.Key, v.At)
		}
	})
	want := map[string]string{"identity.launched": "2026-03-04", "title": "launch", "panel.B3.thickness_mm": "8", "panel.B3.lot": "L1", "trial.T1.run.2.setting": "idle", "yard.name": "Yard", "stock.lot.L1.cast": "48117"}
	for key, text := range want {
		if got[key] != text {
			t.Errorf("%s is %q, want %q", key, got[key], text)
		}
	}
	if len(got) != len(want) {
		t.Errorf("%d values, want %d: %v", len(got), len(want), got)
	}
}
