package crosscheck

import (
	"hullfile/engine/calibration"
	"hullfile/engine/finding"
	"hullfile/engine/record"
)

// weighedWith checks the calibration of what the boat was weighed with. That of a trial is checked with the trial.
func weighedWith(b *record.Builder, h *record.Hull) []finding.Check {
	var all []finding.Check
	for _, w := range h.Weighings {
		all = append(all, calibration.Check(b, calibration.Use{
			Subject: "weighing " + w.ID, Key: "weighing." + w.ID + ".instrument", Instrument: w.Instrument, Day: w.Date,
		}))
	}
	return all
}
