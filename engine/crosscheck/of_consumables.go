package crosscheck

import (
	"math"

	"hullfile/engine/record"
	"hullfile/engine/seam"
	"hullfile/engine/unit"
)

// fillerUse asks about every weld and the lot of filler that it names.
func (b *build) fillerUse(wrong func(*record.Weld, *record.Consumable) (told, bool)) []told {
	var all []told
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		if c := b.Consumables[w.Filler.V]; c != nil {
			if t, is := wrong(w, c); is {
				all = append(all, t)
			}
		}
	}
	return all
}

// usedFillers lists the lots of filler in this hull, in the order of the stock records.
func (b *build) usedFillers() []*record.Consumable {
	used := map[string]bool{}
	for i := range b.Hull.Welds {
		used[b.Hull.Welds[i].Filler.V] = true
	}
	for i := range b.Hull.Repairs {
		used[b.Hull.Repairs[i].Filler.V] = true
	}
	var all []*record.Consumable
	for i := range b.yard.Stock.Consumables {
		if c := &b.yard.Stock.Consumables[i]; used[c.ID] {
			all = append(all, c)
		}
	}
	return all
}

// fillerWithoutCertificate finds lots of filler in this hull without a certificate.
func fillerWithoutCertificate(b *build) []told {
	var all []told
	for _, c := range b.usedFillers() {
		if c.Kind.V == "filler" && c.Certificate.V == "" {
			all = append(all, tell("consumable "+c.ID, "ask the supplier for it, and write its number", at(c.At), "filler lot %s is in seams of this hull and names no certificate", c.ID))
		}
	}
	return all
}

// unknownFiller finds welds with a lot of filler that the stock does not have, or with none.
func unknownFiller(b *build) []told {
	var none, unknown gathered
	for i := range b.Hull.Welds {
		w := &b.Hull.Welds[i]
		p := b.Procedure(w.Procedure, w.Revision)
		switch {
		case !w.Filler.Set && p != nil && (p.Process.V == "142" || p.Process.V == "43"):
		case !w.Filler.Set:
			none.add(w.ID, w.At)
		case b.Consumables[w.Filler.V] == nil:
			unknown.add(w.ID+" (lot "+w.Filler.V+")", w.Filler.At)
		}
	}
	return append(none.tell("welds", "look which spool was on the machine that day", "no lot of filler is named for %d of the welds: %s"),
		unknown.tell("welds", "put the lot into the stock records, or correct its name", "a lot of filler that the stock does not have is named for %d of the welds: %s")...)
}

// fillerTooOld finds welds with a lot whose life had ended, by its date or since it was opened.
func fillerTooOld(b *build) []told {
	return b.fillerUse(func(w *record.Weld, c *record.Consumable) (told, bool) {
		if !w.Date.Set {
			return told{}, false
		}
		if c.Expires.Set && c.Expires.V.Before(w.Date.V) {
			return tell("weld "+w.ID, "look for porosity in the seam; correct the day or the lot", at(w.Date.At, c.Expires.At),
				"weld %s was made on %s with filler lot %s, whose life ended on %s", w.ID, w.Date.V, c.ID, c.Expires.V), true
		}
		if open := c.OpenLife.V; c.Opened.Set && c.OpenLife.Set && seam.Days(c.Opened.V, w.Date.V) > open {
			return tell("weld "+w.ID, "look for porosity in the seam; correct the day or the lot", at(w.Date.At, c.Opened.At),
				"weld %s was made on %s with filler lot %s, which was opened on %s and may be used %d days", w.ID, w.Date.V, c.ID, c.Opened.V, open), true
		}
		return told{}, false
	})
}

// fillerTooSoon finds welds with a lot that had not come yet, or had not been opened.
func fillerTooSoon(b *build) []told {
	return b.fillerUse(func(w *record.Weld, c *record.Consumable) (told, bool) {
		switch {
		case !w.Date.Set:
		case c.Received.Set && w.Date.V.Before(c.Received.V):
			return tell("weld "+w.ID, "correct one of the two days, or the lot", at(w.Date.At, c.Received.At),
				"weld %s was made on %s with filler lot %s, which was received on %s", w.ID, w.Date.V, c.ID, c.Received.V), true
		case c.Opened.Set && w.Date.V.Before(c.Opened.V):
			return tell("weld "+w.ID, "correct one of the two days, or the lot", at(w.Date.At, c.Opened.At),
				"weld %s was made on %s with filler lot %s, which was opened on %s", w.ID, w.Date.V, c.ID, c.Opened.V), true
		}
		return told{}, false
	})
}

// Metal above the bare triangle of a fillet, and the part of the wire that stays in the seam (practice).
const (
	overTheFlat = 1.15
	wireStays   = 0.95
)

// fillerDensity of aluminium-magnesium wire, kg/m³ (own arithmetic elsewhere uses the same; tables of makers differ by up to 8 %).
const fillerDensity = 2660

// fillerTooLittle finds lots of filler of which the fillets of this hull alone took more than was received.
func fillerTooLittle(b *build) []told {
	need := map[string]float64{}
	for _, j := range b.Joints {
		if j.Record.Type.V != "fillet" || !j.Record.Throat.Set {
			continue
		}
		for _, w := range j.Welds {
			a := float64(j.Record.Throat.V)
			need[w.Filler.V] += a * a * overTheFlat * 1e-6 * b.WeldLength(w) * fillerDensity / wireStays * part(j)
		}
	}
	var all []told
	for _, c := range b.usedFillers() {
		if c.Mass.Set && need[c.ID] > float64(c.Mass.V) {
			all = append(all, tell("consumable "+c.ID, "look which spools were used", at(c.Mass.At),
				"the fillets of this hull that name filler lot %s need %s kg of wire, but %s kg were received", c.ID, unit.Text(need[c.ID], 1), unit.Text(c.Mass.V, 1)))
		}
	}
	return all
}

// part gives the share of its length that an intermittent seam is welded on.
func part(j *seam.Joint) float64 {
	if j.Record.Pattern.Set && j.Record.Pattern.V != "continuous" && j.Record.Bead.Set && j.Record.Pitch.Set {
		return float64(j.Record.Bead.V) / float64(j.Record.Pitch.V)
	}
	return 1
}

// otherDiameter finds welds with wire of another diameter than their procedure names.
func otherDiameter(b *build) []told {
	var all []told
	b.each(func(_ *seam.Joint, w *record.Weld, p *record.Procedure) {
		c := b.Consumables[w.Filler.V]
		if c == nil || !c.Diameter.Set || !p.WireDiameter.Set || math.Abs(float64(c.Diameter.V-p.WireDiameter.V)) < 0.01 {
			return
		}
		all = append(all, tell("weld "+w.ID, "measure the wire on the machine", at(w.Filler.At, c.Diameter.At, p.WireDiameter.At),
			"weld %s was made with wire of %s mm, lot %s; %s is for %s mm", w.ID, unit.Plain(c.Diameter.V), c.ID, named(p), unit.Plain(p.WireDiameter.V)))
	})
	return all
}
