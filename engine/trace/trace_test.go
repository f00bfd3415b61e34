package trace

import (
	"fmt"
	"strings"
	"testing"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

var line int

func put[T any](v T) record.Val[T] {
	line++
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: line})
}

func entry(id string) record.Entry { return record.Entry{ID: id, At: put(0).At} }

// yard has two hulls with plate of one cast, and a third without. All of it is invented.
func yard() *record.Yard {
	y := &record.Yard{Hulls: []*record.Hull{hull("H1", "L6"), hull("H2", "L6"), hull("H3", "L4")}}
	y.Builder.People = []record.Person{{Entry: entry("ann"), Name: put("Ann Arn"), Role: put("welder")}, {Entry: entry("ben"), Name: put("Ben Bo")}}
	y.Builder.Welders = []record.Welder{{Entry: entry("w1"), Person: put("ann"), Stamp: put("A1")}}
	y.Builder.Qualifications = []record.Qualification{{Entry: entry("Q1"), Welder: put("w1"), Certificate: put("WQ-7")}}
	y.Builder.Inspectors = []record.Inspector{{Entry: entry("ben-v"), Person: put("ben"), Method: put("visual")}}
	y.Builder.Instruments = []record.Instrument{{Entry: entry("gauge"), Serial: put("WG-12")}}
	y.Stock.Lots = []record.Lot{
		{Entry: entry("L6"), Alloy: put("5083-H116"), Thickness: put(unit.MM(6)), Cast: put("48117"), Certificate: put("TR-48117"), Maker: put("Works")},
		{Entry: entry("L4"), Alloy: put("5083-H116"), Thickness: put(unit.MM(4)), Cast: put("48052"), Certificate: put("TR-48052")},
	}
	y.Stock.Consumables = []record.Consumable{{Entry: entry("F1"), Kind: put("filler"), Batch: put("B-9"), Certificate: put("WC-1")}}
	y.Welding.Tests = []record.ProcedureTest{{Entry: entry("T1"), Record: put("PQ-1")}}
	y.Welding.Procedures = []record.Procedure{{Entry: entry("P-01"), Test: put("T1")}}
	return y
}

func hull(number, lot string) *record.Hull {
	h := &record.Hull{Number: number}
	h.Parts = []record.Part{{Entry: entry("K1"), Lot: put(lot)}, {Entry: entry("K2"), Lot: put("L4")}, {Entry: entry("K3"), Lot: put("L4")}}
	h.Joints = []record.Joint{
		{Entry: entry("J1"), Part: put("K1"), Other: put("K2"), Length: put(unit.M(3)), Category: put("shell"), Type: put("butt")},
		{Entry: entry("J2"), Part: put("K2"), Other: put("K3"), Length: put(unit.M(2)), Category: put("shell"), Type: put("fillet")},
	}
	h.Welds = []record.Weld{
		{Entry: entry("W1"), Joint: put("J1"), Procedure: put("P-01"), Welder: put("A1"), Filler: put("F1")},
		{Entry: entry("W2"), Joint: put("J2"), Procedure: put("P-02"), Welder: put("B2"), Filler: put("F2")},
	}
	h.Inspections = []record.Inspection{
		{Entry: entry("V1"), Joint: put("J1"), By: put("ben-v"), Instrument: put("gauge"), Method: put("visual")},
		{Entry: entry("V2"), Weld: put("W2"), By: put("cas-v"), Method: put("visual")},
	}
	h.Documents = []record.Document{{Entry: entry("plate"), Number: put("TR-48117"), Title: put("Plate")}}
	h.LeakTests = []record.LeakTest{{Entry: entry("LT1"), Boundary: put("shell"), Joints: put([]string{"J1"})}}
	return h
}

// told gives what a mark touches on one line a hull.
func told(r Result) string {
	var all []string
	for _, h := range r.Hulls {
		var joints []string
		for _, j := range h.Joints {
			joints = append(joints, j.Key+" by "+j.Why)
		}
		all = append(all, fmt.Sprintf("%s %v m: %s", h.Hull, h.Metres, strings.Join(joints, ", ")))
	}
	return strings.Join(all, "; ")
}

