package crosscheck

import (
	"fmt"

	"hullfile/engine/record"
)

// mostAlike is how many welds with the very same readings are still a coincidence (practice).
const mostAlike = 6

// copied finds readings that are the same at many welds: volts, amperes, speed and feed read at the machine differ from
// seam to seam, and the same four figures again and again are copied.
func copied(b *build) []told {
	type reading struct {
		volts, amperes, speed, feed float64
		ambient, humidity           float64
	}
	alike := map[reading]*gathered{}
	var order []reading
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		if !w.Volts.Set || !w.Amperes.Set || !w.Speed.Set {
			continue
		}
		r := reading{float64(w.Volts.V), float64(w.Amperes.V), float64(w.Speed.V), float64(w.Feed.V), float64(w.Ambient.V), float64(w.Humidity.V)}
		if alike[r] == nil {
			alike[r] = &gathered{}
			order = append(order, r)
		}
		alike[r].add(w.ID, w.At)
	}
	var all []told
	for _, r := range order {
		if g := alike[r]; len(g.names) >= mostAlike {
			all = append(all, tell("welds", "ask whether they were read at the machine", g.places, "%d welds have the same readings to the last figure (%v V, %v A, %v mm/min): %s", len(g.names), r.volts, r.amperes, r.speed, g.list()))
		}
	}
	return append(all, sameHour(b)...)
}

// sameHour finds inspections of many joints by one inspector with the very same beginning.
func sameHour(b *build) []told {
	type moment struct {
		by    string
		day   record.Date
		begin string
	}
	alike := map[moment]*gathered{}
	var order []moment
	for i := range b.Hull.Inspections {
		look := &b.Hull.Inspections[i]
		if !look.Begin.Set || !look.Date.Set {
			continue
		}
		m := moment{look.By.V, look.Date.V, look.Begin.V}
		if alike[m] == nil {
			alike[m] = &gathered{}
			order = append(order, m)
		}
		alike[m].add(look.ID, look.Begin.At)
	}
	var all []told
	for _, m := range order {
		if g := alike[m]; len(g.names) >= mostAlike {
			all = append(all, tell("inspections", "ask whether they were written at the seam", g.places, "%d inspections by %s begin at the same moment, %s: %s", len(g.names), m.by, fmt.Sprint(m.day, " ", m.begin), g.list()))
		}
	}
	return all
}
