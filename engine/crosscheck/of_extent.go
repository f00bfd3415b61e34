package crosscheck

import "hullfile/engine/unit"

// tooLittleSeen finds methods of inspection that did not reach the share of a category that was asked for. Of a boat in
// build it is not asked yet.
func tooLittleSeen(b *build) []told {
	if !done(b.Hull) {
		return nil
	}
	var all []told
	for i := range b.Hull.Extents {
		e := &b.Hull.Extents[i]
		length, seen := 0.0, 0.0
		for _, j := range b.Joints {
			if e.Category.V == "all" || j.Record.Category.V == e.Category.V {
				length += j.Metres()
				seen += b.SeenBy(j, e.Method.V)
			}
		}
		if length == 0 {
			continue
		}
		if asked := float64(e.Share.V) / 100 * length; seen < asked-0.005 {
			all = append(all, tell("extent "+e.ID, "inspect the rest, or agree on less with whoever asked for it", at(e.Share.At),
				"of %s m of %s seams %s m were inspected by %s method; %s %% were asked for, %s m", unit.Text(length, 1), e.Category.V, unit.Text(seen, 1), e.Method.V,
				unit.Plain(e.Share.V), unit.Text(asked, 1)))
		}
	}
	return all
}
