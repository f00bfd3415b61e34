package stability

import (
	"strings"

	"hullfile/engine/finding"
	"hullfile/engine/loading"
	"hullfile/engine/lookup"
	"hullfile/engine/method"
	"hullfile/engine/record"
)

// given hands the values of the hull to a sheet under the names that sheets use. What was reckoned comes before what was
// written under the same name.
type given struct {
	hull     *record.Hull
	reckoned method.GivenMap
}

// Lookup finds the value that a sheet asks for; ok is false when there is none.
func (g *given) Lookup(from string) (method.Quantity, bool) {
	if q, ok := g.reckoned[from]; ok {
		return q, true
	}
	kind, key, _ := strings.Cut(from, ".")
	switch kind {
	case "boat":
		return lookup.Of(&g.hull.Boat, key)
	case "afloat":
		return lookup.Of(&g.hull.Afloat, key)
	}
	return method.Quantity{}, false
}

// put adds a reckoned value.
func (g *given) put(name string, v float64, unit string, basis finding.Basis, source string) {
	g.reckoned[name] = method.Quantity{Number: v, Unit: unit, Basis: basis, Source: source}
}

// word adds a word, with what it was concluded from.
func (g *given) word(name, w, source string) {
	g.reckoned[name] = method.Quantity{Word: w, IsWord: true, Source: source}
}

// givenOf hands over what belongs to the hull as a whole: crew, decking, and whether a limit is the yard's or the sheet's.
func (j *judge) givenOf() *given {
	g := &given{hull: j.hull, reckoned: method.GivenMap{}}
	if j.crew.known {
		g.put("crew.breadth_m", j.crew.breadth, "m", "", "places of the record")
		g.put("crew.offset_sum_m", j.crew.sum, "m", finding.Practice, "places of the record")
	}
	for name, set := range j.limits() {
		w, why := "sheet", "no limit of the yard is written"
		if set {
			w, why = "yard", "the record writes a limit"
		}
		g.word("limit."+name, w, why)
	}
	g.word("boat.decking", j.decking(), "lines.decked, and how the recesses drain")
	if !j.hull.Boat.LengthHull.Set {
		n := len(j.lines.Stations)
		g.put("boat.length_hull_m", j.lines.Stations[n-1].X-j.lines.Stations[0].X, "m", finding.Derived, "from the lines")
	}
	return g
}

func (j *judge) limits() map[string]bool {
	a := &j.hull.Afloat
	return map[string]bool{
		"downflooding_height": a.DownZ.Set, "downflooding_angle": a.DownAngle.Set, "heeled_freeboard": a.Heeled.Set,
		"offset_heel": a.OffsetMax.Set, "offset_person_mass": a.CrewKG.Set,
	}
}

// inCondition adds what belongs to one condition.
func (g *given) inCondition(j *judge, c *loading.Condition) {
	extra := j.windage()
	g.put("condition.windage_m2", c.Afloat.Windage+extra, "m²", finding.Derived, "profile of the lines above the water and what the record adds")
	g.put("condition.waterline_m", c.Afloat.LengthWL, "m", finding.Derived, "from the lines")
	g.put("condition.draught_m", c.Afloat.Draught, "m", finding.Derived, "greatest draught of the lines")
	g.put("condition.volume_m3", c.Afloat.Rest.Volume, "m³", finding.Derived, "from the lines")
	g.put("condition.metacentric_m", c.GMFluid, "m", finding.Derived, "from the lines and the weights")
}

// windage is the area above the sheer. Nothing written is nothing there, and that is said.
func (j *judge) windage() float64 {
	if v, ok := j.hull.Afloat.Windage.Get(); ok {
		return float64(v)
	}
	j.assume("nothing above the sheer catches wind, because no area is written", "write afloat.windage_above_sheer_m2", finding.Practice)
	return 0
}

// decking says whether water that comes over the side stays out of the hull: a decked boat, or one whose recesses all drain.
func (j *judge) decking() string {
	switch j.hull.Lines.Sides.V {
	case "fully decked":
		return "decked"
	case "partly decked":
		if len(j.lines.Recesses) > 0 && j.open == nil {
			j.assume("a partly decked boat whose cockpits all drain quickly counts as decked in TP 14619", "write lines.decked", finding.Practice)
			return "decked"
		}
	case "":
		j.assume("the boat is open, because the record does not say how far it is decked", "write lines.decked", finding.Practice)
	}
	return "open"
}
