package trial

import (
	"cmp"
	"fmt"
	"math"
	"slices"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Limits beyond which a trial is doubted. All are practice unless a line says otherwise.
const (
	rpmApart     = 0.03 // part of the mean by which engine speed may differ within a setting
	strongStream = 2.0  // knots of stream above which the course should be chosen anew
	streamChange = 1.0  // knots by which the stream may change within a setting
	fuelFalls    = 0.05 // part by which a faster engine may burn less
	burnLeast    = 0.25 // litres that engines burn for a kilowatt hour, diesel (recalled)
	burnMost     = 0.42 // and petrol outboards at the most (recalled)
	thirsty      = 1.2  // times burnMost, at rated power, that no engine burns
	shallowFrom  = 0.7  // depth Froude number from which shallow water distorts the hump (recalled)
	shallowTo    = 1.2  // and up to which it does
)

// findings of one trial: what contradicts and what is doubtful.
func findings(t *Trial, boat *record.Boat) []finding.Finding {
	var all []finding.Finding
	for i := range t.Settings {
		s := &t.Settings[i]
		all = append(all, t.oneWay(s)...)
		all = append(all, t.negativeSlip(s)...)
		all = append(all, t.engineSpeed(s)...)
		all = append(all, t.changingStream(s)...)
		all = append(all, t.consumption(s, boat)...)
	}
	all = append(all, t.fewRuns()...)
	all = append(all, t.seaWordsAgree()...)
	all = append(all, t.windWordsAgree()...)
	all = append(all, t.fuelCurve()...)
	return append(all, t.shallow()...)
}

// say makes a finding about this trial as a whole.
func (t *Trial) say(kind finding.Kind, rule, settle string, at finding.Place, format string, args ...any) []finding.Finding {
	return []finding.Finding{{
		Kind: kind, Rule: rule, Subject: t.subject(), Settle: settle, Places: []finding.Place{at},
		Says: fmt.Sprintf(format, args...),
	}}
}

// sayOf makes a finding about one setting; its name stands in the subject and before the words.
func (t *Trial) sayOf(s *Setting, kind finding.Kind, rule, settle string, at finding.Place, format string, args ...any) []finding.Finding {
	all := t.say(kind, rule, settle, at, "setting %s: "+format, append([]any{s.Name}, args...)...)
	all[0].Subject += " setting " + s.Name
	return all
}

func (t *Trial) oneWay(s *Setting) []finding.Finding {
	if !s.OneWay {
		return nil
	}
	return t.sayOf(s, finding.Doubt, "trial-one-way", "run the setting on both headings, one after the other", s.first().At,
		"%s kn with the stream in it: %s", unit.Text(s.Simple, 1), s.Why)
}

func (t *Trial) negativeSlip(s *Setting) []finding.Finding {
	if !s.Slip.Has || s.Slip.Value >= 0 {
		return nil
	}
	thread, _ := Slip(s.RPM.Value, float64(t.Record.Pitch.V), float64(t.Record.Gear.V), s.Speed.Value)
	return t.sayOf(s, finding.Contradiction, "slip-negative", "read pitch off the propeller, and the gear ratio and engine speed off the engine", t.Record.Pitch.At,
		"the boat made %s kn, but a propeller of pitch %s in on gear %s at %s rpm advances only %s kn; pitch, gear, engine speed and speed cannot all be right",
		unit.Text(s.Speed.Value, 1), unit.Text(t.Record.Pitch.V, 1), unit.Text(t.Record.Gear.V, 2), unit.Text(s.RPM.Value, 0), unit.Text(thread, 1))
}

func (t *Trial) engineSpeed(s *Setting) []finding.Finding {
	if s.RPM.N < 2 || s.RPM.Spread <= rpmApart*s.RPM.Value {
		return nil
	}
	return t.sayOf(s, finding.Doubt, "trial-rpm", "hold the throttle, or give the runs settings of their own", s.first().At,
		"engine speed differs by %s rpm between runs about a mean of %s rpm, more than %s %%",
		unit.Text(s.RPM.Spread, 0), unit.Text(s.RPM.Value, 0), unit.Text(rpmApart*100, 0))
}

func (t *Trial) changingStream(s *Setting) []finding.Finding {
	if !s.HasStream {
		return nil
	}
	change := plainMean(s.streams()).Spread
	if float64(s.Current) <= strongStream && change <= streamChange {
		return nil
	}
	return t.sayOf(s, finding.Doubt, "trial-stream", "run again near slack water; the mean of means holds only for a stream that changes slowly", s.first().At,
		"the legs ask for a stream of %s kn that changes by %s kn between pairs", unit.Text(s.Current, 1), unit.Text(change, 1))
}

// consumption doubts a fuel flow that no engine of the rated power burns.
func (t *Trial) consumption(s *Setting, boat *record.Boat) []finding.Finding {
	power, ok := boat.Power.Get()
	if !ok || power <= 0 || !s.Fuel.Has || s.Fuel.Value <= thirsty*burnMost*float64(power) {
		return nil
	}
	return t.sayOf(s, finding.Doubt, "trial-consumption", "hold the flow meter against a filled tank, and the rated power against the engine's papers", s.first().At,
		"%s l/h from %s kW is %s l for each kilowatt hour even at rated power; engines burn %s to %s (recalled)",
		unit.Text(s.Fuel.Value, 1), unit.Text(power, 0), unit.Text(s.Fuel.Value/float64(power), 2), unit.Text(burnLeast, 2), unit.Text(burnMost, 2))
}

// fewRuns doubts in one sentence all means that rest on fewer than two double runs.
func (t *Trial) fewRuns() []finding.Finding {
	var names []string
	for _, s := range t.Settings {
		if s.Speed.Has && s.Speed.N < 4 {
			names = append(names, s.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return t.say(finding.Doubt, "trial-double-runs", "run each setting twice in both directions", t.Record.At,
		"fewer than two double runs, which a mean of means needs to keep its accuracy (Strasser et al. 2015), at setting %s", strings.Join(names, ", "))
}

// fuelCurve doubts a fuel flow that falls while engine speed rises: each setting is held against the thirstiest of those
// with less engine speed.
func (t *Trial) fuelCurve() []finding.Finding {
	var curve []*Setting
	for i := range t.Settings {
		if s := &t.Settings[i]; s.RPM.Has && s.Fuel.Has {
			curve = append(curve, s)
		}
	}
	slices.SortStableFunc(curve, func(a, b *Setting) int { return cmp.Compare(a.RPM.Value, b.RPM.Value) })
	var all []finding.Finding
	for i := 1; i < len(curve); i++ {
		slow, fast := curve[0], curve[i]
		if fast.Fuel.Value < (1-fuelFalls)*slow.Fuel.Value && fast.RPM.Value > slow.RPM.Value {
			all = append(all, t.say(finding.Doubt, "trial-fuel-curve", "look for a reading taken while the throttle moved", fast.first().At,
				"fuel flow falls from %s to %s l/h while engine speed rises from %s to %s rpm (settings %s and %s)",
				unit.Text(slow.Fuel.Value, 1), unit.Text(fast.Fuel.Value, 1), unit.Text(slow.RPM.Value, 0), unit.Text(fast.RPM.Value, 0), slow.Name, fast.Name)...)
		}
		if fast.Fuel.Value > slow.Fuel.Value {
			curve[0] = fast
		}
	}
	return all
}

// shallow doubts settings near the speed of the wave that the depth allows.
func (t *Trial) shallow() []finding.Finding {
	depth, ok := t.Record.Depth.Get()
	if !ok {
		return nil
	}
	wave := math.Sqrt(gravity*float64(depth)) / metresPerSecond
	var names []string
	for _, s := range t.Settings {
		if fn := s.Speed.Value / wave; s.Speed.Has && fn >= shallowFrom && fn <= shallowTo {
			names = append(names, s.Name)
		}
	}
	if len(names) == 0 {
		return nil
	}
	return t.say(finding.Doubt, "trial-shallow", "run these settings in deeper water", t.Record.Depth.At,
		"in %s m of water the speeds from %s to %s kn are distorted by the bottom (depth Froude number %s to %s, recalled): setting %s",
		unit.Text(depth, 1), unit.Text(shallowFrom*wave, 1), unit.Text(shallowTo*wave, 1), unit.Text(shallowFrom, 1), unit.Text(shallowTo, 1), strings.Join(names, ", "))
}

// assumptions of one trial.
func assumptions(t *Trial) []finding.Assumption {
	if !t.burns() || !t.Planing.Has {
		return nil
	}
	return []finding.Assumption{{
		Subject: t.subject(),
		Says: fmt.Sprintf("a setting counts as on the plane from %s kn, where the speed coefficient on the chine beam is %s; the best economy is looked for above it",
			unit.Text(t.Planing.Value, 1), unit.Text(planingCoefficient, 1)),
		Settle: "look at trim and litres per mile against speed", Basis: finding.Practice,
	}}
}
