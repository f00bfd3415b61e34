package survey

import (
	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// tape are the values that much rests on and that a tape, an inclinometer or a look at the plate settles.
func (in *Input) tape() []Item {
	b := &in.Hull.Boat
	var out []Item
	length := func(name string, v record.Val[unit.M], do, why string) {
		if !v.Set {
			return
		}
		i := Item{Key: key("tape", name), Class: Tape, Subject: name, Why: why, Do: do, Unit: "m", Places: []finding.Place{v.At}}
		allowed := max(0.01, float64(0.005*float64(v.V)))
		i.Expect = within(float64(v.V), allowed, 2, "m")
		i.Spot.Everywhere = true
		out = append(out, i)
	}
	length("length of hull", b.LengthHull, "plumb both ends down to a level floor and measure between the marks; engines and fittings do not count", "every rule that was applied begins with it")
	length("beam of hull", b.BeamHull, "measure across at the widest place, over the plating", "righting levers go with its third power")
	length("beam between chines", b.BeamChine, "measure from chine to chine at 0.4 of the waterline from aft", "the pressure on the bottom and the prediction rest on it")
	if b.Deadrise.Set {
		i := Item{Key: key("tape", "deadrise"), Class: Tape, Subject: "deadrise", Why: "the pressure on the bottom and the ride rest on it", Unit: "°", Places: []finding.Place{b.Deadrise.At}}
		i.Do = "inclinometer on the bottom plate, both sides, at 0.4 of the waterline from aft; write the mean"
		i.Expect = within(float64(b.Deadrise.V), 1, 1, "°")
		i.Spot.Everywhere = true
		out = append(out, i)
	}
	return append(append(out, in.freeboards()...), in.assumed()...)
}

// within expects a stated value with what a tape and the shape of a welded boat leave open (practice).
func within(v, allowed float64, decimals int, sign string) Expect {
	e := Expect{Low: v - allowed, High: v + allowed, HasLow: true, HasTop: true, Basis: finding.Practice}
	e.Says = unit.Text(v, decimals) + space(sign) + ", " + unit.Text(e.Low, decimals) + " to " + unit.Text(e.High, decimals) + space(sign)
	e.Source = "the record; ± " + unit.Plain(unit.Ratio(rounded(allowed))) + space(sign) + " for tape and shape"
	return e
}

// rounded keeps three decimals.
func rounded(v float64) float64 { return float64(int64(v*1000+0.5)) / 1000 }

// freeboards are those measured afloat by the yard, measured again with the same load.
func (in *Input) freeboards() []Item {
	var out []Item
	for n := range in.Hull.Freeboards {
		t := &in.Hull.Freeboards[n]
		if len(t.Points) == 0 {
			continue
		}
		p := &t.Points[0]
		if !p.Freeboard.Set {
			continue
		}
		i := Item{Key: key("tape freeboard", t.ID), Class: Tape, Subject: "freeboard " + t.ID, Unit: "mm", Places: []finding.Place{p.At}}
		i.Why = "the mass and the trim of the boat follow from it"
		i.Where = "at " + unit.Text(p.X.V, 2) + " m forward of the transom, where the yard measured"
		i.Do = "afloat in still water with the same load as then, from the gunwale to the water"
		i.Expect = within(float64(p.Freeboard.V), 20, 0, "mm")
		i.Spot.Everywhere = true
		out = append(out, i)
	}
	return out
}
