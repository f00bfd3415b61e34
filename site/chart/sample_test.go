package chart

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

func wr[T any](v T) record.Val[T] { return record.Written(v, finding.Place{}) }

// sampleTrial is an invented trial of a twin-outboard launch.
func sampleTrial() trial.Trial {
	rpm := []float64{900, 1800, 2600, 3200, 3800, 4400, 5000, 5600, 5900}
	speed := []float64{4.1, 7.2, 8.9, 14.6, 20.3, 24.8, 29.0, 32.9, 34.4}
	fuel := []float64{3.1, 11.6, 24.5, 34.0, 42.1, 53.5, 71.8, 97.0, 112.4}
	trim := []float64{0.8, 2.4, 5.9, 5.1, 4.2, 3.7, 3.3, 3.0, 2.9}
	t := trial.Trial{Record: &record.Trial{}, Best: 4, Top: 8, HasRange: true, RangeWhy: "180 l usable, 20 % kept back", Usable: 180, Reserve: 20}
	t.Record.ID = "T1"
	for i := range rpm {
		set := trial.Setting{Name: unit.Text(rpm[i], 0), Used: 2}
		set.RPM = trial.Mean{Value: rpm[i], Has: true, N: 2}
		set.Speed = trial.Mean{Value: speed[i], Has: true, N: 2}
		set.Fuel = trial.Mean{Value: fuel[i], Has: true, N: 2}
		set.Trim = trial.Mean{Value: trim[i], Has: true, N: 2}
		set.PerMile = trial.Value{Value: fuel[i] / speed[i], Has: true}
		set.Range = trial.Value{Value: 180 * 0.8 * speed[i] / fuel[i], Has: true}
		for k, d := range []float64{-0.7, 0.7} {
			r := &record.Run{RPM: wr(unit.RPM(rpm[i] + 10*d)), Speed: wr(unit.Knot(speed[i] + d)), Fuel: wr(unit.LPerH(fuel[i] * (1 + d/30))), Trim: wr(unit.Deg(trim[i] + d/4))}
			r.ID = unit.Text(float64(k), 0)
			set.Runs = append(set.Runs, trial.Run{Record: r, Used: true})
		}
		t.Settings = append(t.Settings, set)
	}
	left := &record.Run{RPM: wr(unit.RPM(5000)), Speed: wr(unit.Knot(24)), Fuel: wr(unit.LPerH(80)), Trim: wr(unit.Deg(4.9))}
	t.Settings[6].Runs = append(t.Settings[6].Runs, trial.Run{Record: left, Why: "weed on the propeller"})
	t.Settings[1].OneWay = true
	return t
}
