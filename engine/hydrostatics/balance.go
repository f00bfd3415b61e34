package hydrostatics

import (
	"errors"
	"fmt"
	"math"
)

// Load is what the water has to carry: mass in kilograms with its centre in the body, and the density of the water.
type Load struct {
	Mass    float64
	Centre  Vector
	Density float64
}

// Rest is a body at rest in the water at a given heel: it carries its mass and trims until centre of gravity and centre of
// buoyancy lie over each other fore and aft. Only crosswise a lever may be left.
type Rest struct {
	Attitude
	Immersed
	Lever float64 // righting lever GZ, metres; positive turns the body upright from a positive heel
	Steps int     // iterations that it took
}

// ErrSinks is returned when the body, wholly under water, cannot carry its mass.
var ErrSinks = errors.New("the body cannot carry its mass even when wholly under water")

// ErrNoRest is returned when no position of rest is found.
var ErrNoRest = errors.New("no position of rest found")

const (
	massTolerance = 1e-7 // of the displaced volume, as part of the wanted one
	armTolerance  = 1e-6 // metres between the two centres, fore and aft
	newtonLimit   = 40
)

// Balance finds sinkage and trim at the given heel (radians, starboard down positive). start is a guess: the attitude of
// a neighbouring heel, or the zero Attitude. If hold is true the trim of start is kept and only the sinkage is found.
// Errors: ErrSinks, ErrNoRest, or a mass or density that is not positive.
func (b *Body) Balance(load Load, heel float64, start Attitude, hold bool) (Rest, error) {
	if !(load.Mass > 0) || !(load.Density > 0) {
		return Rest{}, fmt.Errorf("mass %g kg and density %g kg/m³ must both be above zero", load.Mass, load.Density)
	}
	if b.Whole() < load.Mass/load.Density {
		return Rest{}, ErrSinks
	}
	at := start
	at.Heel = heel
	if r, ok := b.newton(load, at, hold); ok {
		return r, nil
	}
	if hold {
		return b.level(load, at), nil
	}
	// A guess far off, such as no guess at all, leads Newton's rule astray; the right level at that trim is near enough.
	if r, ok := b.newton(load, b.level(load, at).Attitude, false); ok {
		return r, nil
	}
	return b.search(load, at)
}

// Whole is the volume of the body wholly under water, m³.
func (b *Body) Whole() float64 { return b.whole }

// sum is the volume of all sections under water.
func (b *Body) sum() float64 {
	v := 0.0
	flat, _ := surfaceOf(0, 1)
	for i := range b.sections {
		v += float64(b.weights[i] * flat.cut(b.sections[i].Outline, 1e6).area)
	}
	return v
}

// newton uses the water plane for the derivatives: volume grows by its area with the level, and so on. It is quick and
// usually needs three or four steps from a neighbouring heel; where the plane is small or the step leaps, it gives up.
func (b *Body) newton(load Load, at Attitude, hold bool) (Rest, bool) {
	want := load.Mass / load.Density
	for step := 1; step <= newtonLimit; step++ {
		im := b.Immerse(at)
		r := at.rest(load, im, step)
		dv := im.Volume - want
		arm := r.foreArm(load)
		if math.Abs(dv) <= massTolerance*want && (hold || math.Abs(arm) <= armTolerance) {
			return r, true
		}
		if im.Plane < 1e-9 {
			if !at.wetter(b, im.Volume < want) {
				return Rest{}, false
			}
			continue
		}
		if hold {
			at.Level -= limit(dv/im.Plane, 0.3)
			continue
		}
		if !at.correct(load, im, dv, arm) {
			return Rest{}, false
		}
	}
	return Rest{}, false
}

