package weld

import (
	"fmt"
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// The sheets that seams are reckoned by.
const (
	sheetHeat     = "arc-energy"
	sheetMetal    = "weld-metal"
	sheetStrength = "fillet-en-1999"
	sheetFactor   = "fillet-factor"
)

func put[T ~float64](g method.GivenMap, name, sign string, v record.Val[T]) {
	if q, ok := measure(sign, v); ok {
		g[name] = q
	}
}

func (r *Ranges) yield(process string) float64 {
	if process == "131" {
		return r.Fillets.Consumption.YieldMIG
	}
	return r.Fillets.Consumption.YieldTIG
}

func (r *Ranges) operating(process string) float64 {
	if process == "131" {
		return r.Fillets.Consumption.OperatingMIG
	}
	return r.Fillets.Consumption.OperatingTIG
}

// seams reckons every joint of the weld map.
func (a *assessor) seams() {
	procedures := map[string]*record.Procedure{}
	for i := range a.yard.Welding.Procedures {
		p := &a.yard.Welding.Procedures[i]
		procedures[Number(p)] = p
	}
	alloys := map[string]string{}
	for i := range a.hull.Parts {
		alloys[a.hull.Parts[i].ID] = a.hull.Parts[i].Alloy.V
	}
	for i := range a.hull.Joints {
		a.seam(&a.hull.Joints[i], procedures, alloys)
	}
	if a.ExampleOf != nil {
		a.Example = a.evaluate(sheetMetal, a.longest)
	}
	if len(a.hull.Joints) > 0 {
		c := a.ranges.Fillets.Consumption
		a.Assumptions = append(a.Assumptions, finding.Assumption{Subject: "boat", Basis: c.Basis,
			Says:   fmt.Sprintf("weld metal %v times the drawn section, %v of the wire in the seam, the arc burning %v of the working time, %v mm/min and %v l/min of gas, and one fillet where a joint does not say that it is welded from both sides", c.Excess, c.YieldMIG, c.OperatingMIG, c.Speed, c.Gas),
			Settle: "write sides of every joint, and hold the rest against the yard's own hours and wire"})
	}
	for i := range a.hull.Stages {
		s := &a.hull.Stages[i]
		if s.Kind.V != "welding" {
			continue
		}
		a.Sums.Planned, a.Sums.HasPlanned = a.Sums.Planned+float64(s.Planned.V), a.Sums.HasPlanned || s.Planned.Set
		a.Sums.Booked, a.Sums.HasBooked = a.Sums.Booked+float64(s.Booked.V), a.Sums.HasBooked || s.Booked.Set
	}
}

func (a *assessor) seam(j *record.Joint, procedures map[string]*record.Procedure, alloys map[string]string) {
	g := a.given(j, procedures[j.Procedure.V])
	s := Seam{Joint: j, Takes: a.takes(j, g)}
	if t, ok := thinner(j); ok {
		s.Thinner = t
		s.Softened = a.ranges.Fillets.Softened(processOf(procedures[j.Procedure.V]), float64(t))
	}
	a.Sums.Joints++
	a.Sums.Metres += float64(j.Length.V)
	a.sum(&s)
	if isFillet(j) {
		a.pattern(j)
		a.factor(&s, g)
		a.strength(&s, g, alloys)
	}
	a.Seams = append(a.Seams, s)
}

// given gathers what the sheets ask of a joint.
func (a *assessor) given(j *record.Joint, p *record.Procedure) method.GivenMap {
	c := a.ranges.Fillets.Consumption
	process := processOf(p)
	speed := method.Quantity{Number: c.Speed, Unit: "mm/min", Basis: c.Basis}
	gas := method.Quantity{Number: c.Gas, Unit: "l/min", Basis: c.Basis}
	if p != nil {
		if p.SpeedFrom.Set && p.SpeedTo.Set {
			speed = method.Quantity{Number: float64(p.SpeedFrom.V+p.SpeedTo.V) / 2, Unit: "mm/min", Place: p.SpeedFrom.At, Source: "middle between the least and the greatest of the procedure"}
		}
		if p.GasFlow.Set {
			gas = method.Quantity{Number: float64(p.GasFlow.V), Unit: "l/min", Place: p.GasFlow.At}
		}
	}
	own := func(v float64, sign string) method.Quantity {
		return method.Quantity{Number: v, Unit: sign, Basis: c.Basis}
	}
	g := method.GivenMap{
		"seam.kind":          {Word: "butt", IsWord: true, Place: j.Type.At, Source: "whatever is not a fillet counts as a butt seam"},
		"seam.fillets":       {Number: 1, Place: j.Sides.At, Source: "one, unless both sides are written"},
		"seam.share":         {Number: 1, Place: j.Pattern.At, Source: "all of it, unless the record says chain or staggered"},
		"consumption.excess": own(c.Excess, ""), "consumption.density_kg_m3": own(c.Density, "kg/m³"), "consumption.yield": own(a.ranges.yield(process), ""),
		"consumption.operating": own(a.ranges.operating(process), ""), "consumption.speed_mm_min": speed, "consumption.gas_l_min": gas,
		"seam.throat_mm": {Unit: "mm"},
	}
	if isFillet(j) {
		g["seam.kind"] = method.Quantity{Word: "fillet", IsWord: true, Place: j.Type.At}
		delete(g, "seam.throat_mm")
	}
	if j.Sides.V == "bs" {
		g["seam.fillets"] = method.Quantity{Number: 2, Place: j.Sides.At}
	}
	if share, ok := Share(j); ok {
		g["seam.share"] = method.Quantity{Number: share, Place: j.Pattern.At}
	}
	put(g, "seam.throat_mm", "mm", j.Throat)
	put(g, "seam.length_m", "m", j.Length)
	if t, ok := thinner(j); ok {
		g["seam.thickness_mm"] = method.Quantity{Number: float64(t), Unit: "mm", Place: j.Thickness.At}
	}
	return g
}

// processOf is the process of a procedure; wire under gas where none is named.
func processOf(p *record.Procedure) string {
	if p == nil || !p.Process.Set {
		return "131"
	}
	return p.Process.V
}

// Share is the part of a joint that is welded; ok is false for an intermittent one whose beads are not written.
func Share(j *record.Joint) (share float64, ok bool) {
	switch {
	case j.Pattern.V != "chain" && j.Pattern.V != "staggered":
		return 1, true
	case j.Bead.Set && j.Pitch.Set:
		return float64(j.Bead.V) / float64(j.Pitch.V), true
	}
	return 0, false
}

func thinner(j *record.Joint) (unit.MM, bool) {
	switch {
	case j.Thickness.Set && j.OtherThick.Set:
		return min(j.Thickness.V, j.OtherThick.V), true
	case j.Thickness.Set:
		return j.Thickness.V, true
	}
	return j.OtherThick.V, j.OtherThick.Set
}

func (a *assessor) evaluate(sheet string, g method.GivenMap) *method.Working {
	s, ok := a.lib.Sheet(sheet)
	if !ok {
		return nil
	}
	w, err := s.Evaluate("seam", g, nil)
	if err != nil {
		return nil
	}
	if !slices.Contains(a.Sheets, s) {
		a.Sheets = append(a.Sheets, s)
	}
	return w
}

// takes reckons one seam as numbers; the longest is shown.
func (a *assessor) takes(j *record.Joint, g method.GivenMap) Takes {
	of := a.metal
	if of == nil {
		if a.evaluate(sheetMetal, g) == nil {
			return Takes{}
		}
		sheet, _ := a.lib.Sheet(sheetMetal)
		of, _ = sheet.Slate("seam", nil) // it has been evaluated
		a.metal = of
	}
	if of.Reckon(g) != nil {
		return Takes{}
	}
	v := func(symbol string) float64 { x, _ := of.Value(symbol); return x }
	t := Takes{Metal: v("m"), Wire: v("m_w"), Gas: v("V_g"), Arc: v("h_a"), Labour: v("h_w")}
	if _, t.Known = of.Value("m"); !t.Known {
		return Takes{}
	}
	if a.ExampleOf == nil || a.ExampleOf.Length.V < j.Length.V {
		a.ExampleOf, a.longest = j, g
	}
	return t
}

// sum adds what a seam takes; one whose size is not written is counted apart.
func (a *assessor) sum(s *Seam) {
	t := s.Takes
	if !t.Known {
		a.Sums.Without++
		s.Why = "throat or thickness is not on record"
		return
	}
	a.Sums.Metal += t.Metal
	a.Sums.Wire += t.Wire
	a.Sums.Gas += t.Gas
	a.Sums.Arc += t.Arc
	a.Sums.Labour += t.Labour
}
