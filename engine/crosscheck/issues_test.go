package crosscheck

import (
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Dates and numbers of own making.
func TestIssuesAreInOrder(t *testing.T) {
	at := finding.Place{File: "hull.toml", Line: 1}
	day := func(month, d int) record.Val[record.Date] {
		return record.Written(record.Date{Year: 2026, Month: time.Month(month), Day: d}, at)
	}
	past := func(number int, on record.Val[record.Date]) record.PastIssue {
		return record.PastIssue{Number: record.Written(number, at), Date: on}
	}
	rows := []struct {
		where string
		past  []record.PastIssue
		want  []string
	}{
		{"in order", []record.PastIssue{past(1, day(1, 5)), past(2, day(2, 5))}, nil},
		{"two on one day", []record.PastIssue{past(1, day(2, 5)), past(2, day(2, 5))}, nil},
		{"numbers go down", []record.PastIssue{past(2, day(1, 5)), past(1, day(2, 5))}, []string{"issue 1 is listed after issue 2"}},
		{"days go back", []record.PastIssue{past(1, day(2, 5)), past(2, day(1, 5))}, []string{"issue 2 is of 5 January 2026, before issue 1 of 5 February 2026"}},
		{"later than the file", []record.PastIssue{past(1, day(1, 5)), past(2, day(4, 1))}, []string{"before its earlier issue 2"}},
		{"a number of its own", []record.PastIssue{past(1, day(1, 5)), past(2, day(2, 5)), past(3, day(2, 6))}, []string{"the file is issue 3"}},
		{"one left out", []record.PastIssue{past(2, day(2, 5))}, []string{"not on record: 1"}},
		{"none on record", nil, []string{"not on record: 1, 2"}},
	}
	for _, row := range rows {
		h := &record.Hull{}
		h.Issue = record.Issue{Number: record.Written(3, at), Date: day(3, 9), Earlier: row.past}
		got := issueOrder(h)
		if len(got) != len(row.want) {
			t.Errorf("%s: %d findings, want %d: %v", row.where, len(got), len(row.want), got)
			continue
		}
		for i, want := range row.want {
			if !strings.Contains(got[i].Says, want) {
				t.Errorf("%s: %q, want %q", row.where, got[i].Says, want)
			}
		}
	}
	first := &record.Hull{}
	first.Issue.Number = record.Written(1, at)
	if got := issueOrder(first); len(got) != 0 {
		t.Errorf("a first issue has no history to tell: %v", got)
	}
}
