package stability

import (
	"fmt"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// notApplyingOnce tells a reason once, whatever the number of conditions.
func (j *judge) notApplyingOnce(rule, says, source string) {
	for _, n := range j.out.NotApplying {
		if n.Rule == rule && n.Says == says {
			return
		}
	}
	j.notApplying(rule, says, source)
}

// canadian judges by TP 14619, an open rule of which every number was read. It is for lengths of 6 to 12 m.
func (j *judge) canadian() {
	const name, rule = "tp-14619", "tp14619"
	sheet, ok := j.sheet(name, rule)
	if !ok {
		return
	}
	if l := j.length(); l < 6 || l > 12 {
		j.notApplying(rule, "the hull is "+metre(l)+" m; the table is for 6 to 12 m", sheet.Cite(""))
		return
	}
	w, err := sheet.Evaluate("craft", j.givenOf(), nil)
	if err != nil {
		j.unusable(sheet, err)
		return
	}
	full := j.find("loaded ready")
	j.canadianUpright(w, full)
	h := j.crewHeel(w, full, "everybody to one side, TP 14619")
	ask := func(rule, symbol, name, u string, has float64, most bool, decimals int) {
		q := question{rule: rule, subject: j.subject(full), asks: full.Loading.Title + ": " + name, name: name, working: w, symbol: symbol, has: has, most: most,
			unit: u, decimals: decimals, condition: full.Loading.ID, basis: j.momentBasis(w, h), settle: "fewer persons, or places for them nearer the centre line", places: j.crew.places}
		j.afterCrew(&q, h)
		j.ask(q)
	}
	ask("tp14619-heel", "phi_R", "heel with everybody to one side", "°", h.Heel, true, 1)
	ask("tp14619-heeled", "h_R", "least height of a way in, everybody to one side", "m", h.Least, false, 3)
}

// canadianUpright holds the lowest way in, upright; a decked boat without one is held at its deck edge.
func (j *judge) canadianUpright(w *method.Working, full *Condition) {
	side := &full.Sides[0]
	j.ask(question{rule: "tp14619-height", subject: j.subject(full), asks: full.Loading.Title + ": the lowest way in lies high enough, upright", name: "lowest way in above the water",
		working: w, symbol: "h_U", has: side.least(full.Loading.Afloat.Rest.Attitude), unit: "m", decimals: 3, condition: full.Loading.ID, basis: finding.Derived,
		settle: "more freeboard, or less load"})
}

// crewHeel is the heel under the sheet's moment of everybody to one side.
func (j *judge) crewHeel(w *method.Working, c *Condition, name string) Heeling {
	m, ok := w.Value("M_P")
	if !ok {
		return Heeling{}
	}
	h := c.heeled(name, m, true)
	j.out.Heelings = append(j.out.Heelings, h)
	return h
}

func (j *judge) afterCrew(q *question, h Heeling) {
	j.needsCrew(q)
	if q.why == "" && !h.Rests {
		q.short = "with everybody to one side the boat does not come to rest before water comes in"
	}
}

// crowding judges by the test of an earlier small-vessel code: everybody to one side, 7 degrees.
func (j *judge) crowding() {
	sheet, ok := j.sheet("crowding-test", "crowding")
	if !ok {
		return
	}
	w, err := sheet.Evaluate("craft", j.givenOf(), nil)
	if err != nil {
		j.unusable(sheet, err)
		return
	}
	full := j.find("loaded ready")
	h := j.crewHeel(w, full, "everybody to one side, 75 kg each")
	q := question{rule: "crowding-heel", subject: j.subject(full), asks: full.Loading.Title + ": everybody to one side heels the boat by little", name: "heel with everybody to one side",
		working: w, symbol: "phi_1", has: h.Heel, most: true, unit: "°", decimals: 1, condition: full.Loading.ID, basis: j.momentBasis(w, h),
		settle: "fewer persons, or places for them nearer the centre line", places: j.crew.places}
	j.afterCrew(&q, h)
	least, ok1 := w.Value("phi_1")
	most, ok2 := w.Value("phi_2")
	if ok1 && ok2 && h.Rests && h.Heel > least && h.Heel <= most {
		q.why = fmt.Sprintf("the heel is %s°; between %s and %s° the code asks for its upright freeboard when heeled, which is not held here", unit.Text(h.Heel, 1), unit.Text(least, 0), unit.Text(most, 0))
		q.settle = "hold the heeled freeboard against the code, or have fewer persons"
	}
	j.ask(q)
	j.crowdingDeck(w, full, h)
}

func (j *judge) crowdingDeck(w *method.Working, full *Condition, h Heeling) {
	if j.decking() != "decked" {
		j.notApplying("crowding-deck", "the height of the deck is asked for on decked boats", w.Sheet.Cite("11.4"))
		return
	}
	q := question{rule: "crowding-deck", subject: j.subject(full), asks: full.Loading.Title + ": everybody to one side leaves the deck above the water", name: "least height of the deck edge, heeled",
		working: w, symbol: "h_R", unit: "m", decimals: 3, condition: full.Loading.ID, basis: j.momentBasis(w, h), settle: "fewer persons, or more freeboard", places: j.crew.places}
	j.afterCrew(&q, h)
	if h.Rests {
		q.has = full.Sides[0].deck(h.Attitude)
	}
	j.ask(q)
}

// intact shows the criteria for ships as information: they are not made for boats and nothing is judged by them.
func (j *judge) intact() {
	sheet, ok := j.library.Sheet("imo-a749-18")
	if !ok {
		return
	}
	j.out.Sheets = append(j.out.Sheets, sheet)
	for i := range j.out.Conditions {
		c := &j.out.Conditions[i]
		g := j.givenOf()
		g.inCondition(j, c.Loading)
		w, err := sheet.Evaluate("curve", g, nil)
		if err != nil {
			continue
		}
		s := c.worse()
		beyond := 0.0
		for _, p := range s.Curve.Points {
			if p.Heel >= 30*degree-1e-9 && p.Heel <= s.Limit*degree && p.Lever > beyond {
				beyond = p.Lever
			}
		}
		for _, one := range []struct {
			symbol string
			has    float64
		}{{"A_30", c.Areas[0]}, {"A_40", c.Areas[1]}, {"A_34", c.Areas[2]}, {"GZ_30", beyond}, {"phi_m", s.GreatestA}, {"GM_0", c.Loading.GMFluid}} {
			if shown, ok := w.Get(one.symbol); ok {
				j.out.Information = append(j.out.Information, Information{Condition: c.Loading.ID, Name: shown.Name, Has: one.has, Asks: shown.Value, Unit: shown.Unit,
					Reached: one.has >= shown.Value, Source: sheet.Cite(shown.Clause)})
			}
		}
	}
}
