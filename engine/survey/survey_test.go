package survey

import (
	"os"
	"regexp"
	"slices"
	"strings"
	"testing"
	"time"

	"hullfile/engine/detail"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/scantling"
	"hullfile/engine/stock"
	"hullfile/engine/unit"
)

func at(line int) finding.Place { return finding.Place{File: "hull.toml", Line: line} }

// panel is one with a fitted and a needed thickness, mm.
func panel(id string, fitted unit.MM, needed float64) scantling.Panel {
	rec := &record.Panel{Entry: record.Entry{ID: id, At: at(3)}, Zone: record.Written("bottom", at(4)), Thickness: record.Written(fitted, at(5))}
	return scantling.Panel{Record: rec, Fitted: fitted, Needed: unit.MM(needed), Margin: float64(fitted) / needed, Standing: finding.Met}
}

// input is a hull with a calibrated gauge and some panels.
func input(panels ...scantling.Panel) Input {
	day := func(y int, m time.Month) record.Val[record.Date] {
		return record.Written(record.Date{Year: y, Month: m, Day: 1}, at(1))
	}
	b := &record.Builder{Instruments: []record.Instrument{{Entry: record.Entry{ID: "gauge"}, Calibrated: day(2026, 1), Due: day(2027, 1)}}}
	return Input{Hull: &record.Hull{}, Builder: b, Structure: &scantling.Result{Panels: panels}, Details: &detail.Result{}, Stock: &stock.Result{}}
}

func reading(item string, measured unit.Ratio, seen string, month time.Month) record.SurveyReading {
	r := record.SurveyReading{Entry: record.Entry{ID: "1", At: at(9)}, Item: record.Written(item, at(9)), Date: record.Written(record.Date{Year: 2026, Month: month, Day: 3}, at(9))}
	if measured != 0 {
		r.Measured = record.Written(measured, at(9))
	}
	if seen != "" {
		r.Seen = record.Written(seen, at(9))
	}
	r.Instrument = record.Written("gauge", at(9))
	return r
}

// Own arithmetic: 6 mm less 5 % is 5.70 mm, and 10 % more is 6.60 mm.
func TestReadingsAreHeldAgainstTheFile(t *testing.T) {
	rows := []struct {
		where    string
		measured unit.Ratio
		seen     string
		want     finding.Standing
		kinds    []finding.Kind
	}{
		{"at the lower limit", 5.70, "", finding.Met, nil},
		{"just below it", 5.69, "", finding.Short, []finding.Kind{finding.Contradiction}},
		{"at the upper limit", 6.60, "", finding.Met, nil},
		{"another plate", 8, "", finding.Short, []finding.Kind{finding.Contradiction}},
		{"right size, but something is wrong", 6, "not as expected", finding.Short, []finding.Kind{finding.Contradiction}},
		{"not reached", 0, "not reached", finding.NotShown, nil},
		{"nothing written", 0, "", finding.NotShown, nil},
		{"a word where a measurement is asked", 0, "as expected", finding.NotShown, nil},
	}
	for _, row := range rows {
		in := input(panel("B1", 6, 4))
		in.Hull.Survey = []record.SurveyReading{reading("margin-B1", row.measured, row.seen, time.May)}
		r := Assess(in)
		if got := r.Checks[0].Standing; got != row.want {
			t.Errorf("own arithmetic, %s: %s, want %s", row.where, got, row.want)
		}
		var kinds []finding.Kind
		for _, f := range r.Findings {
			kinds = append(kinds, f.Kind)
		}
		if !slices.Equal(kinds, row.kinds) {
			t.Errorf("own arithmetic, %s: findings %v, want %v", row.where, kinds, row.kinds)
		}
	}
}

func TestTheInstrumentIsLookedUp(t *testing.T) {
	late := reading("margin-B1", 6, "", time.May)
	late.Date.V.Year = 2027
	unknown := reading("margin-B1", 6, "", time.May)
	unknown.Instrument.V = "the surveyor's own"
	for _, row := range []struct {
		rec  record.SurveyReading
		want finding.Standing
	}{{reading("margin-B1", 6, "", time.May), finding.Met}, {late, finding.Short}, {unknown, finding.NotShown}} {
		in := input(panel("B1", 6, 4))
		in.Hull.Survey = []record.SurveyReading{row.rec}
		if got := Assess(in).Checks[1].Standing; got != row.want {
			t.Errorf("instrument %s on %s: %s, want %s", row.rec.Instrument.V, row.rec.Date.V, got, row.want)
		}
	}
}

