package beam

import "math"

// Beside is one bar of a boat's structure, and the formulas for it as a single span that stand beside.
type Beside struct {
	Name    string
	Bars    []int   // its members in the solution, from its start to its end
	Span    float64 // of the single-span formula, m
	Load    float64 // mean load of that formula, kN/m, inward
	Moment  Spot    // of the greatest size, kN·m; above nought it stretches the inner face
	Inner   Spot    // the greatest that stretches the inner face; nought where there is none
	Outer   Spot    // the greatest that stretches the outer face, as a value below nought
	Shear   Spot    // of the greatest size, kN
	Moves   Spot    // the greatest, m, inward
	Start   Bracket
	End     Bracket
	Fixed   float64 // greatest moment of a single span with fixed ends, kN·m
	Pinned  float64 // the same with pinned ends
	FixedIn float64 // deflection of a single span with fixed ends under the mean load, w l⁴/384 EI, m
	Ratio   float64 // size of Moment over Fixed
}

// Bracket is what a joint of a bar passes, at the joint and at the toe of its bracket, kN·m and kN.
type Bracket struct {
	Joint     string  // "keel"
	Moment    float64 // at the joint; above nought it stretches the inner face
	Shear     float64
	Along     float64 // tension above nought
	Toe       float64 // arm of the bracket along the bar, m
	ToeMoment float64
	ToeShear  float64
}

// beside looks at a chain of members. inward is +1 where the inner side lies to the left of the chain, or up in a
// grillage, and -1 where it lies to the right.
func (s Solution) beside(name string, chain []int, inward float64) Beside {
	b := Beside{Name: name, Bars: chain}
	at := 0.0
	for _, i := range chain {
		bar := s.Bars[i]
		stops := bar.stops()
		e := bar.forces(stops)
		for _, m := range []Spot{e.MostMoment, e.LeastMoment} {
			b.inner(Spot{at + m.At, -inward * m.Value})
		}
		if sh := e.Shear(); math.Abs(sh.Value) > math.Abs(b.Shear.Value)*(1+1e-9) {
			b.Shear = Spot{at + sh.At, inward * sh.Value}
		}
		if w := bar.moving(stops); math.Abs(w.Value) > math.Abs(b.Moves.Value)*(1+1e-9) {
			b.Moves = Spot{at + w.At, inward * w.Value}
		}
		at += bar.Length
	}
	b.Moment = greater(b.Inner, b.Outer)
	return b
}

func (b *Beside) inner(m Spot) {
	switch {
	case m.Value > b.Inner.Value*(1+1e-9):
		b.Inner = m
	case m.Value < b.Outer.Value*(1+1e-9):
		b.Outer = m
	}
}

// bracket gives what passes at the start (from = true) or the end of a chain.
func (s Solution) bracket(joint string, chain []int, toe, inward float64, start bool) Bracket {
	k := Bracket{Joint: joint, Toe: toe}
	bar, x, step := s.Bars[chain[0]], 0.0, 1.0
	if !start {
		bar = s.Bars[chain[len(chain)-1]]
		x, step = bar.Length, -1
	}
	o := bar.At(x)
	k.Moment, k.Shear, k.Along = -inward*o.Moment, inward*o.Shear, o.Along
	k.ToeMoment, k.ToeShear = k.Moment, k.Shear
	if toe > 0 {
		o, _ = s.along(chain, toe, start, step)
		k.ToeMoment, k.ToeShear = -inward*o.Moment, inward*o.Shear
	}
	return k
}

// along looks at a distance from the start or the end of a chain, over its members.
func (s Solution) along(chain []int, distance float64, start bool, step float64) (Ordinate, bool) {
	for i := range chain {
		k := i
		if !start {
			k = len(chain) - 1 - i
		}
		bar := s.Bars[chain[k]]
		if distance <= bar.Length || i == len(chain)-1 {
			if step < 0 {
				return bar.At(bar.Length - distance), true
			}
			return bar.At(distance), true
		}
		distance -= bar.Length
	}
	return Ordinate{}, false
}

// single fills in the formulas for one span of length l under a load from q1 to q2, kN/m:
//
//	fixed ends    the greater of l² (3 q1 + 2 q2)/60 and l² (2 q1 + 3 q2)/60, which is q l²/12 for an even load
//	pinned ends   where the shear l (2 q1 + q2)/6 - q1 x - (q2 - q1) x²/(2 l) is nought; q l²/8 for an even load
//
// any handbook of beams, recalled.
func (b *Beside) single(l, q1, q2, ei float64) {
	b.Span, b.Load = l, (q1+q2)/2
	b.Fixed = l * l / 60 * math.Max(math.Abs(float64(3*q1)+2*q2), math.Abs(2*q1+float64(3*q2)))
	r := l * (2*q1 + q2) / 6
	for _, x := range roots(-(q2-q1)/(2*l), -q1, r) {
		if x > 0 && x < l {
			b.Pinned = math.Max(b.Pinned, math.Abs(float64(r*x)-float64(q1*x*x)/2-float64((q2-q1)*x*x*x)/(6*l)))
		}
	}
	b.FixedIn = b.Load * math.Pow(l, 4) / 384 / ei
	if b.Fixed > 0 {
		b.Ratio = math.Abs(b.Moment.Value) / b.Fixed
	}
}
