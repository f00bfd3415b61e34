package trial

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// particulars checks that what a speed means nothing without is written: mass, propeller, sea, wind, depth and who ran it.
func particulars(rec *record.Trial) finding.Check {
	asked := []struct {
		key string
		set bool
	}{
		{"by", rec.By.Set},
		{"mass_kg", rec.Mass.Set},
		{"propeller", rec.Propeller.Set},
		{"sea or wave_height_m", rec.Sea.Set || rec.Wave.Set},
		{"wind_kn", rec.Wind.Set},
		{"depth_m", rec.Depth.Set},
	}
	c := finding.Check{
		Rule: "trial-particulars", Subject: "trial " + rec.ID, Standing: finding.Met,
		Asks:  "mass, propeller, sea, wind, depth of water and the person are written with the runs",
		Says:  "mass, propeller, sea, wind, depth of water and the person are written",
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{rec.At},
	}
	for _, a := range asked {
		if !a.set {
			c.Missing = append(c.Missing, "trial."+rec.ID+"."+a.key)
		}
	}
	if len(c.Missing) > 0 {
		c.Standing = finding.NotShown
		c.Says = "not written: " + strings.Join(c.Missing, ", ")
		c.Settle = "write them from the trial sheet"
	}
	return c
}

// rangeStated checks that the fuel flow measured can be turned into a range with a reserve.
func rangeStated(t *Trial) finding.Check {
	c := finding.Check{
		Rule: "trial-range", Subject: t.subject(), Standing: finding.Met,
		Asks:  "usable fuel and reserve are written, so that range can be stated",
		Says:  t.RangeWhy,
		Basis: finding.Yard, Source: "record", Places: []finding.Place{t.Record.At},
	}
	if t.HasRange {
		return c
	}
	c.Standing = finding.NotShown
	c.Says = "fuel flow was measured, but range cannot be stated: " + t.RangeWhy
	c.Missing = t.missing
	c.Settle = "write what the engines can really draw, and the part that is kept back; the volume of the tanks is not taken for it"
	return c
}
