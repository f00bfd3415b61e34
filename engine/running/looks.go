package running

import (
	"cmp"
	"fmt"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// isCrack reports whether an indication counts as a failure. What is not settled does.
func isCrack(i *record.Indication) bool { return i.Is.V != "no crack" }

// Cracked reports whether something was found on a hull that is a crack or is not settled.
func Cracked(h *record.Hull) bool {
	for i := range h.Looks {
		for k := range h.Looks[i].Indications {
			if isCrack(&h.Looks[i].Indications[k]) {
				return true
			}
		}
	}
	return false
}

// sortedLooks gives the looks in order of the meter.
func sortedLooks(h *record.Hull, joined []span) []Look {
	var out []Look
	for i := range h.Looks {
		rec := &h.Looks[i]
		l := Look{Record: rec, Run: run(joined, float64(rec.Meter.V)), Lacks: lacks(rec)}
		for k := range rec.Indications {
			if isCrack(&rec.Indications[k]) {
				l.Cracks++
			}
		}
		out = append(out, l)
	}
	slices.SortStableFunc(out, func(a, b Look) int { return cmp.Compare(a.Record.Meter.V, b.Record.Meter.V) })
	for i := range out {
		out[i].Since = out[i].Run
		if i > 0 {
			out[i].Since -= out[i-1].Run
		}
	}
	return out
}

// lacks lists what a look does not say and what decides its worth.
func lacks(l *record.Look) []string {
	var out []string
	for key, set := range map[string]bool{
		"light": l.Light.Set, "access": l.Access.Set, "cleaned": l.Cleaned.Set, "by": l.By.Set, "share_percent": l.Share.Set, "smallest_mm": l.Smallest.Set,
	} {
		if !set {
			out = append(out, "look."+l.ID+"."+key)
		}
	}
	slices.Sort(out)
	return out
}

// looks takes the looks over, checks what each says of itself, and lists the places.
func (in *Input) looks(r *Result) {
	r.Looks = sortedLooks(in.Hull, spans(in.Hull.Hours))
	for i := range r.Looks {
		l := &r.Looks[i]
		r.Checks = append(r.Checks, described(l))
		r.Findings = append(r.Findings, in.found(r, i)...)
		if meter := float64(l.Record.Meter.V); len(r.Rows) > 0 && meter > r.End+slack {
			r.Findings = append(r.Findings, finding.Finding{Kind: finding.Contradiction, Rule: "look-after-log", Subject: "look " + l.Record.ID,
				Says:   fmt.Sprintf("the look is at %s h, but the log ends at %s h", unit.Text(meter, 1), unit.Text(r.End, 1)),
				Settle: "correct the reading, or bring the log up to date", Places: []finding.Place{l.Record.Meter.At}})
		}
	}
	if n := len(r.Looks); n > 0 {
		r.LookedTo = r.Looks[n-1].Run
	}
	r.AtRisk = r.Logged - r.LookedTo
	r.places()
}

// described asks whether a look says enough of itself to be worth something to a stranger.
func described(l *Look) finding.Check {
	rec := l.Record
	c := finding.Check{Rule: "look-described", Subject: "look " + rec.ID, Asks: "a look says light, access, cleaning, who looked, what share of the seams was seen and the smallest crack it would have found",
		Source: "own practice, after published reviews of how reliably cracks are found", Basis: finding.Practice, Places: []finding.Place{rec.At}, Missing: l.Lacks}
	if len(l.Lacks) == 0 {
		c.Standing = finding.Met
		c.Says = fmt.Sprintf("%s, %s of %s, %s %% of the seam length, a crack of %s mm would have been found", rec.Method.V, unit.Count(len(rec.Places.V), "place", "places"), rec.Date.V.String(),
			unit.Plain(rec.Share.V), unit.Plain(rec.Smallest.V))
		return c
	}
	c.Standing, c.Settle = finding.NotShown, "write what is missing; without it nobody can say what a clean look is worth"
	c.Says = "the look does not say " + strings.Join(shortKeys(l.Lacks), ", ")
	return c
}

func shortKeys(keys []string) []string {
	var out []string
	for _, k := range keys {
		out = append(out, k[strings.LastIndexByte(k, '.')+1:])
	}
	return out
}

// found tells of cracks, and of places that were not looked at again after one.
func (in *Input) found(r *Result, at int) []finding.Finding {
	var out []finding.Finding
	l := r.Looks[at].Record
	for k := range l.Indications {
		ind := &l.Indications[k]
		if !isCrack(ind) {
			continue
		}
		size := ""
		if ind.Size.Set {
			size = fmt.Sprintf(" of %s mm", unit.Plain(ind.Size.V))
		}
		what := "crack"
		if ind.Is.V != "crack" {
			what = "indication that is not settled and counts as a crack"
		}
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: "look-crack", Subject: "look " + l.ID,
			Says:   fmt.Sprintf("%s%s at %s, found at %s h: %s; it began somewhere in the %s h since the look before", what, size, ind.Place.V, hours(float64(l.Meter.V)), ind.Action.V, hours(r.Looks[at].Since)),
			Settle: "look at the same place on the sister hulls", Places: []finding.Place{ind.At}})
		if !seenAgain(r.Looks[at+1:], ind.Place.V) {
			out = append(out, finding.Finding{Kind: finding.Gap, Rule: "look-again", Subject: "look " + l.ID,
				Says:   fmt.Sprintf("%s has not been looked at since the crack of %s", ind.Place.V, l.Date.V.String()),
				Settle: "look at the repaired place again after some hours, and record it", Places: []finding.Place{ind.At}})
		}
		if ind.Is.V == "crack" && !in.repairedSince(l) {
			out = append(out, finding.Finding{Kind: finding.Gap, Rule: "look-repair", Subject: "look " + l.ID,
				Says:   fmt.Sprintf("no repair is on record since the crack at %s was found: by whom and by which procedure it was welded, what was altered and who looked at it is not shown", ind.Place.V),
				Settle: "write it as [repair.NAME], with the look after it, and what was altered into the structure; or write that the boat lies still", Places: []finding.Place{ind.At}})
		}
	}
	return out
}

// repairedSince reports whether a repair is on record on or after the day of a look. Places of looks and joints have no names in common, so
// which repair belongs to which crack is for the reader to see.
func (in *Input) repairedSince(l *record.Look) bool {
	return slices.ContainsFunc(in.Hull.Repairs, func(r record.Repair) bool {
		return r.Date.Set && l.Date.Set && !r.Date.V.Before(l.Date.V)
	})
}

func seenAgain(later []Look, place string) bool {
	return slices.ContainsFunc(later, func(l Look) bool { return slices.Contains(l.Record.Places.V, place) })
}

// places lists every place that was ever looked at, in the order in which it was first named.
func (r *Result) places() {
	at := map[string]int{}
	for i := range r.Looks {
		l := &r.Looks[i]
		for _, name := range l.Record.Places.V {
			k, known := at[name]
			if !known {
				k = len(r.Places)
				at[name] = k
				r.Places = append(r.Places, Place{Name: name})
			}
			r.Places[k].Looks++
			r.Places[k].Last = l
		}
		for k := range l.Record.Indications {
			ind := &l.Record.Indications[k]
			if n, known := at[ind.Place.V]; known && isCrack(ind) {
				r.Places[n].Cracks++
			}
		}
	}
}
