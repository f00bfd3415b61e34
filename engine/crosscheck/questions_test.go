package crosscheck

import (
	"strings"
	"testing"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func contains(s, part string) bool { return strings.Contains(s, part) }

// The questions are those that a surveyor asks of a build record; practice. Every figure is our own.
func TestQuestions(t *testing.T) {
	seen := map[string]bool{}
	for _, r := range append(append(ofMaterialAndMap(), ofProceduresAndWelders()...), ofLooksAndOrder()...) {
		seen[r.rule] = true
		r.test(t)
	}
	for _, q := range Questions() {
		if !seen[q.Rule] {
			t.Errorf("no row asks %s", q.Rule)
		}
	}
}

func ofMaterialAndMap() []row {
	return []row{
		{"11", "part-needed", "part P1", "5.40 mm thick; the structure asks 5.50 mm", func(_ *record.Yard, h *record.Hull) { h.Parts[0].Measured = put(unit.MM(5.4)) },
			func(_ *record.Yard, h *record.Hull) { h.Parts[0].Measured = put(unit.MM(5.5)) }},
		{"sheet", "part-sheet", "part P1", "mm in one piece, a sheet of lot L6", cutTo(6.4), cutTo(6)},
		{"12", "lot-unused", "lot L4", "no part of this hull", func(_ *record.Yard, h *record.Hull) { h.Parts[2].Lot = put("L6") },
			func(_ *record.Yard, h *record.Hull) { h.Parts[1].Lot = put("L4") }},
		{"input", "joint-part-twice", "joint J1", "on both sides", func(_ *record.Yard, h *record.Hull) { h.Joints[0].Other = put("P1") },
			func(_ *record.Yard, h *record.Hull) { h.Joints[0].Other = record.Val[string]{} }},
		{"1", "joint-part-known", "joints", "J2 (part P9)", func(_ *record.Yard, h *record.Hull) { h.Joints[1].Other = put("P9") },
			func(_ *record.Yard, h *record.Hull) { h.Joints[1].Other = put("P2") }},
		{"58", "joint-plate", "joint J2", "at 5.0 mm, but the cut list has it at 4.0 mm", func(_ *record.Yard, h *record.Hull) { h.Joints[1].OtherThick = put(unit.MM(5)) },
			func(_ *record.Yard, h *record.Hull) { h.Joints[1].OtherThick = record.Val[unit.MM]{} }},
		{"48", "joint-welded", "joints", "for 1 of the joints on the weld map: J2", func(_ *record.Yard, h *record.Hull) { h.Welds = h.Welds[:1] },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].To = put(unit.M(1.995)) }},
		{"48", "joint-welded", "joints", "J1 (2.50 of 4.00 m)", func(_ *record.Yard, h *record.Hull) { h.Welds[0].To = put(unit.M(2.5)) },
			func(_ *record.Yard, h *record.Hull) {
				h.Welds[0].To = put(unit.M(2.5))
				h.Welds = append(h.Welds, h.Welds[0])
				h.Welds[2].ID, h.Welds[2].From, h.Welds[2].To = "W3", put(unit.M(2.4)), put(unit.M(4))
			}},
		{"49", "weld-on-map", "weld W2", "joint J9, which is not on the weld map", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Joint = put("J9") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Joint = put("J1") }},
		{"49", "weld-on-map", "inspection V2", "joint J9, which is not on record", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Joint = put("J9") },
			func(_ *record.Yard, h *record.Hull) {
				h.Inspections[1].Joint, h.Inspections[1].Weld = record.Val[string]{}, put("W2")
			}},
		{"50", "length-of-joint", "inspection P1", "saw 4.20 m of joint J1, which is 4.00 m long", func(_ *record.Yard, h *record.Hull) { h.Inspections[3].Seen = put(unit.M(4.2)) },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[3].Seen = put(unit.M(4)) }},
		{"57", "build-other-hull", "document photo", "names hull H-002", func(y *record.Yard, h *record.Hull) {
			y.Hulls[1].Number, h.Documents[3].Title = "H-002", put("Seam J1 of H-002")
		}, func(y *record.Yard, h *record.Hull) {
			y.Hulls[1].Number, h.Documents[3].Title = "H-002", put("Seam J1 of H-0021")
		}},
		{"55", "build-paper", "weld W1", "names document gone", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Photo = put("gone") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Photo = record.Val[string]{} }},
		{"56", "build-copied", "welds", "6 welds have the same readings", func(_ *record.Yard, h *record.Hull) { repeat(h, 4) },
			func(_ *record.Yard, h *record.Hull) { repeat(h, 3) }},
		{"58", "build-unit", "weld W1", "as degrees Fahrenheit it would be 16 °C", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Ambient = put(unit.Celsius(60)) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Ambient = put(unit.Celsius(44)) }},
		{"58", "build-unit", "weld W2", "changed places", func(_ *record.Yard, h *record.Hull) {
			h.Welds[1].Volts, h.Welds[1].Amperes = put(unit.Volt(71)), put(unit.Ampere(22))
		}, func(_ *record.Yard, h *record.Hull) { h.Welds[1].Volts = put(unit.Volt(24)) }},
		{"58", "build-unit", "joint J2", "plate of 40 mm", func(_ *record.Yard, h *record.Hull) {
			h.Joints[1].OtherThick, h.Parts[2].Drawn = put(unit.MM(40)), put(unit.MM(40))
		},
			func(_ *record.Yard, h *record.Hull) {
				h.Joints[1].OtherThick, h.Parts[2].Drawn = put(unit.MM(24)), put(unit.MM(24))
			}},
	}
}

