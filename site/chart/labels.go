package chart

// names sets the names of the vertical axes over them, to be read without turning the head. Where an axis has one line
// only, a piece of that line stands before the name.
func (p *plot) names(s *sheet) {
	half := s.w - 8
	if p.right != nil {
		half = s.w/2 - 8
	}
	l, key := p.only(false)
	name := fit(p.Y.label(), half-34)
	x := 2.0
	if key && p.right != nil {
		p.sample(s, l, x)
		x += 30
	}
	s.text("g-text", x, 15, start, name)
	if p.right == nil {
		return
	}
	name = fit(p.Y2.label(), half-34)
	s.text("g-text", s.w-2, 15, end, name)
	if l, key := p.only(true); key {
		p.sample(s, l, s.w-2-advance(name)-30)
	}
}

// only gives the line of an axis that has one.
func (p *plot) only(right bool) (found Line, ok bool) {
	n := 0
	for _, l := range p.Lines {
		if l.Right == right {
			found = l
			n++
		}
	}
	return found, n == 1
}

// sample draws a piece of a line with its mark.
func (p *plot) sample(s *sheet, l Line, x float64) {
	y := 15 - rise/2
	s.line(string(lineClass(l.Class)), x, y, x+24, y)
	s.dot(meanOf(l.Class), l.Right, point{x + 12, y})
}

// meanOf gives the mark that goes with a line.
func meanOf(c Class) Class {
	switch c {
	case LineB:
		return MeanB
	case LineC:
		return MeanC
	}
	return MeanA
}

// labels names the marked points and the lines, each beside what it names. What finds no room is left to the table.
func (p *plot) labels(s *sheet, left, right canvas) {
	p.place.bounds = box{left.field.left + 3, left.field.top - 8, left.field.right - 3, left.field.bottom - 3}
	if p.right == nil {
		p.place.bounds.right = s.w - 2
	}
	side := func(isRight bool) canvas {
		if isRight {
			return right
		}
		return left
	}
	for _, m := range p.Marks {
		at := side(m.Right).at(m.X, m.Y)
		s.circle("g-ring", at.x, at.y, 6.5)
		p.place.taken = append(p.place.taken, around(at.x, at.y, 6.5))
	}
	for _, m := range p.Marks {
		p.place.set(s, "g-label", side(m.Right).at(m.X, m.Y), fit(m.Text, p.place.bounds.right-p.place.bounds.left))
	}
	if len(p.Lines) < 2 {
		return // the axis names the line
	}
	for _, l := range p.Lines {
		p.lineName(s, side(l.Right), l)
	}
}

// lineName names a line at its end, or as near to it as there is clear room.
func (p *plot) lineName(s *sheet, c canvas, l Line) {
	if l.Name == "" {
		return
	}
	class := "g-label " + string(lineClass(l.Class)) + "-name"
	name := fit(l.Name, s.w/3)
	points := strided(placesOfLine(l, c), 50)
	for i := len(points) - 1; i >= 0; i-- {
		if p.place.near(points[i], name) {
			p.place.set(s, class, points[i], name)
			return
		}
	}
	p.place.set(s, class, points[len(points)-1], name)
}

// placesOfLine gives the places of the points of a line.
func placesOfLine(l Line, c canvas) []point {
	all := make([]point, 0, len(l.X))
	for i := range l.X {
		if usable(l.X[i]) && usable(l.Y[i]) {
			all = append(all, c.at(l.X[i], l.Y[i]))
		}
	}
	return all
}
