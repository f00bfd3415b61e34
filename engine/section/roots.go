package section

// Root is where a weld meets the metal, in the plane of the section, mm.
type Root struct {
	Name string
	Y, Z float64
}

// Roots lists the welds of a section: those to the plating, where it is attached, and those between its own pieces where
// the shape is joined of them.
func (s Section) Roots() []Root {
	var roots []Root
	if s.Plate > 0 {
		roots = s.onPlating()
	}
	if s.Shape.Joined {
		roots = append(roots, s.between()...)
	}
	return roots
}

// onPlating are the roots at the plating: under the middle of a single web, at the outer edges of feet and boxes.
func (s Section) onPlating() []Root {
	t := float64(s.Plate)
	half := 0.0
	switch s.Shape.Kind {
	case TopHat:
		half = float64(s.Shape.base()-s.Shape.Web) / 2
		if s.Shape.Foot > 0 {
			half = float64(s.Shape.base())/2 + float64(s.Shape.Foot)
		}
	case Box:
		half = float64(s.Shape.Flange) / 2
	case BuiltUp:
		return s.piecesOnPlating()
	}
	if half == 0 {
		return []Root{{"foot", 0, t}}
	}
	return []Root{{"right foot", half, t}, {"left foot", -half, t}}
}

// piecesOnPlating: a web is welded under its middle, a foot along both edges.
func (s Section) piecesOnPlating() []Root {
	var roots []Root
	t := float64(s.Plate)
	for _, p := range s.Parts {
		switch {
		case p.Role == Plating || p.bottom() > t+near:
		case p.Role == Web:
			roots = append(roots, Root{p.Name + " foot", p.Y, t})
		default:
			roots = append(roots, Root{p.Name + " right edge", p.Y + p.Breadth/2, t}, Root{p.Name + " left edge", p.Y - p.Breadth/2, t})
		}
	}
	return roots
}

// between are the roots where webs meet flanges, feet and other webs above and below them.
func (s Section) between() []Root {
	var roots []Root
	for i, w := range s.Parts {
		if w.Role != Web || w.Form != Slab {
			continue
		}
		for j, q := range s.Parts {
			if i == j || q.Role == Plating || q.Form != Slab {
				continue
			}
			if shared(w.end(1)-near, w.end(1)+near, q.Y-q.Breadth/2, q.Y+q.Breadth/2) > 0 && abs(q.bottom()-w.top()) < near {
				roots = append(roots, Root{w.Name + " to " + q.Name, w.end(1), w.top()})
			}
			if shared(w.end(-1)-near, w.end(-1)+near, q.Y-q.Breadth/2, q.Y+q.Breadth/2) > 0 && abs(q.top()-w.bottom()) < near {
				roots = append(roots, Root{w.Name + " to " + q.Name, w.end(-1), w.bottom()})
			}
		}
	}
	return roots
}

// end is where the middle line of a slab stands across, at its upper (+1) or lower (-1) side.
func (p Part) end(side float64) float64 { return p.Y + side*p.Lean/2 }

func abs(v float64) float64 {
	if v < 0 {
		return -v
	}
	return v
}
