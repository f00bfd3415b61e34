package planing

import (
	"fmt"
	"math"

	"hullfile/engine/method"
	"hullfile/engine/trial"
	"hullfile/engine/unit"
)

// planesFrom is the speed coefficient from which a prediction is trusted: below it the boat is not yet planing and trial
// figures stand alone. drawnFrom is where the curves begin. Both are own limits inside those of the paper.
const (
	planesFrom = 1.5
	drawnFrom  = 1.0
)

// sweep reckons points of one case.
type sweep struct {
	in     *Input
	m      *models
	wall   *wall
	solver *solver
	slates slates
}

// slates are what stands beside the balance, for points that are read as numbers.
type slates struct{ spray, porpoising, power *method.Slate }

func (in *Input) newSweep(m *models, w *wall) *sweep {
	s := &sweep{in: in, m: m, wall: w}
	s.solver, _ = newSolver(m.planing) // where the sheet has no such scope no attitude is found
	s.slates.spray, _ = m.spray.Slate("hull", nil)
	s.slates.porpoising, _ = m.porpoising.Slate("hull", nil)
	s.slates.power, _ = m.power.Slate("boat", nil)
	return s
}

// reckoned turns a slate; nil where there is none, or where the sheet takes other units.
func reckoned(s *method.Slate, g method.Given) *method.Slate {
	if s == nil || s.Reckon(g) != nil {
		return nil
	}
	return s
}

// over gives a point at every whole knot up to the fastest. Speeds without a running attitude are passed over.
func (s *sweep) over(fastest float64) []Point {
	first := math.Ceil(drawnFrom * math.Sqrt(standardGravity*s.wall.hull.Beam) / knot)
	var out []Point
	for v := first; v <= math.Ceil(fastest); v++ {
		if p, _, ok := s.at(v); ok {
			out = append(out, p)
		}
	}
	return out
}

// hull is that of the case at a speed in knots.
func (s *sweep) hull(knots float64) Hull {
	h := s.wall.hull
	h.Speed, h.Short, h.Where = knots*knot, !s.wall.fullForm, s.wall.where
	return h
}

// at reckons one speed in knots, and gives what stood beside the balance.
func (s *sweep) at(knots float64) (Point, method.GivenMap, bool) {
	if s.solver == nil || s.solver.slate == nil {
		return Point{}, nil, false
	}
	h := s.hull(knots)
	run, err := s.solver.solve(h)
	if err != nil {
		return Point{}, nil, false
	}
	p := Point{Knots: knots, Run: run.Attitude, Coefficient: h.Speed / math.Sqrt(h.Gravity*h.Beam)}
	if s.wall.hasVCG && s.wall.fullForm {
		h.Short = true
		other, err := s.solver.solve(h)
		p.Other, p.HasOther = other.Attitude, err == nil
	}
	g := s.beside(&p, h)
	p.Flags = s.flags(&p)
	return p, g, true
}

// workings evaluates the sheets behind a point.
func (s *sweep) workings(p *Point, g method.GivenMap) Workings {
	w := Workings{Knots: p.Knots}
	w.Planing, _ = s.solver.working(s.hull(p.Knots), p.Run)
	w.Spray, _ = s.m.spray.Evaluate("hull", g, nil)
	w.Porpoising, _ = s.m.porpoising.Evaluate("hull", g, nil)
	w.Power, _ = s.m.power.Evaluate("boat", g, nil)
	return w
}

// beside reckons spray, porpoising and power at the attitude that was found.
func (s *sweep) beside(p *Point, h Hull) method.GivenMap {
	g := h.given()
	g["planing.trim_deg"] = method.Quantity{Number: p.Run.Trim, Unit: "°", Source: "the balance found above"}
	g["planing.lift"] = method.Quantity{Number: p.Run.Lift, Source: "the balance found above"}
	g["planing.drag_n"] = method.Quantity{Number: p.Run.Drag, Unit: "N", Source: "the balance found above"}
	spray, ok := reckoned(s.slates.spray, g).Value("D_ws")
	if !s.in.Hull.Prediction.Spray.V || !ok || spray < 0 {
		spray = 0
	}
	p.Spray = spray
	g["planing.spray_n"] = method.Quantity{Number: spray, Unit: "N", Source: s.sprayWords()}
	s.porpoising(p, reckoned(s.slates.porpoising, g))
	s.powerGiven(g)
	power := reckoned(s.slates.power, g)
	p.Drag, _ = power.Value("D_T")
	p.Effective, _ = power.Value("P_E")
	p.Least, _ = power.Value("P_least")
	p.Most, _ = power.Value("P_most")
	return g
}

func (s *sweep) sprayWords() string {
	if s.in.Hull.Prediction.Spray.V {
		return "sheet of the whisker spray"
	}
	return "left out: the record does not ask for it"
}

