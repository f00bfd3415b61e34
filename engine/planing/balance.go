// Package planing finds the running attitude of a planing hull: it turns the sheet of Savitsky's 1964 paper until lift
// and moment balance, and shows the sheet's last turn as the working.
//
//   - Question: at which trim does the boat run, and what power does that take?
//   - In: beam, deadrise, mass, centre, thrust line (m, °, kg), speeds, the sheets.
//   - Out: running trim, drag and power over speed, the limit of porpoising, and how far the trial lies from it.
//   - Source: Savitsky 1964 and the sheets beside it; each says what is recalled.
package planing

import (
	"errors"
	"fmt"
	"math"

	"hullfile/engine/method"
)

// Hull is a prismatic planing hull at one speed. SI units throughout; angles in degrees.
type Hull struct {
	Speed     float64 // m/s
	Beam      float64 // m, between chines
	Deadrise  float64
	Weight    float64 // N
	LCG, VCG  float64 // m forward of the transom and above the keel
	Thrust    float64 // angle of the thrust line to the keel
	ThrustArm float64 // m, from the thrust line to the centre of gravity
	Density   float64 // kg/m³
	Viscosity float64 // m²/s
	Gravity   float64 // m/s²
	Roughness float64 // added to the friction coefficient; the paper's example uses 0.0004
	Short     bool    // all forces through the centre of gravity (equations 36 and 37): no moment of thrust and friction

	Where map[string]method.Quantity // where a value was written and how it is known, by the sheet's name for it
}

// Attitude is how a hull runs at one speed.
type Attitude struct {
	Trim   float64 // degrees
	Wetted float64 // mean wetted length over beam
	Drag   float64 // N
	Power  float64 // W, effective
	Keel   float64 // wetted keel length, m
	Chine  float64 // wetted chine length, m
	Lift   float64 // lift coefficient on the square of the beam
}

// Running is an attitude with how it was found.
type Running struct {
	Attitude
	Working *method.Working // the last turn of the sheet
	Turns   int             // evaluations of the sheet
}

// ErrNoBalance is returned when no running attitude between 0.2 and 20 degrees of trim is found.
var ErrNoBalance = errors.New("no running attitude found")

// Solve finds trim and wetted length by Newton's rule in two unknowns with the sheet's own left-over lift and moment.
// sheet is savitsky-1964. Errors: ErrNoBalance, or those of the sheet.
func Solve(sheet *method.Sheet, h Hull) (Running, error) {
	s, err := newSolver(sheet)
	if err != nil {
		return Running{}, err
	}
	r, err := s.solve(h)
	if err != nil {
		return Running{}, err
	}
	r.Working, err = s.working(h, r.Attitude)
	return r, err
}

// solver turns the sheet on a slate; it serves one hull after another.
type solver struct {
	sheet *method.Sheet
	slate *method.Slate
	hull  Hull
	taken *method.Taken
	turns int
}

func newSolver(sheet *method.Sheet) (*solver, error) {
	slate, err := sheet.Slate("hull", nil, "R_L", "M", "c", "D", "L_K", "L_C", "C_Lb")
	return &solver{sheet: sheet, slate: slate}, err
}

// solve finds the attitude of a hull; its Running has no working.
func (s *solver) solve(h Hull) (Running, error) {
	x := [2]float64{4, h.start()}
	var err error
	if s.taken, err = s.slate.Take(h.at(x)); err != nil {
		return Running{}, err
	}
	s.hull, s.turns = h, 0
	for step := 0; step < 40; step++ {
		r, err := s.left(x)
		if err != nil {
			return Running{}, err
		}
		if math.Abs(r[0]) < 1e-9 && math.Abs(r[1]) < 1e-9 {
			return s.running(x)
		}
		next, ok, err := s.step(x, r)
		if err != nil {
			return Running{}, err
		}
		if !ok {
			break
		}
		x = next
	}
	return Running{}, fmt.Errorf("%w at %.1f m/s", ErrNoBalance, h.Speed)
}

// at hands a hull to the sheet in an attitude: trim, and wetted length over beam.
func (h Hull) at(x [2]float64) method.GivenMap {
	g := h.given()
	g["planing.trim_deg"] = method.Quantity{Number: x[0], Unit: "°", Source: balanced}
	g["planing.wetted_ratio"] = method.Quantity{Number: x[1], Source: balanced}
	return g
}

// working evaluates the sheet in the attitude that was found.
func (s *solver) working(h Hull, at Attitude) (*method.Working, error) {
	return s.sheet.Evaluate("hull", h.at([2]float64{at.Trim, at.Wetted}), nil)
}

// start guesses the wetted length: a centre of pressure near two thirds of it under the centre of gravity.
func (h Hull) start() float64 {
	return math.Max(0.6, math.Min(4, h.LCG/(0.68*h.Beam)))
}

