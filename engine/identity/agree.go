package identity

import (
	"fmt"
	"strings"
	"time"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// maker holds the maker's code against that of the yard.
func (a *assessor) maker() {
	code := a.yard.Builder.Code
	c := finding.Check{
		Rule: ruleMaker, Subject: subject, Asks: "the maker's code is that of the yard", Basis: finding.Read, Source: clause + "(a)",
		Needed: code.V, Has: a.Number.Maker, Places: finding.Places(a.hull.Identity.HIN.At, code.At),
	}
	switch {
	case !code.Set:
		c.Standing, c.Missing = finding.NotShown, []string{"maker_code"}
		c.Says = "the yard's own code is not written, so that the code " + a.Number.Maker + " cannot be held against it"
		c.Settle = "write maker_code in yard.toml"
	case strings.EqualFold(code.V, a.Number.Maker):
		c.Standing, c.Says = finding.Met, a.Number.Maker+" is the code of the yard"
	default:
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("the number says that %s made the boat; the yard's code is %s", a.Number.Maker, code.V)
		c.Settle = "read the number off the boat; correct identity.hin or maker_code"
		a.note(PartMaker, "the yard's code is "+code.V)
		a.find(finding.Contradiction, ruleMaker, c.Says, c.Settle, code.At)
	}
	a.Checks = append(a.Checks, c)
}

// month is a month of a year, counted from the year nought.
type month int

func monthOf(year int, m time.Month) month { return month(12*year + int(m) - 1) }

func (m month) String() string { return fmt.Sprintf("%s %d", time.Month(m%12+1), m/12) }

// day holds month and year against the days on record: not before building began, not after the boat left the works.
func (a *assessor) day() {
	m, okMonth := a.Number.MonthOf()
	year, okYear := a.Number.YearOf()
	if !okMonth || !okYear {
		return
	}
	id := &a.hull.Identity
	marked := monthOf(year, m)
	c := finding.Check{
		Rule: ruleDay, Subject: subject, Standing: finding.Met, Basis: finding.Read, Source: clause + "(c)", Has: marked.String(),
		Asks:   "month and year are not before building began and not after the boat left the works",
		Places: finding.Places(id.HIN.At, id.KeelLaid.At, id.Handed.At),
	}
	early, late := id.KeelLaid, id.Handed
	switch {
	case early.Set && marked < dated(early.V):
		a.wrongDay(&c, fmt.Sprintf("the number says %s, but building began on %s", marked, early.V), early.At)
	case late.Set && marked > dated(late.V):
		a.wrongDay(&c, fmt.Sprintf("the number says %s, but the boat was handed over on %s", marked, late.V), late.At)
	case !early.Set:
		c.Standing, c.Missing = finding.NotShown, []string{"identity.keel_laid"}
		c.Says = "the day on which building began is not written, so that " + marked.String() + " cannot be held against it"
		c.Settle = "write identity.keel_laid"
	case late.Set:
		c.Says = fmt.Sprintf("%s, between %s and %s", marked, early.V, late.V)
	default:
		c.Says = fmt.Sprintf("%s, not before %s; the boat has not been handed over", marked, early.V)
	}
	a.Checks = append(a.Checks, c)
}

func dated(d record.Date) month { return monthOf(d.Year, d.Month) }

func (a *assessor) wrongDay(c *finding.Check, says string, at finding.Place) {
	c.Standing, c.Says = finding.Short, says
	c.Settle = "correct the number or the day"
	a.note(PartMonth, says)
	a.find(finding.Contradiction, ruleDay, says, c.Settle, at)
}

// nextFrom is the month from which a boat may carry the next model year (recalled; the model year begins on 1 August).
const nextFrom = time.August

// model doubts a model year that is neither that of the month nor, from August on, the next.
func (a *assessor) model() {
	m, okMonth := a.Number.MonthOf()
	year, okYear := a.Number.YearOf()
	model, okModel := a.Number.ModelYear()
	if !okMonth || !okYear || !okModel {
		return
	}
	if model == year || model == year+1 && m >= nextFrom {
		return
	}
	says := fmt.Sprintf("model year %d on a boat of %s: it is that of the year, or from %s on that of the next (recalled)", model, monthOf(year, m), nextFrom)
	a.note(PartModel, says)
	a.doubt(ruleModel, says, "read the number off the boat, and hold it against your copy of the rule")
}

// serials are the hulls of a yard by maker and serial number, in capitals.
type serials map[string][]marked

type marked struct {
	hull   *record.Hull
	number Number
}

func serialsOf(hulls []*record.Hull) serials {
	all := serials{}
	for _, h := range hulls {
		if n := Parse(h.Identity.HIN.V); h.Identity.HIN.Set && n.Serial != "" {
			key := strings.ToUpper(n.Maker + n.Serial)
			all[key] = append(all[key], marked{h, n})
		}
	}
	return all
}

// mostNamed is how many hulls a sentence names before it counts the others.
const mostNamed = 12

// serial doubts other boats of the same maker with the same serial number. The rule asks only that no whole number is
// used twice; a serial number that tells one boat from all others of its maker is asked in Europe.
func (a *assessor) serial() {
	var others []string
	var at []finding.Place
	for _, o := range record.Once(a.yard, serialsOf)[strings.ToUpper(a.Number.Maker+a.Number.Serial)] {
		if o.hull == a.hull || strings.EqualFold(o.number.Bare(), a.Number.Bare()) {
			continue
		}
		others = append(others, "hull "+o.hull.Number)
		at = append(at, o.hull.Identity.HIN.At)
	}
	if len(others) == 0 {
		return
	}
	named := strings.Join(others[:min(mostNamed, len(others))], ", ")
	if more := len(others) - mostNamed; more > 0 {
		named, at = fmt.Sprintf("%s and %d more", named, more), at[:mostNamed]
	}
	says := fmt.Sprintf("hull %s and %s have one serial number, %s, and differ only in the date; European law asks that it be unique (Directive 2013/53/EU, annex I, A 2.1)", a.hull.Number, named, a.Number.Serial)
	a.note(PartSerial, "also that of "+named)
	a.doubt(ruleSerial, says, "read the numbers off both boats; give the next boat a number of its own", at...)
}
