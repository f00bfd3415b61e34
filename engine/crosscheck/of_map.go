package crosscheck

import (
	"fmt"

	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// notWelded finds joints of the weld map that have no weld record, or only for a part of their length.
func notWelded(b *build) []told {
	var none, some gathered
	for _, j := range b.Joints {
		switch {
		case len(j.Welds) == 0:
			none.add(j.Record.ID, j.Record.At)
		case j.Metres()-j.Welded() > 0.01:
			some.add(fmt.Sprintf("%s (%s of %s m)", j.Record.ID, unit.Text(j.Welded(), 2), unit.Text(j.Metres(), 2)), j.Record.Length.At)
		}
	}
	return append(none.tell("joints", "write the welds, or weld the joints", "no weld is on record for %d of the joints on the weld map: %s"),
		some.tell("joints", "write the welds of the rest", "only a part of the length is on record as welded for %d of the joints: %s")...)
}

// notLookedAt finds joints that were welded and that nobody looked at afterwards, once the boat is finished.
func notLookedAt(b *build) []told {
	if !done(b.Hull) {
		return nil
	}
	var open gathered
	for _, j := range b.Joints {
		if len(j.Welds) > 0 && j.LastLook() == nil {
			open.add(j.Record.ID, j.Record.At)
		}
	}
	return open.tell("joints", "inspect them, and write it", "no inspection after welding is on record for %d of the welded joints: %s")
}

// offTheMap finds records of welding and inspection about joints that are not on the weld map.
func offTheMap(b *build) []told {
	var all []told
	for _, w := range b.StrayWelds {
		all = append(all, tell("weld "+w.ID, "correct the joint, or draw it on the weld map", at(w.Joint.At), "weld %s is of joint %s, which is not on the weld map", w.ID, w.Joint.V))
	}
	for _, look := range b.StrayLooks {
		if look.Joint.Set || look.Weld.Set {
			all = append(all, tell("inspection "+look.ID, "correct the joint or weld", at(look.Joint.At, look.Weld.At, look.At), "inspection %s looked at %s, which is not on record", look.ID, lookedAt(look)))
		}
	}
	return all
}

func lookedAt(look *record.Inspection) string {
	if look.Joint.Set {
		return "joint " + look.Joint.V
	}
	return "weld " + look.Weld.V
}

// otherJointLooked finds an inspection that names a joint and a weld of another joint.
func otherJointLooked(b *build) []told {
	var all []told
	for i := range b.Hull.Inspections {
		look := &b.Hull.Inspections[i]
		if w := b.Welds[look.Weld.V]; w != nil && look.Joint.Set && w.Joint.V != look.Joint.V {
			all = append(all, tell("inspection "+look.ID, "correct the joint or the weld", at(look.Joint.At, look.Weld.At), "inspection %s names joint %s and weld %s, which is of joint %s", look.ID, look.Joint.V, w.ID, w.Joint.V))
		}
	}
	return all
}

// partTwice finds joints that name one part on both sides.
func partTwice(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		if r := j.Record; r.Part.Set && r.Part.V == r.Other.V {
			all = append(all, tell("joint "+r.ID, "name the part on the other side", at(r.Part.At, r.Other.At), "joint %s names part %s on both sides", r.ID, r.Part.V))
		}
	}
	return all
}

// unknownPart finds joints that name a part which is not on the cut list, where there is one. While a boat is in build the
// list grows.
func unknownPart(b *build) []told {
	if !done(b.Hull) {
		return nil
	}
	var open gathered
	for _, j := range b.Joints {
		for k, v := range []record.Val[string]{j.Record.Part, j.Record.Other} {
			if len(b.Hull.Parts) > 0 && v.Set && j.Parts[k] == nil {
				open.add(j.Record.ID+" (part "+v.V+")", v.At)
			}
		}
	}
	return open.tell("joints", "put the part on the cut list, or correct its name", "a part that is not on the cut list is named for %d of the joints: %s")
}

// otherPlate finds joints whose plate on the weld map is not that of the part.
func otherPlate(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for k, drawn := range []record.Val[unit.MM]{j.Record.Thickness, j.Record.OtherThick} {
			p := j.Parts[k]
			if p == nil || !drawn.Set || !p.Drawn.Set || drawn.V == p.Drawn.V {
				continue
			}
			all = append(all, tell("joint "+j.Record.ID, "measure the plate", at(drawn.At, p.Drawn.At), "joint %s has part %s at %s mm, but the cut list has it at %s mm", j.Record.ID, p.ID, unit.Text(drawn.V, 1), unit.Text(p.Drawn.V, 1)))
		}
	}
	return all
}

// throatTooSmall finds fillets that measure less than was drawn, at the weld or at an inspection.
func throatTooSmall(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		drawn := j.Record.Throat
		if !drawn.Set {
			continue
		}
		for _, w := range j.Welds {
			if w.Throat.Set && w.Throat.V < drawn.V {
				all = append(all, tell("joint "+j.Record.ID, "measure along the seam; weld another run where it is too small", at(w.Throat.At, drawn.At), "weld %s of joint %s measures %s mm of throat, drawn %s mm", w.ID, j.Record.ID, unit.Text(w.Throat.V, 1), unit.Text(drawn.V, 1)))
			}
		}
		for _, look := range j.Looks {
			if look.Throat.Set && look.Throat.V < drawn.V && look.Result.V != "rejected" {
				all = append(all, tell("joint "+j.Record.ID, "measure along the seam; weld another run where it is too small", at(look.Throat.At, drawn.At), "inspection %s of joint %s measured %s mm of throat, drawn %s mm", look.ID, j.Record.ID, unit.Text(look.Throat.V, 1), unit.Text(drawn.V, 1)))
			}
		}
	}
	return all
}

// longerThanJoint finds inspections that saw more than there is of a joint, and welds that run beyond its end.
func longerThanJoint(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for _, look := range j.Looks {
			if look.Seen.Set && float64(look.Seen.V) > j.Metres()+0.01 {
				all = append(all, tell("inspection "+look.ID, "correct one of the two lengths", at(look.Seen.At, j.Record.Length.At), "inspection %s saw %s m of joint %s, which is %s m long", look.ID, unit.Text(look.Seen.V, 2), j.Record.ID, unit.Text(j.Metres(), 2)))
			}
		}
		for _, w := range j.Welds {
			if w.To.Set && float64(w.To.V) > j.Metres()+0.01 {
				all = append(all, tell("weld "+w.ID, "correct one of the two lengths", at(w.To.At, j.Record.Length.At), "weld %s ends at %s m of joint %s, which is %s m long", w.ID, unit.Text(w.To.V, 2), j.Record.ID, unit.Text(j.Metres(), 2)))
			}
		}
	}
	return all
}
