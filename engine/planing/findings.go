package planing

import (
	"fmt"
	"math"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/unit"
)

// Limits beyond which prediction and trial are said to differ (own practice).
const (
	trimApart = 2.0 // degrees
	sparePart = 1.5 // installed power over the upper end of the band
)

// leftOut tells what the prediction does not count.
func (in *Input) leftOut() []finding.Assumption {
	p := &in.Hull.Prediction
	var out []finding.Assumption
	say := func(says, settle string, b finding.Basis) {
		out = append(out, finding.Assumption{Subject: "prediction", Says: says, Settle: settle, Basis: b})
	}
	if !p.Front.Set {
		say("the drag of the air is left out", "write prediction.frontal_area_m2", finding.Practice)
	} else if !p.AirDrag.Set {
		say(fmt.Sprintf("the air drag coefficient is %s", unit.Text(airDrag, 1)), "write prediction.air_drag_coefficient", finding.Practice)
	}
	if !p.Appendage.Set {
		say("the drag of appendages is left out", "write prediction.appendage_percent", finding.Practice)
	}
	if !p.Spray.V {
		say("the drag of the whisker spray is left out, as the 1964 paper does below 4° of trim", "write prediction.whisker_spray", finding.Read)
	}
	say("the overall efficiency between engine and thrust is 0.5 to 0.6", "a measured fuel flow or torque would narrow it", finding.Practice)
	return out
}

// findings of one case: where trial and prediction part, and where the boat may porpoise.
func (in *Input) findings(c *Case) []finding.Finding {
	var out []finding.Finding
	places := []finding.Place{in.Hull.Boat.Power.At}
	if c.Trial != nil {
		places = []finding.Place{c.Trial.At}
	}
	doubt := func(rule, settle, format string, args ...any) {
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: rule, Subject: "prediction", Says: fmt.Sprintf(format, args...), Settle: settle, Places: places})
	}
	var apart []string
	for i := range c.Settings {
		s := &c.Settings[i]
		if s.Point == nil || !s.HasTrim || s.Point.Coefficient < planesFrom {
			continue
		}
		if s.Point.HasCritical && s.Trim > s.Point.Critical {
			doubt("prediction-porpoising", "run the setting again and watch for a bounding motion; trim down or move weight forward",
				"at setting %s the trim of %s° lies above the porpoising limit of %s° read off the figure", s.Name, unit.Text(s.Trim, 1), unit.Text(s.Point.Critical, 1))
		}
		if d := s.Trim - s.Point.Run.Trim; s.Point.Inside() && math.Abs(d) > trimApart {
			apart = append(apart, fmt.Sprintf("%s° at setting %s, predicted %s°", unit.Text(s.Trim, 1), s.Name, unit.Text(s.Point.Run.Trim, 1)))
		}
	}
	if len(apart) > 0 {
		doubt("prediction-trim", "hold the centre of gravity on trial, trim tabs and the zero of the trim gauge against the record",
			"the trim on trial differs from the predicted by more than %s°: %s", unit.Plain(trimApart), strings.Join(apart, "; "))
	}
	c.power(doubt)
	return out
}

// power compares the engines with what the fastest setting needs in the prediction.
func (c *Case) power(doubt func(rule, settle, format string, args ...any)) {
	p := c.FastestMeasured()
	if p == nil || !(c.Installed > 0) {
		return
	}
	kw := func(v float64) string { return unit.Text(v, 0) }
	switch {
	case p.Least > c.Installed:
		doubt("prediction-power", "weigh the boat as on trial; look at speed, trim and the drags that were added",
			"at the %s kn that were measured the prediction needs %s to %s kW, and %s kW are installed", unit.Text(p.Knots, 1), kw(p.Least), kw(p.Most), kw(c.Installed))
	case c.Installed > sparePart*p.Most:
		doubt("prediction-power", "look at propeller, bottom and trim, and at whether the engines gave their power",
			"at the %s kn that were measured the prediction needs only %s to %s kW of %s kW installed", unit.Text(p.Knots, 1), kw(p.Least), kw(p.Most), kw(c.Installed))
	}
	if !p.Inside() {
		doubt("prediction-range", "trust the trial here and not the curve",
			"at the %s kn that were measured the prediction lies outside its range: %s", unit.Text(p.Knots, 1), strings.Join(p.Flags, "; "))
	}
}

// FastestMeasured is the prediction at the fastest setting of the trial, nil where there is none.
func (c *Case) FastestMeasured() *Point {
	var top *Point
	for i := range c.Settings {
		if p := c.Settings[i].Point; p != nil && (top == nil || p.Knots > top.Knots) {
			top = p
		}
	}
	return top
}
