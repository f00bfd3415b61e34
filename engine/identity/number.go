// Package identity takes a hull identification number apart and holds each part against the rules for it and against
// the records of the yard: maker's code, serial number, month and year, model year.
//
// A United States number has twelve characters (33 CFR 181.25, read): three for the maker, five for the serial number, a
// letter for the month, the last digit of the year, two digits of the model year. The number of ISO 10087 is the same
// with the two letters of the maker's country and a hyphen before it (recalled), so one form serves both.
//
//   - Question: is the hull number formed right, and does it say what the records say?
//   - In: the yard and one hull.
//   - Out: the number part by part, with a check for each.
//   - Source: 33 CFR 181.25 (read), ISO 10087 (recalled).
package identity

import "strings"

// Part names of a number, in the order in which they stand.
const (
	PartCountry = "country of the maker"
	PartMaker   = "maker's code"
	PartSerial  = "serial number"
	PartMonth   = "month of building or certification"
	PartYear    = "last digit of that year"
	PartModel   = "model year"
)

// length of the number without the country.
const length = 12

// Number is a number taken apart. Parts are empty where the text is too short to hold them.
type Number struct {
	Text    string // as marked
	Country string
	Hyphen  bool // a hyphen stands after the country
	Maker   string
	Serial  string
	Month   string
	Year    string
	Model   string
	Faults  []Fault
}

// Fault is one thing that is wrong in the form of a number.
type Fault struct {
	Part string // which part, empty for the number as a whole
	Says string
	Soft bool // asked by a text that was not at hand, so that it is a doubt and not a fault
}

// Parse takes a number apart and lists what is wrong in its form. What stands in a place is kept as it was written, so
// that a reader sees which character is meant.
func Parse(text string) Number {
	n := Number{Text: text}
	body := []rune(n.country(strings.TrimSpace(text)))
	body = n.plain(body)
	if len(body) != length {
		n.fault("", "has "+counted(len(body))+" where twelve are asked"+shortOrLong(len(body)))
		if len(body) < length {
			return n
		}
	}
	at := func(from, to int) string { return string(body[from:to]) }
	n.Maker, n.Serial, n.Month, n.Year, n.Model = at(0, 3), at(3, 8), at(8, 9), at(9, 10), at(10, 12)
	n.letters()
	return n
}

// country takes the prefix of ISO 10087 off: two letters and a hyphen, or two letters before twelve characters.
func (n *Number) country(text string) string {
	runes := []rune(text)
	if len(runes) < 3 || !letter(runes[0]) || !letter(runes[1]) {
		return text
	}
	switch {
	case runes[2] == '-':
		n.Country, n.Hyphen = string(runes[:2]), true
		return string(runes[3:])
	case runes[2] == ' ':
		n.Country = string(runes[:2])
	case len(runes) == length+2:
		n.Country = string(runes[:2])
		n.soft(PartCountry, "no hyphen stands after the country")
		return string(runes[2:])
	default:
		return text
	}
	n.soft(PartCountry, "a blank and no hyphen stands after the country")
	return string(runes[3:])
}

// plain takes out blanks, hyphens and slashes, which the rule forbids between the twelve characters.
func (n *Number) plain(body []rune) []rune {
	var out []rune
	for _, r := range body {
		switch r {
		case ' ', '-', '/', '\u00a0':
		default:
			out = append(out, r)
		}
	}
	if len(out) != len(body) {
		n.fault("", "blanks, hyphens or slashes stand between the characters")
	}
	return out
}

func (n *Number) fault(part, says string) { n.Faults = append(n.Faults, Fault{Part: part, Says: says}) }

func (n *Number) soft(part, says string) {
	n.Faults = append(n.Faults, Fault{Part: part, Says: says, Soft: true})
}

// Sound reports whether nothing is wrong in the form of the number; soft faults do not count.
func (n *Number) Sound() bool {
	for _, f := range n.Faults {
		if !f.Soft {
			return false
		}
	}
	return true
}

// FaultsOf gives what is wrong in one part.
func (n *Number) FaultsOf(part string) []Fault {
	var out []Fault
	for _, f := range n.Faults {
		if f.Part == part {
			out = append(out, f)
		}
	}
	return out
}

// Bare is the twelve characters without country and without what people add to read them, empty where the form is wrong.
func (n *Number) Bare() string { return n.Maker + n.Serial + n.Month + n.Year + n.Model }
