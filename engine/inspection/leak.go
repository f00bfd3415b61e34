package inspection

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Leak is one test of tightness, reckoned. Pressures in kPa above that of the air around; NaN where not known.
type Leak struct {
	Record   *record.LeakTest
	Expected float64 // at the end of the hold, if the chamber is tight
	Lost     float64 // drop that temperature does not account for
	Allowed  float64 // of that
	Head     float64 // of the highest pressure, metres of fresh water
	Panel    float64 // design pressure of the panel that is named, kN/m²
	Most     float64 // highest pressure that the boundary should see
	MostFrom string  // why that is the most
}

// What practice leaves where no rule of the yard says otherwise.
const (
	airTest   = 15.0 // kPa; test pressure of air tests in class rules, at which boundaries of a small boat must not be exceeded
	panelPart = 0.5  // of the design pressure of the weakest panel
	dropPart  = 0.02 // of the pressure at the start of the hold
	dropLeast = 0.05 // kPa; the least drop that a gauge for such pressures can show
	enough    = 1e-9
)

func assessLeak(t *record.LeakTest, pressure func(string) (float64, bool)) Leak {
	l := Leak{Record: t, Expected: math.NaN(), Lost: math.NaN(), Allowed: math.NaN(), Head: math.NaN(), Panel: math.NaN(), Most: airTest,
		MostFrom: "the pressure at which air tests are held"}
	if p, known := pressure(t.Panel.V); t.Panel.Set && known {
		l.Panel = p
		if half := panelPart * p; half < l.Most {
			l.Most, l.MostFrom = half, "half the design pressure of panel "+t.Panel.V
		}
	}
	if t.Highest.Set {
		l.Head = Head(float64(t.Highest.V))
	}
	if t.Start.Set {
		l.Allowed = math.Max(dropLeast, dropPart*float64(t.Start.V))
	}
	if t.Start.Set && t.End.Set && t.StartTemp.Set && t.EndTemp.Set {
		l.Expected = Expected(float64(t.Start.V), StandardAir, float64(t.StartTemp.V), float64(t.EndTemp.V))
		l.Lost = l.Expected - float64(t.End.V)
	}
	return l
}

// ByAir reports whether the test holds a pressure of air.
func (l *Leak) ByAir() bool { return l.Record.Method.V == "air and soap" }

func (l *Leak) checks() []finding.Check {
	switch l.Record.Method.V {
	case "air and soap":
		return []finding.Check{l.decided(), l.pressed(), l.held()}
	case "hose":
		return []finding.Check{l.decided(), l.hosed()}
	}
	return []finding.Check{l.decided()}
}

func (l *Leak) check(rule, asks string) finding.Check {
	return finding.Check{
		Rule: rule, Subject: "leak test " + l.Record.ID, Asks: asks, Standing: finding.NotShown,
		Basis: finding.Practice, Source: "practice", Places: []finding.Place{l.Record.At},
	}
}

// decided asks for the result.
func (l *Leak) decided() finding.Check {
	c := l.check("leak-result", "the boundary was found tight")
	switch t := l.Record; {
	case !t.Result.Set:
		c.Says, c.Missing, c.Settle = t.Boundary.V+": no result is written", []string{"leak_test." + t.ID + ".result"}, "write tight or leaking"
	case t.Result.V == "leaking":
		c.Standing, c.Says, c.Settle = finding.Short, t.Boundary.V+" was found leaking", "mend it and test again"
		c.Places = append(c.Places, t.Result.At)
	default:
		c.Standing, c.Says = finding.Met, t.Boundary.V+" was found tight"
		c.Places = append(c.Places, t.Result.At)
	}
	return c
}

// pressed holds the highest pressure against what the weakest panel was reckoned for, and asks for something that keeps
// the pressure from rising further.
func (l *Leak) pressed() finding.Check {
	c := l.check("leak-pressure", "the pressure was read, was limited by a relief valve or U-tube, and did not strain the boundary")
	t := l.Record
	c.Needed = "at most " + unit.Text(l.Most, 2) + " kPa"
	switch {
	case !t.Highest.Set:
		c.Says, c.Missing, c.Settle = "the highest pressure is not written", []string{"leak_test." + t.ID + ".highest_kpa"}, "write it from the test sheet"
		return c
	case !t.Instrument.Set:
		c.Says, c.Missing, c.Settle = "no gauge is named", []string{"leak_test." + t.ID + ".instrument"}, "name the gauge"
		return c
	}
	c.Places = append(c.Places, t.Highest.At)
	c.Has = unit.Text(t.Highest.V, 2) + " kPa"
	if float64(t.Highest.V) > l.Most+enough {
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("%s saw %s kPa (%s m of water); the most is %s kPa, %s", t.Boundary.V, unit.Text(t.Highest.V, 2), unit.Text(l.Head, 2), unit.Text(l.Most, 2), l.MostFrom)
		c.Settle = "look at the panel for lasting deformation, and test again at less"
		return c
	}
	if !t.Relief.Set || !t.Relief.V {
		c.Says, c.Missing, c.Settle = "nothing on record kept the pressure from rising further", []string{"leak_test." + t.ID + ".relief_valve"}, "test with a relief valve or U-tube, and write it"
		return c
	}
	c.Standing = finding.Met
	c.Says = fmt.Sprintf("highest %s kPa (%s m of water), at most %s kPa: %s", unit.Text(t.Highest.V, 2), unit.Text(l.Head, 2), unit.Text(l.Most, 2), l.MostFrom)
	return c
}

