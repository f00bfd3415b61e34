package calibration

import (
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func day(d int) record.Val[record.Date] {
	return record.Written(record.Date{Year: 2026, Month: time.May, Day: d}, finding.Place{File: "yard.toml", Line: d})
}

func TestCheck(t *testing.T) {
	var none record.Val[record.Date]
	tool := func(from, until record.Val[record.Date]) *record.Builder {
		return &record.Builder{Instruments: []record.Instrument{{Entry: record.Entry{ID: "cell-1"}, Calibrated: from, Due: until}}}
	}
	rows := []struct {
		where string
		b     *record.Builder
		named bool
		day   int
		want  finding.Standing
		says  string
	}{
		{"own days: inside", tool(day(1), day(20)), true, 10, finding.Met, "was in calibration"},
		{"own days: on the first day", tool(day(1), day(20)), true, 1, finding.Met, "was in calibration"},
		{"own days: on the last day", tool(day(1), day(20)), true, 20, finding.Met, "was in calibration"},
		{"own days: after the end", tool(day(1), day(20)), true, 21, finding.Short, "ended on 20 May 2026"},
		{"own days: before the calibration", tool(day(5), day(20)), true, 4, finding.NotShown, "after it"},
		{"own days: no end written", tool(day(1), none), true, 10, finding.NotShown, "not on record"},
		{"own days: instrument unknown", &record.Builder{}, true, 10, finding.NotShown, "cell-1 is not on record"},
		{"own days: no builder", nil, true, 10, finding.NotShown, "cell-1 is not on record"},
		{"own days: none named", tool(day(1), day(20)), false, 10, finding.NotShown, "no instrument is named"},
	}
	for _, r := range rows {
		u := Use{Subject: "weighing W1", Key: "weighing.W1.instrument", Day: day(r.day)}
		if r.named {
			u.Instrument = record.Written("cell-1", finding.Place{File: "hull.toml", Line: 3})
		}
		got := Check(r.b, u)
		if got.Standing != r.want || !strings.Contains(got.Says, r.says) {
			t.Errorf("%s: %s, %q; want %s, %q", r.where, got.Standing, got.Says, r.want, r.says)
		}
		if got.Standing != finding.Met && got.Settle == "" {
			t.Errorf("%s: nothing said that would settle it", r.where)
		}
	}
}

func TestMissingDaysAreNamed(t *testing.T) {
	b := &record.Builder{Instruments: []record.Instrument{{Entry: record.Entry{ID: "cell-1"}, Calibrated: day(1)}}}
	u := Use{Instrument: record.Written("cell-1", finding.Place{}), Day: day(2)}
	if got := Check(b, u).Missing; len(got) != 1 || got[0] != "instrument.cell-1.due" {
		t.Errorf("missing %v, want instrument.cell-1.due", got)
	}
}
