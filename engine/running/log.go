package running

import (
	"cmp"
	"fmt"
	"math"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// span is a stretch of the hour meter.
type span struct{ from, to float64 }

// spans joins the entries of a log into stretches that do not overlap, so that no hour counts twice.
func spans(all []record.Hours) []span {
	var out []span
	for i := range all {
		out = append(out, span{float64(all[i].From.V), float64(all[i].To.V)})
	}
	slices.SortFunc(out, func(a, b span) int { return cmp.Or(cmp.Compare(a.from, b.from), cmp.Compare(a.to, b.to)) })
	var joined []span
	for _, s := range out {
		if n := len(joined); n > 0 && s.from <= joined[n-1].to {
			joined[n-1].to = math.Max(joined[n-1].to, s.to)
			continue
		}
		joined = append(joined, s)
	}
	return joined
}

// run is the hours in the log up to a reading of the meter.
func run(all []span, meter float64) float64 {
	sum := 0.0
	for _, s := range all {
		sum += math.Max(0, math.Min(s.to, meter)-s.from)
	}
	return sum
}

// slack is how far readings of a meter may part before it is said, in hours.
const slack = 0.15

// log takes the entries over and holds each against the one before it.
func (in *Input) log(r *Result) {
	all := in.Hull.Hours
	joined := spans(all)
	for i := range all {
		rec := &all[i]
		row := Row{Record: rec, Hours: float64(rec.To.V - rec.From.V), Sum: run(joined, float64(rec.To.V))}
		if in.Tenth != nil && rec.Speed.Set && rec.Wave.Set {
			row.G, row.Outside, _ = in.Tenth(float64(rec.Speed.V), float64(rec.Wave.V))
		}
		r.Rows = append(r.Rows, row)
		if i > 0 {
			r.Findings = append(r.Findings, follows(&all[i-1], rec)...)
		}
	}
	if n := len(joined); n > 0 {
		r.Start, r.End = joined[0].from, joined[n-1].to
		r.Logged = run(joined, math.Inf(1))
	}
}

// follows finds hours that are written twice, hours that are not written, and days that go back.
func follows(a, b *record.Hours) []finding.Finding {
	var out []finding.Finding
	say := func(kind finding.Kind, rule, settle, format string, args ...any) {
		out = append(out, finding.Finding{Kind: kind, Rule: rule, Subject: "hours " + b.ID, Settle: settle,
			Says: fmt.Sprintf(format, args...), Places: []finding.Place{b.At, a.At}})
	}
	h := func(v unit.Hour) string { return unit.Text(v, 1) }
	switch {
	case float64(a.To.V-b.From.V) > slack:
		say(finding.Contradiction, "hours-twice", "correct one of the two readings; hours written twice are counted once",
			"the entry begins at %s h, but the one before it ends at %s h", h(b.From.V), h(a.To.V))
	case float64(b.From.V-a.To.V) > slack:
		say(finding.Gap, "hours-missing", "write what the boat did in between; these hours prove nothing",
			"%s h between %s and %s h are not in the log", h(b.From.V-a.To.V), h(a.To.V), h(b.From.V))
	}
	if b.Date.Set && a.Date.Set && b.Date.V.Before(a.Date.V) {
		say(finding.Contradiction, "hours-days", "correct one of the two days", "the entry is of %s, the one before it of %s", b.Date.V, a.Date.V)
	}
	return out
}
