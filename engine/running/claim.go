package running

import (
	"math"

	"hullfile/engine/endurance"
	"hullfile/engine/record"
)

// Choices of the demonstration (practice).
const (
	confidence = 0.9
	wanted     = 0.9 // part of boats for which a promise counts as shown
)

var (
	slopes      = [...]float64{1, 2, 3}
	confidences = [...]float64{0.5, 0.9, 0.95}
)

// claim adds the exposures up.
func (in *Input) claim(r *Result) Claim {
	c := Claim{Confidence: confidence}
	for _, e := range r.Pool {
		if e.Why != "" {
			continue
		}
		c.Boats++
		c.Hours += e.Hours
		if e.Cracked {
			c.Cracked++
		}
	}
	if c.Boats == 0 || c.Hours == 0 {
		c.Why = r.Pool[0].Why
		if c.Boats > 0 {
			c.Why = "no clean look lies before the first crack"
		}
		return c
	}
	var err error
	c.MeanTime, c.Factor, err = endurance.MeanTime(c.Hours, c.Cracked, confidence)
	if err != nil {
		c.Why = err.Error()
		return c
	}
	c.Has = true
	return c
}

// law is the Weibull bound of the pool for one slope and confidence.
func (r *Result) law(slope, conf float64) endurance.Weibull {
	w := endurance.Weibull{Slope: slope, Confidence: conf, Failed: r.Claim.Cracked}
	for _, e := range r.Pool {
		if e.Why == "" {
			w.Runs = append(w.Runs, e.Hours)
		}
	}
	return w
}

// promise holds a warranty against the pool.
func (r *Result) promise(rec *record.Warranty) Promise {
	p := Promise{Record: rec, Has: rec.Yearly.Set, Hours: float64(rec.Years.V) * float64(rec.Yearly.V)}
	if !p.Has {
		return p
	}
	for _, slope := range slopes {
		if n, err := endurance.Needed(p.Hours, wanted, confidence, slope, 1); err == nil {
			p.Needed = append(p.Needed, Needed{slope, n})
		}
	}
	p.Boats, _ = endurance.Boats(wanted, confidence)
	if !r.Claim.Has {
		return p
	}
	for _, conf := range confidences {
		for _, slope := range slopes {
			if s, ok := r.shown(slope, conf, &p); ok {
				p.Shown = append(p.Shown, s)
			}
		}
	}
	for _, slope := range slopes {
		p.Curves = append(p.Curves, r.curve(slope, &p))
	}
	return p
}

func (r *Result) shown(slope, conf float64, p *Promise) (Shown, bool) {
	w := r.law(slope, conf)
	s := Shown{Slope: slope, Confidence: conf}
	var err error
	if s.Scale, err = w.Scale(); err != nil {
		return s, false
	}
	s.All, _ = w.Reliability(p.Hours)
	s.FirstYear, _ = w.Reliability(float64(p.Record.Yearly.V))
	s.Tenth, _ = w.Life(0.9)
	return s, true
}

// curvePoints is the number of steps of a curve up to one and a half times the hours run, where it bends, and beyond.
const curvePoints = 40

func (r *Result) curve(slope float64, p *Promise) Curve {
	w := r.law(slope, confidence)
	run := 0.0
	for _, t := range w.Runs {
		run = math.Max(run, t)
	}
	most := r.reach(run, p)
	near := math.Min(1.5*run, most)
	c := Curve{Slope: slope}
	for i := range 2*curvePoints + 1 {
		h := near * float64(i) / curvePoints
		if i > curvePoints {
			h = near + (most-near)*float64(i-curvePoints)/curvePoints
		}
		part, err := w.Reliability(h)
		if err != nil {
			continue
		}
		c.Hours, c.Part = append(c.Hours, h), append(c.Part, part)
	}
	return c
}

// leastSeen is the part below which a curve cannot be told from nought.
const leastSeen = 0.001

// reach is how far the curves of a promise are drawn, hours: beyond its own hours, or, where all of them have come to nothing
// before half of that, only as far as there is something to see.
func (r *Result) reach(run float64, p *Promise) float64 {
	gone := run
	for _, slope := range slopes {
		w := r.law(slope, confidence)
		if t, err := w.Life(leastSeen); err == nil {
			gone = math.Max(gone, t)
		}
	}
	if gone < p.Hours/2 {
		return math.Ceil(1.05*gone/5) * 5
	}
	return math.Ceil(1.15*math.Max(run, p.Hours)/50) * 50
}

// At finds what one slope and one confidence show.
func (p *Promise) At(slope, conf float64) (Shown, bool) {
	for _, s := range p.Shown {
		if s.Slope == slope && s.Confidence == conf {
			return s, true
		}
	}
	return Shown{}, false
}
