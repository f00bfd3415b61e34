package crosscheck

import (
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func ofLooksAndOrder() []row {
	return []row{
		{"37", "inspection-order", "inspection V2", "weld W2 of it was made on 13 January 2026", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Date = day(1, 12) },
			func(_ *record.Yard, h *record.Hull) {
				h.Inspections[1].Date, h.Inspections[1].Begin = day(1, 13), put("10:00:00")
			}},
		{"37", "inspection-order", "inspection V2", "at 09:59", func(_ *record.Yard, h *record.Hull) {
			h.Inspections[1].Date, h.Inspections[1].Begin = day(1, 13), put("09:59:00")
		},
			func(_ *record.Yard, h *record.Hull) {
				h.Inspections[1].Date, h.Inspections[1].Stage = day(1, 12), put("in process")
			}},
		{"37", "inspection-surface", "inspection P1", "not cleaned", func(_ *record.Yard, h *record.Hull) { h.Inspections[3].Surface = put("as welded") },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Surface = put("as welded") }},
		{"37", "inspection-surface", "inspection V1", "61 °C", func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Surfaced = put(unit.Celsius(61)) },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[0].Surfaced = put(unit.Celsius(60)) }},
		{"38", "inspection-own-work", "inspection V2", "ann inspected joint J2", func(y *record.Yard, h *record.Hull) { byAnn(y, h) },
			func(y *record.Yard, h *record.Hull) { byAnn(y, h); h.Inspections[1].Stage = put("in process") }},
		{"39", "inspector-certified", "inspector ben-penetrant", "was certified only until 15 January 2026", func(y *record.Yard, _ *record.Hull) { y.Builder.Inspectors[1].Until = day(1, 15) },
			func(y *record.Yard, _ *record.Hull) { y.Builder.Inspectors[1].Until = day(1, 16) }},
		{"39", "inspector-certified", "inspector ben-visual", "made penetrant inspections", func(_ *record.Yard, h *record.Hull) { h.Inspections[3].By = put("ben-visual") },
			func(_ *record.Yard, h *record.Hull) {
				h.Inspections[3].By, h.Inspections[3].Method = put("ben-visual"), put("visual")
			}},
		{"39", "inspector-certified", "inspector ben-penetrant", "is of level 1", func(y *record.Yard, _ *record.Hull) { y.Builder.Inspectors[1].Level = put(1) },
			func(y *record.Yard, _ *record.Hull) { y.Builder.Inspectors[1].Level = put(3) }},
		{"39", "inspector-certified", "inspector ben-penetrant", "more than a year before", func(y *record.Yard, _ *record.Hull) {
			y.Builder.Inspectors[1].Vision = put(record.Date{Year: 2025, Month: 1, Day: 15})
		}, func(y *record.Yard, _ *record.Hull) {
			y.Builder.Inspectors[1].Vision = put(record.Date{Year: 2025, Month: 1, Day: 16})
		}},
		{"39", "inspection-by", "inspections", "V2", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].By = record.Val[string]{} },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Date = day(1, 15) }},
		{"40", "inspection-there", "joints", "J2", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Stage = put("in process") },
			func(_ *record.Yard, h *record.Hull) {
				h.Inspections[1].Stage, h.Identity.State = put("in process"), put("in build")
			}},
		{"40", "inspection-extent", "extent penetrant", "0.7 m were inspected by penetrant method; 20 % were asked for, 0.8 m", func(_ *record.Yard, h *record.Hull) { h.Inspections[3].Seen = put(unit.M(0.7)) },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[3].Seen = put(unit.M(0.8)) }},
		{"49", "inspection-joint", "inspection V2", "weld W1, which is of joint J1", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Weld = put("W1") },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Weld = put("W2") }},
		// ISO 10042:2018 at level C, plate 4 mm with throat 3.5 mm: a surface pore of 0.3 a = 1.05 mm; recalled.
		{"41", "imperfection-limit", "imperfection F2", "level C leaves 1.05 mm", func(_ *record.Yard, h *record.Hull) { h.Imperfections[1].Size = put(unit.MM(1.1)) },
			func(_ *record.Yard, h *record.Hull) { h.Imperfections[1].Size = put(unit.MM(1.05)) }},
		{"42", "imperfection-crack", "imperfection F2", "is a crack and was accepted", func(_ *record.Yard, h *record.Hull) { h.Imperfections[1].Number = put("101") },
			func(_ *record.Yard, h *record.Hull) {
				h.Imperfections[1].Number, h.Imperfections[1].Judged = put("101"), put("beyond")
			}},
		{"41", "imperfection-within", "imperfection F1", "was called beyond", func(_ *record.Yard, h *record.Hull) { h.Imperfections[0].Size = put(unit.MM(0.5)) },
			func(_ *record.Yard, h *record.Hull) { h.Imperfections[0].Size = put(unit.MM(0.51)) }},
		{"50", "throat-drawn", "joint J2", "measured 3.4 mm of throat, drawn 3.5 mm", func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Throat = put(unit.MM(3.4)) },
			func(_ *record.Yard, h *record.Hull) { h.Inspections[1].Throat = put(unit.MM(3.5)) }},
		{"43", "rejected-decided", "inspection V1", "no nonconformity was raised", func(_ *record.Yard, h *record.Hull) { h.Nonconformities = h.Nonconformities[1:] },
			func(_ *record.Yard, h *record.Hull) {
				h.Nonconformities[0].Imperfection, h.Nonconformities[0].Joint = record.Val[string]{}, put("J1")
			}},
		{"44", "nonconformity-closed", "nonconformity N1", "no inspection accepted repair R1", func(_ *record.Yard, h *record.Hull) { h.Nonconformities[0].Closed = day(1, 15) },
			func(_ *record.Yard, h *record.Hull) { h.Nonconformities[0].Closed = day(1, 17) }},
		{"44", "nonconformity-closed", "nonconformity N1", "no repair is on record", func(_ *record.Yard, h *record.Hull) { h.Repairs = nil },
			func(_ *record.Yard, h *record.Hull) { h.Repairs[0].Inspection = record.Val[string]{} }},
		{"45", "repair-qualified", "repair R1", "names no procedure", func(_ *record.Yard, h *record.Hull) { h.Repairs[0].Procedure = put("WX") },
			func(_ *record.Yard, h *record.Hull) { h.Repairs[0].Procedure = put("WF") }},
		{"45", "repair-again", "repair R3", "the third at one spot", func(_ *record.Yard, h *record.Hull) { again(h, 1.05, 1.1) },
			func(_ *record.Yard, h *record.Hull) { again(h, 1.05, 1.2) }},
		{"input", "repair-circle", "repair R1", "follows itself in the end", func(_ *record.Yard, h *record.Hull) {
			again(h, 2, 3)
			h.Repairs[0].After, h.Repairs[1].After = put("R2"), put("R1")
		}, func(_ *record.Yard, h *record.Hull) {
			again(h, 2, 3)
			h.Repairs[1].After, h.Repairs[2].After = put("R1"), put("R2")
		}},
		{"46", "nonconformity-approved", "nonconformity N2", "nobody approved", func(_ *record.Yard, h *record.Hull) { h.Nonconformities[1].Approved = record.Val[string]{} },
			func(_ *record.Yard, h *record.Hull) { h.Nonconformities[1].Approved = put("ben") }},
		{"46", "nonconformity-approved", "nonconformity N2", "who had welded the joint", func(_ *record.Yard, h *record.Hull) { h.Nonconformities[1].Approved = put("ann") },
			func(_ *record.Yard, h *record.Hull) {
				h.Nonconformities[1].Disposition, h.Nonconformities[1].Approved = put("replace"), put("ann")
			}},
		{"43", "nonconformity-open", "nonconformity N2", "the boat is finished", func(_ *record.Yard, h *record.Hull) { h.Nonconformities[1].Closed = record.Val[record.Date]{} },
			func(_ *record.Yard, h *record.Hull) {
				h.Nonconformities[1].Closed, h.Identity.State = record.Val[record.Date]{}, put("in build")
			}},
		{"47", "build-calibration", "instrument gauge", "inspection V1, inspection V2", func(y *record.Yard, _ *record.Hull) { y.Builder.Instruments[1].Due = day(1, 13) },
			func(y *record.Yard, _ *record.Hull) { y.Builder.Instruments[1].Due = day(1, 14) }},
		{"51", "hold-released", "hold point H1", "no inspection had accepted joint J1", func(_ *record.Yard, h *record.Hull) {
			h.HoldPoints[0].Released, h.HoldPoints[0].LeakTests = day(1, 15), record.Val[[]string]{}
		},
			func(_ *record.Yard, h *record.Hull) {
				h.HoldPoints[0].Released, h.HoldPoints[0].LeakTests = day(1, 16), record.Val[[]string]{}
			}},
		{"51", "hold-released", "hold point H1", "leak test T1 had not shown", func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(1, 22) },
			func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(1, 21) }},
		{"51", "hold-work", "hold point H1", "began on 20 January 2026, and it was released on 21 January 2026", func(_ *record.Yard, h *record.Hull) { h.Stages[0].From = day(1, 20) },
			func(_ *record.Yard, h *record.Hull) { h.Stages[0].From = day(1, 21) }},
		{"51", "hold-open", "hold points", "H1", func(_ *record.Yard, h *record.Hull) {
			h.HoldPoints[0].Released, h.HoldPoints[0].Stage = record.Val[record.Date]{}, record.Val[string]{}
		}, func(_ *record.Yard, h *record.Hull) {
			h.HoldPoints[0].Released, h.HoldPoints[0].Kind = record.Val[record.Date]{}, put("witness")
		}},
		{"49", "joints-known", "leak test T1", "joint J9", func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Joints = list("J1", "J9") },
			func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Joints = list("J1", "J2") }},
		{"52", "leak-again", "leak test T1", "repair R1 at joint J1 of it is of 21 January 2026", func(_ *record.Yard, h *record.Hull) { lateRepair(h, 21) },
			func(_ *record.Yard, h *record.Hull) { lateRepair(h, 20) }},
		{"input", "build-century", "weld W2", "on 13 January 1926", func(_ *record.Yard, h *record.Hull) {
			h.Welds[1].Date = put(record.Date{Year: 1926, Month: 1, Day: 13})
		},
			func(_ *record.Yard, h *record.Hull) {
				h.Welds[1].Date = put(record.Date{Year: 2025, Month: 1, Day: 13})
			}},
		{"54", "build-before-keel", "weld W1", "before the keel was laid on 14 January 2026", func(_ *record.Yard, h *record.Hull) {
			h.Identity.KeelLaid, h.Welds[1].Date, h.Weighings = day(1, 14), day(1, 14), nil
		}, func(_ *record.Yard, h *record.Hull) { h.Identity.KeelLaid, h.Weighings = day(1, 13), nil }},
		{"54", "build-after-launch", "weld W2", "after the launch on 1 April 2026", func(_ *record.Yard, h *record.Hull) { h.Welds[1].Date = day(4, 2) },
			func(_ *record.Yard, h *record.Hull) { h.Welds[1].Date = day(4, 1) }},
		{"54", "build-after-issue", "leak test T1", "this issue of the file is of 2 May 2026", func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(5, 3) },
			func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(5, 2) }},
		// 17 January 2026 is a Saturday.
		{"54", "build-weekend", "hull", "leak test T1 (17 January 2026)", func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(1, 17) },
			func(_ *record.Yard, h *record.Hull) { h.LeakTests[0].Date = day(1, 19) }},
	}
}

// byAnn makes the welder the inspector of joint J2.
func byAnn(y *record.Yard, h *record.Hull) {
	y.Builder.Inspectors = append(y.Builder.Inspectors, record.Inspector{Entry: entry("ann-visual"), Person: put("ann"), Method: put("visual")})
	h.Inspections[1].By = put("ann-visual")
}

// again adds two repairs of joint J1 at the given places.
func again(h *record.Hull, second, third float64) {
	for i, x := range []float64{second, third} {
		r := h.Repairs[0]
		r.ID, r.Position, r.Length = []string{"R2", "R3"}[i], put(unit.M(x)), put(unit.MM(20))
		h.Repairs = append(h.Repairs, r)
	}
}

// lateRepair moves the repair, and what follows it, to a day of January.
func lateRepair(h *record.Hull, d int) {
	h.Repairs[0].Date, h.Inspections[2].Date, h.Nonconformities[0].Closed = day(1, d), day(1, 26), day(1, 26)
}
