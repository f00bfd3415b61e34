// Package calibration asks whether what a thing was measured with could be trusted on the day it was measured.
//
//   - Question: was the instrument good on the day?
//   - In: the instruments of the yard, and one use: which instrument, on which day.
//   - Out: one check, met only where a calibration covers the day.
//   - Source: practice of quality plans; no edition is cited.
package calibration

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// Rule is the name of the check.
const Rule = "instrument-calibrated"

// Use is one measurement: what it belongs to, the instrument it names and the day.
type Use struct {
	Subject    string // "weighing W1"
	Key        string // record key of the instrument, "weighing.W1.instrument"
	Instrument record.Val[string]
	Day        record.Val[record.Date]
}

// Check holds the day of the measurement against the last calibration of the instrument and the day on which that
// ends. An instrument that is not named, not on record or without those days is not shown, never met. The last calibration says
// nothing of a measurement before it.
func Check(b *record.Builder, u Use) finding.Check {
	c := finding.Check{
		Rule: Rule, Subject: u.Subject, Standing: finding.NotShown,
		Asks:   "the instrument was in calibration on the day of the measurement",
		Basis:  finding.Practice,
		Source: "practice",
	}
	id, named := u.Instrument.Get()
	if !named {
		c.Says = "no instrument is named"
		c.Missing = []string{u.Key}
		c.Settle = "write the instrument under " + u.Key
		return c
	}
	c.Places = append(c.Places, u.Instrument.At)
	tool, found := find(b, id)
	if !found {
		c.Says = fmt.Sprintf("instrument %s is not on record", id)
		c.Settle = fmt.Sprintf("put instrument %s into the records of the yard", id)
		return c
	}
	return held(c, tool, u.Day)
}

// held compares the days.
func held(c finding.Check, tool *record.Instrument, day record.Val[record.Date]) finding.Check {
	missing := missingDays(tool)
	if len(missing) > 0 || !day.Set {
		c.Says = fmt.Sprintf("the calibration of instrument %s on that day is not on record", tool.ID)
		c.Missing = missing
		c.Places = append(c.Places, tool.At)
		c.Settle = "write the day of the last calibration and the day on which it ends"
		return c
	}
	from, until := tool.Calibrated, tool.Due
	c.Places = append(c.Places, day.At, from.At, until.At)
	c.Needed = fmt.Sprintf("between %s and %s", from.V, until.V)
	c.Has = day.V.String()
	switch {
	case day.V.Before(from.V):
		c.Says = fmt.Sprintf("measured on %s; the only calibration of instrument %s on record is of %s, after it", day.V, tool.ID, from.V)
		c.Settle = "put the calibration before the measurement on record"
	case until.V.Before(day.V):
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("measured on %s; the calibration of instrument %s ended on %s", day.V, tool.ID, until.V)
		c.Settle = "measure again, or put the later calibration on record with the error it found"
	default:
		c.Standing = finding.Met
		c.Says = fmt.Sprintf("instrument %s was in calibration from %s to %s", tool.ID, from.V, until.V)
	}
	return c
}

// missingDays names the record keys without which the calibration cannot be held against the day.
func missingDays(tool *record.Instrument) []string {
	var keys []string
	if !tool.Calibrated.Set {
		keys = append(keys, "instrument."+tool.ID+".calibrated")
	}
	if !tool.Due.Set {
		keys = append(keys, "instrument."+tool.ID+".due")
	}
	return keys
}

func find(b *record.Builder, id string) (*record.Instrument, bool) {
	if b == nil {
		return nil, false
	}
	for i := range b.Instruments {
		if b.Instruments[i].ID == id {
			return &b.Instruments[i], true
		}
	}
	return nil, false
}
