package crosscheck

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// identified checks that a finished boat has its hull identification number.
func identified(h *record.Hull) []finding.Check {
	if !done(h) && !h.Identity.HIN.Set {
		return nil
	}
	c := finding.Check{
		Rule: "hull-identified", Subject: "identity", Standing: finding.Met,
		Asks:  "the hull identification number marked on the boat is written",
		Basis: finding.Practice, Source: "practice",
	}
	if hin, ok := h.Identity.HIN.Get(); ok && hinKey(hin) != "" {
		c.Says, c.Places = "marked "+hin, []finding.Place{h.Identity.HIN.At}
		return []finding.Check{c}
	}
	c.Standing = finding.NotShown
	c.Says = "no hull identification number is written"
	c.Missing, c.Settle = []string{"identity.hin"}, "read the number off the boat and write identity.hin"
	return []finding.Check{c}
}

// issued checks that the file of a finished boat says which issue it is, of which day and whose.
func issued(h *record.Hull) []finding.Check {
	c := finding.Check{
		Rule: "file-issued", Subject: "issue", Standing: finding.Met,
		Asks:  "the technical file has a number, a day and somebody who issued it",
		Basis: finding.Practice, Source: "practice",
	}
	for _, asked := range []struct {
		key string
		set bool
	}{{"issue.number", h.Issue.Number.Set}, {"issue.date", h.Issue.Date.Set}, {"issue.by", h.Issue.By.Set}} {
		if !asked.set {
			c.Missing = append(c.Missing, asked.key)
		}
	}
	if !done(h) && len(c.Missing) == 3 {
		return nil
	}
	if len(c.Missing) == 0 {
		c.Says = "issued on " + h.Issue.Date.V.String() + " by " + h.Issue.By.V
		c.Places = []finding.Place{h.Issue.Number.At, h.Issue.Date.At, h.Issue.By.At}
		return []finding.Check{c}
	}
	c.Standing = finding.NotShown
	c.Says = "not written: " + strings.Join(c.Missing, ", ")
	c.Settle = "write them under [issue]"
	return []finding.Check{c}
}

// marked are the hulls of a yard by the number that is marked on them.
type marked map[string][]*record.Hull

func markedOn(hulls []*record.Hull) marked {
	all := marked{}
	for _, h := range hulls {
		if key := hinKey(h.Identity.HIN.V); key != "" {
			all[key] = append(all[key], h)
		}
	}
	return all
}

// sameHIN finds other hulls of the yard that are marked with the same number. Blanks, dashes and case do not part two numbers.
func sameHIN(y *record.Yard, h *record.Hull) []finding.Finding {
	key := hinKey(h.Identity.HIN.V)
	if key == "" {
		return nil
	}
	others := gathered{places: []finding.Place{h.Identity.HIN.At}}
	for _, other := range record.Once(y, markedOn)[key] {
		if other != h {
			others.add("hull "+other.Number, other.Identity.HIN.At)
		}
	}
	if len(others.names) == 0 {
		return nil
	}
	return []finding.Finding{contradiction("hin-twice", "identity", "read the numbers off the boats", others.places,
		"hull %s and %s are marked with one number, %s", h.Number, others.list(), h.Identity.HIN.V)}
}

// hinKey is a hull identification number without what people add to read it.
func hinKey(hin string) string {
	return strings.Map(func(r rune) rune {
		if r == ' ' || r == '-' || r == '\u00a0' {
			return -1
		}
		return r
	}, strings.ToUpper(hin))
}

// stateAgrees finds a boat that is called unfinished and was handed over, and one that is only a design and has a life.
func stateAgrees(h *record.Hull) []finding.Finding {
	state := h.Identity.State
	var all []finding.Finding
	say := func(at finding.Place, what string) {
		all = append(all, contradiction("state", "identity", "write the state that the boat is in", []finding.Place{state.At, at}, "state is %s, but %s", state.V, what))
	}
	if day, ok := h.Identity.Handed.Get(); ok && !done(h) {
		say(h.Identity.Handed.At, "the boat was handed over on "+day.String())
	}
	if state.V != "design" {
		return all
	}
	if len(h.Trials) > 0 {
		say(h.Trials[0].At, "trial "+h.Trials[0].ID+" is on record")
	}
	if len(h.Weighings) > 0 {
		say(h.Weighings[0].At, "weighing "+h.Weighings[0].ID+" is on record")
	}
	return all
}
