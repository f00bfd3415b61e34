package trial

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// heavierBy is how much above the loaded mass a trial may have been run and still speak for it (practice).
const heavierBy = 1.02

// slowerBy is the part of the stated speed below which the speed reached casts doubt on it (practice).
const slowerBy = 0.9

// reached is the fastest speed of all trials, one with a mean and one run one way.
type reached struct {
	trial  *Trial
	speed  unit.Knot // to the tenth, as it is printed
	found  bool
	oneWay unit.Knot // fastest speed of a setting that was run one way
	which  *Trial
}

// fastestOf looks through all trials.
func fastestOf(trials []Trial) reached {
	var r reached
	for i := range trials {
		t := &trials[i]
		if t.Top >= 0 && (!r.found || tenth(t.Settings[t.Top].Speed.Value) > r.speed) {
			r.trial, r.speed, r.found = t, tenth(t.Settings[t.Top].Speed.Value), true
		}
		for _, s := range t.Settings {
			if s.OneWay && tenth(float64(s.Simple)) > r.oneWay {
				r.oneWay, r.which = tenth(float64(s.Simple)), t
			}
		}
	}
	return r
}

// tenth rounds to a tenth of a knot, so that what is compared is what is printed.
func tenth(kn float64) unit.Knot { return unit.Knot(math.Round(kn*10) / 10) }

// speedReached holds the speed for which the structure is reckoned against the greatest speed measured. A boat that goes
// faster than its structure was reckoned for is short whatever its mass was; one that goes slower shows it only if the
// mass on trial is known and was not above the loaded mass, because a lighter boat is faster.
func speedReached(trials []Trial, boat *record.Boat) finding.Check {
	c := finding.Check{
		Rule: "speed-reached", Subject: "boat", Standing: finding.NotShown,
		Asks:  "the speed for which the structure is reckoned is not less than the speed reached on trial",
		Basis: finding.Practice, Source: "practice",
	}
	stated, ok := boat.Speed.Get()
	if !ok {
		c.Says = "the record states no speed for which the structure is reckoned"
		c.Missing = []string{"boat.speed_kn"}
		c.Settle = "write boat.speed_kn"
		return c
	}
	c.Places = []finding.Place{boat.Speed.At}
	c.Has = unit.Text(stated, 1) + " kn"
	top := fastestOf(trials)
	if len(trials) == 0 {
		c.Says = "no sea trial is on record"
		c.Settle = "run the boat at its loaded mass and put the runs on record"
		return c
	}
	if top.found {
		c.Places = append(c.Places, top.trial.Record.At)
		c.Needed = unit.Text(top.speed, 1) + " kn"
	}
	switch {
	case top.found && top.speed > stated:
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("the structure is reckoned for %s kn; the boat reached %s kn on trial %s%s",
			unit.Text(stated, 1), unit.Text(top.speed, 1), top.trial.Record.ID, atMass(top.trial.Record))
		c.Settle = "reckon the structure for the speed reached, or limit the speed and try it again with the limit in place"
	case top.oneWay > stated:
		c.Says = fmt.Sprintf("trial %s has %s kn one way, more than the %s kn for which the structure is reckoned; the stream is not removed",
			top.which.Record.ID, unit.Text(top.oneWay, 1), unit.Text(stated, 1))
		c.Places = append(c.Places, top.which.Record.At)
		c.Settle = "run the fastest setting both ways"
	case !top.found:
		c.Says = "no setting was run both ways, so no speed is free of the stream"
		c.Settle = "run the fastest setting both ways"
	default:
		heldByMass(&c, top, boat)
	}
	return c
}

// heldByMass decides whether a trial at or below the stated speed speaks for the loaded boat.
func heldByMass(c *finding.Check, top reached, boat *record.Boat) {
	rec := top.trial.Record
	says := fmt.Sprintf("the fastest setting run reached %s kn on trial %s%s", unit.Text(top.speed, 1), rec.ID, atMass(rec))
	switch {
	case !rec.Mass.Set:
		c.Says = says + "; at which mass is not written"
		c.Missing = []string{"trial." + rec.ID + ".mass_kg"}
		c.Settle = "write the mass of the boat during the trial"
	case !boat.LoadedMass.Set:
		c.Says = says + "; the loaded mass is not written"
		c.Missing = []string{"boat.loaded_mass_kg"}
		c.Settle = "write boat.loaded_mass_kg"
	case float64(rec.Mass.V) > float64(boat.LoadedMass.V)*heavierBy:
		c.Says = says + ", above the loaded mass of " + unit.Text(boat.LoadedMass.V, 0) + " kg; at that mass the boat is faster"
		c.Settle = "run the fastest setting at the loaded mass"
	default:
		c.Standing = finding.Met
		c.Says = says + "; the structure is reckoned for " + unit.Text(boat.Speed.V, 1) + " kn"
	}
}

func atMass(rec *record.Trial) string {
	if !rec.Mass.Set {
		return ""
	}
	return " at " + unit.Text(rec.Mass.V, 0) + " kg"
}

// slowerThanStated doubts a stated speed that no trial came near.
func slowerThanStated(trials []Trial, boat *record.Boat) []finding.Finding {
	top := fastestOf(trials)
	if !top.found || !boat.Speed.Set || float64(top.speed) >= slowerBy*float64(boat.Speed.V) {
		return nil
	}
	return []finding.Finding{{
		Kind: finding.Doubt, Rule: "speed-stated", Subject: "boat",
		Says: fmt.Sprintf("the record states %s kn; the fastest setting run on trial reached %s kn%s",
			unit.Text(boat.Speed.V, 1), unit.Text(top.speed, 1), atMass(top.trial.Record)),
		Settle: "state the speed that was reached, or run at full throttle",
		Places: []finding.Place{boat.Speed.At, top.trial.Record.At},
	}}
}
