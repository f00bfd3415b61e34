package stability

import (
	"math"

	"hullfile/engine/hydrostatics"
)

// gravity as the sheets take it, m/s².
const gravity = 9.81

// heeled finds the rest under a moment (N·m upright) that falls with the cosine of the heel if it is of people, and stays if
// it is of wind. It takes the worst side: the one with the greater heel.
func (c *Condition) heeled(name string, moment float64, people bool) Heeling {
	worst := Heeling{Condition: c.Loading.ID, Name: name, Moment: moment, Heel: -1}
	for i := range c.Sides {
		h := c.Sides[i].heeled(moment, people)
		if i == 0 || worst.Rests && (!h.Rests || h.Heel > worst.Heel) {
			h.Condition, h.Name, h.Moment = worst.Condition, worst.Name, worst.Moment
			worst = h
		}
	}
	return worst
}

func (s *Side) heeled(moment float64, people bool) Heeling {
	arm := moment / (gravity * s.load.Mass)
	at := func(h float64) float64 {
		if people {
			return arm * math.Cos(h)
		}
		return arm
	}
	heel, ok := s.Curve.Meets(at)
	if !ok || heel > s.Limit*degree {
		return Heeling{}
	}
	h := Heeling{Heel: heel / degree, Rests: true}
	rest, err := s.body.Balance(s.load, heel, s.near(heel), false)
	if err != nil {
		return Heeling{}
	}
	h.Attitude, h.Least = rest.Attitude, s.least(rest.Attitude)
	return h
}

// near is the attitude of the curve nearest to a heel.
func (s *Side) near(heel float64) hydrostatics.Attitude {
	best := s.Curve.Points[0].Attitude
	for _, p := range s.Curve.Points {
		if math.Abs(p.Heel-heel) < math.Abs(best.Heel-heel) {
			best = p.Attitude
		}
	}
	return best
}

// least is the least height above the water of any way in; without a way in it is that of the deck edge.
func (s *Side) least(at hydrostatics.Attitude) float64 {
	low, lets := math.Inf(1), false
	for _, w := range s.ways {
		if w.lets {
			low, lets = math.Min(low, lowest(at, w.points)), true
		}
	}
	if !lets {
		return lowest(at, s.ways[0].points)
	}
	return low
}

// deck is the least height of the deck edge above the water.
func (s *Side) deck(at hydrostatics.Attitude) float64 { return lowest(at, s.ways[0].points) }

func lowest(at hydrostatics.Attitude, points []hydrostatics.Vector) float64 {
	low := math.Inf(1)
	for _, p := range points {
		low = math.Min(low, at.Height(p))
	}
	return low
}
