package crosscheck

import (
	"strings"

	"hullfile/engine/record"
)

// notQualified finds welds on a day on which their welder held no certificate: before the test, after its end, or with a
// signature missing.
func notQualified(b *build) []told {
	return b.byWelder(func(w *record.Weld, who *record.Welder) string {
		held, why := b.Held(who, w.Date.V)
		if len(held) > 0 {
			return ""
		}
		return "held no certificate (" + strings.Join(why, "; ") + ")"
	})
}

// outsideRange finds welds that lie outside what the certificates of their welder cover.
func outsideRange(b *build) []told {
	return b.byWelder(func(w *record.Weld, _ *record.Welder) string {
		j := b.ByKey[w.Joint.V]
		if j == nil {
			return ""
		}
		q, why := b.Uncovered(j, w)
		if q == nil {
			return ""
		}
		return "is not covered by certificate " + q.ID + " (" + strings.Join(why, "; ") + ")"
	})
}

// byWelder asks about every weld with a day and a known welder, and gathers the welds for which a welder gets the same
// answer into one.
func (b *build) byWelder(wrong func(*record.Weld, *record.Welder) string) []told {
	type key struct{ welder, says string }
	found := map[key]*gathered{}
	var order []key
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		who := b.welder(w)
		if who == nil || !w.Date.Set {
			continue
		}
		says := wrong(w, who)
		if says == "" {
			continue
		}
		k := key{who.ID, says}
		if found[k] == nil {
			found[k] = &gathered{}
			found[k].places = append(found[k].places, who.At)
			order = append(order, k)
		}
		found[k].add(w.ID, w.Date.At)
	}
	var all []told
	for _, k := range order {
		g := found[k]
		all = append(all, tell("welder "+k.welder, "put the certificate or signature that covers the day on record; if there is none, have the seams looked at and decide", g.places,
			"welder %s %s and welded %s", k.welder, k.says, g.list()))
	}
	return all
}

// unknownStamp finds welds beside which a stamp stands that is in no register, or none.
func unknownStamp(b *build) []told {
	var none, unknown gathered
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		switch {
		case !w.Welder.Set:
			none.add(w.ID, w.At)
		case len(b.Stamps[w.Welder.V]) == 0:
			unknown.add(w.ID+" (stamp "+w.Welder.V+")", w.Welder.At)
		}
	}
	return append(none.tell("welds", "read the stamp off the seam", "no welder is named for %d of the welds: %s"),
		unknown.tell("welds", "read the stamp again, or put the welder into the register", "a stamp that is in no register is named for %d of the welds: %s")...)
}

// twoStamps finds somebody who welded on this hull under two stamps at one time.
func twoStamps(b *build) []told {
	var all []told
	used := b.usedStamps()
	for i, stamp := range used {
		for _, other := range used[i+1:] {
			for _, w := range b.Stamps[stamp] {
				for _, o := range b.Stamps[other] {
					if w.Person.V == o.Person.V && together(w, o) {
						all = append(all, tell("welder "+w.ID, "give everybody one stamp, and write until when the other was used", at(w.At, o.At),
							"%s welded on this hull under two stamps, %s and %s, at the same time", w.Person.V, stamp, other))
					}
				}
			}
		}
	}
	return all
}

// usedStamps lists the stamps beside seams of this hull, in the order in which they are first met.
func (b *build) usedStamps() []string {
	seen := map[string]bool{}
	var all []string
	for i := range b.Hull.Welds {
		if s := b.Hull.Welds[i].Welder.V; s != "" && !seen[s] {
			seen[s] = true
			all = append(all, s)
		}
	}
	return all
}

// together reports whether two stamps were in use on a common day.
func together(w, o *record.Welder) bool {
	return !(w.Until.Set && o.Since.Set && w.Until.V.Before(o.Since.V)) && !(o.Until.Set && w.Since.Set && o.Until.V.Before(w.Since.V))
}

// mostRepairs is the share of a welder's length above which the repairs are a sign of something (practice).
const mostRepairs = 0.05

// manyRepairs finds welders of whose seams on this hull more than a twentieth had to be repaired.
func manyRepairs(b *build) []told {
	var all []told
	for _, r := range b.Cover().Welders {
		if r.Part > mostRepairs && r.Repairs > 1 {
			subject, place := "stamp "+r.Key, b.Hull.Repairs[0].At
			if who := b.Stamps[r.Key]; len(who) > 0 {
				subject, place = "welder "+who[0].ID, who[0].At
			}
			all = append(all, tell(subject, "look for the cause: plate, gas, machine, position, or the welder", at(place),
				"of %.1f m by welder %s, %.2f m had to be repaired, %.0f %%", r.Metres, r.Key, r.Repaired, 100*r.Part))
		}
	}
	return all
}
