package stock_test

import (
	"os"
	"strconv"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/material"
	"hullfile/engine/record"
	"hullfile/engine/stock"
	"hullfile/engine/unit"
)

// val is a value as it would be read from a record.
func val[T any](v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "test.toml", Line: 1})
}

// num is a number with the text it was written with.
func num[T ~float64](text string) record.Val[T] {
	x, err := strconv.ParseFloat(text, 64)
	if err != nil {
		panic(err)
	}
	v := val(T(x))
	v.Text = text
	return v
}

func day(year, month, d int) record.Val[record.Date] {
	return val(record.Date{Year: year, Month: monthOf(month), Day: d})
}

// sound is a yard in which everything about one lot and one part is in order.
func sound() (*record.Yard, *record.Hull) {
	type pc = unit.Percent
	lot := record.Lot{
		Entry: record.Entry{ID: "P6", At: finding.Place{File: "stock/plates.toml", Line: 1}},
		Kind:  val("plate"), Alloy: val("5083-H116"), Thickness: num[unit.MM]("6.0"), Area: num[unit.M2]("12"), Cast: val("48117"),
		Certificate: val("TR-1"), Type: val("3.1"), Certified: day(2025, 9, 11), Received: day(2025, 9, 20),
		Tensile: num[unit.MPa]("322"), Yield: num[unit.MPa]("231"), Elongation: num[pc]("16"),
		Si: num[pc]("0.15"), Fe: num[pc]("0.26"), Cu: num[pc]("0.03"), Mn: num[pc]("0.61"), Mg: num[pc]("4.51"), Cr: num[pc]("0.09"), Zn: num[pc]("0.04"), Ti: num[pc]("0.02"),
		G67: num[unit.MGPerCM2]("5"), G67Edition: val("18"), G67Acid: val("67-70"), G66: val("PA"), G66Edition: val("15"),
	}
	h := &record.Hull{Number: "H1"}
	h.Parts = []record.Part{{Entry: record.Entry{ID: "A1"}, Lot: val("P6"), Alloy: val("5083-H116"), Drawn: num[unit.MM]("6.0"), Measured: num[unit.MM]("5.98"), Area: num[unit.M2]("3"), Cut: day(2025, 10, 8), Marked: val(true)}}
	h.Documents = []record.Document{{Entry: record.Entry{ID: "plate"}, Kind: val("material certificate"), Number: val("TR-1")}}
	y := &record.Yard{Hulls: []*record.Hull{h}}
	y.Stock.Lots = []record.Lot{lot}
	return y, h
}

func assess(t testing.TB, y *record.Yard, h *record.Hull) stock.Result {
	t.Helper()
	table, err := material.Load(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	limits, err := stock.LoadLimits(os.DirFS("../../content"))
	if err != nil {
		t.Fatal(err)
	}
	return stock.Assess(y, h, table, limits)
}

// told lists what a reader would be told, as kind, rule and subject. A contradiction stands in for the check that has
// its rule and subject, as it does in the file.
func told(r stock.Result) map[string]string {
	out, own := map[string]string{}, map[string]bool{}
	for _, f := range r.Findings {
		out[string(f.Kind)+" "+f.Rule+" "+f.Subject] = f.Says
		own[f.Rule+f.Subject] = f.Kind == finding.Contradiction
	}
	for _, f := range finding.Findings(r.Checks) {
		if !own[f.Rule+f.Subject] {
			out[string(f.Kind)+" "+f.Rule+" "+f.Subject] = f.Says
		}
	}
	return out
}
