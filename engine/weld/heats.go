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

func (r *Ranges) heatGiven(w *record.Weld, p *record.Procedure, filler *record.Consumable) method.GivenMap {
	g := method.GivenMap{"consumption.excess": {Number: r.Fillets.Consumption.Excess, Basis: r.Fillets.Consumption.Basis}}
	put(g, "weld.arc_volt", "V", w.Volts)
	put(g, "weld.arc_amp", "A", w.Amperes)
	put(g, "weld.speed_mm_min", "mm/min", w.Speed)
	put(g, "weld.wire_feed_m_min", "m/min", w.Feed)
	put(g, "weld.throat_mm", "mm", w.Throat)
	if p != nil && p.Process.V != "43" {
		g["procedure.process"] = method.Quantity{Word: p.Process.V, IsWord: true, Place: p.Process.At}
		g["consumption.yield"] = method.Quantity{Number: r.yield(p.Process.V), Basis: r.Fillets.Consumption.Basis}
	}
	switch {
	case filler != nil:
		put(g, "filler.diameter_mm", "mm", filler.Diameter)
	case p != nil:
		put(g, "filler.diameter_mm", "mm", p.WireDiameter)
	}
	return g
}

// heats reckons every weld; one working serves all, and the hottest weld is shown.
func (a *assessor) heats() {
	procedures := map[string]*record.Procedure{}
	for i := range a.yard.Welding.Procedures {
		p := &a.yard.Welding.Procedures[i]
		if old := procedures[Number(p)]; old == nil || p.Revision.V > old.Revision.V {
			procedures[Number(p)] = p
		}
		procedures[Number(p)+" "+p.Revision.V] = p
	}
	var turned *method.Working
	most := 0.0
	for i := range a.hull.Welds {
		w := &a.hull.Welds[i]
		p := procedures[w.Procedure.V+" "+w.Revision.V]
		if p == nil {
			p = procedures[w.Procedure.V]
		}
		one := WeldHeat{Weld: w, Shaped: p != nil && p.Pulsed.V}
		if !one.Shaped && w.Volts.Set && w.Amperes.Set && w.Speed.Set {
			g := a.ranges.heatGiven(w, p, nil)
			if turned == nil {
				turned = Heat(a.lib, a.ranges, w, p, nil)
			} else if turned.Turn(g) != nil {
				turned = nil
			}
			if turned != nil {
				one.Energy, one.Known = turned.Value("E")
				one.Input, _ = turned.Value("Q")
			}
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
