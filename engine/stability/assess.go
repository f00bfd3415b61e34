package stability

import (
	"slices"

	"hullfile/engine/finding"
	"hullfile/engine/hydrostatics"
	"hullfile/engine/lines"
	"hullfile/engine/loading"
	"hullfile/engine/method"
	"hullfile/engine/record"
	"hullfile/engine/weight"
)

// Assess judges a hull afloat. The lines must be free of contradictions (lines.Check); weights and conditions are those of
// the same hull. Where no condition floats, one check says so and no other is made.
func Assess(h *record.Hull, w weight.Result, hull *lines.Hull, load loading.Result, lib *method.Library) Result {
	j := &judge{hull: h, weight: w, lines: hull, loading: load, library: lib}
	if len(hull.Stations) == 0 {
		return j.out
	}
	if !j.prepare() {
		return j.out
	}
	j.iso()
	j.canadian()
	j.crowding()
	j.intact()
	j.inclinings()
	j.freeboards()
	j.offsets()
	j.flotation()
	j.whatIf()
	return j.out
}

// judge holds what the checks of one hull share.
type judge struct {
	hull    *record.Hull
	weight  weight.Result
	lines   *lines.Hull
	loading loading.Result
	library *method.Library
	dry     *hydrostatics.Body // recesses hold air until their rim goes under
	open    *hydrostatics.Body // undrained recesses open to the water; nil where there are none
	watched []way
	crew    crew
	out     Result

	offsetHeel Heeling // by ISO 12217, loaded
}

// prepare makes the bodies and the curves; false where nothing floats, and then the check says why.
func (j *judge) prepare() bool {
	body, err := j.lines.Body(false)
	if err != nil {
		j.nothing(err.Error())
		return false
	}
	j.dry = body
	if slices.ContainsFunc(j.lines.Recesses, func(r lines.Recess) bool { return !r.Drains }) {
		if j.open, err = j.lines.Body(true); err != nil {
			j.open = nil
		}
	}
	j.watched = j.ways()
	j.crew = j.crewSums()
	why := "no condition is on record"
	for i := range j.loading.Conditions {
		c := &j.loading.Conditions[i]
		if !c.Floats {
			if c.Kind == "loaded ready" {
				why = c.Title + ": " + c.Why
			}
			continue
		}
		one, err := j.curves(c)
		if err != nil {
			why = c.Title + ": " + err.Error()
			continue
		}
		j.failed(&one)
		j.out.Conditions = append(j.out.Conditions, one)
	}
	if j.find("loaded ready") == nil {
		j.nothing(why)
		return false
	}
	return true
}

func (j *judge) nothing(why string) {
	c := finding.Check{Rule: "stability", Subject: "boat", Asks: "the boat is shown to be stable, loaded and ready", Standing: finding.NotShown,
		Says: "not shown: " + why, Settle: "complete what the loaded condition is made of",
		Basis: finding.Derived, Source: "lines, weights and conditions on record", Places: finding.Places(j.lines.Stations[0].Place)}
	j.out.Checks = append(j.out.Checks, c)
}

// failed tells of heels at which no rest was found: the curve has a hole there.
func (j *judge) failed(c *Condition) {
	for i := range c.Sides {
		s := &c.Sides[i]
		if n := len(s.Curve.Failed); n > 0 {
			j.say(finding.Doubt, "lever-rest", "condition "+c.Loading.ID, holes(c, s, n), "hold the lines against the drawing", j.lines.Stations[0].Place)
		}
	}
}

// find gives the condition of a kind, nil where it does not float.
func (j *judge) find(kind string) *Condition {
	for i := range j.out.Conditions {
		if j.out.Conditions[i].Loading.Kind == kind {
			return &j.out.Conditions[i]
		}
	}
	return nil
}

// sheet finds a sheet that the record asks for. A record that names its sheets is judged by no others; false then, and the
// result says why.
func (j *judge) sheet(name, rule string) (*method.Sheet, bool) {
	if asked, ok := j.hull.Afloat.Checks.Get(); ok && !slices.Contains(asked, name) {
		j.out.NotApplying = append(j.out.NotApplying, NotApplying{Rule: rule, Says: "the record asks for other checks (afloat.checks)", Source: name})
		return nil, false
	}
	s, ok := j.library.Sheet(name)
	if !ok {
		j.out.NotApplying = append(j.out.NotApplying, NotApplying{Rule: rule, Says: "the method sheet is not at hand", Source: name})
		return nil, false
	}
	j.out.Sheets = append(j.out.Sheets, s)
	return s, true
}
