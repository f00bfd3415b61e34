package survey

import "hullfile/engine/finding"

// holds are the points at which work should have waited or somebody might have watched, and where nobody from outside the
// yard did, or that were not released.
func (in *Input) holds() []Item {
	var out []Item
	for n := range in.Hull.HoldPoints {
		p := &in.Hull.HoldPoints[n]
		if p.Released.Set && p.Witness.Set {
			continue
		}
		i := Item{Key: key("hold", p.ID), Class: Hold, Subject: "hold point " + p.ID, Places: []finding.Place{p.At}, Where: p.What.V}
		i.Spot.Joints = p.Joints.V
		i.Why = "released by the yard alone"
		if !p.Released.Set {
			i.Why = "not released"
		}
		i.Do = "see as much of it as can still be seen, and say what is covered"
		i.Expect = Expect{Says: "as the record of the yard says", Source: "the hold points of this file", Basis: finding.Yard}
		if len(i.Spot.Joints) == 0 {
			i.Spot.None = true
		}
		out = append(out, i)
	}
	return out
}