// A key is made of rule and subject, so it stays when the rank changes; an item with a reading stays on the sheet.
func TestKeysDoNotComeFromRanks(t *testing.T) {
	all := []scantling.Panel{}
	for n, id := range []string{"B1", "B2", "B3", "B4", "B5", "B6", "B7", "B8"} {
		all = append(all, panel(id, 6, 5-0.1*float64(n)))
	}
	in := input(all...)
	in.Hull.Survey = []record.SurveyReading{reading("margin-B8", 6, "", time.May)}
	var first []string
	for _, i := range Assess(in).Items {
		first = append(first, i.Key)
	}
	if want := []string{"margin-B1", "margin-B2", "margin-B3", "margin-B4", "margin-B5", "margin-B6", "margin-B8"}; !slices.Equal(first, want) {
		t.Errorf("own arithmetic: %v, want %v", first, want)
	}
	slices.Reverse(in.Structure.Panels)
	in.Structure.Panels[0].Margin = 1.01 // B8 has the least room now
	r := Assess(in)
	if r.Items[0].Key != "margin-B8" || len(r.Items[0].Readings) != 1 {
		t.Errorf("the reading is lost: %+v", r.Items[0])
	}
	if len(r.Left) != 1 || r.Left[0].N != 2 {
		t.Errorf("left out: %+v, want 2 of eight panels", r.Left)
	}
}

func TestAStrayReadingIsKept(t *testing.T) {
	in := input(panel("B1", 6, 4))
	in.Hull.Survey = []record.SurveyReading{reading("margin-Z9", 6, "", time.May)}
	r := Assess(in)
	if len(r.Strays) != 1 || len(r.Findings) != 1 || r.Findings[0].Kind != finding.Doubt || !strings.Contains(r.Findings[0].Says, "margin-Z9") {
		t.Errorf("strays %v, findings %v", r.Strays, r.Findings)
	}
	if len(r.Checks) != 0 {
		t.Errorf("a reading of nothing was checked: %v", r.Checks)
	}
}

// What papers alone settle is left to the desk; what the boat can answer is not.
func TestOnlyTheBoatIsAsked(t *testing.T) {
	in := input()
	in.Findings = []finding.Finding{
		{Kind: finding.Contradiction, Rule: "document-unchanged", Subject: "document D1", Says: "two hashes"},
		{Kind: finding.Contradiction, Rule: "lines-length-hull-m", Subject: "boat", Says: "5.80 m and 5.60 m"},
		{Kind: finding.Doubt, Rule: "x", Subject: "boat", Says: "a doubt"},
	}
	in.Checks = []finding.Check{
		{Rule: "instrument-calibrated", Subject: "trial T1", Standing: finding.Short},
		{Rule: "lot-certificate", Subject: "lot L1", Standing: finding.Short, Says: "type 2.2"},
	}
	r := Assess(in)
	var keys []string
	for _, i := range r.Items {
		keys = append(keys, i.Key)
	}
	if want := []string{"lines-length-hull-m-boat", "lot-certificate-lot-L1"}; !slices.Equal(keys, want) {
		t.Errorf("own arithmetic: %v, want %v", keys, want)
	}
}

// Every class has a rule, a limit and a page for the rest: items of a class without a rule would stand on no sheet.
func TestRulesAreWhole(t *testing.T) {
	seen := map[Class]bool{}
	for _, r := range Rules() {
		if seen[r.Class] || r.Most < 1 || r.Order == "" || r.Rest == "" {
			t.Errorf("rule %+v", r)
		}
		seen[r.Class] = true
	}
	text, err := os.ReadFile("survey.go")
	if err != nil {
		t.Fatal(err)
	}
	classes := regexp.MustCompile(`(?m)^\t\w+ +Class = "([^"]+)"$`).FindAllSubmatch(text, -1)
	for _, c := range classes {
		if !seen[Class(c[1])] {
			t.Errorf("the class %q has no rule", c[1])
		}
	}
	if len(classes) != len(seen) {
		t.Errorf("%d classes for %d rules", len(classes), len(seen))
	}
}

func BenchmarkAssess(b *testing.B) {
	var all []scantling.Panel
	for n := range 200 {
		all = append(all, panel("B"+string(rune('0'+n%10))+string(rune('0'+n/10%10))+string(rune('0'+n/100)), 6, 4+0.001*float64(n)))
	}
	in := input(all...)
	for b.Loop() {
		Assess(in)
	}
}
