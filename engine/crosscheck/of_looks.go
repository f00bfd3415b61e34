package crosscheck

import (
	"strconv"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// lookedTooSoon finds inspections after welding that were made before the joint was welded to the end, or repairs that
// they claim to follow.
func lookedTooSoon(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for _, look := range j.Looks {
			if !look.Date.Set || look.Stage.V == "in process" {
				continue
			}
			for _, w := range j.Welds {
				if look.Weld.Set && look.Weld.V != w.ID || !w.Date.Set || !before(look.Date, look.Begin, w.Date, w.End) {
					continue
				}
				all = append(all, tell("inspection "+look.ID, "correct one of the two days, or inspect the joint", at(look.Date.At, w.Date.At),
					"inspection %s looked at joint %s on %s%s, but weld %s of it was made on %s%s", look.ID, j.Record.ID, look.Date.V, hour(look.Begin), w.ID, w.Date.V, hour(w.End)))
				break
			}
		}
	}
	return all
}

// before reports whether one moment is before another; hours count on one day only, and only where both are written.
func before(day record.Val[record.Date], at record.Val[string], than record.Val[record.Date], end record.Val[string]) bool {
	if day.V != than.V {
		return day.V.Before(than.V)
	}
	a, okA := clock(at)
	e, okE := clock(end)
	return okA && okE && a < e
}

// hour gives the time of day, to the minute where no second is told.
func hour(v record.Val[string]) string {
	if !v.Set {
		return ""
	}
	return " at " + strings.TrimSuffix(v.V, ":00")
}

// warmSeam is the temperature above which a seam is not cold (practice).
const warmSeam = 60

// badSurface finds inspections of a surface on which the method shows nothing: painted, not cleaned for penetrant, or hot.
func badSurface(b *build) []told {
	var all []told
	for i := range b.Hull.Inspections {
		look := &b.Hull.Inspections[i]
		switch {
		case look.Surface.V == "painted" && (look.Method.V == "penetrant" || look.Method.V == "visual"):
			all = append(all, tell("inspection "+look.ID, "take the paint off and inspect again", at(look.Surface.At), "inspection %s by %s method was made on paint", look.ID, look.Method.V))
		case look.Method.V == "penetrant" && look.Surface.V == "as welded":
			all = append(all, tell("inspection "+look.ID, "clean the seam and inspect again", at(look.Surface.At), "penetrant inspection %s was made on a seam that was not cleaned", look.ID))
		case look.Surfaced.Set && look.Surfaced.V > warmSeam:
			all = append(all, tell("inspection "+look.ID, "look again when the seam is cold", at(look.Surfaced.At), "inspection %s was made on a seam of %s °C", look.ID, unit.Plain(look.Surfaced.V)))
		}
	}
	return all
}

// ownWork finds inspections after welding by whoever welded the joint.
func ownWork(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for _, look := range j.Looks {
			who := b.PersonOf(look.By.V)
			if who == "" || look.Stage.V == "in process" {
				continue
			}
			for _, w := range j.Welds {
				if maker := b.welder(w); maker != nil && maker.Person.V == who && (!look.Weld.Set || look.Weld.V == w.ID) {
					all = append(all, tell("inspection "+look.ID, "have the joint inspected by somebody else", at(look.By.At, w.Welder.At),
						"%s inspected joint %s (%s) and had welded it (%s)", who, j.Record.ID, look.ID, w.ID))
					break
				}
			}
		}
	}
	return all
}

// inspectorDid asks about every inspection with its inspector, and gathers those that get the same answer.
func (b *build) inspectorDid(wrong func(*record.Inspection, *record.Inspector) string) []told {
	type key struct{ who, says string }
	found := map[key]*gathered{}
	var order []key
	for i := range b.Hull.Inspections {
		look := &b.Hull.Inspections[i]
		who := b.Inspectors[look.By.V]
		if who == nil {
			continue
		}
		says := wrong(look, who)
		if says == "" {
			continue
		}
		k := key{who.ID, says}
		if found[k] == nil {
			found[k] = &gathered{places: []finding.Place{who.At}}
			order = append(order, k)
		}
		found[k].add(look.ID, look.At)
	}
	var all []told
	for _, k := range order {
		g := found[k]
		all = append(all, tell("inspector "+k.who, "put the certificate that covers it on record, or have it inspected again", g.places, "inspector %s %s; inspections %s", k.who, k.says, g.list()))
	}
	return all
}

// leastLevel is the level from which an inspector judges alone (ISO 9712; recalled), and yearOfVision how long a vision test
// holds.
const (
	leastLevel   = 2
	yearOfVision = 12
)

// notCertified finds inspections by somebody whose certificate is for another method, too low, or not in force.
func notCertified(b *build) []told {
	return b.inspectorDid(func(look *record.Inspection, who *record.Inspector) string {
		switch day := look.Date; {
		case who.Method.V != look.Method.V:
			return "is certified for " + who.Method.V + " inspection, and made " + look.Method.V + " inspections"
		case who.Level.Set && who.Level.V < leastLevel:
			return "is of level " + strconv.Itoa(who.Level.V) + ", and level 2 judges alone"
		case day.Set && who.From.Set && day.V.Before(who.From.V):
			return "is certified only from " + who.From.V.String()
		case day.Set && who.Until.Set && who.Until.V.Before(day.V):
			return "was certified only until " + who.Until.V.String()
		case day.Set && who.Vision.Set && seam.Later(who.Vision.V, yearOfVision).Before(day.V):
			return "had the last vision test on " + who.Vision.V.String() + ", more than a year before"
		}
		return ""
	})
}

// nobodyLooked finds inspections that name no inspector.
func nobodyLooked(b *build) []told {
	var open gathered
	for i := range b.Hull.Inspections {
		if look := &b.Hull.Inspections[i]; !look.By.Set {
			open.add(look.ID, look.At)
		}
	}
	return open.tell("inspections", "ask who signed the sheet", "no inspector is named for %d of the inspections: %s")
}
