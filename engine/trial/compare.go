package trial

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// What tells two states of loading apart from one run twice (practice).
const (
	otherLoad   = 0.05 // part of the mass from which two trials are two states of loading
	sameLoad    = 0.02 // part up to which they are the same
	repeatKnots = 0.5  // knots by which the same setting may differ on another day
	repeatPart  = 0.03 // or this part of its speed, whichever is more
)

// Comparison is two trials of one boat, setting by setting.
type Comparison struct {
	First, Second int  // index into Result.Trials; of two loads the lighter first
	Loads         bool // two states of loading; otherwise the same state on two days
	Rows          []ComparedSetting
}

// ComparedSetting is one throttle setting that both trials have, by its name.
type ComparedSetting struct {
	Name          string
	First, Second int // index into the settings of each
	Slower        Value
}

// compare puts every two trials side by side that say their mass and share a setting.
func compare(trials []Trial) []Comparison {
	var all []Comparison
	for i := range trials {
		for j := i + 1; j < len(trials); j++ {
			if c, ok := compareTwo(trials, i, j); ok {
				all = append(all, c)
			}
		}
	}
	return all
}

func compareTwo(trials []Trial, i, j int) (c Comparison, ok bool) {
	a, b := trials[i].Record.Mass, trials[j].Record.Mass
	if !a.Set || !b.Set {
		return c, false
	}
	c = Comparison{First: i, Second: j}
	if a.V > b.V {
		c.First, c.Second = j, i
	}
	light, heavy := math.Min(float64(a.V), float64(b.V)), math.Max(float64(a.V), float64(b.V))
	switch {
	case heavy >= light*(1+otherLoad):
		c.Loads = true
	case heavy > light*(1+sameLoad) || trials[i].Record.Date.V == trials[j].Record.Date.V:
		return c, false
	default:
		c.First, c.Second = i, j
	}
	c.Rows = shared(&trials[c.First], &trials[c.Second])
	return c, len(c.Rows) > 0
}

// shared lists the settings that two trials have by the same name, in the order of the first.
func shared(a, b *Trial) []ComparedSetting {
	var rows []ComparedSetting
	for i := range a.Settings {
		for j := range b.Settings {
			if a.Settings[i].Name != b.Settings[j].Name {
				continue
			}
			row := ComparedSetting{Name: a.Settings[i].Name, First: i, Second: j}
			if x, y := a.Settings[i].Speed, b.Settings[j].Speed; x.Has && y.Has {
				row.Slower = Value{Value: x.Value - y.Value, Has: true}
			} else {
				row.Slower = Value{Why: "one of the two has no mean speed"}
			}
			rows = append(rows, row)
		}
	}
	return rows
}

// repeats doubts a setting that gave another speed on another day at the same mass.
func repeats(trials []Trial, all []Comparison) []finding.Finding {
	var out []finding.Finding
	for _, c := range all {
		a, b := &trials[c.First], &trials[c.Second]
		for _, r := range c.Rows {
			limit := math.Max(repeatKnots, repeatPart*a.Settings[r.First].Speed.Value)
			if c.Loads || !r.Slower.Has || math.Abs(r.Slower.Value) <= limit {
				continue
			}
			out = append(out, finding.Finding{
				Kind: finding.Doubt, Rule: "trial-repeat", Subject: b.subject() + " setting " + r.Name,
				Says: fmt.Sprintf("setting %s gave %s kn on trial %s and %s kn on trial %s at nearly the same mass; more than %s kn apart is more than two days usually part", r.Name,
					unit.Text(a.Settings[r.First].Speed.Value, 1), a.Record.ID, unit.Text(b.Settings[r.Second].Speed.Value, 1), b.Record.ID, unit.Text(limit, 1)),
				Settle: "look for another propeller, growth on the bottom, another trim of the engines or a stream that changed",
				Places: []finding.Place{a.Record.At, b.Record.At},
			})
		}
	}
	return out
}
