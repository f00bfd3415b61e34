package chart

import "strings"

// extent is the least and the greatest of some values; nothing yet where has is false.
type extent struct {
	lo, hi float64
	has    bool
}

func (e *extent) take(v float64) {
	switch {
	case !e.has:
		e.lo, e.hi, e.has = v, v, true
	case v < e.lo:
		e.lo = v
	case v > e.hi:
		e.hi = v
	}
}

// widen makes an extent cover at least so much, the values in its middle.
func (e *extent) widen(least float64) {
	if lack := least - (e.hi - e.lo); e.has && lack > 0 {
		e.lo, e.hi = e.lo-lack/2, e.hi+lack/2
	}
}

// extents are those of the three axes of a spec.
type extents struct{ x, left, right extent }

func (s Spec) extents() extents {
	var e extents
	for _, l := range s.Lines {
		e.takeAll(l.X, l.Y, l.Right)
	}
	for _, d := range s.Dots {
		e.takeAll(d.X, d.Y, d.Right)
	}
	return e
}

func (e *extents) takeAll(x, y []float64, right bool) {
	up := &e.left
	if right {
		up = &e.right
	}
	for i := range x {
		if usable(x[i]) && usable(y[i]) {
			e.x.take(x[i])
			up.take(y[i])
		}
	}
}

// oneSided moves all series to the left axis where only the right one is used: an axis alone stands on the left.
func (s Spec) oneSided() Spec {
	if e := s.extents(); e.left.has || !e.right.has {
		return s
	}
	lines, dots, marks := s.Lines, s.Dots, s.Marks
	s.Y, s.Y2, s.Lines, s.Dots, s.Marks = s.Y2, Axis{}, nil, nil, nil
	for _, l := range lines {
		l.Right = false
		s.Lines = append(s.Lines, l)
	}
	for _, d := range dots {
		d.Right = false
		s.Dots = append(s.Dots, d)
	}
	for _, m := range marks {
		m.Right = false
		s.Marks = append(s.Marks, m)
	}
	return s
}

// origins says in words where the axes begin.
func (s Spec) origins(x, left, right *span) string {
	all := []string{begins(s.X, x), begins(s.Y, left)}
	if right != nil {
		all = append(all, begins(s.Y2, right))
	}
	others := all[:0:0]
	for _, words := range all {
		if words != "" {
			others = append(others, words)
		}
	}
	if len(others) == 0 {
		return "All axes begin at 0."
	}
	return strings.Join(others, "; ") + "; the axes do not all begin at 0."
}

// begins says where an axis begins, or nothing where it begins at nought.
func begins(a Axis, s *span) string {
	if s.first == 0 {
		return ""
	}
	return named(a.Name) + " begins at " + withUnit(s.label(s.lo()), a.Unit)
}

// withUnit puts a unit behind a number; a degree sign stands close to it.
func withUnit(number, sign string) string {
	if sign == "" || sign == "°" {
		return number + sign
	}
	return number + "\u00a0" + sign
}