func (h Hull) given() method.GivenMap {
	q := func(v float64, unit string) method.Quantity { return method.Quantity{Number: v, Unit: unit} }
	all := method.GivenMap{
		"planing.speed": {Number: h.Speed, Unit: "m/s", Source: "the speed that is asked about; 1 kn = 1852/3600 m/s"}, "planing.beam_m": q(h.Beam, "m"), "planing.deadrise_deg": q(h.Deadrise, "°"),
		"planing.weight_n": q(h.Weight, "N"), "planing.lcg_m": q(h.LCG, "m"), "planing.vcg_m": q(h.VCG, "m"),
		"planing.thrust_deg": q(h.Thrust, "°"), "planing.thrust_arm_m": q(h.ThrustArm, "m"),
		"planing.density_kg_m3": q(h.Density, "kg/m³"), "planing.viscosity": q(h.Viscosity, "m²/s"),
		"planing.gravity": q(h.Gravity, "m/s²"), "planing.roughness": q(h.Roughness, ""),
	}
	for name, from := range h.Where {
		if v, asked := all[name]; asked {
			v.Place, v.Basis, v.Source = from.Place, from.Basis, from.Source
			all[name] = v
		}
	}
	return all
}

// balanced says where trim and wetted length come from; what is left over stands among the steps.
const balanced = "found by turning trim and wetted length until nothing of lift and moment is left over"

// left turns the sheet and gives what is left over: lift as a part of the weight, moment as a part of weight times beam.
func (s *solver) left(x [2]float64) (r [2]float64, err error) {
	s.taken.Set("planing.trim_deg", x[0])
	s.taken.Set("planing.wetted_ratio", x[1])
	s.slate.Work(s.taken)
	s.turns++
	r[0], err = s.number("R_L", x)
	if err != nil {
		return r, err
	}
	if s.hull.Short {
		c, err := s.number("c", x)
		r[1] = c / s.hull.Beam
		return r, err
	}
	m, err := s.number("M", x)
	r[1] = m / (s.hull.Weight * s.hull.Beam)
	return r, err
}

// number reads the slate; where there is none, a working says why.
func (s *solver) number(symbol string, x [2]float64) (float64, error) {
	if v, ok := s.slate.Value(symbol); ok {
		return v, nil
	}
	w, err := s.sheet.Evaluate("hull", s.hull.at(x), nil)
	if err != nil {
		return 0, err
	}
	shown, found := w.Get(symbol)
	if !found {
		return 0, fmt.Errorf("sheet %s does not give %s", s.sheet.Name, symbol)
	}
	return 0, fmt.Errorf("%w: %s %s: %s", ErrNoBalance, symbol, shown.State, shown.Why())
}

// step makes one step of Newton's rule with slopes from small changes, never leaving the range in which the sheet has
// numbers.
func (s *solver) step(x, r [2]float64) (next [2]float64, ok bool, err error) {
	const dt, dl = 1e-4, 1e-5
	a, err := s.left([2]float64{x[0] + dt, x[1]})
	if err != nil {
		return x, false, err
	}
	b, err := s.left([2]float64{x[0], x[1] + dl})
	if err != nil {
		return x, false, err
	}
	m11, m21 := (a[0]-r[0])/dt, (a[1]-r[1])/dt
	m12, m22 := (b[0]-r[0])/dl, (b[1]-r[1])/dl
	det := float64(m11*m22) - float64(m12*m21)
	if det == 0 || math.IsNaN(det) {
		return x, false, nil
	}
	next[0] = x[0] - clamp((float64(r[0]*m22)-float64(m12*r[1]))/det, 1.5)
	next[1] = x[1] - clamp((float64(m11*r[1])-float64(m21*r[0]))/det, 0.6)
	next[0] = math.Max(0.2, math.Min(20, next[0]))
	next[1] = math.Max(0.05, math.Min(12, next[1]))
	return next, next != x, nil
}

func clamp(v, most float64) float64 { return math.Max(-most, math.Min(most, v)) }

// running turns the sheet once more at the solution and takes its figures over.
func (s *solver) running(x [2]float64) (Running, error) {
	if _, err := s.left(x); err != nil {
		return Running{}, err
	}
	r := Running{Attitude: Attitude{Trim: x[0], Wetted: x[1]}, Turns: s.turns}
	for _, one := range []struct {
		symbol string
		to     *float64
	}{{"D", &r.Drag}, {"L_K", &r.Keel}, {"L_C", &r.Chine}, {"C_Lb", &r.Lift}} {
		v, err := s.number(one.symbol, x)
		if err != nil {
			return Running{}, err
		}
		*one.to = v
	}
	r.Power = r.Drag * s.hull.Speed
	return r, nil
}
