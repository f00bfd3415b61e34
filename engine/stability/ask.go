package stability

import (
	"fmt"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// question is one thing asked of the boat, with what the boat has.
type question struct {
	rule, subject, asks string
	name                string // of what is held: "heel with the crew to one side"
	working             *method.Working
	symbol              string // what is asked for, in the working
	has                 float64
	why                 string // why there is nothing to hold; empty where there is
	short               string // why it is short whatever the figure; empty where the figure decides
	most                bool   // what the boat has must not exceed what is asked
	unit                string
	decimals            int
	basis               finding.Basis // of what the boat has
	condition           string
	settle              string
	missing             []string
	places              []finding.Place
}

// ask makes a check of a question.
func (j *judge) ask(q question) finding.Standing {
	shown, ok := q.working.Get(q.symbol)
	c := finding.Check{Rule: q.rule, Subject: q.subject, Asks: q.asks, Standing: finding.NotShown, Basis: q.basis, Missing: q.missing, Settle: q.settle}
	needed := math.NaN()
	if ok {
		c.Source, c.Basis = q.working.Sheet.Cite(shown.Clause), finding.Softer(q.basis, shown.Rests)
		needed = shown.Value
	}
	c.Places = j.under(q)
	switch {
	case !ok:
		c.Says = "not shown: the sheet does not give " + q.symbol
	case q.why != "":
		c.Says = "not shown: " + q.why
		if shown.State == method.Sound {
			c.Needed = unit.Text(needed, q.decimals) + sign(q.unit)
		}
	case shown.State != method.Sound && shown.State != method.Outside:
		c.Says, c.Missing = "not shown: "+shown.Why(), append(c.Missing, shown.Lacks()...)
	default:
		q.decide(&c, needed, shown)
	}
	j.show(Shown{Check: c, Working: q.working, Symbol: q.symbol, Condition: q.condition})
	return c.Standing
}

// decide holds has against needed. A millionth of the last place is no difference: the last bits of a number differ between
// machines.
func (q *question) decide(c *finding.Check, needed float64, shown *method.Shown) {
	reached := q.has >= needed-1e-7
	word := "at least"
	if q.most {
		reached, word = q.has <= needed+1e-7, "at most"
	}
	has, need := pair(q.has, needed, q.decimals)
	c.Needed, c.Has = word+" "+need+sign(q.unit), has+sign(q.unit)
	c.Says = fmt.Sprintf("%s %s%s, %s %s%s asked", q.name, has, sign(q.unit), word, need, sign(q.unit))
	c.Standing = finding.Short
	if q.short != "" {
		c.Has, c.Says = "", q.short
		return
	}
	if reached {
		c.Standing, c.Settle = finding.Met, ""
	}
	if shown.State == method.Outside {
		c.Says += "; outside the range of the method: " + shown.Why()
		if reached {
			c.Standing, c.Settle = finding.NotShown, "another method, or a test or calculation by a naval architect"
		}
	}
}

// pair writes two numbers with so many decimals that a difference between them can be seen, nine at most.
func pair(a, b float64, decimals int) (string, string) {
	for d := decimals; ; d++ {
		s, t := unit.Text(a, d), unit.Text(b, d)
		if s != t || math.Abs(a-b) <= 1e-7 || d >= 9 {
			return s, t
		}
	}
}

func sign(u string) string {
	if u == "" || u == "°" {
		return u
	}
	return "\u00a0" + u
}

// show adds a check with its working.
func (j *judge) show(s Shown) {
	j.out.Shown = append(j.out.Shown, s)
	j.out.Checks = append(j.out.Checks, s.Check)
}

// under lists the record lines of a question: its own, then those of the inputs of its sheet.
func (j *judge) under(q question) []finding.Place {
	out := finding.Places(q.places...)
	for w := q.working; w != nil; w = w.Above {
		for i := range w.Inputs {
			if at := w.Inputs[i].Place; at.Known() && !slices.Contains(out, at) {
				out = append(out, at)
			}
		}
	}
	if len(out) == 0 {
		out = append(out, j.lines.Stations[0].Place)
	}
	return out
}

func (j *judge) say(kind finding.Kind, rule, subject, says, settle string, at ...finding.Place) {
	j.out.Findings = append(j.out.Findings, finding.Finding{Kind: kind, Rule: rule, Subject: subject, Says: says, Settle: settle, Places: finding.Places(at...)})
}

func (j *judge) assume(says, settle string, basis finding.Basis) {
	for _, old := range j.out.Assumptions {
		if old.Says == says {
			return
		}
	}
	j.out.Assumptions = append(j.out.Assumptions, finding.Assumption{Subject: "stability", Says: says, Settle: settle, Basis: basis})
}

func (j *judge) notApplying(rule, says, source string) {
	j.out.NotApplying = append(j.out.NotApplying, NotApplying{Rule: rule, Says: says, Source: source})
}

func holes(c *Condition, s *Side, n int) string {
	first := s.Curve.Failed[0]
	return fmt.Sprintf("%s: at %d of 180 heels to %s no position of rest was found, first at %s°: %v", c.Loading.Title, n, s.Name, unit.Text(first.Heel/degree, 0), first.Err)
}

// allowance is the difference that the yard accepts between a test and what is reckoned.
type allowance struct {
	most     float64
	set      bool
	sign     string
	decimals int
	key      string
}

// decideBy closes a check of a test against what is reckoned. Beyond the allowance the two cannot both be true, and a
// contradiction stands in for the shortfall.
func (j *judge) decideBy(c *finding.Check, apart float64, a allowance) {
	if !a.set {
		c.Says += "; no allowance is written"
		c.Missing, c.Settle = append(c.Missing, a.key), "write the difference that the yard accepts"
		return
	}
	most := unit.Text(a.most, a.decimals) + a.sign
	c.Needed = "within ± " + most
	if apart <= a.most {
		c.Standing = finding.Met
		c.Says += ", within the " + most + " allowed"
		return
	}
	c.Standing = finding.Short
	c.Says += ", beyond the " + most + " allowed; test and record cannot both be right"
	c.Settle = "look for what was on board or ashore on the day and is not named, then test again"
	j.say(finding.Contradiction, c.Rule, c.Subject, c.Says, c.Settle, c.Places...)
}
