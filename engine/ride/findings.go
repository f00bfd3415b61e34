package ride

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Limits beyond which a record is doubted.
const (
	gravityIn   = 0.5  // g of mean: gravity was left in (own)
	slowRate    = 500  // samples a second that the public guidance asks of a sensor (recalled)
	fewPeaks    = 100  // peaks under which the mean of the highest tenth scatters by more than an eighth (reckoned)
	departsMuch = 0.25 // part off the exponential law (own)
	offClock    = 0.02 // part by which the log's clock may differ from the rate on record (own)
	awayFrom    = 0.5  // metres from the centre of gravity that make a difference (own)
	atStop      = 0.98 // part of the sensor's range that counts as its stop (own)
)

// check asks whether the record gives what it was made for.
func (r *Ride) check() finding.Check {
	c := finding.Check{Rule: "ride-reduced", Subject: r.subject(), Asks: fmt.Sprintf("at least %d impacts, from which the mean of the highest tenth follows", Least),
		Source: "public guidance of the United States Navy for high-speed craft, NSWCCD-80-TR-2016/003; thresholds recalled", Basis: finding.Recalled,
		Needed: fmt.Sprintf("%d impacts", Least), Places: []finding.Place{r.Record.At}}
	switch {
	case r.Why != "":
		c.Standing, c.Says, c.Settle = finding.NotShown, "the record gives nothing: "+r.Why, "put the log right, or take the record out"
	case !r.Tenth.Has:
		c.Standing, c.Settle = finding.NotShown, "make a longer record at one speed in one sea"
		c.Says = fmt.Sprintf("%d impacts in %s s are too few for a mean of the highest tenth", len(r.Peaks.Sizes), unit.Text(r.Peaks.Seconds, 0))
	default:
		c.Standing = finding.Met
		c.Says = fmt.Sprintf("%d impacts in %s s; the highest tenth have a mean of %s g", len(r.Peaks.Sizes), unit.Text(r.Peaks.Seconds, 0), unit.Text(r.Tenth.G, 2))
	}
	if r.Why == "" {
		c.Has = fmt.Sprintf("%d impacts", len(r.Peaks.Sizes))
	}
	return c
}

// findings of one record.
func (in *Input) findings(r *Ride) []finding.Finding {
	var out []finding.Finding
	say := func(kind finding.Kind, rule, settle, short, format string, args ...any) {
		out = append(out, finding.Finding{Kind: kind, Rule: rule, Subject: r.subject(), Says: fmt.Sprintf(format, args...), Settle: settle, Places: []finding.Place{r.Record.At}})
		r.Doubts = append(r.Doubts, short)
	}
	rate := float64(r.Record.Rate.V)
	if r.Log.Without > 0 {
		say(finding.Doubt, "ride-no-number", "look at that line of the log", "rows without a number",
			"%d of %d rows have no number and are left out, the first in line %d; what stood there is not known", r.Log.Without, r.Log.Rows, r.Log.First)
	}
	if r.Log.Jumps > 0 {
		say(finding.Doubt, "ride-clock", "look at the logger", "clock goes back", "the log's clock goes back or stands still at %d rows", r.Log.Jumps)
	}
	if step := r.Log.Step; step > 0 && math.Abs(step*rate-1) > offClock {
		say(finding.Contradiction, "ride-rate", "correct rate_hz or the log", "rate",
			"the record says %s samples a second, the log's own clock %s", unit.Plain(rate), unit.Text(1/step, 1))
	}
	if r.Why != "" {
		return out
	}
	in.sensor(r, say)
	in.severity(r, say)
	return out
}

// sayer adds one finding, with two words for the table.
type sayer = func(kind finding.Kind, rule, settle, short, format string, args ...any)

// sensor doubts what the sensor gave.
func (in *Input) sensor(r *Ride, say sayer) {
	p := &r.Peaks
	if math.Abs(p.Mean) > gravityIn {
		say(finding.Doubt, "ride-gravity", "set the sensor to read nought at rest", "gravity left in",
			"the mean of the log is %s g: gravity was left in; it has been taken away", unit.Text(p.Mean, 2))
	}
	if p.Clipped > 0 {
		say(finding.Doubt, "ride-clipped", "use a sensor with a wider range", "clipped",
			"%d samples lie flat at the highest value: the sensor was at its stop, so the greatest impacts were greater than shown", p.Clipped)
	} else if r.Record.Range.Set && len(p.Sizes) > 0 && p.Sizes[0]+p.Mean >= atStop*float64(r.Record.Range.V) {
		say(finding.Doubt, "ride-clipped", "use a sensor with a wider range", "near the stop",
			"the greatest impact reaches the sensor's range of %s g", unit.Plain(r.Record.Range.V))
	}
	if r.Record.Rate.V < slowRate {
		say(finding.Doubt, "ride-rate-slow", "log faster", "sampled slowly",
			"%s samples a second, where the guidance asks %d: short impacts may be cut", unit.Plain(r.Record.Rate.V), slowRate)
	}
	if x, ok := r.Record.X.Get(); ok && !math.IsNaN(in.At) && math.Abs(float64(x)-in.At) > awayFrom {
		say(finding.Doubt, "ride-place", "fix the sensor near the centre of gravity for a comparison with the formula", "away from centre",
			"the sensor stood %s m forward of the transom, the centre of gravity lies at %s m", unit.Text(x, 2), unit.Text(in.At, 2))
	}
}

// severity holds the result against the law and against the design of the structure.
func (in *Input) severity(r *Ride, say sayer) {
	if n := len(r.Peaks.Sizes); r.Tenth.Has && n < fewPeaks {
		say(finding.Doubt, "ride-few-peaks", "make a longer record", "few impacts",
			"with %d impacts the mean of the highest tenth scatters by %s %% from the number alone", n, unit.Text(100*r.Error, 0))
	}
	if r.HasDeparts && math.Abs(r.Departs) > departsMuch {
		say(finding.Doubt, "ride-law", "look for runs of different speed in one record, or a sensor at its stop", "off the law",
			"the mean of the highest tenth lies %s %% off the exponential law", unit.Text(100*r.Departs, 0))
	}
	if in.Design > 0 && r.Tenth.Has && r.Tenth.G > in.Design {
		say(finding.Doubt, "ride-above-design", "look at the seams before the boat is run on; state for which acceleration the structure stands", "above design",
			"the mean of the highest tenth, %s g, is above the %s g for which the bottom is reckoned", unit.Text(r.Tenth.G, 2), unit.Text(in.Design, 2))
	}
}
