package survey

import (
	"fmt"

	"hullfile/engine/calibration"
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// rule is the name of the check on a reading.
const rule = "survey-reading"

// judge holds a reading against what the file expects. A reading outside is short; where the file states what was measured,
// record and boat cannot both be right, and that is told as a contradiction.
func (r *Result) judge(b *record.Builder, i *Item, rec *record.SurveyReading) Reading {
	c := finding.Check{
		Rule: rule, Subject: "survey " + i.Key, Asks: "what was found on board agrees with the file", Needed: i.Expect.Says, Basis: i.Expect.Basis, Source: i.Expect.Source,
		Places: append([]finding.Place{rec.Item.At}, i.Places...),
	}
	c.Standing, c.Has, c.Says = outcome(i, rec)
	switch c.Standing {
	case finding.Short:
		c.Settle = "look at it again, and mend the record or the boat"
		r.Findings = append(r.Findings, finding.Finding{Kind: finding.Contradiction, Rule: rule, Subject: c.Subject, Says: c.Says, Settle: c.Settle, Places: c.Places})
	case finding.NotShown:
		c.Settle = "look at it when it can be reached"
	}
	r.Checks = append(r.Checks, c)
	if rec.Measured.Set {
		use := calibration.Use{Subject: c.Subject, Key: "survey." + rec.ID + ".instrument", Instrument: rec.Instrument, Day: rec.Date}
		r.Checks = append(r.Checks, calibration.Check(b, use))
	}
	return Reading{rec, c.Standing, c.Says}
}

// outcome gives the standing of a reading, the reading as text and a sentence.
func outcome(i *Item, rec *record.SurveyReading) (s finding.Standing, has, says string) {
	switch {
	case rec.Measured.Set:
		has = text(rec) + space(i.Unit)
	case rec.Seen.V == "as expected", rec.Seen.V == "not as expected":
		has = rec.Seen.V
	}
	switch {
	case rec.Seen.V == "not reached":
		return finding.NotShown, has, i.Subject + " could not be reached on " + rec.Date.V.String()
	case i.Unit != "" && !rec.Measured.Set && rec.Seen.V != "not as expected":
		return finding.NotShown, "", fmt.Sprintf("%s: no measurement is written; %s was expected", i.Subject, i.Expect.Says)
	case i.Unit == "" && !rec.Seen.Set:
		return finding.NotShown, has, fmt.Sprintf("%s: it is not written what was seen; %s was expected", i.Subject, i.Expect.Says)
	case rec.Seen.V == "not as expected":
		return finding.Short, has, fmt.Sprintf("%s: not as expected on %s%s; %s was expected", i.Subject, rec.Date.V, noted(rec), i.Expect.Says)
	case rec.Measured.Set && !i.Expect.holds(float64(rec.Measured.V)):
		return finding.Short, has, fmt.Sprintf("%s: %s measured on %s; %s was expected", i.Subject, has, rec.Date.V, i.Expect.Says)
	case rec.Measured.Set:
		return finding.Met, has, fmt.Sprintf("%s: %s measured on %s; %s was expected", i.Subject, has, rec.Date.V, i.Expect.Says)
	}
	return finding.Met, has, fmt.Sprintf("%s: as expected on %s", i.Subject, rec.Date.V)
}

// holds reports whether a reading lies within what is expected. Without limits nothing is expected, and any reading does.
func (e *Expect) holds(v float64) bool {
	return (!e.HasLow || v >= e.Low-1e-9) && (!e.HasTop || v <= e.High+1e-9)
}

// stray keeps a reading of an item that the file does not make: its subject was mended, renamed, or never there.
func (r *Result) stray(rec *record.SurveyReading) {
	says := fmt.Sprintf("survey item %q is on no sheet of this file now; what was found on %s is kept", rec.Item.V, rec.Date.V)
	r.Strays = append(r.Strays, Reading{rec, finding.NotShown, says})
	r.Findings = append(r.Findings, finding.Finding{
		Kind: finding.Doubt, Rule: "survey-item", Subject: "survey", Says: says, Settle: "write the key that is printed beside the item, or leave the line as a record of an earlier issue", Places: []finding.Place{rec.Item.At},
	})
}

// text is a reading as it was written, with its decimals.
func text(rec *record.SurveyReading) string {
	if rec.Measured.Text != "" {
		return rec.Measured.Text
	}
	return unit.Plain(rec.Measured.V)
}

func noted(rec *record.SurveyReading) string {
	if rec.Note.V == "" {
		return ""
	}
	return ", " + rec.Note.V
}

func space(sign string) string {
	if sign == "" {
		return ""
	}
	return " " + sign
}
