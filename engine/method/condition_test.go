package method

import (
	"strings"
	"testing"
)

func vocabulary(t *testing.T) *Vocabulary {
	t.Helper()
	v, err := NewVocabulary([]*Input{
		{Symbol: "LH", Name: "length of hull", Unit: "m", From: "boat.length_hull_m"},
		{Symbol: "category", Name: "design category", From: "boat.category", Words: []string{"A", "B", "C", "D"}},
		{Symbol: "gas", Name: "gas on board", From: "fitted.gas", Words: []string{"yes", "no"}},
	})
	if err != nil {
		t.Fatal(err)
	}
	return v
}

func TestConditionsHoldOrDoNot(t *testing.T) {
	v := vocabulary(t)
	boat := GivenMap{"boat.length_hull_m": {Number: 7.4, Unit: "m"}, "boat.category": {Word: "C", IsWord: true}}
	rows := []struct { // own arithmetic
		text         string
		holds, known bool
		lacks        string
	}{
		{"LH < 12 and category in ['A', 'C']", true, true, ""},
		{"LH < 6", false, true, ""},
		{"LH > 6 or gas == 'yes'", true, true, ""},
		{"LH < 6 and gas == 'yes'", false, true, ""},
		{"LH > 6 and gas == 'yes'", false, false, "fitted.gas"},
		{"not (gas == 'no')", false, false, "fitted.gas"},
		{"LH >= 7.4 and LH <= 7.4", true, true, ""},
	}
	facts := v.Facts(boat)
	for _, r := range rows {
		c, wrong := v.Read(r.text)
		if wrong != nil {
			t.Fatalf("%s: %+v", r.text, wrong)
		}
		h := c.Hold(facts)
		if h.Holds != r.holds || h.Known != r.known || strings.Join(h.Lacks, " ") != r.lacks {
			t.Errorf("%s: holds %v, known %v, lacks %v", r.text, h.Holds, h.Known, h.Lacks)
		}
	}
}

func TestConditionsThatCannotBe(t *testing.T) {
	v := vocabulary(t)
	for text, says := range map[string]string{
		"LW < 6":                  "LW is no fact",
		"LH":                      "here must stand a condition",
		"category == 'E'":         "never \"E\"",
		"category < 3":            "cannot be compared",
		"LH < 6 and":              "",
		"gas":                     "here must stand a condition",
		"LH in ['A']":             "",
		strings.Repeat("(", 90):   "",
		"LH < 6; LH > 3":          "",
		"category == \"A\u202e\"": "cannot be seen",
	} {
		c, wrong := v.Read(text)
		if wrong == nil || c != nil || !strings.Contains(wrong.Says, says) {
			t.Errorf("%q: %+v", text, wrong)
		}
	}
}

func TestVocabularyIsRefused(t *testing.T) {
	for _, in := range [][]*Input{{{Symbol: "a b"}}, {{Symbol: "min"}}, {{Symbol: "LH"}, {Symbol: "LH"}}} {
		if _, err := NewVocabulary(in); err == nil {
			t.Errorf("%s was taken", in[0].Symbol)
		}
	}
}

// A value of another kind than the vocabulary says counts as not written.
func TestFactOfAnotherKind(t *testing.T) {
	v := vocabulary(t)
	c, _ := v.Read("category == 'C'")
	if h := c.Hold(v.Facts(GivenMap{"boat.category": {Number: 3}})); h.Known || len(h.Lacks) != 1 {
		t.Errorf("%+v", h)
	}
	if h := c.Hold(v.Facts(nil)); h.Known || h.Seen[0].Text() != "not written" {
		t.Errorf("%+v", h)
	}
}
