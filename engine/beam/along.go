package beam

// Bar is how one member carries its loads.
type Bar struct {
	Name       string
	Length     float64
	Start, End Ends
	bar        *bar
	moved      [2]float64 // across, of start and end, m
	slope      float64    // of the section at the start, rad
}

// Ends is what the rest of the structure does to an end of a member, in the member's own axes: kN along (from From
// to To), kN across (to the left of it), kN·m counterclockwise. Twist is the moment about the member, grillages only.
type Ends struct{ Along, Across, Moment, Twist float64 }

// Ordinate is what happens inside a member at a distance from its start.
type Ordinate struct {
	At     float64
	Moment float64 // kN·m; above nought it stretches the right-hand side, seen from From to To; in a grillage the lower
	Shear  float64 // kN; sum of all forces across before this place, so that it is the slope of the moment
	Along  float64 // kN, tension above nought
	Moves  float64 // m, across, to the left; along z in a grillage
}

// result keeps what is needed to look into a member.
func (p *bar) result(own, ends [6]float64) Bar {
	b := Bar{Name: p.Name, Length: p.length, bar: p, moved: [2]float64{own[1], own[4]}}
	b.Start = Ends{Along: ends[0], Across: ends[1], Moment: ends[2]}
	b.End = Ends{Along: ends[3], Across: ends[4], Moment: ends[5]}
	if p.kind == Grillage {
		b.Start = Ends{Across: ends[1], Moment: ends[2], Twist: ends[0]}
		b.End = Ends{Across: ends[4], Moment: ends[5], Twist: ends[3]}
	}
	bent := b.moves(p.length) - b.moved[0]
	b.slope = (own[4] - own[1] - bent) / p.length
	return b
}

// At gives moment, shear, force along and deflection at a distance from the start, kept inside the member. Where a point
// load stands the shear is that beyond it.
func (b Bar) At(x float64) Ordinate {
	x = min(max(x, 0), b.Length)
	return Ordinate{At: x, Moment: b.moment(x), Shear: b.shear(x, true), Along: b.tension(x), Moves: b.moves(x)}
}

// before gives the loads before x in their order n: n = 0 their sum, 1 their moment, 2 and 3 its integrals,
//
//	∫ q(s) (x - s)ⁿ / n! ds
//
// beyond says whether a point load at x counts.
func (b Bar) before(x float64, n int, beyond bool) float64 {
	sum := 0.0
	for _, l := range b.bar.Loads {
		r := x - l.From
		switch {
		case r < 0 || (r == 0 && !(l.Point && beyond)):
		case l.Point:
			sum += l.Across[0] * power(r, n) / factorial[n]
		default:
			slope := (l.Across[1] - l.Across[0]) / (l.To - l.From)
			low := max(0, x-l.To)
			first := (l.Across[0] + float64(slope*r)) * (power(r, n+1) - power(low, n+1)) / float64(n+1)
			second := slope * (power(r, n+2) - power(low, n+2)) / float64(n+2)
			sum += (first - second) / factorial[n]
		}
	}
	return sum
}

var factorial = [4]float64{1, 1, 2, 6}

func power(x float64, n int) float64 {
	switch n {
	case 0:
		return 1
	case 1:
		return x
	case 2:
		return x * x
	}
	out := x * x * x
	for range n - 3 {
		out *= x
	}
	return out
}

func (b Bar) shear(x float64, beyond bool) float64 {
	if x >= b.Length {
		beyond = false
	}
	return b.Start.Across + b.before(x, 0, beyond)
}

func (b Bar) moment(x float64) float64 {
	return float64(b.Start.Across*x) - b.Start.Moment + b.before(x, 1, true)
}

// tension is the force along, from what acts before x.
func (b Bar) tension(x float64) float64 {
	sum := b.Start.Along
	for _, l := range b.bar.Loads {
		switch {
		case x < l.From:
		case l.Point:
			sum += l.Along[0]
		case l.To > l.From:
			t := min(x, l.To) - l.From
			sum += float64(t * (l.Along[0] + float64((l.Along[1]-l.Along[0])/(l.To-l.From)*t/2)))
		}
	}
	return -sum
}

// moves gives the deflection across:
//
//	w = w_0 + ψ_0 x + (F x³/6 - M x²/2 + loads)/EI - (M(x) - M(0))/GA
func (b Bar) moves(x float64) float64 {
	w := b.moved[0] + float64(b.slope*x)
	w += (float64(b.Start.Across*x*x*x)/6 - float64(b.Start.Moment*x*x)/2 + b.before(x, 3, true)) / b.bar.EI
	if b.bar.GA > 0 {
		w -= (b.moment(x) + b.Start.Moment) / b.bar.GA
	}
	return w
}
