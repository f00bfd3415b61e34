package stability

import (
	"math"

	"hullfile/engine/finding"
	"hullfile/engine/method"
	"hullfile/engine/unit"
)

// roll holds the energy that rights the boat against the energy of the roll to windward: area of the lever above the wind's
// arm to leeward against the area between wind's arm and lever back to windward (recalled: ISO 12217-1, 6.5; roll, wind and
// bounds as worksheets 6a and 6b of ISO/FDIS 12217-1:2001 print them). The reserve ends at flooding, at 50 degrees, or where
// the wind's arm is met again.
func (j *judge) roll(w *method.Working, s *Side, c *Condition) {
	q := finding.Check{Rule: "waves-area", Subject: j.subject(c), Asks: c.Loading.Title + ": the boat rights itself from a roll to windward in a gust", Standing: finding.NotShown,
		Basis: finding.Recalled, Source: w.Sheet.Cite("6.5"), Places: finding.Places(j.lines.Stations[0].Place), Settle: "more righting lever, less windage, or ways in that lie higher"}
	moment, ok1 := w.Value("M_W")
	back, ok2 := w.Value("phi_R")
	if !ok1 || !ok2 {
		q.Says = "not shown: wind or roll is not known"
		j.show(Shown{Check: q, Working: w, Symbol: "phi_R", Condition: c.Loading.ID})
		return
	}
	arm := moment / (gravity * s.load.Mass)
	heel, ok := s.Curve.Meets(func(float64) float64 { return arm })
	end := math.Min(50, s.Limit) * degree
	if !ok || heel > end {
		q.Standing, q.Says = finding.Short, "under wind the boat does not come to rest before water comes in"
		j.show(Shown{Check: q, Working: w, Symbol: "phi_R", Condition: c.Loading.ID})
		return
	}
	lee := leeward(s, arm, heel, end)
	wind := windward(s, arm, heel, back*degree)
	q.Standing = finding.Short
	if lee >= wind {
		q.Standing, q.Settle = finding.Met, ""
	}
	q.Has, q.Needed = unit.Text(lee, 4)+"\u00a0m·rad", "at least "+unit.Text(wind, 4)+"\u00a0m·rad"
	q.Says = "area to leeward " + q.Has + ", to windward " + unit.Text(wind, 4) + "\u00a0m·rad, from rest at " + unit.Text(heel/degree, 1) + "° under a gust and a roll of " + unit.Text(back, 1) + "°"
	j.show(Shown{Check: q, Working: w, Symbol: "phi_R", Condition: c.Loading.ID})
}

// leeward is the area of the lever above the arm, from rest to the end or to where the arm is met again.
func leeward(s *Side, arm, from, to float64) float64 {
	for _, p := range s.Curve.Points {
		if p.Heel > from+degree && p.Heel < to && p.Lever < arm {
			to = p.Heel
			break
		}
	}
	return s.Curve.Area(from, to) - arm*(to-from)
}

// windward is the area between the arm and the lever from rest back by the roll. To the other side the lever is taken as
// that of this side with its sign changed, which is so on a symmetrical boat.
func windward(s *Side, arm, from, roll float64) float64 {
	to := from - roll
	if to >= 0 {
		return arm*roll - s.Curve.Area(to, from)
	}
	return arm*roll - s.Curve.Area(0, from) + s.Curve.Area(0, -to)
}
