package stability

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// inCondition holds one condition against angles and moments. Everybody to one side is asked of the loaded boat, because
// they are on board in that condition only; the heel that it gives goes into the angles of the other as well.
func (j *judge) inCondition(sheet *method.Sheet, craft *method.Working, g *given, c *Condition) {
	g.inCondition(j, c.Loading)
	if c.Loading.Kind == "loaded ready" {
		crew := j.isoCrew(craft, c)
		j.offset(craft, c, crew)
		j.heeledFreeboard(craft, c, crew)
		j.offsetHeel = crew
	}
	if crew := j.offsetHeel; crew.Rests {
		g.put("condition.offset_heel_deg", crew.Heel, "°", finding.Derived, "from the righting lever")
	} else {
		delete(g.reckoned, "condition.offset_heel_deg")
	}
	w, err := sheet.Evaluate("condition", g, craft)
	if err != nil {
		j.unusable(sheet, err)
		return
	}
	j.angle(w, c)
	if j.out.Option.wants(2, 4, 5, 6) {
		j.wind(w, c)
	}
	if j.out.Option.wants(1, 3) {
		j.waves(sheet, w, g, c)
	}
}

func (j *judge) subject(c *Condition) string { return "condition " + c.Loading.ID }

// isoCrew finds the heel with the crew to one side: the simplified moment where it is enough, the placed one otherwise. The
// simplified moment is the greater, so what it shows needs no more.
func (j *judge) isoCrew(craft *method.Working, c *Condition) Heeling {
	placed, ok := craft.Value("M_P")
	if !ok {
		return Heeling{}
	}
	if simple, ok := craft.Value("M_C"); ok {
		h := c.heeled("crew to one side, simplified moment", simple, true)
		j.out.Heelings = append(j.out.Heelings, h)
		if most, ok := craft.Value("phi_OR"); ok && h.Rests && h.Heel <= most {
			return h
		}
	}
	h := c.heeled("crew to one side, in their places", placed, true)
	j.out.Heelings = append(j.out.Heelings, h)
	return h
}

// offset holds the heel with the crew to one side.
func (j *judge) offset(craft *method.Working, c *Condition, h Heeling) {
	q := question{rule: "offset-load", subject: j.subject(c), asks: c.Loading.Title + ": the heel with the crew to one side stays within its limit",
		name: h.Name + ", heel", working: craft, symbol: "phi_OR", has: h.Heel, most: true, unit: "°", decimals: 2, condition: c.Loading.ID,
		basis: j.momentBasis(craft, h), settle: "fewer persons, a narrower place for them, or less mass high up", places: j.crew.places}
	j.needsCrew(&q)
	if q.why == "" && !h.Rests {
		q.short = "with the crew to one side the boat does not come to rest before water comes in"
	}
	j.ask(q)
}

// momentBasis is that of the moment which heels the boat.
func (j *judge) momentBasis(craft *method.Working, h Heeling) finding.Basis {
	for _, symbol := range []string{"M_P", "M_C"} {
		if s, ok := craft.Get(symbol); ok && s.Value == h.Moment {
			return s.Rests
		}
	}
	return finding.Derived
}

func (j *judge) needsCrew(q *question) {
	if j.crew.known {
		return
	}
	q.why = j.crew.why
	q.missing = append(q.missing, "crew_area")
	q.settle = "write where people can be as [crew_area.NAME], and boat.persons"
}

// heeledFreeboard holds what is left of the freeboard with the crew to one side, where the option asks for it.
func (j *judge) heeledFreeboard(craft *method.Working, c *Condition, h Heeling) {
	if !j.out.Option.wants(5, 6) {
		j.notApplyingOnce("heeled-freeboard", "asked for in options 5 and 6 only", craft.Sheet.Cite(""))
		return
	}
	q := question{rule: "heeled-freeboard", subject: j.subject(c), asks: c.Loading.Title + ": with the crew to one side water stays out by a margin", name: "least height of a way in, heeled",
		working: craft, symbol: "h_F", has: h.Least, unit: "m", decimals: 3, condition: c.Loading.ID, basis: j.momentBasis(craft, h),
		settle: "fewer persons, more freeboard, or ways in farther inboard", places: j.crew.places}
	j.needsCrew(&q)
	if q.why == "" && !h.Rests {
		q.short = "with the crew to one side the boat does not come to rest before water comes in"
	}
	j.ask(q)
}

// angle holds the heel at which water comes in.
func (j *judge) angle(w *method.Working, c *Condition) {
	s := c.worse()
	if s.Flooding.Never {
		j.notApplyingOnce("downflooding-angle", "no way in goes under at any heel", w.Sheet.Cite(""))
		return
	}
	q := question{rule: "downflooding-angle", subject: j.subject(c), asks: c.Loading.Title + ": water stays out up to the angle that is asked for",
		name: "water first comes in through the " + s.Flooding.Name + " at", working: w, symbol: "phi_DR", has: s.Flooding.Heel, unit: "°", decimals: 1, condition: c.Loading.ID, basis: finding.Derived,
		settle: "ways in that lie higher or farther inboard, or can be closed"}
	j.needsCrew(&q)
	j.ask(q)
}

// wind holds the heel under wind, unless the windage is so small that nothing is asked.
func (j *judge) wind(w *method.Working, c *Condition) {
	ratio, ok := w.Value("r_W")
	if ok && ratio < 1 {
		j.notApplying("wind-heel", c.Loading.Title+": windage over length times beam is "+unit.Text(ratio, 2)+", below 1.0, so nothing more is asked", w.Sheet.Cite("worksheet 7"))
		return
	}
	q := question{rule: "wind-heel", subject: j.subject(c), asks: c.Loading.Title + ": the heel under wind stays within its limit", name: "heel under wind",
		working: w, symbol: "phi_WR", most: true, unit: "°", decimals: 2, condition: c.Loading.ID, settle: "less windage, or less mass high up"}
	moment, ok := w.Value("M_W")
	if !ok {
		q.symbol = "M_W"
		j.ask(q)
		return
	}
	h := c.heeled("wind", moment, false)
	j.out.Heelings = append(j.out.Heelings, h)
	q.has = h.Heel
	if s, found := w.Get("M_W"); found {
		q.basis = s.Rests
	}
	if !h.Rests {
		q.short = "under wind the boat does not come to rest before water comes in"
	}
	j.ask(q)
}

// waves holds the boat in wind and waves together, categories A and B.
func (j *judge) waves(sheet *method.Sheet, above *method.Working, g *given, c *Condition) {
	s := c.worse()
	if c.Open != nil {
		s = c.Open
	}
	g.put("condition.greatest_at_deg", s.GreatestA, "°", finding.Derived, "from the righting lever")
	w, err := sheet.Evaluate("waves", g, above)
	if err != nil {
		j.unusable(sheet, err)
		return
	}
	ask := func(rule, symbol, name, u string, has float64) {
		j.ask(question{rule: rule, subject: j.subject(c), asks: c.Loading.Title + ": " + name, name: name, working: w, symbol: symbol, has: has, unit: u,
			decimals: 2, condition: c.Loading.ID, basis: finding.Derived, settle: "more righting lever: less mass high up, more beam or freeboard"})
	}
	gz := s.GreatestA
	at, _ := s.Curve.At(math.Min(30, s.Limit) * degree)
	lever := at
	if gz < 30 {
		lever = s.Greatest
	}
	ask("waves-lever", "GZ_R", "righting lever", "m", lever)
	ask("waves-moment", "RM_R", "righting moment", "kN·m", lever*gravity*s.load.Mass/1000)
	j.roll(w, s, c)
}