// correct makes one step of Newton's rule in level and trim together.
func (a *Attitude) correct(load Load, im Immersed, dv, arm float64) bool {
	up, along := a.Up(), a.Along()
	g := along.Dot(load.Centre)
	m11, m12 := im.Plane, -im.firstX
	m21 := im.firstX - float64(g*im.Plane)
	m22 := -im.secondX + float64(g*im.firstX) - float64(im.Volume*up.Dot(im.Centre.Less(load.Centre)))
	det := float64(m11*m22) - float64(m12*m21)
	if math.Abs(det) < 1e-15 {
		return false
	}
	r2 := im.Volume * arm
	dl := (float64(dv*m22) - float64(m12*r2)) / det
	dt := (float64(m11*r2) - float64(m21*dv)) / det
	if math.IsNaN(dl) || math.IsNaN(dt) {
		return false
	}
	a.Level -= limit(dl, 0.3)
	a.Trim -= limit(dt, 0.15)
	return math.Abs(a.Trim) < 1.2
}

// wetter moves the water to where it cuts the body, when it does not.
func (a *Attitude) wetter(b *Body, rise bool) bool {
	low, high := b.reach(*a)
	switch {
	case rise && a.Level < low:
		a.Level = low + 0.1*(high-low)
	case !rise && a.Level > high:
		a.Level = high - 0.1*(high-low)
	default:
		return false
	}
	return true
}

// reach is the lowest and highest point of the body along the vertical of the earth.
func (b *Body) reach(at Attitude) (low, high float64) {
	up := at.Up()
	low, high = math.Inf(1), math.Inf(-1)
	for i := range b.sections {
		for _, p := range b.sections[i].Outline {
			h := up.Dot(Vector{b.sections[i].X, p.Y, p.Z})
			low, high = math.Min(low, h), math.Max(high, h)
		}
	}
	return low, high
}

// foreArm is how far the centre of buoyancy lies forward of the centre of gravity, level.
func (r Rest) foreArm(load Load) float64 { return r.Along().Dot(r.Centre.Less(load.Centre)) }

func (a Attitude) rest(load Load, im Immersed, steps int) Rest {
	return Rest{Attitude: a, Immersed: im, Steps: steps, Lever: a.Across().Dot(im.Centre.Less(load.Centre))}
}

func limit(v, most float64) float64 { return math.Max(-most, math.Min(most, v)) }

// search finds rest by halving: the level at each trim, for the volume grows with the level without fail, and then the
// trim at which the arm changes sign, taking the crossing that is stable and nearest to no trim.
func (b *Body) search(load Load, at Attitude) (Rest, error) {
	const most, pieces = 0.7, 56
	best, found := Rest{}, false
	prev := b.level(load, Attitude{Heel: at.Heel, Trim: -most})
	for k := 1; k <= pieces; k++ {
		next := b.level(load, Attitude{Heel: at.Heel, Trim: -most + 2*most*float64(k)/pieces})
		if prev.foreArm(load) > 0 && next.foreArm(load) <= 0 || prev.foreArm(load) >= 0 && next.foreArm(load) < 0 {
			r := b.halve(load, prev, next)
			if !found || math.Abs(r.Trim) < math.Abs(best.Trim) {
				best, found = r, true
			}
		}
		prev = next
	}
	if !found {
		return Rest{}, ErrNoRest
	}
	return best, nil
}

func (b *Body) halve(load Load, lo, hi Rest) Rest {
	for i := 0; i < 60 && math.Abs(lo.foreArm(load)) > armTolerance; i++ {
		mid := b.level(load, Attitude{Heel: lo.Heel, Trim: (lo.Trim + hi.Trim) / 2})
		if mid.foreArm(load) > 0 {
			lo = mid
		} else {
			hi = mid
			if math.Abs(mid.foreArm(load)) <= armTolerance {
				return mid
			}
		}
	}
	return lo
}

// level finds the sinkage at a fixed trim by halving.
func (b *Body) level(load Load, at Attitude) Rest {
	want := load.Mass / load.Density
	lo, hi := b.reach(at)
	var im Immersed
	steps := 0
	for ; steps < 80; steps++ {
		at.Level = (lo + hi) / 2
		im = b.Immerse(at)
		if math.Abs(im.Volume-want) <= massTolerance*want {
			break
		}
		if im.Volume < want {
			lo = at.Level
		} else {
			hi = at.Level
		}
	}
	return at.rest(load, im, steps)
}