func TestFind(t *testing.T) {
	rows := []struct{ mark, is, want string }{
		{"48117", "lot L6", "H1 3 m: J1 by part K1; H2 3 m: J1 by part K1; H3 0 m: "},
		{"L6", "lot L6", "H1 3 m: J1 by part K1; H2 3 m: J1 by part K1; H3 0 m: "},
		{" tr-48117 ", "lot L6", "H1 3 m: J1 by part K1; H2 3 m: J1 by part K1; H3 0 m: "},
		{"48052", "lot L4", "H1 5 m: J1 by part K2, J2 by part K2; H2 5 m: J1 by part K2, J2 by part K2; H3 5 m: J1 by part K1, J2 by part K2"},
		{"A1", "welder w1", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"Ann Arn", "person ann", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"WQ-7", "qualification Q1", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"P-01", "procedure P-01", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"PQ-1", "procedure test T1", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"B-9", "consumable F1", "H1 3 m: J1 by weld W1; H2 3 m: J1 by weld W1; H3 3 m: J1 by weld W1"},
		{"WG-12", "instrument gauge", "H1 3 m: J1 by inspection V1; H2 3 m: J1 by inspection V1; H3 3 m: J1 by inspection V1"},
		{"ben", "person ben", "H1 3 m: J1 by inspection V1; H2 3 m: J1 by inspection V1; H3 3 m: J1 by inspection V1"},
		{"H2/J2", "joint J2", "H2 2 m: J2 by itself"},
		{"H2/V2", "inspection V2", "H2 2 m: J2 by inspection V2"},
		{"H3/K1", "part K1", "H3 3 m: J1 by part K1"},
	}
	for _, r := range rows {
		got := Find(yard(), r.mark)
		if told(got) != r.want {
			t.Errorf("%q touches %s, want %s", r.mark, told(got), r.want)
		}
		if len(got.Is) == 0 || got.Is[0].Subject() != r.is || !got.Is[0].At.Known() {
			t.Errorf("%q is %v, want %s", r.mark, got.Is, r.is)
		}
	}
}

// From a seam back to the cast, the certificate, the welder and the inspector.
func TestBehindAJoint(t *testing.T) {
	r := Find(yard(), "H1/J1")
	var all []string
	for _, n := range r.Hulls[0].Joints[0].Chain {
		all = append(all, n.Subject())
	}
	if got, want := strings.Join(all, ", "), "part K1, lot L6, part K2, lot L4, weld W1, inspection V1"; got != want {
		t.Errorf("behind J1 stand %s, want %s", got, want)
	}
	if says := r.Hulls[0].Joints[0].Chain[1].Says; !strings.Contains(says, "cast 48117") || !strings.Contains(says, "certificate TR-48117") {
		t.Errorf("the lot says %q", says)
	}
	if len(r.Hulls[0].Others) != 1 || r.Hulls[0].Others[0].Subject() != "leak test LT1" {
		t.Errorf("beside it %v", r.Hulls[0].Others)
	}
}

func TestNothingCarriesIt(t *testing.T) {
	r := Find(yard(), "48118")
	if len(r.Is)+len(r.Hulls) != 0 || len(r.Near) == 0 || r.Near[0] != "48117" {
		t.Errorf("%+v", r)
	}
	if r := Find(yard(), ""); len(r.Is)+len(r.Hulls) != 0 {
		t.Errorf("an empty mark is %v", r.Is)
	}
}

// fleet is a yard of n hulls with 600 parts, 900 joints and welds, and 1500 inspections each.
func fleet(n int) *record.Yard {
	y := yard()
	y.Hulls = nil
	for i := range n {
		h := &record.Hull{Number: fmt.Sprintf("H%03d", i)}
		for k := range 600 {
			lot := "L4"
			if k%50 == 0 && i%5 == 0 {
				lot = "L6"
			}
			h.Parts = append(h.Parts, record.Part{Entry: record.Entry{ID: fmt.Sprint("K", k)}, Lot: put(lot)})
		}
		for k := range 900 {
			j := fmt.Sprint("J", k)
			h.Joints = append(h.Joints, record.Joint{Entry: record.Entry{ID: j}, Part: put(fmt.Sprint("K", k%600)), Other: put(fmt.Sprint("K", (k+7)%600)), Length: put(unit.M(1.5)), Category: put("shell"), Type: put("butt")})
			h.Welds = append(h.Welds, record.Weld{Entry: record.Entry{ID: fmt.Sprint("W", k)}, Joint: put(j), Procedure: put("P-02"), Welder: put("B2"), Filler: put("F2")})
		}
		for k := range 1500 {
			h.Inspections = append(h.Inspections, record.Inspection{Entry: record.Entry{ID: fmt.Sprint("V", k)}, Joint: put(fmt.Sprint("J", k%900)), By: put("cas-v"), Method: put("visual")})
		}
		y.Hulls = append(y.Hulls, h)
	}
	return y
}

func BenchmarkACastOverFiveHundredHulls(b *testing.B) {
	y := fleet(500)
	b.ResetTimer()
	for range b.N {
		if r := Find(y, "48117"); len(r.Hulls) != 100 {
			b.Fatal(len(r.Hulls))
		}
	}
}
