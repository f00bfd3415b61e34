package engine

import (
	"os"

	"hullfile/engine/manoeuvre"
	"hullfile/engine/tracklog"
	"hullfile/engine/trial"
)

// onTheWater reads the logs of the trials, completes the runs from them, and reduces runs and manoeuvres. The records of
// the hull stay as they were written.
func (d *Dossier) onTheWater(root *os.Root) {
	d.Logs = tracklog.Assess(root, d.Hull)
	d.Trials = trial.Assess(d.Logs.Filled(d.Hull), d.Builder)
	d.Moves = manoeuvre.Assess(d.Hull, &d.Logs, &d.Trials)
}
