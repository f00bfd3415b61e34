package chart

import (
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

func keyOf(t trial.Trial) string {
	if t.Record == nil {
		return "without a record"
	}
	return t.Record.ID
}

func settingRPM(s trial.Setting) (float64, bool)     { return s.RPM.Value, s.RPM.Has }
func settingSpeed(s trial.Setting) (float64, bool)   { return s.Speed.Value, s.Speed.Has }
func settingFuel(s trial.Setting) (float64, bool)    { return s.Fuel.Value, s.Fuel.Has }
func settingTrim(s trial.Setting) (float64, bool)    { return s.Trim.Value, s.Trim.Has }
func settingPerMile(s trial.Setting) (float64, bool) { return s.PerMile.Value, s.PerMile.Has }
func settingRange(s trial.Setting) (float64, bool)   { return s.Range.Value, s.Range.Has }

func runRPM(r *record.Run) (float64, bool)   { return float64(r.RPM.V), r.RPM.Set }
func runSpeed(r *record.Run) (float64, bool) { return float64(r.Speed.V), r.Speed.Set }
func runFuel(r *record.Run) (float64, bool)  { return float64(r.Fuel.V), r.Fuel.Set }
func runTrim(r *record.Run) (float64, bool)  { return float64(r.Trim.V), r.Trim.Set }

// figure writes a value that may not be there; a dash where it is not.
func figure(v float64, has bool, places int) string {
	if !has {
		return "–"
	}
	return unit.Text(v, places)
}

// perSetting makes a table with one row a setting: its name, how many runs, then the columns.
func perSetting(t trial.Trial, columns ...column) [][]string {
	head := []string{"Setting", "Runs used"}
	for _, c := range columns {
		head = append(head, c.head)
	}
	table := [][]string{head}
	for _, set := range t.Settings {
		row := []string{set.Name, unit.Text(float64(set.Used), 0)}
		for _, c := range columns {
			v, has := c.of(set)
			row = append(row, figure(v, has, c.places))
		}
		table = append(table, row)
	}
	return cut(table)
}

// column is one column of such a table.
type column struct {
	head   string
	places int
	of     func(trial.Setting) (float64, bool)
}

func speedFuelTable(t trial.Trial) [][]string {
	return perSetting(t, column{"Engine speed, rpm", 0, settingRPM}, column{"Speed, kn", 2, settingSpeed}, column{"Fuel flow, l/h", 1, settingFuel})
}

func mileTable(t trial.Trial) [][]string {
	return perSetting(t, column{"Speed, kn", 2, settingSpeed}, column{"Fuel per mile, l/NM", 2, settingPerMile}, column{"Range, NM", 0, settingRange})
}

func trimTable(t trial.Trial) [][]string {
	return perSetting(t, column{"Speed, kn", 2, settingSpeed}, column{"Trim, °", 1, settingTrim})
}
