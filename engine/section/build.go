package section

import "hullfile/engine/unit"

// New gives the section of a shape, without plating. The error is a Faults with all that makes it impossible.
func New(s Shape) (Section, error) {
	if faults := s.faults(); len(faults) > 0 {
		return Section{}, faults
	}
	parts, says := s.parts()
	sec := Section{Shape: s, Parts: parts, Says: says, outline: outlineOf(s, parts)}
	sec.twist = sec.torsion()
	return sec, nil
}

// With attaches plating of a thickness, of which a breadth counts, under the foot of the bar. Which breadth that is, is
// the rule's to say. Errors, as Faults: a thickness or breadth that is not above nought, and plating already there.
func (s Section) With(thickness, effective unit.MM) (Section, error) {
	var faults Faults
	if s.Plate > 0 {
		faults = append(faults, Fault{"plating", "is attached already"})
	}
	faults = faults.positive("plating thickness", thickness)
	faults = faults.positive("effective breadth of plating", effective)
	if len(faults) > 0 {
		return Section{}, faults
	}
	t := float64(thickness)
	parts := make([]Part, 0, len(s.Parts)+1)
	for _, p := range s.Parts {
		p.Z += t
		parts = append(parts, p)
	}
	parts = append(parts, Part{Name: "plating", Role: Plating, Form: Slab, Z: t / 2, Breadth: float64(effective), Height: t, Factor: 1})
	s.Parts, s.Plate, s.Effective = parts, thickness, effective
	s.twist = s.torsion()
	return s, nil
}

// parts gives the metal of a shape in place, foot at nought, and sentences on what was approximated.
func (s Shape) parts() ([]Part, []string) {
	h, t, b, tf := float64(s.Height), float64(s.Web), float64(s.Flange), float64(s.FlangeThickness)
	switch s.Kind {
	case FlatBar:
		return []Part{slab("web", Web, 0, h/2, t, h)}, nil
	case Angle:
		return []Part{slab("web", Web, 0, (h-tf)/2, t, h-tf), slab("flange", Flange, (b-t)/2, h-tf/2, b, tf)}, nil
	case Tee:
		return []Part{slab("web", Web, 0, (h-tf)/2, t, h-tf), slab("flange", Flange, 0, h-tf/2, b, tf)}, nil
	case Bulb:
		return s.bulb()
	case TopHat:
		return s.hat(), nil
	case Box:
		return []Part{
			slab("right side", Web, (b-t)/2, h/2, t, h-2*tf), slab("left side", Web, (t-b)/2, h/2, t, h-2*tf),
			slab("bottom", Foot, 0, tf/2, b, tf), slab("top", Flange, 0, h-tf/2, b, tf),
		}, nil
	case Pipe:
		d := float64(s.Diameter)
		return []Part{{Name: "wall", Role: Web, Form: Ring, Z: d / 2, Diameter: d, Wall: float64(s.Wall), Factor: 1}}, nil
	}
	return s.pieces(), nil
}

// slab is a rectangle by its centroid, breadth and height.
func slab(name string, role Role, y, z, breadth, height float64) Part {
	return Part{Name: name, Role: role, Form: Slab, Y: y, Z: z, Breadth: breadth, Height: height, Factor: 1}
}

// pieces are the rectangles of a built-up section.
func (s Shape) pieces() []Part {
	parts := make([]Part, 0, len(s.Pieces))
	for _, p := range s.Pieces {
		b, h := float64(p.Breadth), float64(p.Height)
		parts = append(parts, slab(p.Name, p.Role, float64(p.Left)+b/2, float64(p.Foot)+h/2, b, h))
	}
	return parts
}
