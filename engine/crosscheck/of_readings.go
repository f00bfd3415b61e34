package crosscheck

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// outsideWindow finds welds whose readings are outside what their procedure leaves.
func outsideWindow(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		var says []string
		places := []finding.Place{}
		read := func(name, sign string, v, from, to record.Val[float64]) {
			if !v.Set || !(from.Set && v.V < from.V || to.Set && v.V > to.V) {
				return
			}
			says = append(says, fmt.Sprintf("%s %s %s, procedure %s to %s", name, unit.Plain(v.V), sign, open(from), open(to)))
			places = append(places, v.At, from.At)
		}
		read("voltage", "V", float(w.Volts), float(p.VoltFrom), float(p.VoltTo))
		read("current", "A", float(w.Amperes), float(p.AmpFrom), float(p.AmpTo))
		read("speed", "mm/min", float(w.Speed), float(p.SpeedFrom), float(p.SpeedTo))
		read("wire feed", "m/min", float(w.Feed), float(p.FeedFrom), float(p.FeedTo))
		if len(says) > 0 {
			all = append(all, tell("weld "+w.ID, "look at the seam, and at whether the reading was right", places, "weld %s by %s: %s", w.ID, named(p), strings.Join(says, "; ")))
		}
	})
	return all
}

func open(v record.Val[float64]) string {
	if !v.Set {
		return "open"
	}
	return unit.Plain(v.V)
}

// tooHot finds welds whose temperature between runs was above what the procedure leaves.
func tooHot(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		if w.Interpass.Set && p.Interpass.Set && w.Interpass.V > p.Interpass.V {
			all = append(all, tell("weld "+w.ID, "let whoever answers for the welding decide; heat widens the soft zone", at(w.Interpass.At, p.Interpass.At),
				"weld %s reached %s °C between runs; %s leaves %s °C", w.ID, unit.Plain(w.Interpass.V), named(p), unit.Plain(p.Interpass.V)))
		}
	})
	return all
}

// noTemperature finds welds of several runs without a temperature between them.
func noTemperature(b *build) []told {
	var open gathered
	for i := range b.Hull.Welds {
		if w := &b.Hull.Welds[i]; w.Runs.V > 1 && !w.Interpass.Set {
			open.add(w.ID, w.At)
		}
	}
	return open.tell("welds", "read and write the temperature between runs", "%d welds of several runs have no temperature between runs on record: %s")
}

// otherGas finds welds under another gas than their procedure names.
func otherGas(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		c := b.Consumables[w.Gas.V]
		if c != nil && c.Classification.Set && p.Gas.Set && c.Classification.V != p.Gas.V {
			all = append(all, tell("weld "+w.ID, "read the label of the bottle", at(w.Gas.At, c.Classification.At, p.Gas.At),
				"weld %s was made under lot %s, %s; %s is for %s", w.ID, c.ID, c.Classification.V, named(p), p.Gas.V))
		}
	})
	return all
}

// How far wire in and metal laid may differ before one of the figures is doubted, the part of the wire that stays in the
// seam, and the metal above the bare triangle (practice).
const (
	wireDiffers = 0.25
	wireStays   = 0.95
	overTheFlat = 1.15
)

// wireAgainstLeg finds fillets of one run for which wire feed, travel speed and throat cannot all be true: feed x area of the
// wire x what stays = area of the bead x speed.
func wireAgainstLeg(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		if j.Record.Type.V != "fillet" {
			continue
		}
		for _, w := range j.Welds {
			c := b.Consumables[w.Filler.V]
			throat := w.Throat
			if !throat.Set {
				throat = j.Record.Throat
			}
			if c == nil || !c.Diameter.Set || !w.Feed.Set || !w.Speed.Set || !throat.Set || w.Runs.V > 1 {
				continue
			}
			in := float64(w.Feed.V) * 1000 * math.Pi / 4 * float64(c.Diameter.V) * float64(c.Diameter.V) * wireStays
			laid := float64(throat.V) * float64(throat.V) * overTheFlat * float64(w.Speed.V) // a fillet of equal legs: z²/2 = a²
			if ratio := in / laid; math.Abs(ratio-1) > wireDiffers {
				all = append(all, tell("weld "+w.ID, "measure the throat, and read feed and speed again", at(w.Feed.At, w.Speed.At, throat.At),
					"weld %s: wire of %s mm at %s m/min gives %s times the metal of a throat of %s mm at %s mm/min", w.ID, unit.Plain(c.Diameter.V), unit.Plain(w.Feed.V),
					unit.Text(ratio, 2), unit.Plain(throat.V), unit.Plain(w.Speed.V)))
			}
		}
	}
	return all
}
