package crosscheck

import (
	"fmt"
	"strings"
	"testing"

	"hullfile/engine/record"
)

// A welder's whole day copied to other hulls is one finding, however many pairs of seams clash.
func TestOneFindingForAWelderAndADay(t *testing.T) {
	y := built()
	own := y.Hulls[0]
	for i := range 30 {
		y.Hulls = append(y.Hulls, &record.Hull{Number: fmt.Sprintf("C%02d", i), HullFile: record.HullFile{Welds: own.Welds}})
	}
	hits := of(asked(t, y), "welder-two-places")
	if len(hits) != 1 {
		t.Fatalf("found %d times, want once for the day: %v", len(hits), hits)
	}
	f := hits[0]
	// Two seams here and as many on each of thirty other hulls: 62, of which twelve are named. Own arithmetic.
	for _, want := range []string{"at 62 seams", "joint J1 from 08:00:00 to 09:10:00, joint J2 from 09:20:00 to 10:00:00, joint J1 of hull C00", "and 50 more"} {
		if !strings.Contains(f.Says, want) {
			t.Errorf("%q lacks %q", f.Says, want)
		}
	}
	if len(f.Places) != mostPlaces || f.Places[0] != own.Welds[0].Begin.At {
		t.Errorf("places %v, want %d, those of this hull first", f.Places, mostPlaces)
	}
}

func TestWhatIsNoTwoPlaces(t *testing.T) {
	rows := []struct {
		what  string
		alter func(y *record.Yard, h *record.Hull)
	}{
		{"two runs of one joint", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Joint, h.Welds[1].Begin = put("J1"), put("08:30:00") }},
		{"another welder", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Welder, h.Welds[1].Begin = put("B7"), put("08:30:00") }},
		{"one ends when the next begins", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Begin = put("09:10:00") }},
		{"two other hulls, at another hour of the same day", func(y *record.Yard, h *record.Hull) {
			for i := range 2 {
				w := weldOf("W9", "J9", "WB", 13, "14:00:00", "15:00:00")
				y.Hulls = append(y.Hulls, &record.Hull{Number: fmt.Sprint("H", 8+i), HullFile: record.HullFile{Welds: []record.Weld{w}}})
			}
		}},
	}
	for _, r := range rows {
		y := built()
		r.alter(y, y.Hulls[0])
		for _, f := range of(asked(t, y), "welder-two-places") {
			t.Errorf("%s: %s", r.what, f.Says)
		}
	}
}

// A long shift and a short one inside it clash, though a third lies between their beginnings.
func TestAShiftInsideAnother(t *testing.T) {
	y := built()
	h := y.Hulls[0]
	h.Welds[0].End = put("12:00:00")
	h.Welds = append(h.Welds, weldOf("W3", "J1", "WB", 13, "11:00:00", "11:30:00"))
	hits := of(asked(t, y), "welder-two-places")
	if len(hits) != 1 || !strings.Contains(hits[0].Says, "at 3 seams") {
		t.Errorf("found %v, want one finding with all three welds of the run", hits)
	}
}
