package beam

import (
	"math"
	"sort"
)

// Spot is a value and where it stands, m from the start of the member.
type Spot struct{ At, Value float64 }

// Extremes are the greatest and the least values along a member.
type Extremes struct {
	MostMoment, LeastMoment Spot // kN·m
	MostShear, LeastShear   Spot // kN
	MostSag, LeastSag       Spot // m, beside the line between the moved ends
}

// Moment is the one with the greater size; Shear likewise.
func (e Extremes) Moment() Spot { return greater(e.MostMoment, e.LeastMoment) }

// Shear is the one with the greater size.
func (e Extremes) Shear() Spot { return greater(e.MostShear, e.LeastShear) }

func greater(a, b Spot) Spot {
	if math.Abs(b.Value) > math.Abs(a.Value)*(1+1e-9) {
		return b
	}
	return a
}

// Extremes gives the greatest and least moment, shear and sag, exact on the member: between loads the shear is a parabola,
// so that the places where it or its slope is nought have closed forms; the sag is greatest where its slope changes
// sign, which is closed in upon.
func (b Bar) Extremes() Extremes {
	stops := b.stops()
	e := b.forces(stops)
	for _, x := range b.flat(stops, (b.moved[1]-b.moved[0])/b.Length) {
		e.sagAt(Spot{x, b.At(x).Sag})
	}
	return e
}

// forces gives the extremes of moment and shear.
func (b Bar) forces(stops []float64) Extremes {
	var e Extremes
	e.MostMoment, e.LeastMoment = Spot{0, b.moment(0)}, Spot{0, b.moment(0)}
	e.MostShear, e.LeastShear = Spot{0, b.shear(0, true)}, Spot{0, b.shear(0, true)}
	for i := 1; i < len(stops); i++ {
		b.within(stops[i-1], stops[i], &e)
	}
	return e
}

// stops are the places where the laws along a member change.
func (b Bar) stops() []float64 {
	all := []float64{0, b.Length}
	for _, l := range b.bar.Loads {
		all = append(all, math.Min(math.Max(l.From, 0), b.Length), math.Min(math.Max(l.To, 0), b.Length))
	}
	sort.Float64s(all)
	out := all[:1]
	for _, x := range all[1:] {
		if x > out[len(out)-1] {
			out = append(out, x)
		}
	}
	return out
}

// within looks at the stretch between two stops.
func (b Bar) within(from, to float64, e *Extremes) {
	v0, v1 := b.shear(from, true), b.shear(to, false)
	vm := b.shear((from+to)/2, true)
	e.shearAt(Spot{from, v0})
	e.shearAt(Spot{to, v1})
	e.momentAt(Spot{from, b.moment(from)})
	e.momentAt(Spot{to, b.moment(to)})
	second, first := 2*(v0-2*vm+v1), 4*vm-float64(3*v0)-v1 // shear = v0 + first t + second t², t from 0 to 1
	if second != 0 {
		if t := -first / (2 * second); t > 0 && t < 1 {
			x := from + float64(t*(to-from))
			e.shearAt(Spot{x, b.shear(x, true)})
		}
	}
	for _, t := range roots(second, first, v0) {
		if t > 0 && t < 1 {
			x := from + float64(t*(to-from))
			e.momentAt(Spot{x, b.moment(x)})
		}
	}
}

// roots of a t² + b t + c, those that are real, without the loss of figures of the school form.
func roots(a, b, c float64) []float64 {
	scale := math.Abs(b) + math.Abs(c)
	if math.Abs(a) <= 1e-12*scale {
		if b == 0 {
			return nil
		}
		return []float64{-c / b}
	}
	under := float64(b*b) - float64(4*a*c)
	if under < 0 {
		return nil
	}
	q := -(b + math.Copysign(math.Sqrt(under), b)) / 2
	if q == 0 {
		return []float64{0}
	}
	return []float64{q / a, c / q}
}

// pieces is into how many parts a stretch is cut to find where the slope changes sign; the slope is a quartic, which
// changes sign at most four times.
const pieces = 6

// flat gives the places where the deflected line runs at a given slope: stops where it breaks, and in between where the
// difference changes sign.
func (b Bar) flat(stops []float64, tilt float64) []float64 {
	var out []float64
	for i := 1; i < len(stops); i++ {
		from, to := stops[i-1], stops[i]
		step := (to - from) / pieces
		low, before := from, b.slopeAt(from, true)-tilt
		for k := 1; k <= pieces; k++ {
			high := from + float64(step*float64(k))
			after := b.slopeAt(high, k < pieces) - tilt
			if (before < 0) != (after < 0) {
				out = append(out, b.close(low, high, before, after, tilt))
			}
			low, before = high, after
		}
		if i+1 < len(stops) && b.bar.GA > 0 { // soft in shear the line breaks under a point load
			out = append(out, to)
		}
	}
	return out
}

// close closes in upon a change of sign between two places by the rule of false position, in the form that halves the value
// of an end that stays (Illinois), down to a thousand-millionth.
func (b Bar) close(low, high, before, after, tilt float64) float64 {
	x, first := low, math.Max(math.Abs(before), math.Abs(after))
	for range 40 {
		x = low + (high-low)*before/(before-after)
		at := b.slopeAt(x, true) - tilt
		if high-low < 1e-9*b.Length || math.Abs(at) < 1e-9*first {
			break
		}
		if (at < 0) == (before < 0) {
			low, before, after = x, at, after/2
		} else {
			high, after, before = x, at, before/2
		}
	}
	return x
}

func (e *Extremes) momentAt(s Spot) { widen(&e.MostMoment, &e.LeastMoment, s) }
func (e *Extremes) shearAt(s Spot)  { widen(&e.MostShear, &e.LeastShear, s) }
func (e *Extremes) sagAt(s Spot)    { widen(&e.MostSag, &e.LeastSag, s) }

func widen(most, least *Spot, s Spot) {
	if s.Value > most.Value {
		*most = s
	}
	if s.Value < least.Value {
		*least = s
	}
}
