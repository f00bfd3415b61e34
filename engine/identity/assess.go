package identity

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Rules of the checks and findings of this package.
const (
	ruleForm   = "hin-form"
	ruleMaker  = "hin-maker"
	ruleDay    = "hin-date"
	ruleModel  = "hin-model-year"
	ruleSerial = "hin-serial-twice"
	ruleMark   = "hin-as-marked"
)

// subject is what all of them are about.
const subject = "identity"

// Result is what the number of one hull says and how it agrees with the records.
type Result struct {
	Number      Number
	Parts       []Part // empty where no number is written
	Checks      []finding.Check
	Findings    []finding.Finding
	Assumptions []finding.Assumption
}

// Assess takes the number of a hull apart and holds it against the records. That a finished boat has a number at all, and
// that no other hull has the same, is looked at where records are held against each other.
func Assess(y *record.Yard, h *record.Hull) Result {
	text, ok := h.Identity.HIN.Get()
	if !ok {
		return Result{}
	}
	r := Result{Number: Parse(text)}
	r.Parts = r.Number.parts()
	a := assessor{&r, y, h}
	a.form()
	a.marked()
	if r.Number.Maker == "" {
		return r
	}
	a.maker()
	a.day()
	a.model()
	a.serial()
	return r
}

type assessor struct {
	*Result
	yard *record.Yard
	hull *record.Hull
}

// form checks the characters and their order.
func (a *assessor) form() {
	c := finding.Check{
		Rule: ruleForm, Subject: subject, Standing: finding.Met, Basis: finding.Read, Source: clause,
		Asks:   "the hull identification number has the form that its rule asks for",
		Places: []finding.Place{a.hull.Identity.HIN.At}, Has: a.Number.Text,
	}
	if a.Number.Sound() {
		c.Says = "maker " + a.Number.Maker + ", serial number " + a.Number.Serial + ", " + a.Number.monthMeans() + " " + a.Number.yearOnly() + ", model year " + a.Number.modelMeans()
		a.Checks = append(a.Checks, c)
		return
	}
	var wrong []string
	for _, f := range a.Number.Faults {
		if !f.Soft {
			wrong = append(wrong, strings.TrimSpace(f.Part+": "+f.Says))
		}
	}
	c.Standing = finding.Short
	c.Says = a.Number.Text + " has not the form of a hull identification number: " + strings.TrimPrefix(strings.Join(wrong, "; "), ": ")
	c.Settle = "read the number off the boat and correct identity.hin; if it is marked like this, ask the authority that gave the maker's code"
	a.Checks = append(a.Checks, c)
}

func (n *Number) yearOnly() string {
	year, _ := n.YearOf()
	return fmt.Sprint(year)
}

// marked doubts what is asked only by texts that were not at hand.
func (a *assessor) marked() {
	for _, f := range a.Number.Faults {
		if f.Soft {
			a.doubt(ruleMark, f.Part+": "+f.Says+" (recalled of ISO 10087)", "read the number off the boat, and hold it against your copy of the standard")
		}
	}
	if a.Number.Country != "" && free(a.Number.Country) && !a.yard.Builder.Invented.V {
		a.doubt(ruleMark, a.Number.Country+" stands for no country, so no authority gave the maker's code (recalled of ISO 3166-1)", "write the country whose authority gave the code")
	}
}

func (a *assessor) doubt(rule, says, settle string, more ...finding.Place) {
	a.find(finding.Doubt, rule, says, settle, more...)
}

func (a *assessor) find(kind finding.Kind, rule, says, settle string, more ...finding.Place) {
	a.Findings = append(a.Findings, finding.Finding{
		Kind: kind, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: append([]finding.Place{a.hull.Identity.HIN.At}, more...),
	})
}

// note puts what was found beside the part of the number that it is about.
func (a *assessor) note(part, says string) {
	for i := range a.Parts {
		if a.Parts[i].Name == part {
			a.Parts[i].Faults = append(a.Parts[i].Faults, says)
		}
	}
}
