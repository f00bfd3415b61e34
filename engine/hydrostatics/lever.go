package hydrostatics

import (
	"fmt"
	"math"
)

// Watch is a set of points whose going under is of interest: the corners of an opening, the deck edge, the chine.
type Watch struct {
	Name   string
	Points []Vector
}

// Under is where the first point of a Watch meets the water.
type Under struct {
	Name  string
	Heel  float64 // radians
	Never bool    // not within the curve
}

// Curve is a righting-lever curve to one side.
type Curve struct {
	Points []Rest // in order of heel
	Unders []Under
	Failed []Failure
}

// Failure is a heel at which no rest was found.
type Failure struct {
	Heel float64
	Err  error
}

// Lever reckons the curve from upright to last in steps (radians; last may be negative for heel to port, and step is
// taken with its sign). Where free is false the trim of the upright rest is held. Heels at which no rest is found are
// listed, not bridged.
// Levers are metres. Errors: no step or no last heel; the body does not float upright.
func (b *Body) Lever(load Load, last, step float64, free bool, watches []Watch) (Curve, error) {
	if step == 0 || last == 0 || math.IsNaN(last/step) {
		return Curve{}, fmt.Errorf("a curve needs a last heel and a step, %g and %g given", last, step)
	}
	step = math.Copysign(step, last)
	var c Curve
	upright, err := b.Balance(load, 0, Attitude{}, false)
	if err != nil {
		return c, err
	}
	c.Points = append(c.Points, upright)
	at := upright.Attitude
	for k := 1; k <= int(math.Round(last/step)); k++ {
		r, err := b.Balance(load, float64(k)*step, at, !free)
		if err != nil {
			c.Failed = append(c.Failed, Failure{float64(k) * step, err})
			continue
		}
		c.Points = append(c.Points, r)
		at = ahead(at, r.Attitude)
	}
	for _, w := range watches {
		c.Unders = append(c.Unders, c.under(b, load, w, free))
	}
	return c, nil
}

// ahead guesses the next attitude on a straight line through the last two.
func ahead(before, now Attitude) Attitude {
	now.Trim += limit(now.Trim-before.Trim, 0.02)
	now.Level += limit(now.Level-before.Level, 0.05)
	return now
}

// under finds the heel at which the first of the points meets the water: between two points of the curve by halving.
func (c *Curve) under(b *Body, load Load, w Watch, free bool) Under {
	for i, r := range c.Points {
		if lowest(r.Attitude, w.Points) > 0 {
			continue
		}
		if i == 0 {
			return Under{Name: w.Name, Heel: 0}
		}
		dry, wet := c.Points[i-1], r
		for k := 0; k < 30 && math.Abs(wet.Heel-dry.Heel) > 1e-5; k++ {
			mid, err := b.Balance(load, (dry.Heel+wet.Heel)/2, dry.Attitude, !free)
			if err != nil {
				break
			}
			if lowest(mid.Attitude, w.Points) > 0 {
				dry = mid
			} else {
				wet = mid
			}
		}
		return Under{Name: w.Name, Heel: wet.Heel}
	}
	return Under{Name: w.Name, Never: true}
}

func lowest(at Attitude, points []Vector) float64 {
	low := math.Inf(1)
	for _, p := range points {
		low = math.Min(low, at.Height(p))
	}
	return low
}

// At gives the lever at a heel by linear interpolation; ok is false outside the curve.
func (c Curve) At(heel float64) (lever float64, ok bool) {
	for i := 1; i < len(c.Points); i++ {
		p, q := c.Points[i-1], c.Points[i]
		lo, hi := math.Min(p.Heel, q.Heel), math.Max(p.Heel, q.Heel)
		if heel < lo-1e-12 || heel > hi+1e-12 {
			continue
		}
		t := (heel - p.Heel) / (q.Heel - p.Heel)
		return p.Lever + float64(t*(q.Lever-p.Lever)), true
	}
	return 0, false
}

// Area is the area under the lever between two heels, metre radian: by Simpson's rules where both fall on points of the
// curve at even steps, else by trapeziums with interpolated ends.
func (c Curve) Area(from, to float64) float64 {
	if area, ok := c.simpson(from, to); ok {
		return area
	}
	area := 0.0
	for i := 1; i < len(c.Points); i++ {
		lo, hi := math.Max(from, c.Points[i-1].Heel), math.Min(to, c.Points[i].Heel)
		if hi <= lo {
			continue
		}
		a, _ := c.At(lo)
		b, _ := c.At(hi)
		area += (a + b) / 2 * (hi - lo)
	}
	return area
}

func (c Curve) simpson(from, to float64) (area float64, ok bool) {
	const hair = 1e-9
	var levers []float64
	step := 0.0
	for i, p := range c.Points {
		if p.Heel < from-hair || p.Heel > to+hair {
			continue
		}
		if len(levers) == 0 && math.Abs(p.Heel-from) > hair {
			return 0, false
		}
		if d := p.Heel - c.Points[max(0, i-1)].Heel; len(levers) == 1 {
			step = d
		} else if len(levers) > 1 && math.Abs(d-step) > hair {
			return 0, false
		}
		levers = append(levers, p.Lever)
	}
	n := len(levers) - 1
	if n < 2 || math.Abs(from+float64(n)*step-to) > float64(n+1)*hair {
		return 0, false
	}
	return Simpson(levers, step), true
}

// Greatest gives the heel and size of the greatest lever.
func (c Curve) Greatest() (heel, lever float64) {
	for _, r := range c.Points {
		if r.Lever > lever {
			heel, lever = r.Heel, r.Lever
		}
	}
	return heel, lever
}

// Vanishes is the first heel beyond the greatest lever at which the lever is gone; ok is false if it is not within the curve.
func (c Curve) Vanishes() (heel float64, ok bool) {
	top, _ := c.Greatest()
	for i := 1; i < len(c.Points); i++ {
		p, q := c.Points[i-1], c.Points[i]
		if math.Abs(q.Heel) <= math.Abs(top) || q.Lever > 0 {
			continue
		}
		return p.Heel + p.Lever/(p.Lever-q.Lever)*(q.Heel-p.Heel), true
	}
	return 0, false
}

// Meets is the first heel at which the lever reaches that of a heeling arm (metres, a function of heel); ok is false
// where the curve stays below it.
func (c Curve) Meets(arm func(heel float64) float64) (heel float64, ok bool) {
	for i := range c.Points {
		d := c.Points[i].Lever - arm(c.Points[i].Heel)
		if d < 0 {
			continue
		}
		if i == 0 {
			return 0, true
		}
		p, q := c.Points[i-1], c.Points[i]
		e := arm(p.Heel) - p.Lever
		return p.Heel + e/(e+d)*(q.Heel-p.Heel), true
	}
	return 0, false
}

// Metacentric is the height of the transverse metacentre above the centre of gravity at rest, metres.
func (r Rest) Metacentric(load Load) float64 {
	return r.SecondT/r.Volume + r.Up().Dot(r.Centre.Less(load.Centre))
}
