package crosscheck

import (
	"fmt"
	"math"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
	"hullfile/engine/weld"
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
	return open.tell("welds", "read and write the temperature between runs", "no temperature between runs is on record for %d of the welds of several runs: %s")
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

// wireDiffers is how far wire in and metal laid may differ before one of the figures is doubted (practice).
const wireDiffers = 0.25

// wireAgainstLeg finds fillets of one run for which wire feed, travel speed and throat cannot all be true, by the sheet of
// arc energy: the section that the wire fills over that of the fillet.
func wireAgainstLeg(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		if j.Record.Type.V != "fillet" {
			continue
		}
		for _, w := range j.Welds {
			as := *w
			if !as.Throat.Set {
				as.Throat = j.Record.Throat
			}
			ratio, known := b.reckoned(&as, "r_w")
			if !known || w.Runs.V > 1 || math.Abs(ratio-1) <= wireDiffers {
				continue
			}
			all = append(all, tell("weld "+w.ID, "measure the throat, and read feed and speed again", at(w.Feed.At, w.Speed.At, as.Throat.At),
				"weld %s: wire fed at %s m/min gives %s times the metal of a throat of %s mm at %s mm/min", w.ID, unit.Plain(w.Feed.V), unit.Text(ratio, 2), unit.Plain(as.Throat.V), unit.Plain(w.Speed.V)))
		}
	}
	return all
}

// reckoned gives a value of the sheet of arc energy for a weld.
func (b *build) reckoned(w *record.Weld, symbol string) (v float64, known bool) {
	p := b.Procedure(w.Procedure, w.Revision)
	if b.books.Library == nil || b.books.Ranges == nil || p == nil || !w.Speed.Set {
		return 0, false
	}
	if b.arc == nil {
		b.arc = weld.NewArc(b.books.Library, b.books.Ranges)
	}
	return b.arc.Of(w, p, b.Consumables[w.Filler.V]).Value(symbol)
}

// heatAbove is how much more heat than its test a weld may have (ISO 15614-2:2005, where strength beside the seam counts; recalled).
const heatAbove = 1.25

// tooMuchHeat finds welds with more heat for a millimetre than the test pieces of their procedure leave. Welds of a machine that
// shapes the current are not asked: volts times amperes is no measure of its power.
func tooMuchHeat(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		most, of := b.hottest(p)
		if of == nil || p.Pulsed.V || !w.Volts.Set || !w.Amperes.Set {
			return
		}
		symbol := map[string]string{"arc energy": "E", "heat input": "Q"}[of.HeatBasis.V]
		if v, known := b.reckoned(w, symbol); known && v > float64(heatAbove*most) {
			all = append(all, tell("weld "+w.ID, "look at the plate beside the seam, and at whether the readings were right", at(w.Volts.At, w.Speed.At, of.Heat.At),
				"weld %s: %s of %s kJ/mm; test %s of %s was welded with %s", w.ID, of.HeatBasis.V, unit.Text(v, 2), of.ID, named(p), unit.Text(most, 2)))
		}
	})
	return all
}

// hottest gives the test of a procedure with the most heat; nil where none says how much, or of which kind.
func (b *build) hottest(p *record.Procedure) (most float64, of *record.ProcedureTest) {
	keys := p.Tests.V
	if p.Test.Set {
		keys = append(slices.Clone(keys), p.Test.V)
	}
	for _, key := range keys {
		if t := b.Tests[key]; t != nil && t.Heat.Set && t.HeatBasis.Set && float64(t.Heat.V) > most {
			most, of = float64(t.Heat.V), t
		}
	}
	return most, of
}
