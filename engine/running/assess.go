package running

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Input is what the hours are judged with.
type Input struct {
	Hull    *record.Hull
	Sisters []*record.Hull // other hulls of the same design, not of its variants
	// Tenth gives the mean of the highest tenth of impacts, g, at a speed in knots and a significant wave height in metres.
	Tenth func(knots, metres float64) (g float64, outside, ok bool)
}

// Assess reads the log and the looks of a hull and says what they show. A hull without a log and without looks has
// nothing here: no rule asks for running hours. Sister hulls bring theirs all the same.
func Assess(in Input) Result {
	var r Result
	in.log(&r)
	in.looks(&r)
	r.Pool = in.pool()
	r.Claim = in.claim(&r)
	for i := range in.Hull.Warranties {
		if of := in.Hull.Warranties[i].Of; of.Set && of.V != "structure" {
			continue // hours without a crack say nothing about paint or fittings
		}
		r.Promises = append(r.Promises, r.promise(&in.Hull.Warranties[i]))
	}
	in.words(&r)
	r.Equal = in.equal(&r)
	r.ladder()
	if len(r.Rows) > 0 {
		r.Findings = append(r.Findings, in.findings(&r)...)
		r.Assumptions = in.assumptions(&r)
	}
	return r
}

// pool gathers what every hull of the design brings.
func (in *Input) pool() []Exposure {
	out := []Exposure{exposure(in.Hull)}
	for _, s := range in.Sisters {
		out = append(out, exposure(s))
	}
	return out
}

// exposure is what one hull brings. A crack ends it at the last look before it that found none: that is the least that
// the records allow, since the crack began somewhere between the two looks.
func exposure(h *record.Hull) Exposure {
	e := Exposure{Number: h.Number}
	joined := spans(h.Hours)
	looks := sortedLooks(h, joined)
	total := run(joined, 1e9)
	switch {
	case len(h.Hours) == 0:
		e.Why = "no hours are on record"
		return e
	case len(looks) == 0:
		e.AtRisk, e.Why = total, "nobody has looked at the seams since the boat ran"
		return e
	}
	for _, l := range looks {
		if l.Cracks > 0 {
			e.Cracked = true
			break
		}
		e.Hours = l.Run
	}
	e.AtRisk = total - looks[len(looks)-1].Run
	if e.Hours == 0 && !e.Cracked {
		e.Why = "no look lies after any hours"
	}
	return e
}

func (in *Input) findings(r *Result) []finding.Finding {
	var out []finding.Finding
	say := func(kind finding.Kind, rule, settle string, at finding.Place, format string, args ...any) {
		out = append(out, finding.Finding{Kind: kind, Rule: rule, Subject: "running hours", Says: fmt.Sprintf(format, args...), Settle: settle, Places: []finding.Place{at}})
	}
	last := r.Rows[len(r.Rows)-1].Record
	if len(r.Looks) == 0 {
		say(finding.Gap, "hours-not-looked", "look at the seams and record what was seen, and how", last.At,
			"%s h are in the log and nobody has looked at the seams: they prove nothing", unit.Text(r.Logged, 0))
	}
	for i := range r.Ladder {
		if s := &r.Ladder[i]; s.Due && i > 0 && len(r.Looks) > 0 && (i == len(r.Ladder)-1 || !r.Ladder[i+1].Due) {
			say(finding.Doubt, "look-due", "look at the seams again", last.At,
				"the boat has run %s h, %s h of them since the last look; by the yard's own ladder a look was due at %s h", unit.Text(r.Logged, 0), unit.Text(r.AtRisk, 0), unit.Text(s.Hours, 0))
		}
	}
	for i := range r.Promises {
		if p := &r.Promises[i]; !p.Has {
			say(finding.Gap, "warranty-hours", "write yearly_h", p.Record.At,
				"the warranty on %s does not say how many hours a year are expected, so nothing can be held against it", p.Record.Part.V)
		}
	}
	return out
}

func (in *Input) assumptions(r *Result) []finding.Assumption {
	var out []finding.Assumption
	say := func(says, settle string, b finding.Basis) {
		out = append(out, finding.Assumption{Subject: "running hours", Says: says, Settle: settle, Basis: b})
	}
	if r.Claim.Has {
		say("confidence is 90 %, and in the first sentence the chance of a crack does not change with age (slope 1); slopes of 2 and 3 stand beside it", "no record can measure a slope without cracks", finding.Practice)
		say("a boat is one sample, however many welds it has: they share welder, load and hull", "more boats", finding.Derived)
	}
	if r.Equal.Has {
		say(fmt.Sprintf("damage grows with the power %s of the impacts, at the same place in the same way", unit.Plain(r.Equal.Power)), "strain gauges on trial and in service", finding.Recalled)
	}
	return out
}
