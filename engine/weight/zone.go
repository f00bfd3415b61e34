package weight

import (
	"fmt"
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/record"
	"hullfile/engine/unit"
)

// Zone is what the lines of the hull give of one zone of plate, both sides together, or of the seams along the edges.
type Zone struct {
	Name   string  // as in area_from and length_from
	Area   float64 // square metres; nought for seams
	Length float64 // metres; nought for plate
	X, Z   float64 // centre: forward of the transom, above the base line
}

// zoneApart is the part by which a written area or length may differ from that of the lines: cut-outs, laps and what runs
// on behind another plate. Common practice, no published limit.
const zoneApart = 0.10

// fromLines lays a record over what the lines give of its zone: what is written stays, what is not written comes from the
// zone. The places of the new values are those of the key that asked for them. ok is false where the item asks for no
// zone, or the lines have none.
func fromLines(rec *record.Weight, zones []Zone) (filled *record.Weight, zone Zone, ok bool) {
	asked, found := rec.AreaFrom, false
	if !asked.Set {
		asked = rec.LenFrom
	}
	for _, z := range zones {
		if asked.Set && z.Name == asked.V {
			zone, found = z, true
		}
	}
	if !found {
		return rec, zone, false
	}
	copied := *rec
	if rec.AreaFrom.Set && !rec.Area.Set {
		copied.Area = record.Written(unit.M2(zone.Area), asked.At)
	}
	if rec.LenFrom.Set && !rec.Length.Set {
		copied.Length = record.Written(unit.M(zone.Length), asked.At)
	}
	for _, c := range []struct {
		into *record.Val[unit.M]
		v    float64
	}{{&copied.X, zone.X}, {&copied.Y, 0}, {&copied.Z, zone.Z}} {
		if !c.into.Set {
			*c.into = record.Written(unit.M(c.v), asked.At)
		}
	}
	return &copied, zone, true
}

// ofZone says in the working where an area or a length came from.
func (it *Item) ofZone(rec *record.Weight, z Zone) {
	switch {
	case rec.AreaFrom.Set && !rec.Area.Set:
		it.FromLines = fmt.Sprintf("area of the %s from the lines", z.Name)
	case rec.LenFrom.Set && !rec.Length.Set:
		it.FromLines = "length of the seams from the lines"
	case !rec.X.Set || !rec.Z.Set:
		it.FromLines = "centre from the lines"
	}
}

// zoneHeld holds a written area or length against that of the lines, and says where the lines lack what is asked of them.
func zoneHeld(rec *record.Weight, z Zone, found bool) (finding.Check, bool) {
	c := finding.Check{Rule: "weight-lines", Subject: "weight " + rec.ID, Basis: finding.Practice, Source: "the lines on record; allowance by common practice",
		Asks: "the plate area or the length of an item agrees with the lines", Standing: finding.NotShown, Places: []finding.Place{rec.At}}
	if !found {
		asked := rec.AreaFrom.V + rec.LenFrom.V
		c.Says = "the lines give no " + asked + " for this item"
		c.Settle = "write the stations of the lines, or the area or length of the item"
		return c, true
	}
	what, sign, typed, drawn := "area", "m²", float64(rec.Area.V)*count(rec), z.Area
	set := rec.AreaFrom.Set && rec.Area.Set
	if rec.LenFrom.Set {
		what, sign, typed, drawn, set = "length", "m", float64(rec.Length.V)*count(rec), z.Length, rec.Length.Set
	}
	if !set || drawn <= 0 {
		return c, false
	}
	apart := (typed - drawn) / drawn
	c.Needed, c.Has = fmt.Sprintf("%s %s ± %s %%", unit.Text(drawn, 2), sign, unit.Text(zoneApart*100, 0)), unit.Text(typed, 2)+" "+sign
	c.Says = fmt.Sprintf("%s written as %s %s; the %s of the lines has %s %s: %s %%, with %s %% allowed", what, unit.Text(typed, 2), sign, z.Name,
		unit.Text(drawn, 2), sign, unit.Text(apart*100, 1), unit.Text(zoneApart*100, 0))
	c.Standing = finding.Met
	if math.Abs(apart) > zoneApart {
		c.Standing = finding.Short
		c.Says += "; both cannot be the same plate"
		c.Settle = "measure the plate again, or mend the lines; where it is cut out on purpose, take away area_from"
	}
	return c, true
}

func count(rec *record.Weight) float64 {
	if rec.Count.Set {
		return float64(rec.Count.V)
	}
	return 1
}
