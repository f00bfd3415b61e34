package chart

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

// origins says in words where each axis begins.
func (s Spec) origins(x, left, right *span) string {
	words := begins(s.X, x) + "; " + begins(s.Y, left)
	if right != nil {
		words += "; " + begins(s.Y2, right)
	}
	return words + "."
}

func begins(a Axis, s *span) string {
	return named(a.Name) + " from " + s.label(s.lo())
}