// porpoising takes the critical trim over; outside the chart there is none.
func (s *sweep) porpoising(p *Point, of *method.Slate) {
	p.Second, _ = of.Value("tau_s")
	if c, state, ok := of.Get("tau_c"); ok && state == method.Sound {
		p.Critical, p.HasCritical = c, true
		return
	}
	x, _ := of.Value("x")
	p.OffChart = fmt.Sprintf("outside the chart: root of half the lift coefficient %s, chart 0.13 to 0.30", unit.Text(x, 3))
	if s.wall.hull.Deadrise > 20 {
		p.OffChart = fmt.Sprintf("outside the chart: deadrise %s°, chart 0 to 20°", unit.Plain(s.wall.hull.Deadrise))
	}
}

// powerGiven hands over what the record says of air and appendages; what it does not say counts as nothing, which the
// assumptions tell.
func (s *sweep) powerGiven(g method.GivenMap) {
	p := &s.in.Hull.Prediction
	put := func(name, unit string, v float64, set bool, q method.Quantity) {
		q.Number, q.Unit = v, unit
		if !set {
			q.Source = "left out: not written"
		}
		g[name] = q
	}
	put("prediction.appendage_percent", "%", float64(p.Appendage.V), p.Appendage.Set, method.Quantity{Place: p.Appendage.At})
	put("prediction.frontal_area_m2", "m²", float64(p.Front.V), p.Front.Set, method.Quantity{Place: p.Front.At})
	drag := method.Quantity{Place: p.AirDrag.At}
	v := float64(p.AirDrag.V)
	if p.Front.Set && !p.AirDrag.Set {
		put("prediction.air_drag_coefficient", "", airDrag, true, method.Quantity{Source: "assumed"})
		return
	}
	put("prediction.air_drag_coefficient", "", v, p.AirDrag.Set, drag)
}

// airDrag is the coefficient taken where only a frontal area is written (practice, small boats with a house).
const airDrag = 0.7

// flags says why a prediction is not to be trusted at a point.
func (s *sweep) flags(p *Point) []string {
	var out []string
	say := func(broken bool, format string, args ...any) {
		if broken {
			out = append(out, fmt.Sprintf(format, args...))
		}
	}
	t := func(v float64, n int) string { return unit.Text(v, n) }
	say(p.Coefficient < planesFrom, "speed coefficient %s below %s: not yet planing", t(p.Coefficient, 2), t(planesFrom, 1))
	say(p.Run.Trim < 2 || p.Run.Trim > 15, "trim %s° outside 2 to 15°", t(p.Run.Trim, 1))
	say(p.Run.Wetted > 4, "wetted length %s beams, more than 4", t(p.Run.Wetted, 1))
	say(p.Run.Chine < 0, "chine dry at the transom")
	say(p.Run.Keel > s.wall.length, "keel wetted over %s m, longer than the waterline of %s m", t(p.Run.Keel, 1), t(s.wall.length, 2))
	say(s.wall.hull.Deadrise > 30, "deadrise %s° above 30°", t(s.wall.hull.Deadrise, 0))
	return out
}

// settings puts the settings of a trial beside the prediction.
func (s *sweep) settings(t *trial.Trial) []Setting {
	var out []Setting
	for i := range t.Settings {
		set := &t.Settings[i]
		one := Setting{Name: set.Name, Knots: set.Speed.Value, Trim: set.Trim.Value, HasTrim: set.Trim.Has}
		if !set.Speed.Has {
			one.Why = "no mean speed: " + set.Why
			out = append(out, one)
			continue
		}
		p, _, ok := s.at(one.Knots)
		switch {
		case p.Coefficient > 0 && p.Coefficient < drawnFrom || !ok && one.Knots*knot < drawnFrom*math.Sqrt(standardGravity*s.wall.hull.Beam):
			one.Why = "too slow for a planing formula"
		case !ok:
			one.Why = "no running attitude found"
		default:
			one.Point = &p
		}
		out = append(out, one)
	}
	return out
}

// shown gives the workings of one speed, or of the nearest slower whole knot that has any.
func (s *sweep) shown(knots float64) (Workings, Hull) {
	for v := knots; v > 0; v = math.Ceil(v) - 1 {
		if p, g, ok := s.at(v); ok {
			h := s.wall.hull
			h.Speed = p.Knots * knot
			return s.workings(&p, g), h
		}
	}
	return Workings{}, s.wall.hull
}

// reach finds where the installed power crosses the band.
func reach(points []Point, installed float64) Reach {
	var r Reach
	r.Low, r.HasLow = crossing(points, installed, func(p *Point) float64 { return p.Most })
	r.High, r.HasHigh = crossing(points, installed, func(p *Point) float64 { return p.Least })
	return r
}

// crossing is the last speed at which a curve rises through a level, by straight line.
func crossing(points []Point, level float64, of func(*Point) float64) (float64, bool) {
	if !(level > 0) {
		return 0, false
	}
	for i := len(points) - 1; i > 0; i-- {
		a, b := &points[i-1], &points[i]
		if lo, hi := of(a), of(b); lo <= level && level < hi {
			return a.Knots + (level-lo)/(hi-lo)*(b.Knots-a.Knots), true
		}
	}
	return 0, false
}
