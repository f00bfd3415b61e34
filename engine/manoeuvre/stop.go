package manoeuvre

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/tracklog"
)

// stop reduces one stop: from the first point of the window until the speed is that of a boat at rest. The way is the sum of
// the speed over time, so that a scattered position adds nothing to it.
func stop(t *record.Trial, rec *record.Stopping, logs *tracklog.Result, boat *record.Boat) Stopping {
	s := Stopping{
		Trial: t, Record: rec, Move: logs.Find(t, "stopping", rec.ID),
		Before: figure("speed before", "kn", 1, rec.Speed), Distance: figure("distance", "m", 0, rec.Distance), Seconds: figure("time", "s", 1, rec.Seconds),
	}
	all, why := points(s.Move)
	if why == "" {
		why = s.reduce(all)
	}
	if why != "" {
		s.Before.Why, s.Distance.Why, s.Seconds.Why = why, why, why
	}
	s.Lengths = lengths(&s.Distance, boat)
	return s
}

// reduce sums the way, or says why it cannot.
func (s *Stopping) reduce(all []tracklog.Point) string {
	if len(all) < 2 || math.IsNaN(all[0].Speed) {
		return "the log has no speed at the beginning of the window"
	}
	metres := 0.0
	for i := 1; i < len(all); i++ {
		a, b := all[i-1], all[i]
		if b.Break || math.IsNaN(b.Speed) {
			return "the log has a gap before the boat lay still"
		}
		end, speed := b.Time, b.Speed
		if speed <= atRest && a.Speed > atRest {
			end = a.Time + float64((a.Speed-atRest)/(a.Speed-speed)*(b.Time-a.Time))
			speed = atRest
		}
		metres += float64((a.Speed+speed)/2*metresPerSecond) * (end - a.Time)
		if speed <= atRest {
			s.Before.from(all[0].Speed, true, "")
			s.Distance.from(metres, true, "")
			s.Seconds.from(end-all[0].Time, true, "")
			return ""
		}
	}
	return "the boat does not come to rest in the window"
}
