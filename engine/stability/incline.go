package stability

import (
	"fmt"
	"math"

	"gonum.org/v1/gonum/stat"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// Inclining is one inclining test reduced.
type Inclining struct {
	Record    *record.HeelTest
	Shifts    []Shift
	Line      Line
	Working   *method.Working // GM and KG; nil where there is none
	Mass      float64         // of the boat on the day
	GM        float64         // metres, measured
	GMWithin  float64         // half width of the interval of 95 %; 0 where too few shifts tell
	KG        float64         // measured
	Reckoned  float64         // KG of the items on board that day
	HasMass   bool
	HasReckon bool
	Why       string // why there is no GM
}

// Shift is one shift reduced.
type Shift struct {
	Record  *record.Shift
	Moment  float64 // kg·m
	Tangent float64
	Heel    float64 // degrees
	Known   bool    // false where the record gives no heel
	Working *method.Working
}

// Line is a straight line through moment and tangent by least squares: tangent = Start + moment / Slope.
type Line struct {
	Slope  float64 // kg·m for a tangent of one
	Start  float64 // tangent at no moment
	Within float64 // half width of the interval of 95 % of the slope; 0 with fewer than three shifts
	N      int
	OK     bool
}

// Fit draws the line: least squares of the tangent over the moment, which is known better. With one shift it goes through
// nought. The interval is Student's (95 %, two sides) on the slope of the regression; every textbook of statistics.
func Fit(moments, tangents []float64) Line {
	l := Line{N: len(moments)}
	if l.N == 1 && moments[0] != 0 && tangents[0] != 0 {
		l.Slope, l.OK = moments[0]/tangents[0], true
		return l
	}
	if l.N < 2 {
		return l
	}
	start, per := stat.LinearRegression(moments, tangents, nil, false)
	if per == 0 || math.IsNaN(per) || math.IsInf(per, 0) {
		return l
	}
	l.Slope, l.Start, l.OK = 1/per, start, true
	l.Within = l.within(moments, tangents, per)
	return l
}

func (l *Line) within(moments, tangents []float64, per float64) float64 {
	if l.N < 3 {
		return 0
	}
	rest, mm, middle := 0.0, 0.0, stat.Mean(moments, nil)
	for i := range moments {
		d := tangents[i] - l.Start - float64(per*moments[i])
		rest += float64(d * d)
		mm += float64((moments[i] - middle) * (moments[i] - middle))
	}
	se := math.Sqrt(rest / float64(l.N-2) / mm)
	return trial.StudentT(l.N-2) * se / math.Abs(per) * math.Abs(l.Slope)
}

// inclinings reduces every inclining test and holds it against the weights.
func (j *judge) inclinings() {
	if len(j.hull.HeelTests) == 0 {
		return
	}
	sheet, ok := j.library.Sheet("inclining")
	if !ok {
		return
	}
	j.out.Sheets = append(j.out.Sheets, sheet)
	for i := range j.hull.HeelTests {
		t := j.incline(sheet, &j.hull.HeelTests[i])
		j.out.Inclinings = append(j.out.Inclinings, t)
		j.holdIncline(&t)
	}
}

func (j *judge) incline(sheet *method.Sheet, rec *record.HeelTest) Inclining {
	t := Inclining{Record: rec}
	d := j.day(rec.Aboard, rec.Ashore)
	d.add(float64(rec.Weights.V), hydrostatics.Vector{X: float64(rec.WeightsX.V), Z: float64(rec.WeightsZ.V)})
	t.HasReckon = d.why() == "" && (rec.Weights.V == 0 || rec.WeightsX.Set && rec.WeightsZ.Set)
	t.Mass, t.HasMass = d.mass, t.HasReckon
	if m, ok := rec.Mass.Get(); ok {
		t.Mass, t.HasMass = float64(m), true
	}
	t.Reckoned = d.centre().Z
	var moments, tangents []float64
	for i := range rec.Shifts {
		s := j.shift(sheet, rec, &rec.Shifts[i], t.Mass)
		t.Shifts = append(t.Shifts, s)
		if s.Known && s.Moment != 0 {
			moments, tangents = append(moments, s.Moment), append(tangents, s.Tangent)
		}
	}
	t.Line = Fit(moments, tangents)
	switch {
	case !t.HasMass:
		t.Why = "the mass of the boat on the day is not known"
	case !t.Line.OK || t.Line.Slope <= 0:
		t.Why = "the shifts give no line of heel over moment"
	default:
		j.measured(sheet, &t, d)
	}
	return t
}

// shift reduces one shift and looks for what cannot be.
func (j *judge) shift(sheet *method.Sheet, rec *record.HeelTest, s *record.Shift, mass float64) Shift {
	out := Shift{Record: s, Moment: float64(s.Weight.V) * float64(s.Distance.V)}
	switch {
	case s.Pendulum.Set && s.Deflection.Set:
		out.Tangent, out.Known = float64(s.Deflection.V)/float64(s.Pendulum.V), true
	case s.Angle.Set:
		out.Tangent, out.Known = math.Tan(float64(s.Angle.V)*degree), true
	}
	out.Heel = math.Atan(out.Tangent) / degree
	subject := "heel_test " + rec.ID
	if out.Known && out.Moment == 0 && math.Abs(out.Heel) > 0.05 {
		j.say(finding.Contradiction, "heel-without-weight", subject, fmt.Sprintf("shift %s: %s° of heel without a moment (%s kg × %s m)", s.ID, unit.Text(out.Heel, 2), unit.Text(s.Weight.V, 1),
			unit.Text(s.Distance.V, 2)), "read the test sheet again", s.At)
	}
	if out.Known && out.Moment*out.Tangent < 0 {
		j.say(finding.Contradiction, "heel-wrong-side", subject, fmt.Sprintf("shift %s: the weight went to one side and the boat heeled to the other (%s kg·m, %s°)", s.ID, unit.Text(out.Moment, 1),
			unit.Text(out.Heel, 2)), "read the test sheet again", s.At)
	}
	if !out.Known || mass <= 0 || out.Tangent == 0 {
		return out
	}
	g := given{hull: j.hull, reckoned: method.GivenMap{}}
	g.reckoned["shift.weight_kg"] = method.Quantity{Number: float64(s.Weight.V), Unit: "kg", Place: s.Weight.At}
	g.reckoned["shift.distance_m"] = method.Quantity{Number: float64(s.Distance.V), Unit: "m", Place: s.Distance.At}
	g.put("shift.tangent", out.Tangent, "", "", "deflection over length, or tangent of the heel")
	g.put("heel_test.mass_kg", mass, "kg", "", "on the day")
	out.Working, _ = sheet.Evaluate("shift", &g, nil)
	return out
}

// measured finds GM from the line and KG from the metacentre of the lines at that mass.
func (j *judge) measured(sheet *method.Sheet, t *Inclining, d onTheDay) {
	density := j.loading.Density
	if v, ok := t.Record.Density.Get(); ok {
		density = float64(v)
	}
	centre := d.centre()
	if d.mass <= 0 {
		t.Why = "no items are on record that say how the boat trims"
		return
	}
	load := hydrostatics.Load{Mass: t.Mass, Centre: hydrostatics.Vector{X: centre.X, Z: centre.Z}, Density: density}
	rest, err := j.dry.Balance(load, 0, hydrostatics.Attitude{}, false)
	if err != nil {
		t.Why = err.Error()
		return
	}
	g := given{hull: j.hull, reckoned: method.GivenMap{}}
	g.put("heel_test.slope", t.Line.Slope, "kg·m", finding.Derived, "least squares over the shifts")
	g.put("heel_test.mass_kg", t.Mass, "kg", "", "on the day")
	g.put("heel_test.metacentre_m", rest.Metacentric(load)+centre.Z, "m", finding.Derived, "from the lines")
	g.put("heel_test.free_surface_mm", float64(t.Record.Surface.V), "mm", "", "record; nought where none is written")
	w, err := sheet.Evaluate("test", &g, nil)
	if err != nil {
		t.Why = err.Error()
		return
	}
	t.Working = w
	t.GM, _ = w.Value("GM")
	t.KG, _ = w.Value("KG")
	t.GMWithin = t.Line.Within / t.Mass
}

// holdIncline holds the measured height of the centre against that of the items.
func (j *judge) holdIncline(t *Inclining) {
	c := finding.Check{Rule: "inclining-centre", Subject: "heel_test " + t.Record.ID, Standing: finding.NotShown,
		Asks:  "the height of the centre by inclining is that of the items on board that day, within the allowance of the record",
		Basis: finding.Yard, Source: "allowance of the record", Places: finding.Places(t.Record.At, t.Record.Allowed.At)}
	switch {
	case t.Why != "":
		c.Says, c.Settle = t.Why, "complete the test sheet"
	case !t.HasReckon:
		c.Says, c.Settle = "the items on board that day have no mass or position", "complete the weight breakdown"
	default:
		diff := 1000 * (t.KG - t.Reckoned)
		c.Has = unit.Text(diff, 0) + " mm"
		c.Says = fmt.Sprintf("metacentric height measured %s m%s, centre %s m above the base line; the items on board that day give %s m: %s mm", unit.Text(t.GM, 3), t.within(),
			unit.Text(t.KG, 3), unit.Text(t.Reckoned, 3), unit.Text(diff, 0))
		j.decideBy(&c, math.Abs(diff), allowance{float64(t.Record.Allowed.V), t.Record.Allowed.Set, " mm", 0, "heel_test." + t.Record.ID + ".allowance_mm"})
	}
	j.show(Shown{Check: c, Working: t.Working, Symbol: "KG"})
}

func (t *Inclining) within() string {
	if t.GMWithin == 0 {
		return ""
	}
	return " ± " + unit.Text(t.GMWithin, 3)
}
