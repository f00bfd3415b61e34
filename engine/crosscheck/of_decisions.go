package crosscheck

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/seam"
)

// rejectedAndLeft finds inspections that rejected a seam and gave rise to no nonconformity and no repair.
func rejectedAndLeft(b *build) []told {
	raised := map[string]bool{}
	for i := range b.Hull.Nonconformities {
		if look := b.LookOf(&b.Hull.Nonconformities[i]); look != nil {
			raised[look.ID] = true
		}
	}
	var all []told
	for i := range b.Hull.Inspections {
		look := &b.Hull.Inspections[i]
		if look.Result.V != "rejected" || raised[look.ID] {
			continue
		}
		if j := b.JointOf(look); j != nil && raisedAt(j, look) {
			continue
		}
		all = append(all, tell("inspection "+look.ID, "raise a nonconformity and write what was decided", at(look.Result.At),
			"inspection %s rejected a seam, and no nonconformity was raised", look.ID))
	}
	return all
}

// raisedAt reports whether a nonconformity about the joint, with no inspection named, was raised on that day or later.
func raisedAt(j *seam.Joint, look *record.Inspection) bool {
	for _, n := range j.Nonconformities {
		if !n.Inspection.Set && !n.Imperfection.Set && !(n.Raised.Set && look.Date.Set && n.Raised.V.Before(look.Date.V)) {
			return true
		}
	}
	return false
}

// closedUnseen finds nonconformities that were closed after a repair which nobody inspected, or before the repair.
func closedUnseen(b *build) []told {
	var all []told
	for i := range b.Hull.Nonconformities {
		n := &b.Hull.Nonconformities[i]
		if !n.Closed.Set || n.Disposition.V != "repair" {
			continue
		}
		r := b.repairOf(n)
		if r == nil {
			all = append(all, tell("nonconformity "+n.ID, "write the repair, or open it again", at(n.Closed.At, n.Disposition.At), "nonconformity %s was to be repaired and was closed on %s, but no repair is on record", n.ID, n.Closed.V))
			continue
		}
		if r.Date.Set && n.Closed.V.Before(r.Date.V) {
			all = append(all, tell("nonconformity "+n.ID, "correct one of the two days", at(n.Closed.At, r.Date.At), "nonconformity %s was closed on %s, before repair %s on %s", n.ID, n.Closed.V, r.ID, r.Date.V))
			continue
		}
		if !b.seenAfter(n, r) {
			all = append(all, tell("nonconformity "+n.ID, "inspect the repair and write it", at(n.Closed.At, r.At), "nonconformity %s was closed on %s, and no inspection accepted repair %s before that day", n.ID, n.Closed.V, r.ID))
		}
	}
	return all
}

// repairOf gives the last repair that settles a nonconformity.
func (b *build) repairOf(n *record.Nonconformity) *record.Repair {
	var last *record.Repair
	for i := range b.Hull.Repairs {
		if r := &b.Hull.Repairs[i]; r.Nonconformity.V == n.ID && (last == nil || !r.Date.V.Before(last.Date.V)) {
			last = r
		}
	}
	return last
}

// seenAfter reports whether an inspection accepted the repair, on its day or later, and not after the nonconformity was closed.
func (b *build) seenAfter(n *record.Nonconformity, r *record.Repair) bool {
	good := func(look *record.Inspection) bool {
		return look != nil && look.Result.V == "accepted" && !(r.Date.Set && look.Date.V.Before(r.Date.V)) && !n.Closed.V.Before(look.Date.V)
	}
	if r.Inspection.Set {
		return good(b.Inspections[r.Inspection.V])
	}
	if j := b.JointOfRepair(r); j != nil {
		for _, look := range j.Looks {
			if look.Date.Set && good(look) {
				return true
			}
		}
	}
	return false
}

