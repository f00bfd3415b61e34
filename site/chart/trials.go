package chart

import (
	"fmt"

	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// Words that explain the marks of a trial figure.
const (
	explainMeans = "Filled marks are means of the runs at one setting, joined by straight lines; open grey marks are single runs."
	explainOne   = "Open marks in ink are runs one way only, with the stream still in them."
	explainLeft  = "Crosses are runs that were left out."
)

// SpeedFuel draws speed and fuel flow over engine speed, single runs under their means.
func SpeedFuel(t trial.Trial) Figure {
	speed := quantity{name: "Speed", line: LineA, mean: settingSpeed, run: runSpeed}
	fuel := quantity{name: "Fuel flow", line: LineB, right: true, mean: settingFuel, run: runFuel}
	s := Spec{
		ID:    "fig-speed-fuel-" + slug(keyOf(t)),
		Title: "Speed and fuel flow over engine speed, trial " + keyOf(t),
		X:     Axis{Name: "Engine speed", Unit: "rpm"},
		Y:     Axis{Name: "Speed", Unit: "kn", From0: true},
		Y2:    Axis{Name: "Fuel flow", Unit: "l/h", From0: true},
		Why:   "No engine speed and boat speed on record for one setting together.",
		Table: speedFuelTable(t),
	}
	s.take(t, settingRPM, runRPM, speed, fuel)
	s.Note = sentence("Fuel flow is that of all engines together.", s.explained())
	s.Desc = spoken("speed", "kn", "engine speed", "rpm", t, settingRPM, settingSpeed) +
		spoken("fuel flow", "l/h", "engine speed", "rpm", t, settingRPM, settingFuel)
	return Plot(s)
}

// MileRange draws litres per nautical mile and range over speed, with the setting of best economy and the greatest speed.
func MileRange(t trial.Trial) Figure {
	perMile := quantity{name: "Fuel per mile", line: LineA, mean: settingPerMile}
	reach := quantity{name: "Range", line: LineB, right: true, mean: settingRange}
	s := Spec{
		ID:    "fig-mile-range-" + slug(keyOf(t)),
		Title: "Fuel per nautical mile and range over speed, trial " + keyOf(t),
		X:     Axis{Name: "Speed", Unit: "kn"},
		Y:     Axis{Name: "Fuel per mile", Unit: "l/NM", From0: true},
		Y2:    Axis{Name: "Range", Unit: "NM", From0: true},
		Why:   "No fuel flow on record for a setting that has a speed.",
		Marks: marksOf(t),
		Table: mileTable(t),
	}
	s.take(t, settingSpeed, runSpeed, perMile, reach)
	s.Note = sentence(s.explained(), reserveWords(t))
	s.Desc = spoken("fuel per mile", "l/NM", "speed", "kn", t, settingSpeed, settingPerMile) +
		spoken("range", "NM", "speed", "kn", t, settingSpeed, settingRange)
	return Plot(s)
}

// Trim draws the running trim over speed, single runs under their means.
func Trim(t trial.Trial) Figure {
	s := Spec{
		ID:    "fig-trim-" + slug(keyOf(t)),
		Title: "Running trim over speed, trial " + keyOf(t),
		X:     Axis{Name: "Speed", Unit: "kn"},
		Y:     Axis{Name: "Trim (bow up)", Unit: "°", From0: true},
		Why:   "No trim on record for a setting that has a speed.",
		Table: trimTable(t),
	}
	s.take(t, settingSpeed, runSpeed, quantity{name: "Trim", line: LineA, mean: settingTrim, run: runTrim})
	s.Note = s.explained()
	s.Desc = spoken("trim", "°", "speed", "kn", t, settingSpeed, settingTrim)
	return Plot(s)
}

// explained says what the marks of the figure mean, of those that it has.
func (s *Spec) explained() string {
	seen := map[Class]bool{}
	for _, d := range s.Dots {
		seen[d.Class] = true
	}
	means, one, left := "", "", ""
	if len(s.Lines) > 0 {
		means = "Marks are means of the runs at one setting, joined by straight lines."
	}
	if seen[Raw] {
		means = explainMeans
	}
	if seen[OneWay] {
		one = explainOne
	}
	if seen[LeftOut] {
		left = explainLeft
	}
	return sentence(means, one, left)
}

// marksOf names the setting of best economy and the fastest one, where they are known.
func marksOf(t trial.Trial) []Mark {
	var marks []Mark
	name := func(i int, words string) {
		if i < 0 || i >= len(t.Settings) {
			return
		}
		set := t.Settings[i]
		x, hasX := settingSpeed(set)
		y, hasY := settingPerMile(set)
		if hasX && hasY {
			marks = append(marks, Mark{X: x, Y: y, Text: fmt.Sprintf(words, unit.Text(y, placesOf(y)), unit.Text(x, 1))})
		}
	}
	name(t.Best, "least: %s l/NM at %s kn")
	if t.Top != t.Best {
		name(t.Top, "fastest: %s l/NM at %s kn")
	}
	return marks
}

// reserveWords says with what the range was reckoned, or why there is none.
func reserveWords(t trial.Trial) string {
	if t.RangeWhy == "" {
		return ""
	}
	return "Range: " + t.RangeWhy + "."
}

// spoken tells a curve in one sentence by its ends.
func spoken(what, sign, over, overSign string, t trial.Trial, along, up func(trial.Setting) (float64, bool)) string {
	var x, y []float64
	for _, set := range t.Settings {
		a, hasA := along(set)
		b, hasB := up(set)
		if hasA && hasB {
			x, y = append(x, a), append(y, b)
		}
	}
	if len(x) == 0 {
		return ""
	}
	last := len(x) - 1
	number := func(v float64) string { return unit.Text(v, placesOf(v)) }
	if last == 0 {
		return fmt.Sprintf("One setting: %s %s %s at %s %s %s. ", what, number(y[0]), sign, over, number(x[0]), overSign)
	}
	return fmt.Sprintf("Between %s %s and %s %s %s goes from %s to %s %s. ",
		over, number(x[0]), number(x[last]), overSign, what, number(y[0]), number(y[last]), sign)
}
