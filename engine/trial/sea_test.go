package trial

import (
	"strings"
	"testing"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// WMO code table 3700: the upper bound belongs to the lower degree, so 4 m is rough.
func TestSeaState(t *testing.T) {
	rows := []struct {
		height float64
		code   int
		name   string
	}{
		{0, 0, "calm, glassy"}, {0.05, 1, "calm, rippled"}, {0.1, 1, "calm, rippled"}, {0.11, 2, "smooth, wavelets"}, {0.5, 2, "smooth, wavelets"}, {1.25, 3, "slight"},
		{1.26, 4, "moderate"}, {2.5, 4, "moderate"}, {4, 5, "rough"}, {4.01, 6, "very rough"}, {6, 6, "very rough"}, {9, 7, "high"}, {14, 8, "very high"}, {14.1, 9, "phenomenal"},
	}
	for _, r := range rows {
		if code, name := SeaState(r.height); code != r.code || name != r.name {
			t.Errorf("%v m: %d %s", r.height, code, name)
		}
	}
}

// Beaufort scale in whole knots: 1-3, 4-6, 7-10, 11-16, 17-21, 22-27, 28-33, 34-40, 41-47, 48-55, 56-63, 64 and more.
func TestBeaufort(t *testing.T) {
	bounds := []int{0, 1, 3, 4, 6, 7, 10, 11, 16, 17, 21, 22, 27, 28, 33, 34, 40, 41, 47, 48, 55, 56, 63, 64, 200}
	want := []int{0, 1, 1, 2, 2, 3, 3, 4, 4, 5, 5, 6, 6, 7, 7, 8, 8, 9, 9, 10, 10, 11, 11, 12, 12}
	for i, kn := range bounds {
		if got, _ := Beaufort(float64(kn)); got != want[i] {
			t.Errorf("%d kn: force %d, want %d", kn, got, want[i])
		}
	}
	if got, name := Beaufort(3.4); got != 1 || name != "light air" {
		t.Errorf("3.4 kn: force %d, %s", got, name)
	}
}

func TestWordsAndNumbers(t *testing.T) {
	rows := []struct {
		sea, wind string
		height    float64
		kn        float64
		says      string // of the finding, empty for none
	}{
		{sea: "smooth, long low swell", height: 0.2},
		{sea: "slight with a moderate swell", height: 1.0, says: ""},
		{sea: "moderate swell from the west, smooth", height: 0.3},
		{sea: "rough", height: 0.4, says: `called "rough", which is 2.5 to 4 m; waves of 0.40 m are degree 2`},
		{sea: "very rough", height: 3, says: `called "very rough", which is 4 to 6 m`},
		{sea: "calm", height: 0.1},
		{sea: "calm", height: 0.4, says: "degree 2, smooth"},
		{sea: "sea state 3", height: 0.2, says: `"sea state 3", which is 0.5 to 1.25 m`},
		{sea: "slight", height: 0.5},
		{sea: "choppy", height: 3},
		{sea: "smoothing out", height: 3},
		{wind: "gentle breeze, force 3", kn: 8},
		{wind: "force 3 to 4", kn: 14},
		{wind: "force 3-4", kn: 18, says: `called "force 3-4"; 18 kn is force 5, fresh breeze`},
		{wind: "5 Bft", kn: 8, says: "8 kn is force 3"},
		{wind: "near gale", kn: 30},
		{wind: "strong gale", kn: 30, says: "force 7, near gale"},
		{wind: "force 31", kn: 30},
	}
	for _, r := range rows {
		rec := &record.Trial{Entry: record.Entry{ID: "T1"}, Sea: put(r.sea), Wave: put(unit.M(r.height)), WindWords: put(r.wind), Wind: put(unit.Knot(r.kn))}
		if r.sea == "" {
			rec.Sea, rec.Wave = record.Val[string]{}, record.Val[unit.M]{}
		}
		tr := Trial{Record: rec}
		got := append(tr.seaWordsAgree(), tr.windWordsAgree()...)
		switch {
		case r.says == "" && len(got) > 0:
			t.Errorf("%+v: %s", r, got[0].Says)
		case r.says != "" && (len(got) != 1 || got[0].Kind != finding.Contradiction || !strings.Contains(got[0].Says, r.says) || len(got[0].Places) != 2):
			t.Errorf("%+v: %+v", r, got)
		}
	}
}

// twoTrials is one boat run twice at one setting with given speeds and masses.
func twoTrials(kn1, kn2, kg1, kg2 float64) *record.Hull {
	h := &record.Hull{}
	for i, kn := range []float64{kn1, kn2} {
		run := func(heading float64) record.Run {
			return record.Run{Setting: put("full"), Speed: put(unit.Knot(kn)), Heading: put(unit.Deg(heading))}
		}
		h.Trials = append(h.Trials, record.Trial{
			Entry: record.Entry{ID: []string{"T1", "T2"}[i]}, Date: put(record.Date{Year: 2026, Month: time.March, Day: 3 + i}), Depth: put(unit.M(10)),
			Mass: put(unit.KG([]float64{kg1, kg2}[i])), Runs: []record.Run{run(60), run(240), run(60), run(240)},
		})
	}
	return h
}

func TestTwoTrialsSideBySide(t *testing.T) {
	loads := Assess(twoTrials(28, 31, 3000, 2500), nil)
	if len(loads.Compared) != 1 || !loads.Compared[0].Loads || loads.Compared[0].First != 1 || loads.Compared[0].Rows[0].Slower.Value != 3 {
		t.Errorf("two loads, the lighter first: %+v", loads.Compared)
	}
	repeat := Assess(twoTrials(28, 26, 3000, 3010), nil)
	if len(repeat.Compared) != 1 || repeat.Compared[0].Loads || ruleCount(repeat.Findings, "trial-repeat") != 1 {
		t.Errorf("%+v %v", repeat.Compared, repeat.Findings)
	}
	if close := Assess(twoTrials(28, 27.5, 3000, 3010), nil); ruleCount(close.Findings, "trial-repeat") != 0 {
		t.Errorf("%v", close.Findings)
	}
	if between := Assess(twoTrials(28, 27.5, 3000, 3100), nil); len(between.Compared) != 0 {
		t.Errorf("neither the same load nor another: %+v", between.Compared)
	}
}

func ruleCount(all []finding.Finding, rule string) int {
	n := 0
	for _, f := range all {
		if f.Rule == rule {
			n++
		}
	}
	return n
}

// 20 kn over 10 m of water: 10.289 m/s over √(9.80665 × 10) = 9.903 m/s is 1.039 (own arithmetic).
func TestDepthFroude(t *testing.T) {
	r := Assess(twoTrials(20, 20, 3000, 3000), nil)
	s := r.Trials[0].Settings[0]
	if !s.Depth.Has || s.Depth.Value < 1.0385 || s.Depth.Value > 1.0395 {
		t.Errorf("%+v", s.Depth)
	}
	last := s.Working[len(s.Working)-1]
	if last.Name != "depth Froude number" || last.Result != "1.04" {
		t.Errorf("%+v", last)
	}
}