// repairUnqualified finds repairs by a procedure that is not on record or was not in use, or by a welder who held no
// certificate on the day.
func repairUnqualified(b *build) []told {
	var all []told
	settle := "put the procedure or certificate that covers it on record, or repair again"
	for i := range b.Hull.Repairs {
		r := &b.Hull.Repairs[i]
		p := b.Procedure(r.Procedure, r.Revision)
		who := b.Welder(r.Welder, r.Date)
		switch {
		case p == nil:
			all = append(all, tell("repair "+r.ID, settle, at(r.Procedure.At, r.At), "repair %s names no procedure that is on record", r.ID))
		case r.Date.Set && (p.From.Set && r.Date.V.Before(p.From.V) || p.Until.Set && p.Until.V.Before(r.Date.V)):
			all = append(all, tell("repair "+r.ID, settle, at(r.Date.At, p.From.At, p.Until.At), "repair %s was made on %s by %s, which did not hold on that day", r.ID, r.Date.V, named(p)))
		case who == nil:
			all = append(all, tell("repair "+r.ID, settle, at(r.Welder.At, r.At), "repair %s names no welder that is in the register", r.ID))
		case r.Date.Set && !b.holdsAny(who, r.Date.V):
			all = append(all, tell("repair "+r.ID, settle, at(r.Date.At, who.At), "repair %s was made on %s by welder %s, who held no certificate on that day", r.ID, r.Date.V, r.Welder.V))
		}
	}
	return all
}

// holdsAny reports whether a welder held any certificate on a day.
func (b *build) holdsAny(who *record.Welder, day record.Date) bool {
	held, _ := b.Held(who, day)
	return len(held) > 0
}

// How often one spot may be repaired before whoever answers for the welding should decide, and how near two repairs are to
// be at one spot (practice).
const (
	mostAtOneSpot = 2
	oneSpot       = 0.1 // metre
)

// repairedAgain finds spots that were repaired more than twice.
func repairedAgain(b *build) []told {
	var all []told
	for _, j := range b.Joints {
		for i, r := range j.Repairs {
			n := 1
			for _, o := range j.Repairs[:i] {
				if r.After.V == o.ID || r.Position.Set && o.Position.Set && math.Abs(float64(r.Position.V-o.Position.V)) <= oneSpot+1e-9 {
					n++
				}
			}
			if n == mostAtOneSpot+1 {
				all = append(all, tell("repair "+r.ID, "let whoever answers for the welding decide; every repair softens the plate beside it", at(r.At, j.Record.At),
					"repair %s is the third at one spot of joint %s", r.ID, j.Record.ID))
			}
		}
	}
	return all
}

// repairCircle finds repairs that follow each other in a circle.
func repairCircle(b *build) []told {
	passed := map[string]bool{}
	var all []told
	for i := range b.Hull.Repairs {
		first := &b.Hull.Repairs[i]
		seen := map[string]bool{}
		for r := first; r != nil && !passed[r.ID] && r.After.Set; r = b.Repairs[r.After.V] {
			if seen[r.ID] {
				for id := range seen {
					passed[id] = true
				}
				all = append(all, tell("repair "+first.ID, "write which of them was first", at(r.After.At, first.After.At), "repair %s follows itself in the end, by way of repair %s", r.ID, r.After.V))
				break
			}
			seen[r.ID] = true
		}
	}
	return all
}

// usedAsIs finds nonconformities that were left as they are and that nobody approved, or that whoever welded the joint
// approved.
func usedAsIs(b *build) []told {
	var all []told
	for i := range b.Hull.Nonconformities {
		n := &b.Hull.Nonconformities[i]
		if n.Disposition.V != "use as it is" {
			continue
		}
		if !n.Approved.Set {
			all = append(all, tell("nonconformity "+n.ID, "let the designer or the surveyor approve it, or mend it", at(n.Disposition.At), "nonconformity %s was left as it is, and nobody approved that", n.ID))
			continue
		}
		if j := b.JointOfNonconformity(n); j != nil {
			for _, w := range j.Welds {
				if who := b.welder(w); who != nil && who.Person.V == n.Approved.V {
					all = append(all, tell("nonconformity "+n.ID, "let the designer or the surveyor approve it", at(n.Approved.At, w.Welder.At), "nonconformity %s was left as it is, approved by %s, who had welded the joint", n.ID, n.Approved.V))
					break
				}
			}
		}
	}
	return all
}

// openAtHandover finds nonconformities that are open though the boat is finished.
func openAtHandover(b *build) []told {
	if !done(b.Hull) {
		return nil
	}
	var all []told
	for i := range b.Hull.Nonconformities {
		if n := &b.Hull.Nonconformities[i]; !n.Closed.Set {
			all = append(all, tell("nonconformity "+n.ID, "settle it, or say who accepts the boat with it", at(n.At), "nonconformity %s is open, and the boat is finished", n.ID))
		}
	}
	return all
}
