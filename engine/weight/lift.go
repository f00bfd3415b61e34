package weight

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Lift is the boat as a crane or a trailer takes it, kg: the light craft, and the same with its fuel tanks full. Who lifts reckons with
// the greater of the mass stated and the sum of the items. A mass is shown only where every item of the light craft has one.
type Lift struct {
	Light, Full    unit.KG
	Shown, HasFull bool
}

func lift(h *record.Hull, t *Total) Lift {
	l := Lift{Light: max(t.Mass, h.Boat.LightMass.V), Shown: t.Whole()}
	l.Full = l.Light
	for i := range h.Tanks {
		if one := &h.Tanks[i]; one.Contents.V == "fuel" {
			l.Full += unit.KG(float64(float64(one.Volume.V)*float64(one.Density.V)) / 1000)
		}
	}
	l.HasFull = l.Shown && len(h.Tanks) > 0
	return l
}

// liftSlack is how far the mass may pass the one written, kg: that is given in whole kilograms.
const liftSlack = 0.5

// liftFindings doubts lifting points that are reckoned for less than the boat weighs with full fuel tanks: nobody empties a tank because a
// table says so. An item without a mass only makes the boat heavier.
func liftFindings(h *record.Hull, l *Lift) []finding.Finding {
	var out []finding.Finding
	for i := range h.Fittings {
		f := &h.Fittings[i]
		if f.Kind.V != "lifting point" || !f.Mass.Set || l.Full <= f.Mass.V+liftSlack {
			continue
		}
		out = append(out, finding.Finding{Kind: finding.Doubt, Rule: "lifting-mass", Subject: "fitting " + f.ID,
			Says: fmt.Sprintf("reckoned for a boat of %s kg; with full fuel tanks it weighs %s kg, without people, stores and other tanks",
				unit.Text(f.Mass.V, 0), unit.Text(l.Full, 0)),
			Settle: "reckon the point for the boat as it is lifted, full tanks counted in", Places: finding.Places(f.Mass.At, h.Boat.LightMass.At)})
	}
	return out
}
