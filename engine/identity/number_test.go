package identity

import (
	"strings"
	"testing"
	"time"
)

// The letters and digits are those of 33 CFR 181.25 (read); the numbers are our own.
func TestNumberIsTakenApart(t *testing.T) {
	rows := []struct {
		where, text            string
		country, maker, serial string
		month                  time.Month
		year, model            int
	}{
		{"United States form", "ABC00123K425", "", "ABC", "00123", time.November, 2024, 2025},
		{"with the country, ISO 10087 form (recalled)", "AU-ABC00123K425", "AU", "ABC", "00123", time.November, 2024, 2025},
		{"January is A", "XZX74013A626", "", "XZX", "74013", time.January, 2026, 2026},
		{"September is I, which only the serial number may not hold", "XZX74013I526", "", "XZX", "74013", time.September, 2025, 2026},
		{"December is L", "XZX7401AL526", "", "XZX", "7401A", time.December, 2025, 2026},
		{"the year before a round decade", "XZX74013L930", "", "XZX", "74013", time.December, 2029, 2030},
		{"last century, from the year in which the form began (recalled)", "XZX74013J384", "", "XZX", "74013", time.October, 1983, 1984},
		{"model year one before the year of certification", "XZX74013A625", "", "XZX", "74013", time.January, 2026, 2025},
	}
	for _, r := range rows {
		n := Parse(r.text)
		if !n.Sound() || len(n.Faults) > 0 {
			t.Errorf("%s: %s has faults %v", r.where, r.text, n.Faults)
		}
		month, _ := n.MonthOf()
		year, _ := n.YearOf()
		model, _ := n.ModelYear()
		if n.Country != r.country || n.Maker != r.maker || n.Serial != r.serial || month != r.month || year != r.year || model != r.model {
			t.Errorf("%s: %s gives %q %q %q %s %d %d", r.where, r.text, n.Country, n.Maker, n.Serial, month, year, model)
		}
	}
}

func TestFaultsNameTheirPart(t *testing.T) {
	rows := []struct {
		text, part, says string
		soft             bool
	}{
		{"ABC00123K42", "", "has 11 characters where twelve are asked; one or more are missing", false},
		{"ABC00123K4255", "", "has 13 characters where twelve are asked; the first twelve", false},
		{"", "", "has 0 characters", false},
		{"ABC-00123-K425", "", "blanks, hyphens or slashes", false},
		{"AB*00123K425", PartMaker, `"*" is neither letter nor digit`, false},
		{"ABC0O123K425", PartSerial, `"O" stands in it; I, O and Q are not allowed`, false},
		{"ABCI0123K425", PartSerial, `"I" stands in it`, false},
		{"ABC0012QK425", PartSerial, `"Q" stands in it`, false},
		{"ABC00123M425", PartMonth, `"M" is no letter from A (January) to L (December)`, false},
		{"ABC001234425", PartMonth, `"4" is no letter`, false},
		{"ABC00123KX25", PartYear, `"X" is no digit`, false},
		{"ABC00123K4Z5", PartModel, `"Z5" is not two digits`, false},
		{"AUABC00123K425", PartCountry, "no hyphen stands after the country", true},
		{"AU ABC00123K425", PartCountry, "a blank and no hyphen", true},
		{"au-ABC00123K425", PartCountry, "small letters", true},
		{"AU-abc00123K425", PartMaker, "small letters", true},
	}
	for _, r := range rows {
		n := Parse(r.text)
		found := false
		for _, f := range n.Faults {
			found = found || f.Part == r.part && f.Soft == r.soft && strings.Contains(f.Says, r.says)
		}
		if !found {
			t.Errorf("%q: no %q of %q among %v", r.text, r.says, r.part, n.Faults)
		}
		if n.Sound() != r.soft {
			t.Errorf("%q: sound is %v", r.text, n.Sound())
		}
	}
}

// A number that is taken apart gives its own twelve characters again, and nothing makes the parser stumble.
func FuzzParse(f *testing.F) {
	for _, text := range []string{"ABC00123K425", "AU-ABC00123K425", "ZZ ABC 00123 K4 25", "ÅBC00123K425", "", "--------", "\x00\xff"} {
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text string) {
		n := Parse(text)
		n.parts()
		bare := n.Bare()
		if !n.Sound() || bare == "" {
			return
		}
		if again := Parse(bare); again.Bare() != bare || !again.Sound() || !strings.Contains(text, bare) {
			t.Errorf("%q gives %q, which gives %q with %v", text, bare, again.Bare(), again.Faults)
		}
	})
}
