package seam

import (
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Two years from the test and six months from the last signature: ISO 9606-2:2004 (read in a certification body's sheet). The
// days are our own.
func TestTerms(t *testing.T) {
	rows := []struct {
		where, subject string
		alter          func(y *record.Yard, h *record.Hull)
		want           finding.Standing
		until          string
		outside        int
	}{
		{"certificate held", "qualification Q", func(*record.Yard, *record.Hull) {}, finding.Met, "2026-07-02", 0},
		{"certificate ended between two welds", "qualification Q", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Date = day(7, 3) }, finding.Short, "2026-07-02", 1},
		{"on its last day", "qualification Q", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Date = day(7, 2) }, finding.Met, "2026-07-02", 0},
		{"another held", "qualification Q", func(y *record.Yard, h *record.Hull) {
			h.Welds[1].Date = day(7, 3)
			next := y.Builder.Qualifications[0]
			next.Entry, next.Tested = entry("R"), day(6, 30)
			y.Builder.Qualifications = append(y.Builder.Qualifications, next)
		}, finding.Met, "2026-07-02", 1},
		{"lot without an end", "consumable F", func(*record.Yard, *record.Hull) {}, finding.NotShown, "", 0},
		{"lot open too long", "consumable F", func(y *record.Yard, _ *record.Hull) {
			c := &y.Stock.Consumables[0]
			c.Opened, c.OpenLife, c.Expires = day(1, 2), put(10), day(12, 31)
		}, finding.Short, "2026-01-12", 2},
		{"lot within its life", "consumable F", func(y *record.Yard, _ *record.Hull) {
			c := &y.Stock.Consumables[0]
			c.Opened, c.OpenLife = day(1, 2), put(11)
		}, finding.Met, "2026-01-13", 0},
		{"procedure in use", "procedure P", func(*record.Yard, *record.Hull) {}, finding.Met, "", 0},
		{"procedure not yet valid", "procedure P", func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[0].From = day(1, 14) }, finding.Short, "", 2},
		{"gauge past its calibration", "instrument g", func(y *record.Yard, h *record.Hull) {
			y.Builder.Instruments = []record.Instrument{{Entry: entry("g"), Calibrated: day(1, 1), Due: day(1, 13)}}
			h.Inspections[0].Instrument = put("g")
		}, finding.Short, "2026-01-13", 1},
		{"gauge that nobody used", "instrument g", func(y *record.Yard, _ *record.Hull) {
			y.Builder.Instruments = []record.Instrument{{Entry: entry("g"), Calibrated: day(1, 1), Due: day(1, 13)}}
		}, "", "", 0},
		{"inspector's certificate", "inspector i", func(y *record.Yard, h *record.Hull) {
			y.Builder.Inspectors = []record.Inspector{{Entry: entry("i"), From: day(1, 1), Until: day(3, 1)}}
			h.Inspections[0].By = put("i")
		}, finding.Met, "2026-03-01", 0},
	}
	for _, r := range rows {
		y := sound()
		r.alter(y, y.Hulls[0])
		found := false
		for _, term := range linked(t, y).Terms() {
			if term.Subject != r.subject {
				continue
			}
			found = true
			until := ""
			if term.HasUntil {
				until = term.Until.ISO()
			}
			if term.Standing != r.want || until != r.until || term.Outside != r.outside || term.Says == "" {
				t.Errorf("%s: %+v, want %s until %q with %d outside", r.where, term, r.want, r.until, r.outside)
			}
		}
		if found != (r.want != "") {
			t.Errorf("%s: %s is listed: %t", r.where, r.subject, found)
		}
	}
}
