package identity

import (
	"slices"
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

func put[T any](line int, v T) record.Val[T] {
	return record.Written(v, finding.Place{File: "hulls/H1/hull.toml", Line: line})
}

// orderly is a yard of two hulls of whose numbers nothing is to be said. All values are our own.
func orderly() (*record.Yard, *record.Hull) {
	h := &record.Hull{Number: "H1"}
	h.Identity = record.Identity{
		HIN: put(3, "AU-ABC00123K425"), KeelLaid: put(4, record.Date{Year: 2024, Month: time.November, Day: 20}),
		Handed: put(5, record.Date{Year: 2025, Month: time.March, Day: 1}),
	}
	other := &record.Hull{Number: "H2"}
	other.Identity = record.Identity{HIN: put(3, "AU-ABC00124L425")}
	return &record.Yard{Builder: record.Builder{Code: put(1, "ABC")}, Hulls: []*record.Hull{h, other}}, h
}

func TestAnOrderlyNumber(t *testing.T) {
	y, h := orderly()
	r := Assess(y, h)
	if len(r.Findings) != 0 || len(r.Checks) != 3 {
		t.Fatalf("checks %v, findings %v", r.Checks, r.Findings)
	}
	for _, c := range r.Checks {
		if c.Standing != finding.Met {
			t.Errorf("%s: %s, %s", c.Rule, c.Standing, c.Says)
		}
	}
	names := []string{}
	for _, p := range r.Parts {
		names = append(names, p.Name)
		if len(p.Faults) > 0 || p.Means == "" || p.Source == "" || p.Basis == "" {
			t.Errorf("part %+v", p)
		}
	}
	if want := []string{PartCountry, PartMaker, PartSerial, PartMonth, PartYear, PartModel}; !slices.Equal(names, want) {
		t.Errorf("parts %v", names)
	}
}

func TestNumbersThatDisagree(t *testing.T) {
	rows := []struct {
		where string
		alter func(y *record.Yard, h *record.Hull)
		kind  finding.Kind
		rule  string
		says  string
		part  string // that carries the remark
	}{
		{"another yard's code", func(y *record.Yard, h *record.Hull) { y.Builder.Code = put(1, "XYZ") }, finding.Contradiction, ruleMaker, "the yard's code is XYZ", PartMaker},
		{"month before the building began", func(y *record.Yard, h *record.Hull) {
			h.Identity.KeelLaid = put(4, record.Date{Year: 2024, Month: time.December, Day: 1})
		}, finding.Contradiction, ruleDay, "says November 2024, but building began on 1 December 2024", PartMonth},
		{"month after the handing over", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "AU-ABC00123D525") }, finding.Contradiction, ruleDay, "says April 2025, but the boat was handed over on 1 March 2025", PartMonth},
		{"next model year before August", func(y *record.Yard, h *record.Hull) {
			h.Identity.HIN, h.Identity.KeelLaid = put(3, "AU-ABC00123G425"), put(4, record.Date{Year: 2024, Month: time.July, Day: 1})
		}, finding.Doubt, ruleModel, "model year 2025 on a boat of July 2024", PartModel},
		{"model year two ahead", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "AU-ABC00123K426") }, finding.Doubt, ruleModel, "model year 2026 on a boat of November 2024", PartModel},
		{"serial number of another hull", func(y *record.Yard, h *record.Hull) { y.Hulls[1].Identity.HIN = put(3, "AU-ABC00123L425") }, finding.Doubt, ruleSerial, "hull H1 and hull H2 have one serial number, 00123", PartSerial},
		{"country that is none", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "ZZ-ABC00123K425") }, finding.Doubt, ruleMark, "ZZ stands for no country", ""},
		{"no hyphen", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "AUABC00123K425") }, finding.Doubt, ruleMark, "no hyphen", PartCountry},
	}
	for _, r := range rows {
		y, h := orderly()
		r.alter(y, h)
		got := Assess(y, h)
		at := slices.IndexFunc(got.Findings, func(f finding.Finding) bool { return f.Rule == r.rule })
		if at < 0 || len(got.Findings) != 1 {
			t.Errorf("%s: findings %v", r.where, got.Findings)
			continue
		}
		f := got.Findings[at]
		if f.Kind != r.kind || f.Subject != "identity" || !strings.Contains(f.Says, r.says) || f.Settle == "" || len(f.Places) == 0 {
			t.Errorf("%s: %+v", r.where, f)
		}
		if r.part == "" {
			continue
		}
		marked := slices.ContainsFunc(got.Parts, func(p Part) bool { return p.Name == r.part && len(p.Faults) > 0 })
		if !marked {
			t.Errorf("%s: nothing stands beside the %s", r.where, r.part)
		}
	}
}

func TestWhatIsMissingIsNeverMet(t *testing.T) {
	rows := []struct {
		where string
		alter func(y *record.Yard, h *record.Hull)
		rule  string
		want  finding.Standing
	}{
		{"no code of the yard", func(y *record.Yard, h *record.Hull) { y.Builder.Code = record.Val[string]{} }, ruleMaker, finding.NotShown},
		{"no day on which building began", func(y *record.Yard, h *record.Hull) { h.Identity.KeelLaid = record.Val[record.Date]{} }, ruleDay, finding.NotShown},
		{"a letter that is not allowed", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "ABC0O123K425") }, ruleForm, finding.Short},
		{"too short to hold parts", func(y *record.Yard, h *record.Hull) { h.Identity.HIN = put(3, "ABC") }, ruleForm, finding.Short},
	}
	for _, r := range rows {
		y, h := orderly()
		r.alter(y, h)
		for _, c := range Assess(y, h).Checks {
			if c.Rule == r.rule && (c.Standing != r.want || c.Settle == "" || c.Says == "") {
				t.Errorf("%s: %+v", r.where, c)
			}
		}
	}
	y, h := orderly()
	h.Identity.HIN = record.Val[string]{}
	if r := Assess(y, h); len(r.Checks)+len(r.Findings)+len(r.Parts) != 0 {
		t.Errorf("a hull without a number: %+v", r)
	}
	// A boat in build has not been handed over: the month is held against the beginning alone.
	y, h = orderly()
	h.Identity.Handed = record.Val[record.Date]{}
	if c := Assess(y, h).Checks[2]; c.Rule != ruleDay || c.Standing != finding.Met || !strings.Contains(c.Says, "has not been handed over") {
		t.Errorf("in build: %+v", c)
	}
}

func BenchmarkAssess(b *testing.B) {
	y, h := orderly()
	for b.Loop() {
		Assess(y, h)
	}
}
