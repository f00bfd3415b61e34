package crosscheck

import (
	"slices"

	"hullfile/engine/record"
)

// releasedTooSoon finds points that were released before what they wait for: the inspection of their joints, their leak
// tests.
func releasedTooSoon(b *build) []told {
	var all []told
	for i := range b.Hull.HoldPoints {
		p := &b.Hull.HoldPoints[i]
		if !p.Released.Set {
			continue
		}
		for _, key := range p.Joints.V {
			if j := b.ByKey[key]; j != nil && !goodBy(j.Looks, p.Released.V) {
				all = append(all, tell("hold point "+p.ID, "inspect the joint, or correct the day", at(p.Released.At, j.Record.At), "hold point %s was released on %s, and no inspection had accepted joint %s by then", p.ID, p.Released.V, key))
			}
		}
		for _, key := range p.LeakTests.V {
			if t := b.LeakTests[key]; t != nil && !(t.Result.V == "tight" && t.Date.Set && !p.Released.V.Before(t.Date.V)) {
				all = append(all, tell("hold point "+p.ID, "make the test, or correct the day", at(p.Released.At, t.At), "hold point %s was released on %s, and leak test %s had not shown its boundary tight by then", p.ID, p.Released.V, key))
			}
		}
	}
	return all
}

// goodBy reports whether an inspection after welding had accepted the joint by a day.
func goodBy(looks []*record.Inspection, day record.Date) bool {
	return slices.ContainsFunc(looks, func(l *record.Inspection) bool {
		return l.Stage.V != "in process" && l.Result.V == "accepted" && l.Date.Set && !day.Before(l.Date.V)
	})
}

// workTooSoon finds work that went on before a hold point was released: paint before the leak test, a deck fitted before
// the seams under it were seen.
func workTooSoon(b *build) []told {
	stages := map[string]*record.Stage{}
	for i := range b.Hull.Stages {
		stages[b.Hull.Stages[i].ID] = &b.Hull.Stages[i]
	}
	var all []told
	for i := range b.Hull.HoldPoints {
		p := &b.Hull.HoldPoints[i]
		if p.Kind.V != "hold" {
			continue
		}
		began := p.NextBegan
		if s := stages[p.Stage.V]; s != nil && s.From.Set && (!began.Set || s.From.V.Before(began.V)) {
			began = s.From
		}
		switch {
		case !began.Set:
		case !p.Released.Set:
			all = append(all, tell("hold point "+p.ID, "release it, or say why work went on", at(began.At, p.At), "work after hold point %s (%s) began on %s, and it is not released", p.ID, p.What.V, began.V))
		case began.V.Before(p.Released.V):
			all = append(all, tell("hold point "+p.ID, "correct one of the two days; if it is so, uncover what was to be seen", at(began.At, p.Released.At), "work after hold point %s (%s) began on %s, and it was released on %s", p.ID, p.What.V, began.V, p.Released.V))
		}
	}
	return all
}

// hotAfterTest finds welding and repairs at joints of a boundary after it was tested for leaks, with no test after that.
// Hot work after a test asks for the test again (practice of air tests, reported).
func hotAfterTest(b *build) []told {
	var all []told
	for i := range b.Hull.LeakTests {
		t := &b.Hull.LeakTests[i]
		if !t.Date.Set || t.Result.V == "leaking" {
			continue
		}
		for _, key := range t.Joints.V {
			j := b.ByKey[key]
			if j == nil {
				continue
			}
			what, day := "", record.Val[record.Date]{}
			for _, w := range j.Welds {
				if w.Date.Set && t.Date.V.Before(w.Date.V) {
					what, day = "weld "+w.ID, w.Date
				}
			}
			for _, r := range j.Repairs {
				if r.Date.Set && t.Date.V.Before(r.Date.V) {
					what, day = "repair "+r.ID, r.Date
				}
			}
			if what == "" || b.testedSince(key, day.V) {
				continue
			}
			all = append(all, tell("leak test "+t.ID, "test the boundary again", at(t.Date.At, day.At), "%s was tested for leaks on %s, and %s at joint %s of it is of %s; it was not tested again", t.Boundary.V, t.Date.V, what, key, day.V))
			break
		}
	}
	return all
}

// testedSince reports whether a joint was in a leak test on a day or later.
func (b *build) testedSince(joint string, day record.Date) bool {
	for i := range b.Hull.LeakTests {
		t := &b.Hull.LeakTests[i]
		if t.Date.Set && !t.Date.V.Before(day) && slices.Contains(t.Joints.V, joint) {
			return true
		}
	}
	return false
}

// notReleased finds hold points of a finished boat that nobody released.
func notReleased(b *build) []told {
	if !done(b.Hull) {
		return nil
	}
	var open gathered
	for i := range b.Hull.HoldPoints {
		if p := &b.Hull.HoldPoints[i]; p.Kind.V == "hold" && !p.Released.Set && !p.NextBegan.Set {
			open.add(p.ID, p.At)
		}
	}
	return open.tell("hold points", "find the signed sheet, or look at what was to be seen", "no release is on record for %d of the hold points: %s")
}

// testNotThere finds keys of joints in leak tests and hold points that are not on the weld map.
func testNotThere(b *build) []told {
	var all []told
	ask := func(subject string, keys record.Val[[]string]) {
		for _, key := range keys.V {
			if len(b.Joints) > 0 && b.ByKey[key] == nil {
				all = append(all, tell(subject, "correct the joint, or draw it on the weld map", at(keys.At), "%s names joint %s, which is not on the weld map", subject, key))
			}
		}
	}
	for i := range b.Hull.LeakTests {
		ask("leak test "+b.Hull.LeakTests[i].ID, b.Hull.LeakTests[i].Joints)
	}
	for i := range b.Hull.HoldPoints {
		ask("hold point "+b.Hull.HoldPoints[i].ID, b.Hull.HoldPoints[i].Joints)
	}
	return all
}