// repeat adds n welds of joint J1 with the readings of its first, each a minute long.
func repeat(h *record.Hull, n int) {
	for i := range n {
		w := h.Welds[0]
		w.ID, w.Begin, w.End = "X"+string(rune('a'+i)), record.Val[string]{}, record.Val[string]{}
		w.Speed = h.Welds[1].Speed
		h.Welds = append(h.Welds, w)
	}
}

func ofProceduresAndWelders() []row {
	return []row{
		{"13", "weld-procedure", "welds", "W1 (WX 1)", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Procedure = put("WX") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Revision = record.Val[string]{} }},
		{"25", "weld-revision", "weld W1", "which holds only from 14 January 2026", func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[1].From = day(1, 14) },
			func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[1].From = day(1, 13) }},
		{"25", "weld-revision", "weld W2", "held only until 12 January 2026", func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[0].Until = day(1, 12) },
			func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[0].Until = day(1, 13) }},
		{"25", "weld-revision", "welds", "is not said for 1 of the welds", func(y *record.Yard, h *record.Hull) {
			y.Welding.Procedures = append(y.Welding.Procedures, procedure("WB", "butt"))
			y.Welding.Procedures[2].ID, y.Welding.Procedures[2].Revision, h.Welds[0].Revision = "WB-2", put("2"), record.Val[string]{}
		}, func(_ *record.Yard, h *record.Hull) { h.Welds[0].Revision = record.Val[string]{} }},
		{"14", "weld-thickness", "joint J2", "plate of 4.0 mm", func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[0].ThickFrom = put(unit.MM(4.5)) },
			func(y *record.Yard, _ *record.Hull) { y.Welding.Procedures[0].ThickFrom = put(unit.MM(4)) }},
		{"17", "weld-group", "joint J2", "material group 23.1", func(y *record.Yard, _ *record.Hull) {
			y.Stock.Lots[1].Alloy, y.Welding.Procedures[0].Groups = put("6082-T6"), list("22.4")
		}, func(y *record.Yard, _ *record.Hull) { y.Stock.Lots[1].Alloy = put("6082-T6") }},
		{"18", "weld-position", "weld W2", "in position PC", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Position = put("PC") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Position = put("PF") }},
		{"19", "weld-joint", "joint J2", "is a fillet joint, but procedure WB", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Procedure = put("WB") },
			func(_ *record.Yard, h *record.Hull) { h.Joints[1].Type = put("lap") }},
		{"19", "weld-joint", "joint J1", `is welded "ss nb"`, func(_ *record.Yard, h *record.Hull) { h.Joints[0].Sides = put("ss nb") },
			func(_ *record.Yard, h *record.Hull) { h.Joints[0].Sides = record.Val[string]{} }},
		{"20", "weld-filler", "weld W2", "S Al 5356", func(y *record.Yard, h *record.Hull) {
			second(y).Classification = put("S Al 5356")
			h.Welds[1].Filler = put("F2")
		},
			func(y *record.Yard, h *record.Hull) {
				second(y).Classification = put("ER5183")
				h.Welds[1].Filler = put("F2")
			}},
		{"20", "weld-silicon", "weld W2", "silicon filler S Al 4043", func(y *record.Yard, h *record.Hull) {
			second(y).Classification = put("S Al 4043")
			h.Welds[1].Filler = put("F2")
		},
			func(y *record.Yard, h *record.Hull) {
				second(y).Classification, h.Welds[1].Filler = put("S Al 4043"), put("F2")
				y.Stock.Lots[0].Alloy, y.Stock.Lots[1].Alloy = put("6082-T6"), put("6082-T6")
			}},
		{"21", "weld-throat", "joint J2", "throat of 5.5 mm", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Throat = put(unit.MM(5.5)) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Throat = put(unit.MM(5)) }},
		{"22", "weld-readings", "weld W1", "current 195 A, procedure 150 to 190", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Amperes = put(unit.Ampere(195)) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Amperes = put(unit.Ampere(190)) }},
		// MIG: 0.8 x 60 x 22 x 171 / (1000 x 500) = 0.361 kJ/mm; 1.25 x 0.288 = 0.360. Own arithmetic; efficiency EN 1011-1.
		{"22", "weld-heat", "weld W1", "heat input of 0.36 kJ/mm; test T1 of procedure WB revision 1 was welded with 0.29", func(y *record.Yard, _ *record.Hull) { heat(y, 0.288) },
			func(y *record.Yard, _ *record.Hull) { heat(y, 0.29) }},
		{"23", "weld-interpass", "weld W1", "reached 95 °C", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Interpass = put(unit.Celsius(95)) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Interpass = put(unit.Celsius(90)) }},
		{"23", "weld-interpass-read", "welds", "W1", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Interpass = record.Val[unit.Celsius]{} },
			func(_ *record.Yard, h *record.Hull) {
				h.Welds[0].Interpass, h.Welds[0].Runs = record.Val[unit.Celsius]{}, put(1)
			}},
		{"24", "weld-gas", "weld W1", "I3", func(y *record.Yard, h *record.Hull) { second(y).Classification = put("I3"); h.Welds[0].Gas = put("F2") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[0].Gas = record.Val[string]{} }},
		// Feed 6.6 m/min of 1.2 mm wire is 7464 mm³/min, 7091 of it stays; throat 3.5 mm with 15 % above the flat is 14.09 mm², at
		// 500 mm/min 7044 mm³/min: ratio 1.007. At 390 mm/min it is 1.29, at 410 mm/min 1.23. Own arithmetic.
		{"24", "weld-wire", "weld W2", "gives 1.29 times", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Speed = put(unit.MMPerMin(390)) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Speed = put(unit.MMPerMin(410)) }},
		{"36", "weld-diameter", "weld W2", "wire of 1 mm", func(y *record.Yard, h *record.Hull) {
			second(y).Diameter = put(unit.MM(1))
			h.Welds[1].Filler = put("F2")
		},
			func(y *record.Yard, h *record.Hull) {
				second(y).Diameter = record.Val[unit.MM]{}
				h.Welds[1].Filler = put("F2")
			}},
		{"29", "welder-known", "welds", "W2 (stamp B7)", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Welder = put("B7") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Welder = put("w-ann") }},
		{"26", "welder-qualified", "welder w-ann", "held no certificate", func(y *record.Yard, _ *record.Hull) { tested(y, day(1, 14)) },
			func(y *record.Yard, _ *record.Hull) { tested(y, day(1, 13)) }},
		{"27", "welder-qualified", "welder w-ann", "within 6 months of 12 July 2025", func(y *record.Yard, _ *record.Hull) {
			tested(y, put(record.Date{Year: 2025, Month: 7, Day: 12}))
		}, func(y *record.Yard, _ *record.Hull) { tested(y, put(record.Date{Year: 2025, Month: 7, Day: 15})) }},
		{"28", "welder-range", "welder w-ann", "plate of 6.0 mm, covered 1 to 4 mm", func(y *record.Yard, _ *record.Hull) { y.Builder.Qualifications[1].Thickness = put(unit.MM(2)) },
			func(y *record.Yard, _ *record.Hull) { y.Builder.Qualifications[1].Thickness = put(unit.MM(3)) }},
		{"28", "welder-range", "welder w-ann", "position PB, covered PG", func(y *record.Yard, _ *record.Hull) {
			y.Builder.Qualifications = y.Builder.Qualifications[:1]
			y.Builder.Qualifications[0].Position = put("PG")
			y.Hulls[0].Welds[0].Welder = put("B7")
		}, func(y *record.Yard, _ *record.Hull) { y.Builder.Qualifications[0].Position = put("PB") }},
		{"input", "welder-two-stamps", "welder w-ann", "under two stamps, A1 and A2", func(y *record.Yard, h *record.Hull) { otherStamp(y, h, record.Val[record.Date]{}) },
			func(y *record.Yard, h *record.Hull) { otherStamp(y, h, day(1, 13)) }},
		{"30", "welder-two-places", "weld W1", "joint J2 from 09:00:00", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Begin = put("09:00:00") },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Begin = put("09:10:00") }},
		{"30", "welder-two-places", "weld W1", "joint J1 of hull H2", func(y *record.Yard, h *record.Hull) { y.Hulls[1].Welds = h.Welds[:1] },
			func(y *record.Yard, h *record.Hull) {
				y.Hulls[1].Welds = []record.Weld{h.Welds[0]}
				y.Hulls[1].Welds[0].Date = day(1, 12)
			}},
		{"30", "welder-day", "weld W1", "4.1 h of burning arc", func(_ *record.Yard, h *record.Hull) { h.Joints[0].Length = put(unit.M(60)) },
			func(_ *record.Yard, h *record.Hull) { h.Joints[0].Length = put(unit.M(58)) }},
		{"31", "welder-repairs", "welder w-ann", "0.33 m had to be repaired, 6 %", func(_ *record.Yard, h *record.Hull) { moreRepairs(h, 270) },
			func(_ *record.Yard, h *record.Hull) { moreRepairs(h, 240) }},
		{"1", "filler-known", "welds", "W1 (lot F9)", func(_ *record.Yard, h *record.Hull) { h.Welds[0].Filler = put("F9") },
			func(y *record.Yard, h *record.Hull) {
				y.Welding.Procedures[1].Process = put("142")
				h.Welds[0].Filler = record.Val[string]{}
			}},
		{"32", "filler-certificate", "consumable F1", "names no certificate", func(y *record.Yard, _ *record.Hull) { y.Stock.Consumables[0].Certificate = record.Val[string]{} },
			func(y *record.Yard, _ *record.Hull) { second(y).Certificate = record.Val[string]{} }},
		{"33", "filler-life", "weld W2", "whose life ended on 12 January 2026", func(y *record.Yard, h *record.Hull) { second(y).Expires = day(1, 12); h.Welds[1].Filler = put("F2") },
			func(y *record.Yard, h *record.Hull) { second(y).Expires = day(1, 13); h.Welds[1].Filler = put("F2") }},
		{"33", "filler-life", "weld W2", "may be used 3 days", func(y *record.Yard, h *record.Hull) {
			second(y).Opened, second2(y).OpenLife, h.Welds[1].Filler = day(1, 9), put(3), put("F2")
		}, func(y *record.Yard, h *record.Hull) {
			second(y).Opened, second2(y).OpenLife, h.Welds[1].Filler = day(1, 10), put(3), put("F2")
		}},
		{"34", "filler-received", "weld W2", "received on 14 January 2026", func(y *record.Yard, h *record.Hull) { second(y).Received = day(1, 14); h.Welds[1].Filler = put("F2") },
			func(y *record.Yard, h *record.Hull) { second(y).Received = day(1, 13); h.Welds[1].Filler = put("F2") }},
		// Throat 3.5 mm over 2 m: 3.5² x 1.15 x 1e-6 x 2 x 2660 / 0.95 = 0.079 kg of wire. Own arithmetic.
		{"35", "filler-mass", "consumable F1", "need 0.1 kg", func(y *record.Yard, _ *record.Hull) { y.Stock.Consumables[0].Mass = put(unit.KG(0.078)) },
			func(y *record.Yard, _ *record.Hull) { y.Stock.Consumables[0].Mass = put(unit.KG(0.08)) }},
	}
}

