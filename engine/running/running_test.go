package running

import (
	"math"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

func val[T any](v T) record.Val[T] { return record.Val[T]{V: v, Set: true} }

// boat is a hull whose log runs from nought to the hours given, with looks at the hours given; a negative look found a crack.
func boat(number string, hours float64, looks ...float64) *record.Hull {
	h := &record.Hull{Number: number}
	if hours > 0 {
		h.Hours = []record.Hours{{Entry: record.Entry{ID: "1"}, From: val(unit.Hour(0)), To: val(unit.Hour(hours)), Speed: val(unit.Knot(22)), Wave: val(unit.M(0.5))}}
	}
	for i, at := range looks {
		l := record.Look{Entry: record.Entry{ID: "L" + string(rune('1'+i))}, Meter: val(unit.Hour(math.Abs(at))), Method: val("visual"),
			Light: val("lamp"), Access: val("sole lifted"), Cleaned: val(true), By: val("x"), Share: val(unit.Percent(100)), Smallest: val(unit.MM(10)), Places: val([]string{"transom", "keel"})}
		if at < 0 {
			l.Indications = []record.Indication{{Entry: record.Entry{ID: "1"}, Place: val("transom"), Size: val(unit.MM(14)), Is: val("crack"), Action: val("welded")}}
		}
		h.Looks = append(h.Looks, l)
	}
	return h
}

func warranty(years, yearly float64) record.Warranty {
	return record.Warranty{Entry: record.Entry{ID: "hull"}, Part: val("the welded structure"), Years: val(unit.Ratio(years)), Yearly: val(unit.Hour(yearly))}
}

// One boat, 350 h, no crack, 90 %, 5 years of 100 h: at least 152 h and 3.7 %, reckoned independently.
func TestOneBoatSaysWhatItShows(t *testing.T) {
	h := boat("A-1", 352, 0, 20, 350)
	h.Warranties = []record.Warranty{warranty(5, 100)}
	r := Assess(Input{Hull: h})
	for _, want := range []string{"One boat, 350 h", "no crack found at the 2 places", "10 mm", "90 %", "at least 152 h"} {
		if !strings.Contains(r.Claim.Says, want) {
			t.Errorf("the claim does not say %q: %s", want, r.Claim.Says)
		}
	}
	for _, want := range []string{"does not show", "5 years", "500 h", "at least 3.7 %"} {
		if !strings.Contains(r.Claim.But, want) {
			t.Errorf("its limit does not say %q: %s", want, r.Claim.But)
		}
	}
	if math.Abs(r.AtRisk-2) > 1e-9 || !strings.Contains(r.Claim.Risk, "2 h") {
		t.Errorf("hours at risk %g: %s", r.AtRisk, r.Claim.Risk)
	}
	want := map[float64][4]float64{1: {152, .037, .518, 16}, 2: {231, .009, .829, 75}, 3: {265, .001, .948, 125}}
	for slope, w := range want {
		s, ok := r.Promises[0].At(slope, 0.9)
		if !ok || math.Abs(s.Scale-w[0]) > 0.6 || math.Abs(s.All-w[1]) > 6e-4 || math.Abs(s.FirstYear-w[2]) > 6e-4 || math.Abs(s.Tenth-w[3]) > 0.6 {
			t.Errorf("slope %g: %+v, want %v", slope, s, w)
		}
	}
	if p := r.Promises[0]; p.Boats != 22 || math.Abs(p.Needed[0].Hours-10927) > 0.6 {
		t.Errorf("needed: %d boats, %g h on one", p.Boats, p.Needed[0].Hours)
	}
}

// A crack ends what a hull brings at the last clean look, and the hull counts as failed in the pool.
func TestAFailedHullCounts(t *testing.T) {
	r := Assess(Input{Hull: boat("A-1", 400, 100, 350), Sisters: []*record.Hull{boat("A-2", 300, 120, -250, 300), boat("A-3", 90)}})
	if r.Claim.Boats != 2 || r.Claim.Cracked != 1 || r.Claim.Hours != 470 {
		t.Fatalf("pool %+v", r.Claim)
	}
	// chi-square factor for one failure at 90 %: 3.890, reckoned independently
	if math.Abs(r.Claim.MeanTime-470/3.8897) > 0.01 {
		t.Errorf("mean time at least %g h, want %g", r.Claim.MeanTime, 470/3.8897)
	}
	if !strings.Contains(r.Claim.Says, "2 boats") || !strings.Contains(r.Claim.Says, "1 of them cracked") {
		t.Error(r.Claim.Says)
	}
	if r.Pool[2].Why == "" || r.Pool[2].AtRisk != 90 {
		t.Errorf("hours that nobody looked at: %+v", r.Pool[2])
	}
	own := Assess(Input{Hull: boat("A-2", 300, 120, -250, 300)})
	if own.Claim.Hours != 120 || own.Claim.Cracked != 1 || !strings.Contains(own.Claim.Says, "then a crack") {
		t.Errorf("%+v", own.Claim)
	}
	never := Assess(Input{Hull: boat("A-4", 300, -250)})
	if never.Claim.Has {
		t.Errorf("a claim without a clean look: %s", never.Claim.Says)
	}
}

// Whatever the records, the hours that count are never more than were run and looked at, and more cracks never help.
func TestNeverStrongerThanTheRecords(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		total := rapid.Float64Range(5, 800).Draw(t, "hours")
		look := rapid.Float64Range(1, 900).Draw(t, "look")
		h := boat("A-1", total, look)
		cut := rapid.Float64Range(0, total).Draw(t, "written twice from")
		h.Hours = append(h.Hours, record.Hours{Entry: record.Entry{ID: "2"}, From: val(unit.Hour(cut)), To: val(unit.Hour(total))})
		h.Warranties = []record.Warranty{warranty(3, 120)}
		r := Assess(Input{Hull: h})
		if r.Claim.Hours > math.Min(total, look)+1e-9 || r.Logged > total+1e-9 {
			t.Fatalf("%g h counted of %g run and %g looked at", r.Claim.Hours, total, look)
		}
		if r.LookedTo+r.AtRisk > total+1e-9 {
			t.Fatalf("%g h looked at and %g at risk of %g", r.LookedTo, r.AtRisk, total)
		}
		s, ok := r.Promises[0].At(1, 0.9)
		if !ok {
			t.Fatal("nothing shown")
		}
		if want := math.Pow(0.1, r.Promises[0].Hours/r.Claim.Hours); math.Abs(s.All-want) > 1e-9 {
			t.Fatalf("shown %g, arithmetic %g", s.All, want)
		}
	})
}

