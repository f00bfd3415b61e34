package chart

import (
	"iter"
	"math"

	"hullfile/engine/unit"
)

// scale is an axis cut into equal steps of 1, 2, 2.5 or 5 times a power of ten. Ticks are whole multiples of the step,
// kept as whole numbers so that 0.3 is 0.3 and not the sum of three tenths.
type scale struct {
	first, last int64 // of the ticks, in steps
	tenths      int64 // step in tenths of ten to the power
	power       int
}

// limit is the greatest value that an axis takes; beyond it a value is treated as no number.
const limit = 1e9

// least is the least span of an axis, as a part of the greatest value on it.
const least = 1e-6

// newScale covers lo to hi with at most most ticks (three or more). The ends are ticks. Equal ends get room on both sides.
func newScale(lo, hi float64, most int) scale {
	lo, hi = opened(lo, hi)
	for s := range steps(lo, hi) {
		if s.last-s.first < int64(most) {
			return s
		}
	}
	return scale{first: 0, last: 1, tenths: 10}
}

// newScaleOf covers lo to hi with exactly so many intervals, for a second axis that shares the grid of the first.
func newScaleOf(lo, hi float64, intervals int64) scale {
	lo, hi = opened(lo, hi)
	for s := range steps(lo, hi) {
		if s.last-s.first <= intervals {
			s.last = s.first + intervals
			return s
		}
	}
	return scale{first: 0, last: intervals, tenths: 10}
}

// steps gives the scales of all round steps from fine to coarse for a span.
func steps(lo, hi float64) iter.Seq[scale] {
	fine := int(math.Floor(math.Log10(hi-lo))) - 2
	return func(yield func(scale) bool) {
		for power := fine; power < fine+5; power++ {
			for _, tenths := range [...]int64{10, 20, 25, 50} {
				s := scale{tenths: tenths, power: power}
				s.first = int64(math.Floor(lo/s.step() + 1e-9))
				s.last = int64(math.Ceil(hi/s.step() - 1e-9))
				if !yield(s) {
					return
				}
			}
		}
	}
}

// opened gives ends that differ enough to be drawn.
func opened(lo, hi float64) (float64, float64) {
	if lo > hi {
		lo, hi = hi, lo
	}
	size := max(math.Abs(lo), math.Abs(hi))
	switch {
	case size < 1e-9:
		return 0, 1
	case hi-lo >= size*least:
		return lo, hi
	}
	return lo - size/10, hi + size/10
}

// fromNought widens the ends so that nought is on the axis, where it is asked for or lies near: a value read off an axis
// that begins elsewhere looks greater than it is.
func fromNought(lo, hi float64, asked bool) (float64, float64) {
	if !asked && (lo > hi*0.4 || lo < 0) {
		return lo, hi
	}
	return min(lo, 0), max(hi, 0)
}

func (s scale) step() float64 { return s.value(1) }

// value gives the value of the i-th tick counted from nought.
func (s scale) value(i int64) float64 {
	v := float64(i * s.tenths)
	if s.power >= 1 {
		return v * math.Pow10(s.power-1)
	}
	return v / math.Pow10(1-s.power)
}

func (s scale) lo() float64      { return s.value(s.first) }
func (s scale) hi() float64      { return s.value(s.last) }
func (s scale) intervals() int64 { return s.last - s.first }

// part gives where a value stands between the ends, nought to one.
func (s scale) part(v float64) float64 { return (v - s.lo()) / (s.hi() - s.lo()) }

// ticks gives the values of the ticks, ends included.
func (s scale) ticks() []float64 {
	all := make([]float64, 0, s.intervals()+1)
	for i := s.first; i <= s.last; i++ {
		all = append(all, s.value(i))
	}
	return all
}

// minor gives the values between the ticks that get a short tick of their own: fifths, or quarters of a step of two.
func (s scale) minor() []float64 {
	parts := int64(5)
	if s.tenths == 20 {
		parts = 4
	}
	all := make([]float64, 0, s.intervals()*parts)
	for i := s.first; i < s.last; i++ {
		for k := int64(1); k < parts; k++ {
			all = append(all, s.value(i)+float64(s.step()*float64(k))/float64(parts))
		}
	}
	return all
}

// decimals is how many decimals the ticks need.
func (s scale) decimals() int {
	places := -s.power
	if s.tenths == 25 {
		places++
	}
	return max(0, places)
}

func (s scale) label(v float64) string { return unit.Text(v, s.decimals()) }

// usable reports whether a value can be drawn.
func usable(v float64) bool { return !math.IsNaN(v) && math.Abs(v) <= limit }
