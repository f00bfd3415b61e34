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

// Extremes gives the greatest and least moment and shear, exact on the member: between loads the shear is a parabola, so
// that the places where it or its slope is nought have closed forms.
func (b Bar) Extremes() Extremes {
	var e Extremes
	stops := b.stops()
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

func (e *Extremes) momentAt(s Spot) { widen(&e.MostMoment, &e.LeastMoment, s) }
func (e *Extremes) shearAt(s Spot)  { widen(&e.MostShear, &e.LeastShear, s) }

func widen(most, least *Spot, s Spot) {
	if s.Value > most.Value {
		*most = s
	}
	if s.Value < least.Value {
		*least = s
	}
}
