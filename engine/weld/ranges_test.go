package weld

import (
	"math"
	"os"
	"slices"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func ranges(t testing.TB) *Ranges {
	t.Helper()
	r, err := LoadRanges(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	return r
}

func val[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "test.toml", Line: 1})
}

func day(y, m, d int) record.Val[record.Date] { return val(date(y, m, d)) }

func date(y, m, d int) record.Date { return after(record.Date{Year: y, Month: 1, Day: d}, 0, m-1) }

// TestProcedureThickness: EN 288-4 table 10.4 in Mathers p. 187 and ASME IX table 10.7 p. 190 read; ISO 15614-2:2005
// recalled.
func TestProcedureThickness(t *testing.T) {
	open := math.Inf(1)
	rows := []struct {
		standard, edition, weld, layers string
		t                               float64
		want                            Span
	}{
		{"EN 288-4", "1997", "butt", "single run", 4, Span{3.2, 4.4}},
		{"EN 288-4", "1997", "butt", "several runs", 3, Span{3, 6}},
		{"EN 288-4", "1997", "butt", "several runs", 3.1, Span{3, 6.2}},
		{"EN 288-4", "1997", "fillet", "single run", 6, Span{3, 12}},
		{"EN 288-4", "1997", "butt", "several runs", 12, Span{3, 24}},
		{"EN 288-4", "1997", "butt", "several runs", 20, Span{10, 40}},
		{"EN 288-4", "1997", "butt", "several runs", 90, Span{45, 150}},
		{"EN 288-4", "1997", "butt", "several runs", 120, Span{60, 180}},
		{"ISO 15614-2", "2005", "butt", "several runs", 3, Span{1.5, 6}},
		{"EN ISO 15614-2", "2005", "butt", "several runs", 6, Span{3, 12}},
		{"ISO 15614-2", "2005", "butt", "several runs", 25, Span{20, open}},
		{"ASME IX", "", "butt", "several runs", 1.5, Span{1.5, 3}},
		{"ASME IX", "2019", "butt", "several runs", 6, Span{1.6, 12}},
		{"ASME IX", "", "butt", "several runs", 10, Span{4.8, 20}},
		{"ASME IX", "", "fillet", "single run", 6, Span{0, open}},
		{"ASME IX", "", "butt", "several runs", 40, Span{4.8, 203.2}},
	}
	r := ranges(t)
	for _, row := range rows {
		got := r.OfTest(&record.ProcedureTest{Standard: val(row.standard), Edition: val(row.edition), Weld: val(row.weld), Layers: val(row.layers), Thickness: val(unit.MM(row.t))})
		if !got.HasThick || math.Abs(got.Thickness.From-row.want.From) > 1e-9 || got.Thickness.To != row.want.To && math.Abs(got.Thickness.To-row.want.To) > 1e-9 {
			t.Errorf("%s %s, %s, %s, %v mm: %v (%t), want %v", row.standard, row.edition, row.weld, row.layers, row.t, got.Thickness, got.HasThick, row.want)
		}
	}
}

// TestNoTableIsSaid: another edition never stands in.
func TestNoTableIsSaid(t *testing.T) {
	for _, edition := range []string{"2025", ""} {
		p := &record.ProcedureTest{Standard: val("ISO 15614-2"), Edition: val(edition), Weld: val("butt"), Thickness: val(unit.MM(6))}
		if got := ranges(t).OfTest(p); got.Scheme != nil || got.Why == "" {
			t.Errorf("edition %q: %+v", edition, got)
		}
	}
}

// TestThroat: 0.75 a to 1.5 a below 10 mm, at least 7.5 mm from there on (ISO 15614-2:2005, recalled).
func TestThroat(t *testing.T) {
	for a, want := range map[float64]Span{4: {3, 6}, 10: {7.5, math.Inf(1)}} {
		p := &record.ProcedureTest{Standard: val("ISO 15614-2"), Edition: val("2005"), Weld: val("fillet"), Thickness: val(unit.MM(6)), Throat: val(unit.MM(a))}
		if got := ranges(t).OfTest(p); got.Throat != want {
			t.Errorf("throat %v: %v, want %v", a, got.Throat, want)
		}
	}
}

// TestTwoPrintedWelderRanges: the two designations of a certification body's sheet to ISO 9606-2 (October 2018).
func TestTwoPrintedWelderRanges(t *testing.T) {
	r := ranges(t)
	qualification := func(process, product, group string, thick, d float64, position, sides string) WelderRange {
		q := &record.Qualification{Standard: val("ISO 9606-2"), Edition: val("2004"), Process: val(process), Product: val(product), Weld: val("butt"),
			Group: val(group), Thickness: val(unit.MM(thick)), Position: val(position), Sides: val(sides), Tested: day(2024, 1, 10)}
		if d > 0 {
			q.Diameter = val(unit.MM(d))
		}
		return r.OfWelder(q)
	}
	same := func(what string, got, want []string) {
		t.Helper()
		if !slices.Equal(got, want) {
			t.Errorf("%s: %v, want %v", what, got, want)
		}
	}
	// 141 T BW 21 S t3/t10 D30/D150 PH ss nb: groups 21 22, t from 1.5, D from 25, PA PC PE PH H-L045, all sides
	thin, thick := qualification("141", "T", "21", 3, 30, "PH", "ss nb"), qualification("141", "T", "21", 10, 150, "PH", "ss nb")
	if both := (Spans{thin.Thickness, thick.Thickness}); both.String() != "1.5 mm and more" {
		t.Errorf("thickness %s", both)
	}
	if both := (Spans{thin.Diameter, thick.Diameter}); both.String() != "25 mm and more" {
		t.Errorf("diameter %s", both)
	}
	same("groups", thin.Groups, []string{"21", "22"})
	same("positions", thin.Butt, []string{"PA", "PC", "PE", "PH", "H-L045"})
	same("sides", thin.Sides, []string{"ss nb", "ss mb", "bs"})
	same("products", thin.Products, []string{"P", "T"})
	// 131 P BW 23 S t15 PA ss mb: groups 21 22 23, t from 6, pipe from 150, PA and for fillets PB, ss mb and bs; fillets secondary
	plate := qualification("131", "P", "23", 15, 0, "PA", "ss mb")
	if plate.Thickness.String() != "6 mm and more" || plate.Diameter.String() != "150 mm and more" || !plate.Secondary {
		t.Errorf("plate: %+v", plate)
	}
	same("groups", plate.Groups, []string{"21", "22", "23"})
	same("butt positions", plate.Butt, []string{"PA"})
	same("fillet positions", plate.Fillet, []string{"PA", "PB"})
	same("sides", plate.Sides, []string{"ss mb", "bs"})
}

