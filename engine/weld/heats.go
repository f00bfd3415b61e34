package weld

import (
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// WeldHeat is the heat of one weld, kJ for a millimetre of seam: what the arc gave, and the part that reached the metal.
// Known is false where volts, amperes or speed are not written, or the machine shapes the current, for then volts times
// amperes is no measure of its power.
type WeldHeat struct {
	Weld          *record.Weld
	Energy, Input float64
	Known, Shaped bool
}

// Heat reckons arc energy, heat input and the wire of one weld. The procedure says the process, the lot of filler the
// diameter, or the procedure where no lot is given; either may be nil. Nil is given where the sheet is not in the library.
func Heat(lib *method.Library, ranges *Ranges, w *record.Weld, p *record.Procedure, filler *record.Consumable) *method.Working {
	s, ok := lib.Sheet(sheetHeat)
	if !ok {
		return nil
	}
	working, err := s.Evaluate("weld", ranges.heatGiven(w, p, filler), nil)
	if err != nil {
		return nil
	}
	return working
}

// Arc reckons the sheet of arc energy for one weld after another, as numbers alone.
type Arc struct {
	slate  *method.Slate
	ranges *Ranges
}

// NewArc prepares it; without the sheet no weld has a value.
func NewArc(lib *method.Library, ranges *Ranges) *Arc {
	a := &Arc{ranges: ranges}
	if s, ok := lib.Sheet(sheetHeat); ok {
		a.slate, _ = s.Slate("weld", nil, "E", "Q", "r_w")
	}
	return a
}

// Of reckons a weld as Heat does; nil where the sheet cannot take it. The next weld overwrites it.
func (a *Arc) Of(w *record.Weld, p *record.Procedure, filler *record.Consumable) *method.Slate {
	if a.slate == nil || a.slate.Reckon(a.ranges.heatGiven(w, p, filler)) != nil {
		return nil
	}
	return a.slate
}

// heatGiven hands a weld with its procedure and its wire to the sheet; either may be nil.
type heatGiven struct {
	ranges    *Ranges
	weld      *record.Weld
	procedure *record.Procedure
	filler    *record.Consumable
}

func (r *Ranges) heatGiven(w *record.Weld, p *record.Procedure, filler *record.Consumable) heatGiven {
	return heatGiven{r, w, p, filler}
}

// Lookup finds the value that the sheet asks for.
func (g heatGiven) Lookup(from string) (method.Quantity, bool) {
	c := &g.ranges.Fillets.Consumption
	switch from {
	case "consumption.excess":
		return method.Quantity{Number: c.Excess, Basis: c.Basis}, true
	case "weld.arc_volt":
		return measure("V", g.weld.Volts)
	case "weld.arc_amp":
		return measure("A", g.weld.Amperes)
	case "weld.speed_mm_min":
		return measure("mm/min", g.weld.Speed)
	case "weld.wire_feed_m_min":
		return measure("m/min", g.weld.Feed)
	case "weld.throat_mm":
		return measure("mm", g.weld.Throat)
	case "filler.diameter_mm":
		switch {
		case g.filler != nil:
			return measure("mm", g.filler.Diameter)
		case g.procedure != nil:
			return measure("mm", g.procedure.WireDiameter)
		}
	}
	p := g.procedure
	if p == nil || p.Process.V == "43" {
		return method.Quantity{}, false
	}
	switch from {
	case "procedure.process":
		return method.Quantity{Word: p.Process.V, IsWord: true, Place: p.Process.At}, true
	case "consumption.yield":
		return method.Quantity{Number: g.ranges.yield(p.Process.V), Basis: c.Basis}, true
	}
	return method.Quantity{}, false
}

// measure hands a value of the record over; ok is false where it is not written.
func measure[T ~float64](sign string, v record.Val[T]) (q method.Quantity, ok bool) {
	if !v.Set {
		return method.Quantity{}, false
	}
	return method.Quantity{Number: float64(v.V), Unit: sign, Place: v.At}, true
}

// heats reckons every weld, and the hottest is shown.
func (a *assessor) heats() {
	if len(a.hull.Welds) == 0 {
		return
	}
	procedures := map[string]*record.Procedure{}
	for i := range a.yard.Welding.Procedures {
		p := &a.yard.Welding.Procedures[i]
		if old := procedures[Number(p)]; old == nil || p.Revision.V > old.Revision.V {
			procedures[Number(p)] = p
		}
		procedures[Number(p)+" "+p.Revision.V] = p
	}
	arc, most := NewArc(a.lib, a.ranges), 0.0
	for i := range a.hull.Welds {
		w := &a.hull.Welds[i]
		p := procedures[w.Procedure.V+" "+w.Revision.V]
		if p == nil {
			p = procedures[w.Procedure.V]
		}
		one := WeldHeat{Weld: w, Shaped: p != nil && p.Pulsed.V}
		if !one.Shaped && w.Volts.Set && w.Amperes.Set && w.Speed.Set {
			of := arc.Of(w, p, nil)
			one.Energy, one.Known = of.Value("E")
			one.Input, _ = of.Value("Q")
			if one.Known && one.Energy > most {
				most, a.HottestOf = one.Energy, w
				a.hot = p
			}
		}
		a.Heats = append(a.Heats, one)
	}
	if a.HottestOf != nil {
		a.Hottest = Heat(a.lib, a.ranges, a.HottestOf, a.hot, nil)
	}
}
