package stability

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Limits of the level flotation test of ISO 12217 (read second-hand in a filled-in worksheet 9).
const (
	swampedHeel      = 45.0          // degrees, with the side weights on
	swampedPeriphery = 100.0 * 2 / 3 // % of the gunwale above the water
)

// offsets holds every offset-load test against the limit and against what is reckoned.
func (j *judge) offsets() {
	for i := range j.hull.OffsetTests {
		t := &j.hull.OffsetTests[i]
		if t.Weight.V == 0 && t.Angle.V > 0.2 || t.Arm.V == 0 && t.Angle.V > 0.2 {
			j.say(finding.Contradiction, "heel-without-weight", "offset_test "+t.ID, fmt.Sprintf("%s° of heel with %s kg at %s m off the centre line", unit.Text(t.Angle.V, 1),
				unit.Text(t.Weight.V, 0), unit.Text(t.Arm.V, 2)), "read the test sheet again", t.At)
			continue
		}
		j.offsetLimit(t)
		j.offsetAgrees(t)
	}
}

func (j *judge) offsetLimit(t *record.OffsetTest) {
	for _, s := range j.out.Shown {
		if s.Check.Rule != "offset-load" || s.Working == nil {
			continue
		}
		j.ask(question{rule: "offset-test", subject: "offset_test " + t.ID, asks: "the heel that was read with people to one side is within its limit", name: "heel read",
			working: s.Working, symbol: "phi_OR", has: float64(t.Angle.V), most: true, unit: "°", decimals: 1, settle: "fewer persons, or a narrower place for them", places: finding.Places(t.Angle.At)})
		return
	}
}

// offsetAgrees holds the heel read against that of the loaded condition under the same moment.
func (j *judge) offsetAgrees(t *record.OffsetTest) {
	full := j.find("loaded ready")
	c := finding.Check{Rule: "offset-test-agrees", Subject: "offset_test " + t.ID, Asks: "the heel that was read is that which is reckoned, within the allowance of the record",
		Standing: finding.NotShown, Basis: finding.Yard, Source: "allowance of the record", Places: finding.Places(t.Angle.At, t.Allowed.At)}
	h := full.heeled("offset-load test "+t.ID, gravity*float64(t.Weight.V)*float64(t.Arm.V), true)
	j.out.Heelings = append(j.out.Heelings, h)
	if !h.Rests {
		c.Says, c.Settle = fmt.Sprintf("%s° read; as reckoned the boat would not come to rest", unit.Text(t.Angle.V, 1)), "hold test, weights and lines against each other"
	} else {
		c.Has = unit.Text(t.Angle.V, 1) + "°"
		c.Says = fmt.Sprintf("%s° read with %s kg at %s m; %s° reckoned in the loaded condition", unit.Text(t.Angle.V, 1), unit.Text(t.Weight.V, 0), unit.Text(t.Arm.V, 2), unit.Text(h.Heel, 1))
		j.decideBy(&c, math.Abs(float64(t.Angle.V)-h.Heel), allowance{float64(t.Allowed.V), t.Allowed.Set, "°", 1, "offset_test." + t.ID + ".allowance_deg"})
	}
	j.show(Shown{Check: c, Condition: full.Loading.ID})
}

// flotationTest asks for the test of flotation where part and option do. No test is not shown, never met.
func (j *judge) flotationTest() {
	o := j.out.Option
	third := o.Part == "iso-12217-3-2022"
	switch {
	case third && j.decking() == "decked":
		j.notApplying("flotation-test", "the boat is decked and drains quickly, so it is not swamped", cite3)
		return
	case !third && !o.wants(3, 4):
		j.notApplying("flotation-test", "asked for in options 3 and 4 only", "ISO 12217-1, 2015")
		return
	}
	for i := range j.hull.SwampTests {
		j.swamp(&j.hull.SwampTests[i], third)
	}
	if len(j.hull.SwampTests) > 0 {
		return
	}
	j.out.Checks = append(j.out.Checks, finding.Check{Rule: "flotation-test", Subject: "boat", Asks: "the swamped boat was tested", Standing: finding.NotShown,
		Says: "no test of the boat full of water is on record", Missing: []string{"swamp_test"}, Settle: "test the boat full of water and write [swamp_test.NAME]",
		Basis: finding.Recalled, Source: j.out.Option.named(), Places: finding.Places(j.hull.Lines.Sides.At)})
}

const cite3 = "ISO 12217-3, 2022, 6.7 and 6.8"

// swamp turns one test into met or short. Part 1 asks for level flotation.
func (j *judge) swamp(t *record.SwampTest, third bool) {
	c := finding.Check{Rule: "flotation-test", Subject: "swamp_test " + t.ID, Asks: "the swamped boat floats as it should", Standing: finding.Met,
		Basis: finding.Read, Source: "ISO 12217-1, worksheet 9, read second-hand", Places: finding.Places(t.At)}
	c.Says = fmt.Sprintf("%s flotation, %s kg on board", t.Kind.V, unit.Text(t.Weights.V, 0))
	short := func(why string) { c.Standing, c.Says = finding.Short, c.Says+"; "+why }
	if !t.Afloat.V {
		short("the boat did not stay afloat")
	}
	if t.Kind.V == "basic" && !third {
		short("part 1 asks for level flotation")
	}
	if t.Kind.V == "level" && c.Standing == finding.Met {
		j.level(t, &c)
	}
	if c.Standing == finding.Short {
		c.Settle = "more buoyancy, higher and farther outboard"
	}
	j.show(Shown{Check: c})
}

func (j *judge) level(t *record.SwampTest, c *finding.Check) {
	if !t.Heel.Set || !t.Periphery.Set {
		c.Standing, c.Says = finding.NotShown, c.Says+"; heel or the part of the gunwale above the water is not written"
		c.Missing, c.Settle = []string{"swamp_test." + t.ID + ".heel_deg", "swamp_test." + t.ID + ".periphery_above_percent"}, "complete the test sheet"
		return
	}
	c.Has = fmt.Sprintf("%s°, %s %%", unit.Text(t.Heel.V, 0), unit.Text(t.Periphery.V, 0))
	c.Needed = fmt.Sprintf("less than %s°, at least %s %%", unit.Text(swampedHeel, 0), unit.Text(swampedPeriphery, 0))
	c.Says += fmt.Sprintf("; %s° of heel with weights to one side, %s %% of the gunwale above the water", unit.Text(t.Heel.V, 0), unit.Text(t.Periphery.V, 0))
	if float64(t.Heel.V) >= swampedHeel || float64(t.Periphery.V) < swampedPeriphery-0.5 {
		c.Standing = finding.Short
	}
}
