package stability

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

func metre(v float64) string { return unit.Text(v, 2) }

// iso judges by the part of ISO 12217 that fits.
func (j *judge) iso() {
	o := j.option()
	sheet, ok := j.sheet(o.Part, "iso-12217")
	if !ok {
		return
	}
	j.out.Option = o
	j.doubtSheet(sheet)
	j.categoryFits()
	g := j.givenOf()
	craft, err := sheet.Evaluate("craft", g, nil)
	if err != nil {
		j.unusable(sheet, err)
		return
	}
	j.heights(craft)
	for _, c := range j.conditionsFor(craft) {
		j.inCondition(sheet, craft, g, c)
	}
	j.flotationTest()
}

// doubtSheet says once how far the sheet can be relied on.
func (j *judge) doubtSheet(s *method.Sheet) {
	recalled, all := 0, 0
	for _, sc := range s.Scopes {
		for _, st := range sc.Steps {
			all++
			if st.Basis == finding.Recalled {
				recalled++
			}
		}
	}
	j.say(finding.Doubt, "stability-method", "boat", fmt.Sprintf("stability is judged by %s, %s: %s; %d of its %d formulas are recalled", s.Title, s.Cite(""), s.Standing, recalled, all),
		"hold the sheet against a bought copy and write its limits under [afloat], or put the yard's own sheet of the same name in methods/", j.hull.Afloat.Checks.At)
}

func (j *judge) unusable(sheet *method.Sheet, err error) {
	j.out.Checks = append(j.out.Checks, finding.Check{Rule: "stability-method", Subject: "boat", Asks: "the method sheet can be used", Standing: finding.NotShown,
		Says: err.Error(), Source: sheet.Cite(""), Settle: "correct the yard's own sheet " + sheet.Name, Places: finding.Places(j.lines.Stations[0].Place)})
}

// conditionsFor is the loaded condition, and the minimum operating one where the loaded boat is heavier by more than the
// ratio of the sheet. Where nobody knows where people can be, one condition is enough to say so.
func (j *judge) conditionsFor(craft *method.Working) []*Condition {
	full, light := j.find("loaded ready"), j.find("minimum operating")
	out := []*Condition{full}
	limit, ok := craft.Value("r_M")
	if light == nil || !ok || !j.crew.known {
		return out
	}
	ratio := full.Loading.Mass / light.Loading.Mass
	if ratio > limit {
		return append(out, light)
	}
	j.notApplying("minimum-operating", fmt.Sprintf("loaded over minimum operating mass is %s, not above %s, so the loaded condition alone is held", unit.Text(ratio, 2), unit.Text(limit, 2)),
		craft.Sheet.Cite("worksheet 9"))
	return out
}

// heights holds every way in against the downflooding height, loaded and upright.
func (j *judge) heights(craft *method.Working) {
	full := j.find("loaded ready")
	lets := false
	for _, w := range j.watched {
		if !w.lets {
			continue
		}
		lets = true
		q := question{rule: "downflooding-height", subject: "boat", asks: "water stays out upright: " + w.name, name: w.name + " above the water", working: craft,
			symbol: j.heightFor(craft, w), unit: "m", decimals: 3, condition: full.Loading.ID, basis: finding.Derived,
			settle: "a higher sill or gunwale, a way to close it, or less load"}
		if w.id != "" {
			q.subject = "opening " + w.id
			q.places = j.openingPlace(w.id)
		}
		at := full.Loading.Afloat.Rest.Attitude
		q.has = lowest(at, w.points)
		j.ask(q)
	}
	j.bow(craft)
	if !lets {
		j.closed(craft)
	}
}

// heightFor takes the lower limit for a small opening in the aft quarter.
func (j *judge) heightFor(craft *method.Working, w way) string {
	most, ok := craft.Value("a_small")
	aft := j.lines.Stations[0].X
	if ok && w.id != "" && w.area > 0 && w.area < most && w.points[0].X < aft+j.length()/4 {
		return "h_small"
	}
	return "h_D"
}

// bow holds the gunwale at the bow of a boat that is not decked.
func (j *judge) bow(craft *method.Working) {
	if !j.openSheer() || !j.out.Option.wants(3, 4, 6) {
		return
	}
	full := j.find("loaded ready")
	edge := j.watched[0].points
	j.ask(question{rule: "downflooding-bow", subject: "boat", asks: "water stays out at the bow, upright", name: "gunwale at the bow above the water", working: craft,
		symbol: "h_bow", has: full.Loading.Afloat.Rest.Attitude.Height(edge[len(edge)-1]), unit: "m", decimals: 3, condition: full.Loading.ID, basis: finding.Derived,
		settle: "a higher bow, or less load forward"})
}

// closed says of a boat without a way in that nothing is asked, or that it is not shown because no opening is on record.
func (j *judge) closed(craft *method.Working) {
	if len(j.lines.Openings) > 0 {
		j.notApplying("downflooding-height", "every opening on record closes watertight or weathertight", craft.Sheet.Cite(""))
		return
	}
	j.out.Checks = append(j.out.Checks, finding.Check{Rule: "downflooding-height", Subject: "boat", Asks: "water stays out upright", Standing: finding.NotShown,
		Says: "not shown: no opening is on record", Missing: []string{"opening"}, Settle: "write every hatch, vent and door as [opening.NAME], also those that close",
		Source: craft.Sheet.Cite(""), Places: finding.Places(j.hull.Lines.Sides.At)})
}

func (j *judge) openingPlace(id string) []finding.Place {
	for i := range j.hull.Openings {
		if o := &j.hull.Openings[i]; o.ID == id {
			return finding.Places(o.Z.At)
		}
	}
	return nil
}
