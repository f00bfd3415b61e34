package identity

import (
	"strconv"
	"strings"
	"time"
)

// letters checks the characters of every part.
func (n *Number) letters() {
	n.maker()
	n.serial()
	if _, ok := n.MonthOf(); !ok {
		n.fault(PartMonth, quoted(n.Month)+" is no letter from A (January) to L (December)")
	}
	if !digits(n.Year) {
		n.fault(PartYear, quoted(n.Year)+" is no digit")
	}
	if !digits(n.Model) {
		n.fault(PartModel, quoted(n.Model)+" is not two digits")
	}
	if n.Country != strings.ToUpper(n.Country) {
		n.soft(PartCountry, "small letters; the number is marked in capitals")
	}
}

func (n *Number) maker() {
	for _, r := range n.Maker {
		if !letter(r) && !digit(r) {
			n.fault(PartMaker, quoted(string(r))+" is neither letter nor digit")
		}
	}
	if n.Maker != strings.ToUpper(n.Maker) {
		n.soft(PartMaker, "small letters; the number is marked in capitals")
	}
}

// serial checks the five characters: letters and digits, but no I, O or Q (33 CFR 181.25(b), read), which are mistaken
// for 1 and 0.
func (n *Number) serial() {
	for _, r := range n.Serial {
		switch {
		case strings.ContainsRune("IOQioq", r):
			n.fault(PartSerial, quoted(string(r))+" stands in it; I, O and Q are not allowed there because they are read as digits")
		case !letter(r) && !digit(r):
			n.fault(PartSerial, quoted(string(r))+" is neither letter nor digit")
		}
	}
	if n.Serial != strings.ToUpper(n.Serial) {
		n.soft(PartSerial, "small letters; the number is marked in capitals")
	}
}

// MonthOf gives the month of the letter: A is January, L is December (33 CFR 181.25(c), read).
func (n *Number) MonthOf() (time.Month, bool) {
	if len(n.Month) != 1 || n.Month[0] < 'A' || n.Month[0] > 'L' {
		return 0, false
	}
	return time.Month(n.Month[0]-'A') + 1, true
}

// firstOfForm is the model year from which numbers of this form were marked (recalled): two digits from it up to 99 are
// years of the last century.
const firstOfForm = 84

// ModelYear gives the model year in full. Two digits say no century: from 84 up they are taken for 1984 to 1999, because
// the form began then (recalled), else for this century.
func (n *Number) ModelYear() (int, bool) {
	if !digits(n.Model) {
		return 0, false
	}
	two, _ := strconv.Atoi(n.Model)
	if two >= firstOfForm {
		return 1900 + two, true
	}
	return 2000 + two, true
}

// YearOf gives the year of building or certification in full: the one that ends in the digit and lies from eight years
// before the model year to one year after it, of which there is exactly one.
func (n *Number) YearOf() (int, bool) {
	model, ok := n.ModelYear()
	if !ok || !digits(n.Year) {
		return 0, false
	}
	for year := model + 1; year >= model-8; year-- {
		if year%10 == int(n.Year[0]-'0') {
			return year, true
		}
	}
	return 0, false
}

func letter(r rune) bool { return r >= 'A' && r <= 'Z' || r >= 'a' && r <= 'z' }
func digit(r rune) bool  { return r >= '0' && r <= '9' }

func digits(s string) bool {
	for _, r := range s {
		if !digit(r) {
			return false
		}
	}
	return s != ""
}

func quoted(s string) string { return strconv.QuoteToGraphic(s) }

func counted(n int) string {
	if n == 1 {
		return "1 character"
	}
	return strconv.Itoa(n) + " characters"
}

func shortOrLong(n int) string {
	if n < length {
		return "; one or more are missing, so no part can be told from the next"
	}
	return "; the first twelve are taken"
}