// TestTwoYearsAndSixMonths: ISO 9606-2 as a certification body prints it: two years from the test, confirmed every six
// months; a life of three years is one of the standard for steel. Days are own arithmetic.
func TestTwoYearsAndSixMonths(t *testing.T) {
	confirmed := func(days ...record.Date) []record.Confirmation {
		var all []record.Confirmation
		for _, d := range days {
			all = append(all, record.Confirmation{Date: val(d)})
		}
		return all
	}
	rows := []struct {
		name        string
		q           record.Qualification
		until       record.Date
		printedLate bool
	}{
		{"nobody signed", record.Qualification{}, date(2024, 7, 10), false},
		{"signed in time to the end", record.Qualification{Confirmations: confirmed(date(2024, 7, 10), date(2025, 1, 9), date(2025, 7, 8))}, date(2026, 1, 8), false},
		{"one day late", record.Qualification{Confirmations: confirmed(date(2024, 7, 11))}, date(2024, 7, 10), false},
		{"last signature carries past two years", record.Qualification{Confirmations: confirmed(date(2024, 7, 10), date(2025, 1, 10), date(2025, 7, 10), date(2025, 9, 1))}, date(2026, 1, 10), false},
		{"printed for three years", record.Qualification{Until: day(2027, 1, 10), Confirmations: confirmed(date(2024, 7, 1), date(2025, 1, 1), date(2025, 7, 1), date(2026, 1, 1))}, date(2026, 1, 10), true},
		{"prolonged", record.Qualification{Prolonged: day(2026, 1, 5), Confirmations: confirmed(date(2024, 7, 1), date(2025, 1, 1), date(2025, 7, 1), date(2025, 12, 20), date(2026, 6, 20))}, date(2026, 12, 20), false},
		{"printed shorter", record.Qualification{Until: day(2024, 3, 1)}, date(2024, 3, 1), false},
	}
	r := ranges(t)
	for _, row := range rows {
		q := row.q
		q.Standard, q.Edition, q.Tested, q.Weld, q.Thickness = val("ISO 9606-2"), val("2004"), day(2024, 1, 10), val("butt"), val(unit.MM(6))
		got := r.OfWelder(&q).Life
		if got.Until != row.until || (got.Printed.Year != 0) != row.printedLate {
			t.Errorf("%s: until %s (%s), printed late %v; want %s", row.name, got.Until, got.Ends, got.Printed.Year != 0, row.until)
		}
		if ok, _ := got.Holds(row.until); !ok {
			t.Errorf("%s: does not hold on its last day", row.name)
		}
		if ok, why := got.Holds(after(row.until, 0, 1)); ok || why == "" {
			t.Errorf("%s: holds a month after its last day", row.name)
		}
	}
	if got := r.OfWelder(&record.Qualification{Standard: val("ISO 9606-1"), Edition: val("2012")}); got.Scheme != nil || got.Why == "" {
		t.Errorf("a standard for steel qualified: %+v", got)
	}
}

// TestMetalStrength: EN 1999-1-1 table 8.8, recalled; of two parents the lower is taken; 4043 has none for 5083.
func TestMetalStrength(t *testing.T) {
	f := &ranges(t).Fillets
	for _, row := range []struct {
		filler, one, other string
		want               float64
	}{{"S Al 5183", "5083-H116", "5083-H116", 240}, {"S Al 5356", "5083-H116", "6082-T6", 210}, {"S Al 4043", "5083-H116", "6082-T6", 0}, {"S Al 4043", "6061-T6", "6082-T6", 170}} {
		got, ok := f.MetalStrength(row.filler, row.one, row.other)
		if got != row.want && ok || ok != (row.want > 0) {
			t.Errorf("%s, %s and %s: %v %t, want %v", row.filler, row.one, row.other, got, ok, row.want)
		}
	}
}

// TestSpansJoin is own arithmetic.
func TestSpansJoin(t *testing.T) {
	all := Spans{{3, 6}, {6, 12}, {20, 40}}
	for own, want := range map[Span]bool{{3, 12}: true, {3, 13}: false, {2.9, 6}: false, {20, 40}: true, {12, 20}: false} {
		if all.Cover(own) != want {
			t.Errorf("%v in %s: %t", own, all, !want)
		}
	}
}
