package seam

import (
	"math"
	"strings"
	"testing"
	"time"

	"hullfile/content"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
)

var line int

func put[T any](v T) record.Val[T] {
	line++
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: line})
}

func entry(id string) record.Entry { return record.Entry{ID: id, At: put(0).At} }

func day(m time.Month, d int) record.Val[record.Date] {
	return put(record.Date{Year: 2026, Month: m, Day: d})
}

// sound is a yard with one hull of two joints, each with a whole chain. All of it is invented.
func sound() *record.Yard {
	h := &record.Hull{Number: "H1"}
	h.Parts = []record.Part{{Entry: entry("A"), Lot: put("L6"), Drawn: put(unit.MM(6))}, {Entry: entry("B"), Lot: put("L6"), Drawn: put(unit.MM(6))}}
	for _, id := range []string{"J1", "J2"} {
		h.Joints = append(h.Joints, record.Joint{Entry: entry(id), Part: put("A"), Other: put("B"), Type: put("butt"), Length: put(unit.M(3)), Category: put("shell"), Position: put("PF")})
		h.Welds = append(h.Welds, record.Weld{Entry: entry("W-" + id), Joint: put(id), Date: day(1, 13), Procedure: put("P"), Welder: put("7"), Filler: put("F")})
		h.Inspections = append(h.Inspections, record.Inspection{Entry: entry("V-" + id), Joint: put(id), Date: day(1, 14), Method: put("visual"), Result: put("accepted")})
	}
	h.Joints[1].Category, h.Joints[1].Length = put("secondary"), put(unit.M(1))
	h.Documents = []record.Document{{Entry: entry("d"), Number: put("T-6")}}
	y := &record.Yard{Hulls: []*record.Hull{h}}
	y.Stock.Lots = []record.Lot{{Entry: entry("L6"), Alloy: put("5083-H116"), Certificate: put("T-6")}}
	y.Stock.Consumables = []record.Consumable{{Entry: entry("F")}}
	y.Welding.Procedures = []record.Procedure{{Entry: entry("P"), Process: put("131"), Weld: put("butt")}}
	y.Builder.Welders = []record.Welder{{Entry: entry("w"), Person: put("ann"), Stamp: put("7")}}
	y.Builder.Qualifications = []record.Qualification{{Entry: entry("Q"), Welder: put("w"), Standard: put("ISO 9606-2"), Edition: put("2004"), Process: put("131"), Product: put("P"),
		Weld: put("butt"), Group: put("22"), Thickness: put(unit.MM(6)), Position: put("PF"), Sides: put("ss nb"), Tested: day(1, 2)}}
	return y
}

func linked(t *testing.T, y *record.Yard) *Map {
	t.Helper()
	ranges, err := weld.LoadRanges(content.Files)
	if err != nil {
		t.Fatal(err)
	}
	return NewMap(NewStock(y, ranges), y.Hulls[0])
}

func TestAWholeChain(t *testing.T) {
	m := linked(t, sound())
	for _, j := range m.Joints {
		if lacks := m.Lacks(j); len(lacks) != 0 || m.Standing(j) != finding.Met {
			t.Errorf("%s: %s, %v", j.Record.ID, m.Standing(j), lacks)
		}
	}
	if c := m.Cover(); c.Shell != 3 || c.Whole != 3 || c.Metres != 4 || c.Welded != 4 || c.Joints != 2 {
		t.Errorf("%+v", c)
	}
}