// held holds the drop against what a change of temperature accounts for.
func (l *Leak) held() finding.Check {
	c := l.check("leak-drop", "the pressure held, apart from what the temperature changed")
	t := l.Record
	c.Basis, c.Source = finding.Practice, "law of ideal gas; allowance by practice"
	if math.IsNaN(l.Lost) {
		c.Says = "pressures and temperatures at both ends of the hold are not all written"
		for _, key := range []struct {
			name string
			set  bool
		}{{"start_kpa", t.Start.Set}, {"end_kpa", t.End.Set}, {"start_c", t.StartTemp.Set}, {"end_c", t.EndTemp.Set}} {
			if !key.set {
				c.Missing = append(c.Missing, "leak_test."+t.ID+"."+key.name)
			}
		}
		c.Settle = "write them from the test sheet"
		return c
	}
	c.Places = append(c.Places, t.Start.At, t.End.At, t.StartTemp.At, t.EndTemp.At)
	c.Needed, c.Has = "at most "+unit.Text(l.Allowed, 2)+" kPa lost", unit.Text(math.Round(l.Lost*1e4)/1e4, 2)+" kPa lost"
	c.Says = fmt.Sprintf("from %s kPa at %s °C a tight chamber comes to %s kPa at %s °C; %s kPa was read", unit.Text(t.Start.V, 2), unit.Text(t.StartTemp.V, 1),
		unit.Text(l.Expected, 2), unit.Text(t.EndTemp.V, 1), unit.Text(t.End.V, 2))
	if l.Lost > l.Allowed+enough {
		c.Standing, c.Settle = finding.Short, "look for the leak and test again, or hold longer with the temperature read better"
		return c
	}
	c.Standing = finding.Met
	return c
}

// hosed holds a hose test against the least that a rule asks of one: BV NR600, chapter 6 section 3, 1.6.3, read: 2·10⁵ Pa at
// the nozzle, 12 mm bore, 1.5 m distance.
func (l *Leak) hosed() finding.Check {
	c := l.check("leak-hose", "nozzle at 200 kPa or more, bore 12 mm or more, not farther than 1.5 m")
	c.Basis, c.Source = finding.Read, "BV NR600, February 2017, chapter 6 section 3, 1.6.3"
	t := l.Record
	if !t.Nozzle.Set || !t.Bore.Set || !t.Distance.Set {
		c.Says = "pressure, bore and distance of the nozzle are not all written"
		c.Missing, c.Settle = []string{"leak_test." + t.ID + ".nozzle_kpa"}, "write nozzle_kpa, nozzle_mm and nozzle_from_m"
		return c
	}
	c.Has = fmt.Sprintf("%s kPa, %s mm, %s m", unit.Text(t.Nozzle.V, 0), unit.Text(t.Bore.V, 0), unit.Text(t.Distance.V, 1))
	c.Places = append(c.Places, t.Nozzle.At)
	c.Standing, c.Says = finding.Met, "hosed with "+c.Has
	if t.Nozzle.V < 200 || t.Bore.V < 12 || t.Distance.V > 1.5 {
		c.Standing, c.Settle = finding.Short, "hose again, nearer or with more pressure"
	}
	return c
}

// assumes names the pressure of the air outside, which nobody reads.
func (l *Leak) assumes() []finding.Assumption {
	if math.IsNaN(l.Lost) {
		return nil
	}
	return []finding.Assumption{{
		Subject: "leak test " + l.Record.ID, Basis: finding.Practice,
		Says:   "pressure of the air outside 101.325 kPa, the same at both ends of the hold, because no barometer was read",
		Settle: "hold a second, closed and equal chamber beside it, or note the barometer in the test sheet",
	}}
}