// Hours stand for hours of service by the cube of the ratio of impacts: here 0.5 over 0.3 (own arithmetic).
func TestHarsherHours(t *testing.T) {
	h := boat("A-1", 350, 350)
	h.Service.Wave, h.Service.Speed = val(unit.M(0.3)), val(unit.Knot(22))
	r := Assess(Input{Hull: h, Tenth: func(_, metres float64) (float64, bool, bool) { return 4 * metres, false, true }})
	ratio := 0.5 / 0.3
	if !r.Equal.Has || math.Abs(r.Equal.Hours-350*ratio*ratio*ratio) > 1e-6 {
		t.Errorf("%+v", r.Equal)
	}
	h.Service = record.Service{}
	if r := Assess(Input{Hull: h}); r.Equal.Has || r.Equal.Why == "" {
		t.Error("hours of service without a service")
	}
}

func TestWhatTheLogIsToldOf(t *testing.T) {
	h := boat("A-1", 100, 40)
	day := func(d int) record.Val[record.Date] { return val(record.Date{Year: 2026, Month: 5, Day: d}) }
	h.Hours[0].Date = day(4)
	h.Hours = append(h.Hours,
		record.Hours{Entry: record.Entry{ID: "2"}, From: val(unit.Hour(98)), To: val(unit.Hour(104)), Date: day(3)},
		record.Hours{Entry: record.Entry{ID: "3"}, From: val(unit.Hour(120)), To: val(unit.Hour(130)), Date: day(5)})
	h.Looks = append(h.Looks, boat("x", 1, 140).Looks[0])
	h.Looks[1].Light = record.Val[string]{}
	h.Warranties = []record.Warranty{{Entry: record.Entry{ID: "w"}, Part: val("hull"), Years: val(unit.Ratio(2))}}
	r := Assess(Input{Hull: h})
	told := map[string]finding.Kind{}
	for _, f := range r.Findings {
		told[f.Rule] = f.Kind
	}
	for rule, kind := range map[string]finding.Kind{"hours-twice": finding.Contradiction, "hours-missing": finding.Gap, "hours-days": finding.Contradiction,
		"look-after-log": finding.Contradiction, "warranty-hours": finding.Gap} {
		if told[rule] != kind {
			t.Errorf("%s is %q, want %q", rule, told[rule], kind)
		}
	}
	if r.Checks[0].Standing != finding.Met || r.Checks[1].Standing != finding.NotShown || r.Checks[1].Missing[0] != "look.L1.light" {
		t.Errorf("looks described: %+v", r.Checks)
	}
	if r := Assess(Input{Hull: boat("A-1", 100, 20)}); !hasRule(r.Findings, "look-due") {
		t.Error("100 h run, looked at 20 h, and no look is due")
	}
	if r := Assess(Input{Hull: boat("A-1", 100, 20, 52, 99)}); hasRule(r.Findings, "look-due") {
		t.Error("a look is due at 100 h although one was made at 99 h")
	}
	if r := Assess(Input{Hull: boat("A-1", 100, 20, -50)}); !hasRule(r.Findings, "look-again") {
		t.Error("a crack that nobody looked at again is not told")
	}
	cracked := boat("A-1", 100, 20, -50)
	cracked.Looks[1].Date = day(10)
	if r := Assess(Input{Hull: cracked}); !hasRule(r.Findings, "look-repair") {
		t.Error("a crack without any repair on record is not told")
	}
	cracked.Repairs = []record.Repair{{Date: day(9)}}
	if r := Assess(Input{Hull: cracked}); !hasRule(r.Findings, "look-repair") {
		t.Error("a repair before the crack was found passes for its repair")
	}
	cracked.Repairs[0].Date = day(10)
	if r := Assess(Input{Hull: cracked}); hasRule(r.Findings, "look-repair") {
		t.Error("a crack that was repaired on the day is told as not repaired")
	}
	if r := Assess(Input{Hull: boat("A-1", 0)}); len(r.Findings)+len(r.Checks) > 0 || r.Claim.Has {
		t.Error("a boat without hours is told of hours")
	}
}

func hasRule(all []finding.Finding, rule string) bool {
	for _, f := range all {
		if f.Rule == rule {
			return true
		}
	}
	return false
}

func BenchmarkAssess(b *testing.B) {
	h := boat("A-1", 352, 0, 20, 50, 100, 200, 350)
	h.Warranties = []record.Warranty{warranty(5, 100)}
	for b.Loop() {
		if r := Assess(Input{Hull: h}); !r.Claim.Has {
			b.Fatal("no claim")
		}
	}
}
