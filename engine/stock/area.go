package stock

import (
	"fmt"
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// area adds up what was cut from a lot for all hulls of the yard, and holds it against what was received. More cut than
// received means that some part is of other metal than its record says.
func (a *assessor) area(l *record.Lot) (Area, []string) {
	u := Area{Unit: "m²"}
	if l.Kind.V != "plate" {
		u.Unit = "m"
	}
	u.received(l)
	var hulls []string
	for _, h := range record.Once(a.yard, cutBy)[l.ID] {
		if u.cut(l, h, h == a.hull) {
			hulls = append(hulls, h.Number)
		}
	}
	a.overuse(l, u)
	return u, hulls
}

// cutting are the hulls of a yard by the lots that their parts were cut from, in the order of the yard.
type cutting map[string][]*record.Hull

func cutBy(hulls []*record.Hull) cutting {
	all := cutting{}
	for _, h := range hulls {
		for i := range h.Parts {
			lot := h.Parts[i].Lot.V
			if n := len(all[lot]); n == 0 || all[lot][n-1] != h {
				all[lot] = append(all[lot], h)
			}
		}
	}
	return all
}

// received gives what came into the yard, and what of it is still in store.
func (u *Area) received(l *record.Lot) {
	switch {
	case u.Unit == "m":
		u.Received, u.HasReceived = float64(l.Metres.V), l.Metres.Set
	case l.Area.Set:
		u.Received, u.HasReceived = float64(l.Area.V), true
	case l.Width.Set && l.Length.Set:
		u.Received, u.HasReceived = float64(l.Width.V)*float64(l.Length.V)*1e-6*float64(max(1, l.Pieces.V)), true
	}
	if l.Remnant.Set && u.Unit == "m²" {
		u.Remnant, u.HasRemnant = float64(l.Remnant.V), true
	}
}

// cut adds the parts of one hull; it reports whether the hull has any of this lot.
func (u *Area) cut(l *record.Lot, h *record.Hull, here bool) bool {
	any := false
	for i := range h.Parts {
		p := &h.Parts[i]
		if p.Lot.V != l.ID {
			continue
		}
		any = true
		size, ok := sizeOf(p, u.Unit)
		if !ok {
			u.Without = append(u.Without, h.Number+" part "+p.ID)
			continue
		}
		u.Cut += size
		if here {
			u.Here += size
		}
	}
	return any
}

// sizeOf is the area, or for metal that is received by length the length, of all pieces of a part.
func sizeOf(p *record.Part, sign string) (size float64, ok bool) {
	n := float64(max(1, p.Count.V))
	switch {
	case sign == "m":
		return n * float64(p.Length.V), p.Length.Set
	case p.Area.Set:
		return n * float64(p.Area.V), true
	case p.Length.Set && p.Width.Set:
		return n * float64(p.Length.V) * float64(p.Width.V), true
	}
	return 0, false
}

// overuse tells of more cut than there was. What lies in store was not cut.
func (a *assessor) overuse(l *record.Lot, u Area) {
	c := finding.Check{Rule: ruleArea, Subject: "lot " + l.ID, Standing: finding.Met, Basis: finding.Derived, Source: "own arithmetic",
		Asks: "no more was cut from the lot, for all hulls together, than was received", Places: finding.Places(l.At, l.Area.At, l.Metres.At, l.Remnant.At)}
	there := u.Received - u.Remnant
	amount := func(v float64) string { return unit.Text(v, 2) + " " + u.Unit }
	c.Needed, c.Has = "at most "+amount(there), amount(u.Cut)
	switch {
	case !u.HasReceived:
		c.Standing, c.Says, c.Needed = finding.NotShown, "how much was received of lot "+l.ID+" is not on record", ""
		c.Settle = "write area_m2, or width_mm, length_mm and pieces; received_m for profiles"
	case u.Cut > there*(1+1e-9):
		c.Standing = finding.Short
		c.Says = fmt.Sprintf("%s were cut from lot %s for all hulls together, and only %s can have been: %s received, %s in store", amount(u.Cut), l.ID, amount(there), amount(u.Received), amount(u.Remnant))
		c.Settle = "find the parts that came from another lot"
		a.find(finding.Contradiction, c.Rule, c.Subject, c.Says, c.Settle, c.Places...)
	case len(u.Without) > 0:
		c.Standing = finding.NotShown
		c.Says = "the size of some parts is not written: " + strings.Join(u.Without, ", ")
		c.Settle = "write area_m2, or length_m and width_m, of these parts"
	default:
		c.Says = amount(u.Cut) + " cut of " + amount(u.Received) + " received"
	}
	a.Checks = append(a.Checks, c)
}

// days holds the days of a lot against those of the parts that were cut from it.
func (a *assessor) days(l *record.Lot, parts []*record.Part) {
	for _, p := range parts {
		if !p.Cut.Set {
			continue
		}
		if l.Received.Set && p.Cut.V.Before(l.Received.V) {
			a.find(finding.Contradiction, ruleDays, "part "+p.ID, "part "+p.ID+" was cut on "+p.Cut.V.String()+", before lot "+l.ID+" was received on "+l.Received.V.String(),
				"one of the two days is wrong, or the part came from another lot", p.Cut.At, l.Received.At)
		}
		if l.Certified.Set && p.Cut.V.Before(l.Certified.V) {
			a.find(finding.Contradiction, ruleDays, "part "+p.ID, "part "+p.ID+" was cut on "+p.Cut.V.String()+", before the certificate of lot "+l.ID+" was written on "+l.Certified.V.String(),
				"one of the two days is wrong, or the certificate belongs to another lot", p.Cut.At, l.Certified.At)
		}
	}
}