func TestWhatAChainLacks(t *testing.T) {
	rows := []struct {
		where, link, says string
		standing          finding.Standing
		alter             func(y *record.Yard, h *record.Hull)
	}{
		{"no part", "material", "a part is not named", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Joints[0].Other = record.Val[string]{} }},
		{"part not on the list", "material", "part X is not on the cut list", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Joints[0].Other = put("X") }},
		{"no lot", "material", "part B names no lot", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Parts[1].Lot = record.Val[string]{} }},
		{"lot not in stock", "material", "lot L9 of part B is not in the stock", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Parts[1].Lot = put("L9") }},
		{"no certificate", "material", "names no certificate", finding.NotShown, func(y *record.Yard, _ *record.Hull) { y.Stock.Lots[0].Certificate = record.Val[string]{} }},
		{"no paper", "material", "is not among the documents", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Documents = nil }},
		{"not welded", "welding", "no weld is recorded", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds = h.Welds[1:] }},
		{"half welded", "welding", "only a part of its length", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].To = put(unit.M(1.5)) }},
		{"no day", "welding", "has no day", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Date = record.Val[record.Date]{} }},
		{"no procedure", "welding", "names no procedure", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Procedure = put("Q") }},
		{"no welder", "welding", "names no welder", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Welder = put("8") }},
		{"certificate later", "welding", "held no certificate", finding.NotShown, func(y *record.Yard, _ *record.Hull) { y.Builder.Qualifications[0].Tested = day(2, 1) }},
		{"outside the certificate", "welding", "is outside certificate Q", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Position = put("PE") }},
		{"no filler", "welding", "names no lot of filler", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Filler = record.Val[string]{} }},
		{"not seen", "inspection", "no inspection after welding", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Stage = put("in process") }},
		{"no result", "inspection", "has no result", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Result = record.Val[string]{} }},
		{"rejected", "inspection", "rejected it", finding.Short, func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Result = put("rejected") }},
		{"seen too soon", "inspection", "before the last weld", finding.NotShown, func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Date = day(1, 12) }},
	}
	for _, r := range rows {
		y := sound()
		r.alter(y, y.Hulls[0])
		m := linked(t, y)
		lacks := m.Lacks(m.Joints[0])
		if len(lacks) == 0 || lacks[0].Link != r.link || !strings.Contains(lacks[0].Says, r.says) || !lacks[0].At.Known() {
			t.Errorf("%s: %v, want %s %q", r.where, lacks, r.link, r.says)
		}
		if s := m.Standing(m.Joints[0]); s != r.standing {
			t.Errorf("%s: %s, want %s", r.where, s, r.standing)
		}
		if c := m.Cover(); c.Whole != 0 {
			t.Errorf("%s: %v m of shell seam count as whole", r.where, c.Whole)
		}
	}
}

func TestAnOpenNonconformityIsShort(t *testing.T) {
	y := sound()
	y.Hulls[0].Nonconformities = []record.Nonconformity{{Entry: entry("N"), Inspection: put("V-J1")}}
	m := linked(t, y)
	if s := m.Standing(m.Joints[0]); s != finding.Short || len(m.Cover().Open) != 1 {
		t.Errorf("%s, %d open", s, len(m.Cover().Open))
	}
}

// Stretches that overlap count once. Own arithmetic: 0 to 2 and 1 to 2.5 of 3 m are 2.5 m.
func TestWelded(t *testing.T) {
	y := sound()
	h := y.Hulls[0]
	h.Welds[0].From, h.Welds[0].To = put(unit.M(0)), put(unit.M(2))
	w := h.Welds[0]
	w.ID, w.From, w.To = "W3", put(unit.M(1)), put(unit.M(2.5))
	h.Welds = append(h.Welds, w)
	if got := linked(t, y).Joints[0].Welded(); math.Abs(got-2.5) > 1e-12 {
		t.Errorf("%v m welded, want 2.5", got)
	}
}

func TestShares(t *testing.T) {
	y := sound()
	h := y.Hulls[0]
	h.Inspections = append(h.Inspections,
		record.Inspection{Entry: entry("P1"), Joint: put("J1"), Date: day(1, 15), Method: put("penetrant"), Seen: put(unit.M(0.6)), Result: put("accepted")},
		record.Inspection{Entry: entry("P2"), Weld: put("W-J1"), Date: day(1, 15), Method: put("penetrant"), Seen: put(unit.M(0.9)), Result: put("accepted")})
	h.Repairs = []record.Repair{{Entry: entry("R"), Joint: put("J1"), Length: put(unit.MM(90))}}
	c := linked(t, y).Cover()
	if got := c.Categories[0].Methods; got[0].Part != 1 || math.Abs(got[1].Part-0.5) > 1e-12 || got[2].Part != 0 {
		t.Errorf("shell seen by %+v, want all by eye and half by penetrant", got)
	}
	if r := c.Welders[0]; r.Key != "7" || r.Welds != 2 || r.Metres != 4 || math.Abs(r.Part-0.0225) > 1e-12 {
		t.Errorf("welder %+v, want 0.09 of 4 m", r)
	}
}

func TestLater(t *testing.T) {
	rows := []struct {
		from   record.Date
		months int
		want   string
	}{
		{record.Date{Year: 2025, Month: 8, Day: 31}, 6, "2026-02-28"},
		{record.Date{Year: 2023, Month: 8, Day: 31}, 6, "2024-02-29"},
		{record.Date{Year: 2025, Month: 12, Day: 15}, 12, "2026-12-15"},
		{record.Date{Year: 2025, Month: 1, Day: 2}, 1, "2025-02-02"},
	}
	for _, r := range rows {
		if got := Later(r.from, r.months).ISO(); got != r.want {
			t.Errorf("%s and %d months is %s, want %s", r.from, r.months, got, r.want)
		}
	}
	if n := Days(record.Date{Year: 2024, Month: 2, Day: 28}, record.Date{Year: 2024, Month: 3, Day: 1}); n != 2 {
		t.Errorf("over the leap day there are %d days", n)
	}
}
