package crosscheck

import (
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// What one welder can lay in a day: hours of work, and the greatest part of them with the arc burning (practice).
const (
	hoursOfADay  = 8
	mostArcOfDay = 0.5
	usualSpeed   = 600.0 // mm/min, where no speed was read (practice)
)

// tooMuchInADay finds days on which one welder is said to have welded more than the arc could.
func tooMuchInADay(b *build) []told {
	type key struct {
		stamp string
		day   record.Date
	}
	arc, metres, first := map[key]float64{}, map[key]float64{}, map[key]*record.Weld{}
	var order []key
	for _, j := range b.Joints {
		for _, w := range j.Welds {
			if !w.Date.Set || !w.Welder.Set {
				continue
			}
			k := key{w.Welder.V, w.Date.V}
			if first[k] == nil {
				first[k] = w
				order = append(order, k)
			}
			arc[k] += arcHours(w, b.WeldLength(w))
			metres[k] += b.WeldLength(w)
		}
	}
	var all []told
	for _, k := range order {
		if most := hoursOfADay * mostArcOfDay; arc[k] > most {
			all = append(all, tell("weld "+first[k].ID, "correct the days, or name the second welder", at(first[k].Date.At),
				"on %s welder %s is on record with %s m; that is %s h of burning arc, and %s h is what a day holds", k.day, k.stamp, unit.Text(metres[k], 1), unit.Text(arc[k], 1), unit.Text(most, 1)))
		}
	}
	return all
}

// arcHours gives how long the arc burns for a weld: length times runs over speed.
func arcHours(w *record.Weld, metres float64) float64 {
	speed, runs := usualSpeed, 1.0
	if w.Speed.Set {
		speed = float64(w.Speed.V)
	}
	if w.Runs.Set {
		runs = float64(w.Runs.V)
	}
	return metres * 1000 * runs / speed / 60
}
