package identity

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
)

// Part is one part of a number as a page shows it.
type Part struct {
	Name   string
	Text   string   // the characters
	Means  string   // what they say in words
	Faults []string // what is wrong with them, in form or against the records
	Source string
	Basis  finding.Basis
}

// Clauses of the parts.
const (
	clause    = "33 CFR 181.25"
	isoClause = "ISO 10087"
)

// parts gives the parts of a number with what they mean. The country is listed only where it is marked.
func (n *Number) parts() []Part {
	var out []Part
	add := func(name, text, means, source string, basis finding.Basis) {
		p := Part{Name: name, Text: text, Means: means, Source: source, Basis: basis}
		for _, f := range n.FaultsOf(name) {
			p.Faults = append(p.Faults, f.Says)
		}
		out = append(out, p)
	}
	if n.Country != "" {
		add(PartCountry, n.Country, n.countryMeans(), isoClause, finding.Recalled)
	}
	if n.Maker == "" {
		return out
	}
	add(PartMaker, n.Maker, "the code that the authority gave to the maker", clause+"(a)", finding.Read)
	add(PartSerial, n.Serial, "the maker's own number of this boat", clause+"(b)", finding.Read)
	add(PartMonth, n.Month, n.monthMeans(), clause+"(c)", finding.Read)
	add(PartYear, n.Year, n.yearMeans(), clause+"(c)", finding.Read)
	add(PartModel, n.Model, n.modelMeans(), clause+"(d)", finding.Read)
	return out
}

func (n *Number) countryMeans() string {
	if free(n.Country) {
		return "a code that stands for no country"
	}
	return "the country that gave the maker its code"
}

// free reports the two-letter codes that ISO 3166-1 leaves to users: AA, QM to QZ, XA to XZ, ZZ (recalled). No maker has
// its seat there.
func free(country string) bool {
	c := strings.ToUpper(country)
	if len(c) != 2 {
		return false
	}
	return c == "AA" || c == "ZZ" || c[0] == 'X' || c[0] == 'Q' && c[1] >= 'M'
}

func (n *Number) monthMeans() string {
	month, ok := n.MonthOf()
	if !ok {
		return ""
	}
	return month.String()
}

func (n *Number) yearMeans() string {
	year, ok := n.YearOf()
	if !ok {
		return ""
	}
	return fmt.Sprintf("%d, the year with this last digit that fits the model year", year)
}

func (n *Number) modelMeans() string {
	year, ok := n.ModelYear()
	if !ok {
		return ""
	}
	return fmt.Sprintf("%d", year)
}