// heat rests the butt procedure on a test with so much heat input.
func heat(y *record.Yard, kJ float64) {
	y.Welding.Tests = []record.ProcedureTest{{Entry: entry("T1"), Heat: put(unit.KJPerMM(kJ)), HeatBasis: put("heat input")}}
	y.Welding.Procedures[1].Test = put("T1")
}

// second gives the yard another lot of the same filler, F2.
func second(y *record.Yard) *record.Consumable {
	c := y.Stock.Consumables[0]
	c.ID, c.Opened, c.Expires, c.Certificate = "F2", record.Val[record.Date]{}, record.Val[record.Date]{}, put("T-F")
	y.Stock.Consumables = append(y.Stock.Consumables, c)
	return second2(y)
}

func second2(y *record.Yard) *record.Consumable {
	return &y.Stock.Consumables[len(y.Stock.Consumables)-1]
}

func tested(y *record.Yard, d record.Val[record.Date]) {
	for i := range y.Builder.Qualifications {
		y.Builder.Qualifications[i].Tested = d
	}
}

// otherStamp lets Ann weld J2 under a second stamp; the first ends on the given day.
func otherStamp(y *record.Yard, h *record.Hull, until record.Val[record.Date]) {
	y.Builder.Welders[0].Until = until
	y.Builder.Welders = append(y.Builder.Welders, record.Welder{Entry: entry("w-ann-2"), Person: put("ann"), Stamp: put("A2")})
	if until.Set {
		y.Builder.Welders[1].Since = day(1, 14)
	}
	h.Welds[1].Welder = put("A2")
}

func moreRepairs(h *record.Hull, mm float64) {
	r := h.Repairs[0]
	r.ID, r.Length, r.Position = "R2", put(unit.MM(mm)), put(unit.M(3))
	h.Repairs = append(h.Repairs, r)
}
